/** A printed and settled PDF as other programs read it: tags, artifacts, names, looks, claims. */
import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import type { PDFDocumentProxy } from "pdfjs-dist/legacy/build/pdf.mjs";
import { afterAll, beforeAll, describe, expect, it, test } from "vitest";
import { PrintBrowser } from "../../src/browser/browser.ts";
import { finishPdf } from "../../src/pdf/post-process.ts";
import { printPdf } from "../../src/pdf/print.ts";
import { booklet, found, openPdf } from "../support/render.ts";
import { ask, countUnmarked, has, latin1, makePdf, type Node, readNodes } from "./support.ts";

const DATE = new Date("2026-01-02T03:04:05Z");
const browser = new PrintBrowser(found);
afterAll(() => browser.dispose());
const print = (html: string) => browser.usePage((page) => printPdf(page, html, { paper: "A4" }));

const EXTRA = `<style>
@page { @top-left { content: "Mill Bank & Ärzte"; font-family: Own } }
strong, em, b { font: inherit } td { border: 1px solid } .after::after { content: " ·" }
section, .box { border: 1px solid; background: #eee } svg text { font-family: Own }</style>
<section lang="de"><h2>Zwei</h2><div class="box"><p>Text with <strong>strong</strong>, <em>em</em>
and <a href="tel:999">a call to 999, which is long enough to fill more than one line of the page and
so gets several areas that lead there</a>.</p></div>
<ul><li>One<li><p>Two</p><p>More</p><ul><li>Deep</ul></ul><ol><li>First<li>Second</ol>
<dl><div><dt>For</dt><dd><strong>Edda</strong> <span>(1)</span></dd></div></dl>
<p aria-hidden="true">Hidden</p><p class="after">Seen</p>
<svg role="img" aria-label="Ruler (0–10)" width="300" height="50"><path d="M0 5h300" stroke="red"/>
<text x="5" y="30">0</text></svg></section>
<table><caption>Diary</caption><thead><tr><th scope="col">What</th><th scope="col">Mon</th>
<th scope="col">Wed</th><th scope="col">Fri</th></tr></thead><tbody>
<tr><th scope="row">Done</th><td></td><td>no</td><td></td></tr>
<tr><th scope="row">Pain</th><td></td><td></td><td></td></tr></tbody></table>`;

let raw: Uint8Array;
let settled: Uint8Array;
let gaps: readonly string[];
let pdf: PDFDocumentProxy;
let nodes: Node[];

beforeAll(async () => {
  raw = await print(booklet(3, EXTRA));
  ({ pdf: settled, gaps } = finishPdf(raw, { date: DATE }));
  pdf = await openPdf(settled);
  nodes = await readNodes(pdf);
}, 60_000);

const of = (role: string) => nodes.filter((node) => node.role === role);

describe("what another reader finds", () => {
  it("names title, language and dates twice, and says that the title is to be shown", async () => {
    const { info, metadata } = await pdf.getMetadata();
    expect(info).toMatchObject({ Title: "Home program", Language: "en", Creator: "Paulatim" });
    expect(metadata.get("dc:title")).toBe("Home program");
    expect(metadata.get("dc:language")).toBe("en");
    expect(metadata.get("xmp:createdate")).toBe("2026-01-02T03:04:05Z");
    expect(await pdf.getMarkInfo()).toMatchObject({ Marked: true });
    expect(await pdf.getViewerPreferences()).toMatchObject({ DisplayDocTitle: true });
  });

  it("keeps outline and destinations where they were", async () => {
    const before = await openPdf(raw);
    const outline = async (one: PDFDocumentProxy) =>
      (await one.getOutline()).flatMap((item) => [item, ...item.items]).map(({ title }) => title);
    expect(await outline(pdf)).toEqual(await outline(before));
    const pages = async (one: PDFDocumentProxy) => {
      const found: [string, number][] = [];
      for (const [name, target] of Object.entries(await one.getDestinations())) {
        found.push([name, await one.getPageIndex((target as [never])[0])]);
      }
      return found.sort();
    };
    expect(await pages(pdf)).toEqual(await pages(before));
    expect(await pages(pdf)).toHaveLength(3);
  });

  it("leaves nothing unmarked, and had much to mark", async () => {
    expect(await countUnmarked(await openPdf(raw))).toBeGreaterThan(10);
    expect(await countUnmarked(pdf)).toBe(0);
  });

  it("has only roles that every reader knows, and none without a meaning", () => {
    const roles = new Set(nodes.map(({ role }) => role));
    for (const role of roles) {
      expect(
        [
          "Root",
          "Document",
          "Sect",
          "Div",
          "H1",
          "H2",
          "P",
          "L",
          "LI",
          "Lbl",
          "LBody",
          "Span",
        ].concat(["Link", "Table", "Caption", "TR", "TH", "TD", "Figure", undefined as never]),
      ).toContain(role);
    }
    expect(of("Span").length).toBeGreaterThan(0);
  });

  it("gives every figure its alternative text, and lists a body", () => {
    expect(of("Figure").map(({ alt }) => alt)).toEqual(
      expect.arrayContaining(["Leg raised", "Leg raised", "Leg raised", "Ruler (0–10)"]),
    );
    for (const item of of("LI")) {
      for (const { role } of item.children ?? []) expect(["Lbl", "LBody"]).toContain(role);
    }
    expect(of("LI")).toHaveLength(8);
  });

  it("gives all rows of a table the same cells", () => {
    const rows = of("TR").map(({ children = [] }) => children.map(({ role }) => role));
    expect(rows).toContainEqual(["TH", "TD", "TD", "TD"]);
    expect(rows.every(({ length }) => length === 2 || length === 4)).toBe(true);
    const [cells] = of("TR").filter(({ children }) =>
      children?.some((cell) => cell.role === "TD" && cell.children?.length),
    );
    expect(cells).toBeDefined();
  });

  it("describes every area of every link", async () => {
    const links: string[] = [];
    for (let page = 1; page <= pdf.numPages; page++) {
      for (const one of await (await pdf.getPage(page)).getAnnotations()) {
        links.push(one.contentsObj.str);
      }
    }
    expect(links.slice(0, 3)).toEqual(["Part 1", "Part 2", "Part 3"]);
    const call = links.filter((text) => text.startsWith("a call to 999, which is long enough"));
    expect(call.length).toBeGreaterThan(1);
    expect(new Set(call).size).toBe(1);
    expect(call[0]).toMatch(/lead there$/);
  });

  it("reads the same text in the same order", async () => {
    const text = async (one: PDFDocumentProxy) => {
      const words: string[] = [];
      for (let page = 1; page <= one.numPages; page++) {
        for (const item of (await (await one.getPage(page)).getTextContent()).items) {
          if ("str" in item) words.push(item.str);
        }
      }
      return words.join("");
    };
    expect(await text(pdf)).toBe(await text(await openPdf(raw)));
    expect(await text(pdf)).toContain("Mill Bank & Ärzte");
  });
});

describe("what other programs find", () => {
  // apt-get install qpdf
  test.skipIf(!has("qpdf"))("qpdf: nothing wrong (needs qpdf)", () => {
    const { output, status } = ask(settled, "qpdf", (file) => ["--check", file]);
    expect(output).toContain("No syntax or stream encoding errors");
    expect(status).toBe(0);
  });

  // apt-get install poppler-utils
  test.skipIf(!has("pdfinfo"))(
    "pdfinfo: tags with their scopes and boxes (needs poppler-utils)",
    () => {
      const { output } = ask(settled, "pdfinfo", (file) => ["-struct-text", file]);
      expect(output).not.toMatch(/error/i);
      expect(output.match(/\/Scope \/Column/g)?.length).toBe(10);
      expect(output.match(/\/Scope \/Row/g)).toHaveLength(2);
      expect(output.match(/\/BBox \[[\d. ]+\]/g)).toHaveLength(4);
      expect(output).toMatch(/TD:\s+\/Headers \[\(h\d+\) \(h\d+\)\]\s+"no"/);
      // An empty cell belongs to its column as well.
      expect(output.match(/TD:\s+\/Headers \[\(h\d+\) \(h\d+\)\]/g)?.length).toBeGreaterThan(1);
      expect(output).not.toContain("NonStruct");
      expect(output).not.toContain("Hidden");
      expect(output).not.toContain("Mill Bank");
      const info = ask(settled, "pdfinfo", (file) => [file]).output;
      expect(info).toMatch(/Tagged: +yes/);
      expect(info).toMatch(/PDF version: +1\.7/);
    },
  );

  test.skipIf(!has("pdffonts"))("pdffonts: embedded and readable (needs poppler-utils)", () => {
    const lines = ask(settled, "pdffonts", (file) => [file])
      .output.trim()
      .split("\n")
      .slice(2);
    expect(lines.length).toBeGreaterThan(0);
    for (const line of lines) expect(line).toMatch(/yes yes yes/);
  });

  test.skipIf(!has("pdftoppm"))(
    "pdftoppm: every page looks as before (needs poppler-utils)",
    () => {
      const looks = (bytes: Uint8Array) =>
        ask(bytes, "sh", (file) => [
          "-c",
          `pdftoppm -r 50 ${file} page && cat page-*.ppm | sha256sum`,
        ]).output;
      expect(looks(settled)).toBe(looks(raw));
      expect(looks(settled)).not.toContain(createHash("sha256").digest("hex"));
    },
  );
});

describe("what it claims", () => {
  it("is PDF/UA-1 where nothing is missing", () => {
    expect(gaps).toEqual([]);
    expect(latin1(settled)).toContain("<pdfuaid:part>1</pdfuaid:part>");
  });

  const inParagraph = (role: string, more = "") =>
    `<</Type /StructElem\n/S /${role}\n/P 12 0 R${more}\n/Pg 4 0 R\n/K 0>>`;
  const with15 = (object: string, made = {}) =>
    makePdf({ kids: "15 0 R", more: [object], ...made });
  const GAPS: [string, Uint8Array, RegExp][] = [
    ["a title", makePdf({ title: "" }), /no title/],
    [
      "a language",
      Buffer.from(latin1(makePdf()).replace("/Lang (en)", "/Lang ()  ")),
      /no language/,
    ],
    [
      "a font file",
      Buffer.from(latin1(makePdf()).replace("/FontFile2", "/FontFile9")),
      /not embedded/,
    ],
    ["a glyph", makePdf({ content: "/P <</MCID 0>>BDC BT /F4 9 Tf <0000> Tj ET EMC" }), /no glyph/],
    [
      "a character",
      makePdf({ content: "/P <</MCID 0>>BDC BT /F4 9 Tf <0009> Tj ET EMC" }),
      /no character/,
    ],
    [
      "a tag for its content",
      makePdf({
        content: `${"/P <</MCID 0>>BDC BT /F4 9 Tf <0003> Tj ET EMC ".repeat(2).replace("0>>", "1>>")}`,
      }),
      /belongs to no tag/,
    ],
    ["its alternative text", with15(inParagraph("Figure")), /no alternative text/],
    ["the first level of headings", with15(inParagraph("H2")), /jump to H2/],
    ["an id of a note", with15(inParagraph("Note")), /Note has no id/],
    ["a checked form", makePdf({ catalogue: "\n/AcroForm <<>>" }), /form/],
    [
      "a known annotation",
      Buffer.from(latin1(makePdf()).replace("/Parent 3 0 R\n/Media", "/Annots[<<>>] /Media")),
      /not checked/,
    ],
  ];
  test.each(GAPS)("is nothing without %s", (_, bytes, reason) => {
    const finished = finishPdf(bytes, { date: DATE });
    expect(finished.gaps.join(" ")).toMatch(reason);
    expect(latin1(finished.pdf)).not.toContain("pdfuaid");
    expect(finishPdf(makePdf(), { date: DATE }).gaps).toEqual([]);
  });
});

it("describes a link as it is spelled, not as its glyphs are joined", () => {
  const content =
    "/P <</MCID 0>>BDC BT /F4 9 Tf <0024> Tj /Span <</ActualText <FEFF00660069>>>BDC <0025> Tj <0024> Tj EMC <0025> Tj ET EMC";
  const link = `<</Type /StructElem\n/S /Link\n/P 12 0 R\n/Pg 4 0 R\n/K [0 <</Type /OBJR\n/Obj 16 0 R>>]>>`;
  const area = "<</Type /Annot\n/Subtype /Link\n/Rect [0 0 9 9]>>";
  const made = makePdf({ content, kids: "15 0 R", more: [link, area], annotations: "16 0 R" });
  const finished = finishPdf(made, { date: DATE });
  expect(finished.gaps).toEqual([]);
  return openPdf(finished.pdf).then(async (one) => {
    const [only] = await (await one.getPage(1)).getAnnotations();
    expect(only.contentsObj.str).toBe("AfiB");
    expect(await countUnmarked(one)).toBe(0);
  });
});

it("is small: the tags take little", async () => {
  const long = await print(booklet(80));
  expect(finishPdf(long, { date: DATE }).pdf.length).toBeLessThan(long.length / 2.5);
});

// Fetched by npm run conformance; where it is not, this is left to that.
const cache = "node_modules/.cache/verapdf";
const versions = existsSync(cache)
  ? readdirSync(cache).filter((name) => !name.endsWith(".part"))
  : [];
test.skipIf(versions.length === 0 || !has("java"))(
  "veraPDF: not one failed rule of PDF/UA-1 (needs npm run conformance once, and Java)",
  { timeout: 60_000 },
  () => {
    const { output } = ask(settled, "java", (file) => [
      "-cp",
      `${process.cwd()}/${cache}/${versions[0]}/*`,
      `${process.cwd()}/tests/conformance/Validate.java`,
      file,
    ]);
    expect(output).toMatch(/^pass\t/m);
    expect(readFileSync("tests/conformance/pom.xml", "utf8")).toContain(versions[0]);
  },
);
