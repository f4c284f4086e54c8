/** Page numbers written into what was printed: right, in place, and left alone where that cannot be. */
import { afterAll, describe, expect, it, test } from "vitest";
import { PrintBrowser } from "../../../src/browser/browser.ts";
import { finishNumbered } from "../../../src/pdf/post-process.ts";
import { printPdf } from "../../../src/pdf/print.ts";
import { readDestinations } from "../../../src/pdf/structure/destinations.ts";
import { draftHtml } from "../../../src/pdf/structure/page-numbers.ts";
import { booklet, found, openPdf } from "../../support/render.ts";
import { ask, countUnmarked, has, latin1, readNodes } from "../support.ts";

const DATE = new Date("2026-01-02T03:04:05Z");
const browser = new PrintBrowser(found);
afterAll(() => browser.dispose());

type Pages = ReadonlyMap<string, number>;

/** A booklet of some parts whose contents say on which pages they are. */
const render =
  (parts: number, more = "", style = "") =>
  (pages: Pages) =>
    booklet(parts, more)
      .replace(
        /<li><a href="#(p\d+)">(.*?)<\/a>/g,
        (_, anchor: string, title: string) =>
          `<li><a href="#${anchor}">${title} <span class="at">${pages.get(anchor) ?? ""}</span></a>`,
      )
      .replace(
        "</style>",
        `a { display: flex; justify-content: space-between } .at { flex: 0 0 4em; text-align: end }${style}</style>`,
      );

async function numbered(html: (pages: Pages) => string, end: "left" | "right" = "right") {
  const draft = draftHtml(html, end);
  if (draft === undefined) return undefined;
  const print = (text: string) => browser.usePage((page) => printPdf(page, text, { paper: "A4" }));
  const printed = await print(draft.html);
  return { printed, print, finished: finishNumbered(printed, { date: DATE, places: draft }) };
}

/** Lines of the first page: what is left, and what is right with the right end of it. */
async function contents(bytes: Uint8Array) {
  const { items } = await (await (await openPdf(bytes)).getPage(1)).getTextContent();
  const texts = items.flatMap((item) =>
    "str" in item && item.str.trim() !== ""
      ? [{ text: item.str.trim(), x: item.transform[4] as number, width: item.width }]
      : [],
  );
  return texts
    .filter(({ text }) => /^\d+$/.test(text))
    .map(({ text, x, width }) => ({ text, x, end: x + width }));
}

describe("numbers of pages", () => {
  it("are the right ones, at the right edge, in text, tags and descriptions", async () => {
    const result = await numbered(render(12));
    const finished = result?.finished;
    if (result === undefined || finished === undefined || !("pdf" in finished))
      throw new Error("not filled");
    const targets = readDestinations(result.printed);
    const expected = Array.from({ length: 12 }, (_, part) => String(targets.get(`p${part}`)));
    expect(expected).toContain("9");
    expect(expected).toContain("13");
    const lines = await contents(finished.pdf);
    // The first is the page's own number in its margin.
    expect(lines.map(({ text }) => text)).toEqual(["1", ...expected]);
    // As another print with the right numbers has them, to a twentieth of a point.
    const again = await contents(await result.print(render(12)(targets)));
    lines.forEach(({ x, end }, index) => {
      expect(x).toBeCloseTo(again[index]?.x ?? 0, 1);
      expect(end).toBeCloseTo(again[index]?.end ?? 0, 1);
    });
    const pdf = await openPdf(finished.pdf);
    const links = (await (await pdf.getPage(1)).getAnnotations()).map(
      ({ contentsObj }) => contentsObj.str,
    );
    expect(links).toEqual(expected.map((page, part) => `Part ${part + 1} ${page}`));
    expect(await countUnmarked(pdf)).toBe(0);
    expect((await readNodes(pdf)).filter(({ role }) => role === "Link")).toHaveLength(12);
    expect(finished.gaps).toEqual([]);
  });

  test.skipIf(!has("pdftoppm"))(
    "look as if printed again with them (needs poppler-utils)",
    async () => {
      const result = await numbered(render(11));
      if (result === undefined || !("pdf" in result.finished)) throw new Error("not filled");
      const again = await result.print(render(11)(readDestinations(result.printed)));
      const look = (bytes: Uint8Array) =>
        ask(bytes, "sh", (file) => [
          "-c",
          `pdftoppm -r 100 -l 1 ${file} page && sha256sum < page-*1.ppm`,
        ]).output;
      expect(look(result.finished.pdf)).toBe(look(again));
    },
  );

  it("stand at the left where the text runs to the left", async () => {
    const style = ".at { direction: rtl; text-align: end }";
    const result = await numbered(render(11, "", style), "left");
    if (result === undefined || !("pdf" in result.finished)) throw new Error("not filled");
    const again = await contents(
      await result.print(render(11, "", style)(readDestinations(result.printed))),
    );
    const lines = await contents(result.finished.pdf);
    for (const [index, { x }] of lines.entries()) expect(x).toBeCloseTo(again[index]?.x ?? 0, 1);
  });

  it("are the same bytes whatever was printed before", async () => {
    const files: string[] = [];
    for (const parts of [6, 11, 6, 3, 6]) {
      const result = await numbered(render(parts));
      if (result === undefined || !("pdf" in result.finished)) throw new Error("not filled");
      if (parts === 6) files.push(latin1(result.finished.pdf));
    }
    expect(new Set(files).size).toBe(1);
    expect(files).toHaveLength(3);
  });
});

describe("numbers that cannot be written over", () => {
  it("are told, to print again: a number of three digits", async () => {
    const result = await numbered(render(101));
    expect(result?.finished).toBeInstanceOf(Map);
    expect(result?.finished).toEqual(readDestinations(result?.printed ?? new Uint8Array()));
    expect(readDestinations(result?.printed ?? new Uint8Array()).get("p100")).toBeGreaterThan(101);
  });

  test.each([
    ["in an attribute", (page: string) => `<span title="${page}">${page}</span>`],
    ["twice", (page: string) => `<span>${page}</span><b>${page}</b>`],
    ["with other text", (page: string) => `<span>Page ${page}</span>`],
  ])("are seen before: a number %s", (_, place) => {
    const draft = draftHtml((pages) => `<a href="#a">A ${place(String(pages.get("a") ?? ""))}</a>`);
    expect(draft).toBeUndefined();
  });

  it("are told: a number outside of its link, or in a font without the digits", async () => {
    const outside = (pages: Pages) =>
      booklet(1).replace("</a>", `</a> <span>${pages.get("p0") ?? ""}</span>`);
    expect((await numbered(outside))?.finished).toBeInstanceOf(Map);
    expect(
      (await numbered(render(1, "", ".at { font-family: sans-serif }")))?.finished,
    ).toBeInstanceOf(Map);
  });

  it("are none where a template asks for none", async () => {
    const result = await numbered(() => booklet(2));
    expect(result?.finished).toHaveProperty("gaps", []);
  });
});
