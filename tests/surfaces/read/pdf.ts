/** Reads a printed booklet through its tags, as a screen reader does; what is no content is read beside. */
import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";
import { type Block, type Cell, oneLine } from "./outline.ts";

export interface PdfFile {
  readonly language: string;
  readonly title: string;
  /** A4 or Letter, or its size in points. */
  readonly paper: string;
  readonly blocks: readonly Block[];
  /** Heads and feet: what stands on each page besides its content. */
  readonly furniture: readonly string[];
}

/** A node of the structure tree as pdfjs gives it: an element with a role, or content by its id. */
interface Tag {
  readonly role?: string;
  readonly type?: string;
  readonly id?: string;
  readonly alt?: string;
  readonly children?: readonly Tag[];
}

interface PageText {
  /** Empty for what is drawn and has no letters. */
  readonly byId: ReadonlyMap<string, string>;
  readonly untagged: string;
}

export async function readPdf(bytes: Uint8Array): Promise<PdfFile> {
  const document = await getDocument({ data: bytes.slice(), verbosity: 0 }).promise;
  try {
    const blocks: Block[] = [];
    const furniture: string[] = [];
    let paper = "";
    for (let number = 1; number <= document.numPages; number += 1) {
      const page = await document.getPage(number);
      paper = paperOf(page.view);
      const { items } = await page.getTextContent({ includeMarkedContent: true });
      const text = textOf(items as readonly TextItem[]);
      const tree = (await page.getStructTree()) as Tag | null;
      if (tree) blocks.push(...blocksIn(tree, text.byId).filter(isHere));
      furniture.push(oneLine(text.untagged));
    }
    const { info } = (await document.getMetadata()) as {
      info: { Title?: string; Language?: string };
    };
    return { language: info.Language ?? "", title: info.Title ?? "", paper, blocks, furniture };
  } finally {
    await document.destroy();
  }
}

/** What reaches over several pages is in the tree of each, empty where it stands on another. */
const isHere = (block: Block): boolean => block.kind === "row" || block.text !== "";

/** Width in points of the two papers, to the nearest. */
function paperOf([, , width = 0, height = 0]: readonly number[]): string {
  const size = `${Math.round(width)} × ${Math.round(height)}`;
  return { "595 × 842": "A4", "612 × 792": "Letter" }[size] ?? size;
}

interface TextItem {
  readonly type?: string;
  readonly id?: string;
  readonly str?: string;
  readonly hasEOL?: boolean;
}

/** Text by the content it is marked as; what is marked as nothing, or as an artifact, comes together. */
function textOf(items: readonly TextItem[]): PageText {
  const byId = new Map<string, string>();
  const open: (string | undefined)[] = [];
  let untagged = "";
  for (const { type, id, str = "", hasEOL = false } of items) {
    if (type === "beginMarkedContentProps") {
      open.push(id);
      if (id !== undefined && !byId.has(id)) byId.set(id, "");
    } else if (type === "beginMarkedContent") open.push(undefined);
    else if (type === "endMarkedContent") open.pop();
    else {
      const text = str + (hasEOL ? " " : "");
      const here = open.findLast((one) => one !== undefined);
      if (here === undefined) untagged += text;
      else byId.set(here, (byId.get(here) ?? "") + text);
    }
  }
  return { byId, untagged };
}

const SILENT = new Set(["Caption", "Figure", "Lbl"]);

function blocksIn(tag: Tag, texts: ReadonlyMap<string, string>): Block[] {
  return (tag.children ?? []).flatMap((child): Block[] => {
    const { role = "" } = child;
    if (role === "Figure")
      return isOnPage(child, texts) ? [{ kind: "picture", text: oneLine(child.alt ?? "") }] : [];
    if (SILENT.has(role)) return [];
    const level = /^H([1-6])$/.exec(role)?.[1];
    if (level !== undefined)
      return [{ kind: "heading", level: Number(level), text: textIn(child, texts) }];
    if (role === "TR") return rowOf(child, texts);
    if (role === "P") return [{ kind: "text", text: textIn(child, texts) }];
    if (role === "LI" && !hasBlocks(child)) return [{ kind: "item", text: textIn(child, texts) }];
    return blocksIn(child, texts);
  });
}

/** Whether anything of it is drawn here: a part over two pages has its pictures in the trees of both. */
const isOnPage = ({ type, id, children = [] }: Tag, texts: ReadonlyMap<string, string>): boolean =>
  (type === "content" && texts.has(id ?? "")) || children.some((child) => isOnPage(child, texts));

/** A table over several pages has all its rows on each of them, empty where they stand on another. */
function rowOf(row: Tag, texts: ReadonlyMap<string, string>): Block[] {
  const cells = (row.children ?? []).map((cell) => cellOf(cell, texts));
  return cells.every(({ text }) => text === "") ? [] : [{ kind: "row", cells }];
}

const cellOf = (cell: Tag, texts: ReadonlyMap<string, string>): Cell => ({
  head: cell.role === "TH",
  text: textIn(cell, texts),
});

const hasBlocks = (tag: Tag): boolean =>
  (tag.children ?? []).some(
    (child) =>
      child.role === "P" ||
      child.role === "Figure" ||
      /^H\d$/.test(child.role ?? "") ||
      hasBlocks(child),
  );

function textIn(tag: Tag, texts: ReadonlyMap<string, string>): string {
  const parts = (node: Tag): string => {
    if (SILENT.has(node.role ?? "")) return "";
    if (node.type === "content") return texts.get(node.id ?? "") ?? "";
    return (node.children ?? []).map(parts).join("");
  };
  return oneLine(parts(tag));
}
