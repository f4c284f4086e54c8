/** What becomes of a booklet whose PDF cannot be read: the whole of it as it is, or nothing. */
import { describe, expect, test } from "vitest";
import { type Print, printBooklet } from "../../src/pdf/print-numbered.ts";
import { latin1, makePdf } from "./support.ts";

const good = latin1(makePdf({ ids: [1] }));
const as = { direction: "ltr", date: new Date(0) } as const;

/** A browser that gives this for every document, and what it was given to print. */
function printing(text: string): { print: Print; documents: string[] } {
  const documents: string[] = [];
  const print: Print = async (html) => {
    documents.push(html);
    return Buffer.from(text, "latin1");
  };
  return { print, documents };
}

const render = (pages: ReadonlyMap<string, number>) => `<b>${pages.get("one") ?? ""}</b>`;

test("a PDF that can be read is finished", async () => {
  const printed = await printBooklet(printing(good).print, () => "<p>x</p>", as);
  expect("gaps" in printed).toBe(true);
  expect(latin1(printed.pdf)).toContain("pdfuaid");
});

describe("a whole PDF that cannot be read", () => {
  test.each([
    ["has a table of another form", good.replace("xref\n0", "nope\n0")],
    ["has no tags", good.replace("/StructTreeRoot 5 0 R", "/StructTreeRoof 5 0 R")],
    ["has a stream that is cut off", good.replace(/Length \d+>> stream/, "Length 3>> stream")],
  ])("%s: left as it is, without a claim", async (_, text) => {
    const { print, documents } = printing(text);
    const printed = await printBooklet(print, render, as);
    expect(latin1(printed.pdf)).toBe(text);
    expect(printed).toMatchObject({ broken: { code: "pdf-broken" } });
    expect(latin1(printed.pdf)).not.toContain("pdfuaid");
    // not the draft with digits that only keep the places of page numbers
    expect(documents.at(-1)).toBe("<b></b>");
  });
});

describe("what is no whole PDF is handed out by nobody", () => {
  test.each([
    ["nothing", ""],
    ["garbage", "Aw, Snap!"],
    ["the beginning of a PDF", good.slice(0, good.length / 2)],
    ["all but the end of a PDF", good.slice(0, -4)],
  ])("%s", async (_, text) => {
    await expect(printBooklet(printing(text).print, render, as)).rejects.toMatchObject({
      code: "pdf-broken",
    });
  });
});
