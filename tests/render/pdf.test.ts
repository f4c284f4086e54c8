/** Reading and settling printed PDFs: made-up ones of every form, and real ones. */
import fc from "fast-check";
import { afterAll, describe, expect, it, test } from "vitest";
import { PrintBrowser } from "../../src/render/browser.ts";
import { pageCount, readDestinations } from "../../src/render/pdf-destinations.ts";
import { checkPdf, settlePdf } from "../../src/render/pdf-settle.ts";
import { printPdf } from "../../src/render/print.ts";
import { booklet, found, openPdf } from "./support.ts";

const DATE = new Date("2026-01-02T03:04:05Z");

interface Heads {
  /** The browser's number for each table head, in order of the document. */
  readonly ids: readonly number[];
  /** Texts that may look like ids. */
  readonly texts: readonly string[];
  readonly date: string;
}

const escaped = (text: string) => text.replace(/[\\()]/g, "\\$&");
const id = (number: number) => `(node${String(number).padStart(8, "0")})`;

/** Writes a PDF of one page as the browser does, from objects 1 (information) to the last. */
function makePdf({ ids, texts, date }: Heads): Uint8Array {
  const heads = ids.map((number, index) => {
    const text = texts[index % Math.max(1, texts.length)] ?? "";
    return `<</Type /StructElem\n/S /TH\n/P 5 0 R\n/Alt (${escaped(text)})\n/ID ${id(number)}>>`;
  });
  const cell = `<</Type /StructElem\n/S /TD\n/P 5 0 R\n/A [<</O /Table\n/Headers [${ids.map(id).join(" ")}]>>]>>`;
  const first = 8;
  const sorted = ids.map((number, index) => [id(number), `${first + index} 0 R`] as const);
  const pairs = sorted.sort(([a], [b]) => (a < b ? -1 : 1));
  const kids = [...heads.map((_, index) => `${first + index} 0 R`), "7 0 R"].join(" ");
  const stream = "BT (node00000042) /ID (node00000007) ET";
  return assemble([
    `<</Title (${escaped(texts[0] ?? "")})\n/CreationDate (D:${date}+00'00')\n/ModDate (D:${date}+00'00')>>`,
    "<</Type /Catalog\n/Pages 3 0 R\n/MarkInfo <</Marked true>>\n/StructTreeRoot 5 0 R>>",
    "<</Type /Pages\n/Count 1\n/Kids [4 0 R]>>",
    "<</Type /Page\n/Parent 3 0 R\n/MediaBox [0 0 9 9]\n/Contents 6 0 R>>",
    `<</Type /StructTreeRoot\n/K [${kids}]\n/IDTree <</Kids [${first + ids.length} 0 R]>>>>`,
    `<</Length ${stream.length}>> stream\n${stream}\nendstream`,
    cell,
    ...heads,
    ids.length === 0
      ? "<<>>"
      : `<</Limits [${pairs[0]?.[0]} ${pairs.at(-1)?.[0]}]\n/Names [${pairs.flat().join(" ")}]>>`,
  ]);
}

function assemble(objects: readonly string[]): Uint8Array {
  let text = "%PDF-1.4\n";
  const offsets = objects.map((object, index) => {
    const offset = text.length;
    text += `${index + 1} 0 obj\n${object}\nendobj\n`;
    return `${String(offset).padStart(10, "0")} 00000 n \n`;
  });
  const size = objects.length + 1;
  const table = `xref\n0 ${size}\n0000000000 65535 f \n${offsets.join("")}`;
  const trailer = `trailer\n<</Size ${size}\n/Root 2 0 R\n/Info 1 0 R>>\nstartxref\n${text.length}\n%%EOF\n`;
  return Buffer.from(text + table + trailer, "latin1");
}

const read = (bytes: Uint8Array) => Buffer.from(bytes).toString("latin1");

const someIds = (length: number) =>
  fc.uniqueArray(fc.integer({ min: 1, max: 99_999_999 }), { minLength: length, maxLength: length });
const someText = fc.oneof(
  fc.string({ unit: "grapheme-ascii", maxLength: 30 }),
  fc.constantFrom(
    "node00000001",
    "(node00000002)",
    "/ID (node00000003)",
    "[(node00000004)]",
    ") (node00000005)",
  ),
);
const someDate = fc
  .date({ min: new Date("2000-01-01"), max: new Date("2099-12-31"), noInvalidDate: true })
  .map((date) => date.toISOString().replace(/\D/g, "").slice(0, 14));
const twice = fc.integer({ min: 0, max: 40 }).chain((length) =>
  fc.record({
    ids: fc.tuple(someIds(length), someIds(length)),
    texts: fc.array(someText, { maxLength: 6 }),
    dates: fc.tuple(someDate, someDate),
  }),
);

describe("settlePdf", () => {
  it("gives the same bytes whatever the ids and dates were, and touches nothing else", () => {
    fc.assert(
      fc.property(twice, ({ ids, texts, dates }) => {
        const first = makePdf({ ids: ids[0], texts, date: dates[0] });
        const before = read(first);
        const settled = read(settlePdf(first, DATE));
        const expected = makePdf({
          ids: ids[0].map((_, index) => index + 1),
          texts,
          date: "20260102030405",
        });
        expect(settled).toBe(read(expected));
        expect(read(settlePdf(makePdf({ ids: ids[1], texts, date: dates[1] }), DATE))).toBe(
          settled,
        );
        expect(read(settlePdf(Buffer.from(settled, "latin1"), DATE))).toBe(settled);
        expect(read(first)).toBe(before);
      }),
      { numRuns: 300 },
    );
  });

  it("leaves a PDF that another reader can open", async () => {
    const bytes = settlePdf(
      makePdf({ ids: [70, 3, 41], texts: ["a"], date: "20200101000000" }),
      DATE,
    );
    const pdf = await openPdf(bytes);
    expect((await pdf.getMetadata()).info).toMatchObject({ ModDate: "D:20260102030405+00'00'" });
    expect(pdf.numPages).toBe(1);
  });
});

const good = read(makePdf({ ids: [1], texts: ["x"], date: "20200101000000" }));
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
test.each(BROKEN)("checkPdf refuses a file that %s", (_, text) => {
  expect(() => checkPdf(Buffer.from(good, "latin1"))).not.toThrow();
  const fault = catchFault(() => checkPdf(Buffer.from(text, "latin1")));
  expect(fault).toMatchObject({ code: "pdf-broken", exit: 70 });
});
const UNSETTLED: [string, string][] = [
  ["has dates of another form", good.replaceAll("+00'00'", "Z00'00")],
  ["has no dates", good.replaceAll("Date (", "Dote (")],
];
test.each(UNSETTLED)("settlePdf refuses a file that %s", (_, text) => {
  const fault = catchFault(() => settlePdf(Buffer.from(text, "latin1"), DATE));
  expect(fault).toMatchObject({ code: "pdf-broken" });
});
function catchFault(run: () => unknown): unknown {
  try {
    return run();
  } catch (fault) {
    return fault;
  }
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
