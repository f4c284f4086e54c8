/** Reads what each piece of marked content in a page shows: its text, its box, where its text stands. */

import type { PdfFont } from "../fonts/fonts.ts";
import {
  BOX_ALL,
  BOX_NONE,
  type Box,
  grown,
  type Matrix,
  moved,
  nearest,
  times,
  UNIT,
} from "../objects/boxes.ts";
import { broken } from "../objects/broken.ts";
import { numbers, type Operation, type Operations, operands } from "../objects/content.ts";
import { GREATER, LESS } from "../objects/lexer.ts";
import { Dict, Name, readText, Text, type Value } from "../objects/values.ts";
import { markedId } from "./artifacts.ts";

/** One showing of text in marked content. */
export interface Showing {
  readonly text: string;
  readonly font: PdfFont;
  readonly size: number;
  readonly operation: Operation;
  /** Height of its line in the units of the text. */
  readonly line: number;
  /** The operation that set the text's place, when this is the first showing after it. */
  readonly place: Operation | undefined;
}

export interface Mark {
  readonly showings: readonly Showing[];
  /** Around its text by its size alone, and its shapes where asked for, in the page's own units. */
  readonly box: Box;
  /** Whether it shows a picture. */
  readonly picture: boolean;
}

export interface PageMarks {
  readonly marks: ReadonlyMap<number, Mark>;
  /** Whether some glyph, marked or not, is the one that stands for missing ones. */
  readonly missing: boolean;
  /** Whether some glyph has no character. */
  readonly unnamed: boolean;
}

interface State {
  readonly matrix: Matrix;
  readonly font: PdfFont | undefined;
  readonly size: number;
  /** What is outside is not seen; followed only where a box is asked for. */
  readonly clip: Box;
}

/** What a piece shows as one text; where a line ends within it, a space. */
export function textOf({ showings }: Mark): string {
  let text = "";
  let before: number | undefined;
  for (const showing of showings) {
    if (before !== undefined && before !== showing.line) text += " ";
    text += showing.text;
    before = showing.line;
  }
  return text;
}

/**
 * Reads the pieces of marked content by number; only those in `boxed` get the box of their shapes.
 *
 * Throws `pdf-broken`.
 */
export function readMarks(
  bytes: Buffer,
  operations: Operations,
  { fonts, boxed }: { fonts: ReadonlyMap<string, PdfFont>; boxed: ReadonlySet<number> },
): PageMarks {
  const reader = new MarkReader(bytes, fonts, boxed);
  for (let index = 0; index < operations.length; index++) reader.take(operations, index);
  return reader;
}

/** Follows the operations of a page: the state of its graphics, and which mark is open. */
class MarkReader implements PageMarks {
  readonly marks = new Map<number, { showings: Showing[]; box: Box; picture: boolean }>();
  missing = false;
  unnamed = false;
  readonly #bytes: Buffer;
  readonly #fonts: ReadonlyMap<string, PdfFont>;
  readonly #boxed: ReadonlySet<number>;
  readonly #open: (number | undefined)[] = [];
  readonly #saved: State[] = [];
  #state: State = { matrix: UNIT, font: undefined, size: 0, clip: BOX_ALL };
  #text: Matrix = UNIT;
  #place: Operation | undefined;
  /** A mark that says how its glyphs are spelled; its text counts once. */
  #spelled: { readonly depth: number; text: string } | undefined;
  /** Where the path leads that is being built; it counts once it is painted. */
  #path: number[] = [];
  /** Whether that path cuts what is painted from then on. */
  #cuts = false;

  constructor(bytes: Buffer, fonts: ReadonlyMap<string, PdfFont>, boxed: ReadonlySet<number>) {
    this.#bytes = bytes;
    this.#fonts = fonts;
    this.#boxed = boxed;
  }

  take(operations: Operations, index: number): void {
    const operator = operations.operator(index);
    if (STILL.has(operator) || (SHAPES.has(operator) && !this.#isBoxed())) return;
    // Where something stands matters only in marks, and boxes only where some are asked for.
    if (PLACES.has(operator) && this.#open.length === 0) return;
    if (operator === "cm" && this.#boxed.size === 0) return;
    this.#take(operations.get(index));
  }

  #take(operation: Operation): void {
    const bytes = this.#bytes;
    switch (operation.operator) {
      case "BDC":
      case "BMC":
        this.#begin(operation);
        return;
      case "EMC":
        if (this.#spelled?.depth === this.#open.length) this.#spelled = undefined;
        this.#open.pop();
        return;
      case "q":
        this.#saved.push(this.#state);
        return;
      case "Q":
        this.#state = this.#saved.pop() ?? this.#state;
        return;
      case "cm":
        this.#transform(operation);
        return;
      case "Tf":
        this.#setFont(operands(bytes, operation));
        return;
      case "BT":
        this.#text = UNIT;
        this.#place = undefined;
        return;
      case "Tm":
        this.#text = numbers(bytes, operation) as unknown as Matrix;
        this.#place = operation;
        return;
      case "Td":
        this.#text = times([1, 0, 0, 1, ...numbers(bytes, operation)], this.#text);
        this.#place = undefined;
        return;
      case "Tj":
      case "TJ":
        this.#show(operation);
        return;
      case "Do":
      case "BI":
      case "sh":
        this.#picture();
        return;
      case "W":
      case "W*":
        this.#cuts = true;
        return;
      case "n":
        this.#endPath();
        return;
      default:
        this.#shape(operation);
    }
  }

  #begin(operation: Operation): void {
    const above = this.#open.at(-1);
    this.#open.push(above ?? markedId(this.#bytes, operation));
    this.#mark();
    if (above === undefined || operation.operator !== "BDC") return;
    const [, properties] = operands(this.#bytes, operation);
    const text = properties instanceof Dict ? properties.get("ActualText") : undefined;
    if (text instanceof Text) this.#spelled = { depth: this.#open.length, text: readText(text) };
  }

  #transform(operation: Operation): void {
    const matrix = times(numbers(this.#bytes, operation), this.#state.matrix);
    this.#state = { ...this.#state, matrix };
  }

  #setFont([name, size]: Value[]): void {
    const font = name instanceof Name ? this.#fonts.get(name.text) : undefined;
    this.#state = { ...this.#state, font, size: typeof size === "number" ? size : 0 };
  }

  #isBoxed(): boolean {
    return this.#boxed.has(this.#open.at(-1) ?? -1);
  }

  #mark() {
    const id = this.#open.at(-1);
    if (id === undefined) return undefined;
    const known = this.marks.get(id);
    if (known !== undefined) return known;
    const mark = { showings: [], box: BOX_NONE, picture: false };
    this.marks.set(id, mark);
    return mark;
  }

  #picture(): void {
    const mark = this.#mark();
    if (mark === undefined) return;
    mark.picture = true;
    this.#grow(mark, [0, 0, 1, 1]);
  }

  /** Builds or paints a path. */
  #shape(operation: Operation): void {
    const { operator } = operation;
    const mark = this.#mark();
    if (mark === undefined || !this.#isBoxed()) return;
    if (BUILDS.has(operator)) {
      const points = numbers(this.#bytes, operation);
      const [x = 0, y = 0, width = 0, height = 0] = points;
      this.#path.push(...(operator === "re" ? [x, y, x + width, y + height] : points));
    } else if (PAINTS.has(operator)) {
      this.#grow(mark, this.#path);
      this.#endPath();
    }
  }

  #endPath(): void {
    if (this.#cuts) {
      const shape = { box: BOX_NONE };
      this.#grow(shape, this.#path);
      this.#state = { ...this.#state, clip: shape.box };
    }
    this.#path = [];
    this.#cuts = false;
  }

  /** By the points' part that is seen. */
  #grow(shape: { box: Box }, points: readonly number[]): void {
    const { matrix, clip } = this.#state;
    for (let index = 0; index + 1 < points.length; index += 2) {
      const [x, y] = [points[index] as number, points[index + 1] as number];
      shape.box = grown(shape.box, nearest(clip, moved(matrix, x, y)));
    }
  }

  #show(operation: Operation): void {
    const { font, size, matrix } = this.#state;
    const codes = shownCodes(this.#bytes, operation);
    const mark = this.#mark();
    let text = "";
    let width = 0;
    for (const code of codes) {
      const character = font?.character(code);
      if (code === 0) this.missing = true;
      if (character === undefined) this.unnamed = true;
      if (mark === undefined) continue;
      text += character ?? "";
      width += font?.width(code) ?? 0;
    }
    if (mark === undefined || font === undefined) return;
    if (this.#spelled !== undefined) {
      text = this.#spelled.text;
      this.#spelled.text = "";
    }
    mark.showings.push({ text, font, size, operation, line: this.#text[5], place: this.#place });
    this.#place = undefined;
    if (!this.#isBoxed()) return;
    const onPage = times(this.#text, matrix);
    mark.box = grown(mark.box, moved(onPage, 0, -size / 4));
    mark.box = grown(mark.box, moved(onPage, (width * size) / 1000, size));
  }
}

const PLACES = new Set(["Tm", "Td"]);
const BUILDS = new Set(["m", "l", "c", "v", "y", "re"]);
const PAINTS = new Set(["f", "F", "f*", "S", "s", "B", "B*", "b", "b*"]);
const SHAPES = new Set([...BUILDS, ...PAINTS, "W", "W*"]);

/** Change nothing that is followed here. */
const STILL = new Set("gs rg RG g G k K cs CS sc SC scn SCN w J j M d ri i ET h".split(" "));

/** The codes of two bytes that an operation shows; mostly it has one string of hexadecimal digits. */
function shownCodes(bytes: Buffer, operation: Operation): number[] {
  const { start, at } = operation;
  let end = at - 1;
  while (bytes[end] === 32 || bytes[end] === 10) end--;
  if (bytes[start] === LESS && bytes[end] === GREATER && (end - start) % 4 === 1) {
    const codes: number[] = [];
    for (let digit = start + 1; digit < end; digit += 4) {
      let code = 0;
      for (let step = 0; step < 4; step++) {
        const value = HEX[bytes[digit + step] as number] as number;
        if (value < 0) throw broken("A string has digits that are none.");
        code = code * 16 + value;
      }
      codes.push(code);
    }
    return codes;
  }
  const [value] = operands(bytes, operation);
  return (Array.isArray(value) ? value : [value]).flatMap((one) => {
    if (!(one instanceof Text)) return [];
    const raw = Buffer.from(one.bytes, "latin1");
    return Array.from({ length: raw.length >> 1 }, (_, index) => raw.readUInt16BE(index * 2));
  });
}

const HEX = new Int8Array(256).fill(-1);
for (const [value, digit] of [..."0123456789abcdef"].entries()) {
  HEX[digit.charCodeAt(0)] = value;
  HEX[digit.toUpperCase().charCodeAt(0)] = value;
}
