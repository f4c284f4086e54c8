/** What the codes of a PDF's fonts mean, and how wide their glyphs are. */
import type { PdfObjects } from "../objects/objects.ts";
import { Ref, Stream, type Value } from "../objects/values.ts";

export interface PdfFont {
  readonly name: string;
  /** Whether the font file is part of the PDF. */
  readonly embedded: boolean;
  /** What a code of two bytes stands for; undefined where the font does not say. */
  character(code: number): string | undefined;
  /** The code of a character; undefined where the font has no glyph for it. */
  code(character: string): number | undefined;
  /** Width in thousandths of the size. */
  width(code: number): number;
}

/** Reads a font of the form that the browser writes: two bytes a glyph, with a table of meanings. */
function readFont(pdf: PdfObjects, value: Value): PdfFont {
  const font = pdf.dict(value);
  const [below = null] = pdf.items(font.get("DescendantFonts"));
  const descendant = pdf.dict(below);
  const descriptor = pdf.dict(
    (font.has("DescendantFonts") ? descendant : font).get("FontDescriptor"),
  );
  const table = pdf.resolve(font.get("ToUnicode"));
  const characters =
    table instanceof Stream
      ? readMeanings(pdf.data(table).toString("latin1"))
      : new Map<number, string>();
  const codes = new Map([...characters].map(([code, character]) => [character, code]));
  const widths = readWidths(pdf, descendant.get("W"));
  const usual = descendant.get("DW");
  const name = pdf.resolve(font.get("BaseFont"));
  return {
    name: name && typeof name === "object" && "text" in name ? name.text : "",
    embedded: ["FontFile", "FontFile2", "FontFile3"].some((key) => descriptor.has(key)),
    character: (code) => characters.get(code),
    code: (character) => codes.get(character),
    width: (code) => widths.get(code) ?? (typeof usual === "number" ? usual : 1000),
  };
}

/** Fonts by object, each read once. */
export class PdfFonts {
  readonly #pdf: PdfObjects;
  readonly #fonts = new Map<number, PdfFont>();

  constructor(pdf: PdfObjects) {
    this.#pdf = pdf;
  }

  /** The fonts that the contents of a page may name. */
  ofPage(page: number): Map<string, PdfFont> {
    const resources = this.#pdf.dict(this.#pdf.dict(new Ref(page)).get("Resources"));
    const fonts = new Map<string, PdfFont>();
    for (const [name, value] of this.#pdf.dict(resources.get("Font"))) {
      fonts.set(name, this.#font(value));
    }
    return fonts;
  }

  all(): readonly PdfFont[] {
    return [...this.#fonts.values()];
  }

  #font(value: Value): PdfFont {
    if (!(value instanceof Ref)) return readFont(this.#pdf, value);
    const known = this.#fonts.get(value.object);
    if (known !== undefined) return known;
    const font = readFont(this.#pdf, value);
    this.#fonts.set(value.object, font);
    return font;
  }
}

const SECTION = /begin(bfchar|bfrange)([\s\S]*?)endbf/g;
const PAIR = /<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]*)>/g;
const RANGE = /<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]+)>\s*(?:<([0-9A-Fa-f]*)>|\[([^\]]*)\])/g;

/** The `ToUnicode` table. */
function readMeanings(table: string): Map<number, string> {
  const meanings = new Map<number, string>();
  for (const [, kind, lines = ""] of table.matchAll(SECTION)) {
    if (kind === "bfchar") {
      for (const [, code = "", text = ""] of lines.matchAll(PAIR)) {
        meanings.set(Number.parseInt(code, 16), utf16(text));
      }
      continue;
    }
    for (const range of lines.matchAll(RANGE)) addRange(meanings, range);
  }
  return meanings;
}

function addRange(
  meanings: Map<number, string>,
  [, first = "", last = "", text = "", list]: RegExpMatchArray,
): void {
  const from = Number.parseInt(first, 16);
  const to = Math.min(Number.parseInt(last, 16), from + 0xffff);
  const each = list?.match(/<[0-9A-Fa-f]*>/g)?.map((one) => utf16(one.slice(1, -1)));
  for (let code = from; code <= to; code++) {
    const meaning = each ? each[code - from] : next(utf16(text), code - from);
    if (meaning !== undefined && meaning !== "") meanings.set(code, meaning);
  }
}

function utf16(hex: string): string {
  const units = hex.match(/.{4}/g) ?? [];
  return String.fromCharCode(...units.map((unit) => Number.parseInt(unit, 16)));
}

function next(text: string, step: number): string {
  if (step === 0 || text === "") return text;
  const last = text.charCodeAt(text.length - 1);
  return text.slice(0, -1) + String.fromCharCode(last + step);
}

/** `[3 [600 601] 10 20 500]`: widths one by one from a code, or one for a run of codes. */
function readWidths(pdf: PdfObjects, value: Value | undefined): Map<number, number> {
  const widths = new Map<number, number>();
  const items = pdf.items(value);
  for (let index = 0; index < items.length; ) {
    const [first, second, third] = items.slice(index, index + 3);
    const list = pdf.resolve(second);
    if (typeof first !== "number") break;
    if (Array.isArray(list)) {
      for (const [step, width] of list.entries()) {
        if (typeof width === "number") widths.set(first + step, width);
      }
      index += 2;
    } else {
      if (typeof list !== "number" || typeof third !== "number") break;
      for (let code = first; code <= Math.min(list, first + 0xffff); code++)
        widths.set(code, third);
      index += 3;
    }
  }
  return widths;
}
