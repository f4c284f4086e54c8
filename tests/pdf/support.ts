/** Made-up PDFs of the form that the browser writes, and what is asked of PDFs again and again. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { OPS, type PDFDocumentProxy } from "pdfjs-dist/legacy/build/pdf.mjs";

export const latin1 = (bytes: Uint8Array) => Buffer.from(bytes).toString("latin1");

/** A file of these objects, numbered from 1; the first is the information, the second the catalogue. */
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

const stream = (content: string, entries = "") =>
  `<<${entries}/Length ${content.length}>> stream\n${content}\nendstream`;

const escaped = (text: string) => text.replace(/[\\()]/g, "\\$&");
const browserId = (number: number) => `(node${String(number).padStart(8, "0")})`;

export interface Made {
  /** The browser's number for each table head, in order of the document. */
  readonly ids?: readonly number[];
  readonly texts?: readonly string[];
  readonly date?: string;
  readonly content?: string;
  readonly title?: string;
  readonly catalogue?: string;
  /** Kids of the one paragraph. */
  readonly kids?: string;
  readonly more?: readonly string[];
  /** Of the page. */
  readonly annotations?: string;
}

/** One page with a paragraph of marked content 0, and a table of one row of heads and one cell. */
export function makePdf({
  ids = [],
  texts = ["x"],
  date = "20200101000000",
  content = "/P <</MCID 0>>BDC\nBT\n/F4 9 Tf\n1 0 0 1 1 1 Tm\n<0003> Tj\nET\nEMC",
  title = texts[0] ?? "",
  catalogue = "",
  kids = "0",
  more = [],
  annotations = "",
}: Made = {}): Uint8Array {
  const first = 15;
  const head = (number: number, index: number) =>
    `<</Type /StructElem\n/S /TH\n/P 13 0 R\n/Alt (${escaped(texts[index % Math.max(1, texts.length)] ?? "")})\n/A [<</O /Table\n/Scope /Column>>]\n/ID ${browserId(number)}>>`;
  const heads = ids.map((_, index) => `${first + index} 0 R`).join(" ");
  const sorted = ids
    .map((number, index) => `${browserId(number)} ${first + index} 0 R`)
    .sort()
    .join(" ");
  return assemble([
    `<</Title (${escaped(title)})\n/Producer (Skia/PDF m1)\n/CreationDate (D:${date}+00'00')\n/ModDate (D:${date}+00'00')>>`,
    `<</Type /Catalog\n/Pages 3 0 R\n/Lang (en)\n/MarkInfo <</Marked true>>\n/StructTreeRoot 5 0 R${catalogue}>>`,
    "<</Type /Pages\n/Count 1\n/Kids [4 0 R]>>",
    `<</Type /Page\n/Parent 3 0 R\n/MediaBox [0 0 99 99]\n/Contents 6 0 R\n/Resources <</Font <</F4 8 0 R>>>>\n/StructParents 0${annotations === "" ? "" : `\n/Annots [${annotations}]`}>>`,
    "<</Type /StructTreeRoot\n/K 7 0 R\n/IDTree <</Kids [14 0 R]>>>>",
    stream(content),
    `<</Type /StructElem\n/S /Document\n/P 5 0 R\n/K [12 0 R${ids.length > 0 ? " 13 0 R" : ""}]>>`,
    "<</Type /Font\n/Subtype /Type0\n/BaseFont /AAAAAA+Own\n/Encoding /Identity-H\n/DescendantFonts [9 0 R]\n/ToUnicode 10 0 R>>",
    "<</Type /Font\n/Subtype /CIDFontType2\n/BaseFont /AAAAAA+Own\n/CIDSystemInfo <</Registry (Adobe)\n/Ordering (Identity)\n/Supplement 0>>\n/FontDescriptor 11 0 R\n/DW 500\n/W [19 [500 500 500] 22 28 500 29 [700]]>>",
    stream(
      "1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n1 beginbfchar\n<0003> <0020>\nendbfchar\n2 beginbfrange\n<0013> <001c> <0030>\n<0024> <003d> [<0041> <0042>]\nendbfrange",
    ),
    `<</Type /FontDescriptor\n/FontName /AAAAAA+Own\n/Flags 4\n/FontFile2 6 0 R>>`,
    `<</Type /StructElem\n/S /P\n/P 7 0 R\n/Pg 4 0 R\n/K ${kids}>>`,
    `<</Type /StructElem\n/S /Table\n/P 7 0 R\n/K [<</Type /StructElem\n/S /TR\n/P 13 0 R\n/K [${heads}]>>]>>`,
    `<</Names [${sorted}]>>`,
    ...ids.map(head),
    ...more,
  ]);
}

/** Whether a program of others is there to check with. */
export function has(tool: string): boolean {
  return spawnSync(tool, ["--version"]).error === undefined;
}

/** What another program says of a PDF. */
export function ask(pdf: Uint8Array, tool: string, args: (file: string) => string[]) {
  const folder = mkdtempSync(join(tmpdir(), "paulatim-ask-"));
  try {
    const file = join(folder, "file.pdf");
    writeFileSync(file, pdf);
    const { stdout, stderr, status } = spawnSync(tool, args(file), {
      encoding: "latin1",
      cwd: folder,
      maxBuffer: 1 << 28,
    });
    return { output: `${stdout}${stderr}`, status };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

export interface Node {
  readonly role?: string;
  readonly alt?: string;
  readonly id?: string;
  readonly type?: string;
  readonly children?: readonly Node[];
}

/** The tags of all pages, page by page, as another reader sees them. */
export async function readNodes(pdf: PDFDocumentProxy): Promise<Node[]> {
  const nodes: Node[] = [];
  for (let page = 1; page <= pdf.numPages; page++) {
    const visit = (node: Node) => {
      nodes.push(node);
      for (const child of node.children ?? []) visit(child);
    };
    visit((await (await pdf.getPage(page)).getStructTree()) as Node);
  }
  return nodes;
}

const SHOWS = new Set<number>([
  OPS.showText,
  OPS.shadingFill,
  OPS.paintImageXObject,
  OPS.paintInlineImageXObject,
  OPS.paintImageMaskXObject,
  OPS.paintFormXObjectBegin,
  OPS.fill,
  OPS.eoFill,
  OPS.stroke,
  OPS.fillStroke,
]);

/** How much each page shows outside of all marks, as another reader interprets its contents. */
export async function countUnmarked(pdf: PDFDocumentProxy): Promise<number> {
  let unmarked = 0;
  for (let number = 1; number <= pdf.numPages; number++) {
    const { fnArray, argsArray } = await (await pdf.getPage(number)).getOperatorList();
    const open: boolean[] = [];
    for (const [index, operation] of fnArray.entries()) {
      const args = argsArray[index] as readonly unknown[];
      if (operation === OPS.beginMarkedContent) {
        open.push((args[0] as { name?: string }).name === "Artifact");
      } else if (operation === OPS.beginMarkedContentProps) {
        open.push(args[0] === "Artifact" || typeof args[1] === "number");
      } else if (operation === OPS.endMarkedContent) open.pop();
      else if (!open.includes(true) && shows(operation, args)) unmarked++;
    }
  }
  return unmarked;
}

/** A path carries how it is painted as its first argument. */
function shows(operation: number, args: unknown): boolean {
  if (operation !== OPS.constructPath) return SHOWS.has(operation);
  const [how] = args as [number];
  return how !== OPS.endPath;
}
