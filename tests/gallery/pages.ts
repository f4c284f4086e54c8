/** A printed booklet as its pages show it: what text stands where, how large, and what it belongs to. */
import { getDocument, OPS } from "pdfjs-dist/legacy/build/pdf.mjs";
import { type Ink, inkOf } from "./ink.ts";

/** Pieces of text on one line, as printed. Lengths in points, from the top left of the page. */
export interface Line {
  readonly text: string;
  readonly left: number;
  readonly right: number;
  /** The foot of its letters. */
  readonly base: number;
  /** Size of its smallest letters. */
  readonly size: number;
}

/** A heading, a paragraph, an item, a cell or what else holds text, on the page where it stands. */
export interface Block {
  /** The tag of the PDF: H1 to H6, P, LI, TD, TH, Caption, Figure. */
  readonly role: string;
  readonly lines: readonly Line[];
  /** Ends of lines and what follows, where one piece of content goes on to another line. */
  readonly wraps: readonly (readonly [string, string])[];
}

/** Where a picture stands. Lengths in points, from the top left of the page. */
export interface Picture {
  readonly says: string;
  /** Whether it has letters in it, as rulers and charts have; those of exercises have drawn numbers. */
  readonly lettered: boolean;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export interface Page {
  readonly number: number;
  readonly width: number;
  readonly height: number;
  /** In the order of reading; running heads and feet are not among them. */
  readonly blocks: readonly Block[];
  readonly pictures: readonly Picture[];
  /** Running heads and feet. */
  readonly margins: readonly Line[];
  readonly inks: readonly Ink[];
  /** Every letter and blank in the order in which they are drawn, with nothing between them. */
  readonly drawn: string;
}

interface Tag {
  readonly role?: string;
  readonly type?: string;
  readonly id?: string;
  readonly alt?: string;
  readonly bbox?: readonly number[];
  readonly children?: readonly Tag[];
}

interface TextItem {
  readonly type?: string;
  readonly id?: string;
  readonly str?: string;
  readonly transform?: readonly number[];
  readonly width?: number;
}

interface Piece {
  /** The content it belongs to. */
  readonly id: string;
  readonly text: string;
  readonly left: number;
  readonly width: number;
  readonly base: number;
  readonly size: number;
}

/** Reads every page of a tagged PDF. */
export async function pagesOf(bytes: Uint8Array): Promise<readonly Page[]> {
  const document = await getDocument({ data: bytes.slice(), verbosity: 0 }).promise;
  try {
    const pages: Page[] = [];
    for (let number = 1; number <= document.numPages; number += 1) {
      const page = await document.getPage(number);
      const [, , width = 0, height = 0] = page.view;
      const { items } = await page.getTextContent({ includeMarkedContent: true });
      const { pieces, loose } = piecesIn(items as readonly TextItem[], height);
      const tree = (await page.getStructTree()) as Tag | null;
      const blocks = tree ? blocksIn(tree, pieces, "") : [];
      const operators = await page.getOperatorList();
      const { fnArray, argsArray } = operators;
      const drawn = argsArray.flatMap((args, at) =>
        fnArray[at] === OPS.showText ? glyphsOf(args) : [],
      );
      pages.push({
        number,
        width,
        height,
        blocks: blocks.filter(({ lines }) => lines.length > 0),
        pictures: tree ? picturesIn(tree, pieces, height) : [],
        margins: blockOf("Artifact", loose).lines,
        inks: inkOf(operators),
        drawn: drawn.join(""),
      });
    }
    return pages;
  } finally {
    await document.destroy();
  }
}

/** The letters of one drawing of text: numbers among them only move what follows. */
const glyphsOf = ([glyphs]: readonly [
  readonly (number | { readonly unicode: string })[],
]): string[] => glyphs.flatMap((glyph) => (typeof glyph === "number" ? [] : glyph.unicode));

interface Pieces {
  /** By the content they belong to. */
  readonly pieces: ReadonlyMap<string, Piece[]>;
  /** Those that belong to none. */
  readonly loose: readonly Piece[];
}

function piecesIn(items: readonly TextItem[], height: number): Pieces {
  const byId = new Map<string, Piece[]>();
  const loose: Piece[] = [];
  const open: (string | undefined)[] = [];
  for (const { type, id, str = "", transform = [], width = 0 } of items) {
    if (type === "beginMarkedContentProps") open.push(id);
    else if (type === "beginMarkedContent") open.push(undefined);
    else if (type === "endMarkedContent") open.pop();
    else {
      const here = open.findLast((one) => one !== undefined);
      const [, , slant = 0, up = 0, left = 0, bottom = 0] = transform;
      const piece = {
        id: here ?? "",
        text: str,
        left,
        width,
        base: height - bottom,
        size: Math.hypot(slant, up),
      };
      if (here === undefined) loose.push(piece);
      else byId.set(here, [...(byId.get(here) ?? []), piece]);
    }
  }
  return { pieces: byId, loose };
}

/** Pictures that have something on the page: the tree names those of other pages as well. */
function picturesIn(tag: Tag, pieces: ReadonlyMap<string, Piece[]>, height: number): Picture[] {
  const [left = 0, bottom = 0, right = 0, top = 0] = tag.bbox ?? [];
  const here = tag.role === "Figure" && tag.bbox && isDrawn(tag);
  const lettered = inside(tag, pieces).some(({ text }) => text.trim() !== "");
  const own = {
    says: tag.alt ?? "",
    lettered,
    left,
    right,
    top: height - top,
    bottom: height - bottom,
  };
  return [
    ...(here ? [own] : []),
    ...(tag.children ?? []).flatMap((child) => picturesIn(child, pieces, height)),
  ];
}

const isDrawn = ({ type, children = [] }: Tag): boolean =>
  type === "content" || children.some(isDrawn);

/** Tags whose text is one block, whatever stands inside. */
const WHOLE = /^(H[1-6]|P|TD|TH|Caption|Figure|Lbl)$/;

function blocksIn(tag: Tag, pieces: ReadonlyMap<string, Piece[]>, within: string): Block[] {
  return (tag.children ?? []).flatMap((child): Block[] => {
    const { role = "", type, id = "" } = child;
    if (type === "content") return [blockOf(within || "Div", pieces.get(id) ?? [])];
    if (WHOLE.test(role))
      return [blockOf(within === "LI" && role === "P" ? "LI" : role, inside(child, pieces))];
    const loose = role === "LI" && !holdsBlocks(child);
    if (loose) return [blockOf("LI", inside(child, pieces))];
    return blocksIn(child, pieces, role === "LI" ? "LI" : within);
  });
}

const holdsBlocks = (tag: Tag): boolean =>
  (tag.children ?? []).some(
    ({ role = "", ...rest }) => /^(H[1-6]|P|Figure|L|Table)$/.test(role) || holdsBlocks(rest),
  );

const inside = (tag: Tag, pieces: ReadonlyMap<string, Piece[]>): Piece[] =>
  tag.type === "content"
    ? (pieces.get(tag.id ?? "") ?? [])
    : (tag.children ?? []).flatMap((child) => inside(child, pieces));

function blockOf(role: string, pieces: readonly Piece[]): Block {
  const lines: { pieces: Piece[] }[] = [];
  for (const piece of pieces) {
    if (piece.text.trim() === "") continue;
    const line = lines.at(-1);
    const last = line?.pieces.at(-1);
    const same = last && Math.abs(last.base - piece.base) < 0.5 * Math.max(last.size, piece.size);
    if (line && same) line.pieces.push(piece);
    else lines.push({ pieces: [piece] });
  }
  return { role, wraps: wrapsOf(pieces), lines: lines.map(lineOf) };
}

function wrapsOf(pieces: readonly Piece[]): (readonly [string, string])[] {
  return pieces.flatMap((piece, at) => {
    const before = pieces[at - 1];
    return before?.id === piece.id && Math.abs(before.base - piece.base) > 1
      ? [[before.text, piece.text] as const]
      : [];
  });
}

function lineOf({ pieces }: { readonly pieces: readonly Piece[] }): Line {
  const ends = pieces.map(({ left, width }) => left + width);
  return {
    text: pieces
      .map(({ text }) => text)
      .join("")
      .replace(/\s+/g, " ")
      .trim(),
    left: Math.min(...pieces.map(({ left }) => left)),
    right: Math.max(...ends),
    base: Math.max(...pieces.map(({ base }) => base)),
    size: Math.min(...pieces.map(({ size }) => size)),
  };
}
