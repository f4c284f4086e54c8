/** Reading and settling printed PDFs: made-up ones of every form, broken ones, and real ones. */
import fc from "fast-check";
import { afterAll, describe, expect, it, test } from "vitest";
import { PrintBrowser } from "../../src/browser/browser.ts";
import { finishPdf } from "../../src/pdf/post-process.ts";
import { printPdf } from "../../src/pdf/print.ts";
import { readDestinations } from "../../src/pdf/structure/destinations.ts";
import { pageCount } from "../support/page-count.ts";
import { booklet, found, openPdf } from "../support/render.ts";
import { latin1, makePdf } from "./support.ts";

const DATE = new Date("2026-01-02T03:04:05Z");

const someIds = (length: number) =>
  fc.uniqueArray(fc.integer({ min: 1, max: 99_999_999 }), { minLength: length, maxLength: length });
const someText = fc.oneof(
  fc.string({ unit: "grapheme-ascii", maxLength: 30 }),
  fc.constantFrom("node00000001", "(node00000002)", "/ID (node00000003)", "endobj", ">> stream\n"),
);
const someDate = fc
  .date({ min: new Date("2000-01-01"), max: new Date("2099-12-31"), noInvalidDate: true })
  .map((date) => date.toISOString().replace(/\D/g, "").slice(0, 14));
const twice = fc.integer({ min: 0, max: 20 }).chain((length) =>
  fc.record({
    ids: fc.tuple(someIds(length), someIds(length)),
    texts: fc.array(someText, { maxLength: 6 }),
    dates: fc.tuple(someDate, someDate),
  }),
);

describe("finishPdf", () => {
  it("gives the same bytes whatever the ids and dates were, and leaves what it is given", () => {
    fc.assert(
      fc.property(twice, ({ ids, texts, dates }) => {
        const first = makePdf({ ids: ids[0], texts, date: dates[0] });
        const before = latin1(first);
        const settled = latin1(finishPdf(first, { date: DATE }).pdf);
        const other = makePdf({ ids: ids[1], texts, date: dates[1] });
        expect(latin1(finishPdf(other, { date: DATE }).pdf)).toBe(settled);
        expect(latin1(finishPdf(first, { date: DATE }).pdf)).toBe(settled);
        expect(latin1(first)).toBe(before);
      }),
      { numRuns: 100 },
    );
  });

  it("leaves a PDF that another reader can open, texts and all", async () => {
    const texts = ["(node00000003) \\) of", "endobj >> stream"];
    const pdf = await openPdf(finishPdf(makePdf({ ids: [70, 3, 41], texts }), { date: DATE }).pdf);
    const { info, metadata } = await pdf.getMetadata();
    expect(info).toMatchObject({ ModDate: "D:20260102030405+00'00'", Title: texts[0] });
    expect(metadata.get("dc:title")).toBe(texts[0]);
    expect(pdf.numPages).toBe(1);
  });
});

const good = latin1(makePdf({ ids: [1] }));
const BROKEN: [string, string][] = [
  ["is empty", ""],
  ["is no PDF", "<html></html>"],
  ["is cut off at its end", good.slice(0, -4)],
  ["is cut off in the middle", good.slice(0, 500)],
  ["has bytes too many at its start", good.replace("%PDF-1.4\n", "%PDF-1.4\n%\n")],
  ["has no table", good.replace("xref\n0", "nope\n0")],
  ["has been changed since", good.replace("/Info 1", "/Prev 9\n/Info 1")],
  ["is encrypted", good.replace("/Info 1", "/Encrypt 9 0 R\n/Info 1")],
  ["has no catalogue", good.replace("/Root 2 0 R", "")],
  ["has no page", good.replace("/Kids [4 0 R]", "/Kids []     ")],
  [
    "lists a page that is not there",
    good.replace("/Kids [4 0 R]", "/Kids [99 0 R]").replace("/Count 1", "/Count"),
  ],
  ["has pages in a circle", good.replace("/Kids [4 0 R]", "/Kids [3 0 R]")],
];
test.each(BROKEN)("a file that %s is refused", (_, text) => {
  expect(() => pageCount(Buffer.from(good, "latin1"))).not.toThrow();
  const fault = catchFault(() => pageCount(Buffer.from(text, "latin1")));
  expect(fault).toMatchObject({ code: "pdf-broken", exit: 70 });
});

const UNSETTLED: [string, string][] = [
  ["has no tags", good.replace("/StructTreeRoot 5 0 R", "/StructTreeRoof 5 0 R")],
  ["has tags in a circle", good.replace("/K [12 0 R", "/K [ 7 0 R")],
  ["has a stream that is cut off", good.replace(/Length \d+>> stream/, "Length 3>> stream")],
  [
    "has a stream that is not packed as it says",
    good.replace("<</Length", "<</Filter /FlateDecode/Length"),
  ],
  ["has a stream of unknown form", good.replace("<</Length", "<</Filter /LZWDecode/Length")],
  ["opens a mark and does not close it", good.replace("EMC", "   ")],
  ["has two content streams", good.replace("/Contents 6 0 R", "/Contents [6 0 R 6 0 R]")],
];
test.each(UNSETTLED)("finishPdf refuses a file that %s", (_, text) => {
  expect(() => finishPdf(Buffer.from(good, "latin1"), { date: DATE })).not.toThrow();
  // The table of objects stands where it stood before.
  const moved = text.replace(/startxref\n\d+/, `startxref\n${text.lastIndexOf("xref\n0")}`);
  const fault = catchFault(() => finishPdf(assembleAnew(moved), { date: DATE }));
  expect(fault).toMatchObject({ code: "pdf-broken" });
});

/** The file with its table of objects made right again. */
function assembleAnew(text: string): Uint8Array {
  const at = text.lastIndexOf("xref\n0");
  const table = text.slice(at).replace(/^\d{10} 00000 n $/gm, () => "?");
  let object = 0;
  const right = table.replace(/^\?$/gm, () => {
    const offset = text.indexOf(`\n${++object} 0 obj\n`) + 1;
    return `${String(offset).padStart(10, "0")} 00000 n `;
  });
  return Buffer.from(text.slice(0, at) + right, "latin1");
}

describe("damage of any kind", () => {
  const settles = (bytes: Uint8Array) => {
    const fault = catchFault(() => finishPdf(bytes, { date: DATE }));
    if (fault !== undefined) expect(fault).toMatchObject({ code: "pdf-broken" });
  };
  const bytes = makePdf({ ids: [4, 2], texts: ["some (text)"] });

  it("is refused or mended, never a crash: cut off", () => {
    for (let length = 0; length < bytes.length; length += 3) settles(bytes.slice(0, length));
  });

  it("is refused or mended, never a crash: bytes changed", () => {
    const change = fc.tuple(fc.nat(bytes.length - 1), fc.constantFrom(..."<>[]()/ 09R\n\\%x\xff"));
    fc.assert(
      fc.property(fc.array(change, { minLength: 1, maxLength: 4 }), (changes) => {
        const damaged = Buffer.from(bytes);
        for (const [at, byte] of changes) damaged[at] = byte.charCodeAt(0);
        settles(damaged);
      }),
      { numRuns: 3000 },
    );
  });

  it("is refused or mended, never a crash: a word for another", () => {
    const words = latin1(bytes).split(/(\s+)/);
    const pair = fc.tuple(fc.nat(words.length - 1), fc.nat(words.length - 1));
    fc.assert(
      fc.property(fc.array(pair, { minLength: 1, maxLength: 3 }), (pairs) => {
        const damaged = [...words];
        for (const [to, from] of pairs) damaged[to] = words[from] ?? "";
        settles(assembleAnew(damaged.join("")));
      }),
      { numRuns: 2000 },
    );
  });
});

function catchFault(run: () => unknown): unknown {
  try {
    run();
  } catch (fault) {
    return fault;
  }
  return undefined;
}

describe("readDestinations", () => {
  const browser = new PrintBrowser(found);
  afterAll(() => browser.dispose());
  const print = (html: string) => browser.usePage((page) => printPdf(page, html, { paper: "A4" }));

  it("agrees with another reader on every link target of a long booklet", async () => {
    const bytes = await print(booklet(40));
    const pdf = await openPdf(bytes);
    const expected = new Map<string, number>();
    for (const [name, target] of Object.entries(await pdf.getDestinations())) {
      expected.set(name, (await pdf.getPageIndex((target as [never])[0])) + 1);
    }
    expect(readDestinations(bytes)).toEqual(expected);
    expect(expected.get("p39")).toBe(41);
    expect(pageCount(bytes)).toBe(pdf.numPages);
  });

  test.each(["plain", "with-dash_1", "ä", "a b", "Ω(1)", "50%", "a/b", "x#y", "日本"])(
    "knows the id %s",
    async (name) => {
      const target = `<p style="break-before: page" id="${name}">Here</p>`;
      const bytes = await print(`<a href="#${name}">There</a>${target}`);
      expect([...readDestinations(bytes)]).toEqual([[name, 2]]);
    },
  );

  it("knows none where nothing is linked", async () => {
    expect(readDestinations(await print(`<p id="a">Alone</p>`)).size).toBe(0);
  });
});
