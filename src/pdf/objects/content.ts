/** Splits the content stream of a page into its operations, each with the place where it stands. */
import { broken } from "./broken.ts";
import { GREATER, KIND, LESS, Lexer, PAREN, PERCENT, SLASH, shown, stringEnd } from "./lexer.ts";
import type { Value } from "./values.ts";

/** One operation: its operands and its operator, from `start` to `end`. */
export interface Operation {
  readonly operator: string;
  readonly start: number;
  /** Where the operator itself begins. */
  readonly at: number;
  readonly end: number;
}

/** All operations of a page, in order; kept as numbers, since there are thousands. */
export class Operations {
  #operators: Uint16Array = new Uint16Array(1024);
  /** Three for each: start, operator, end. */
  #places: Uint32Array = new Uint32Array(3 * 1024);
  #length = 0;

  get length(): number {
    return this.#length;
  }

  operator(index: number): string {
    return NAMES[this.#operators[index] as number] as string;
  }

  start(index: number): number {
    return this.#places[index * 3] as number;
  }

  end(index: number): number {
    return this.#places[index * 3 + 2] as number;
  }

  get(index: number): Operation {
    const start = this.start(index);
    const at = this.#places[index * 3 + 1] as number;
    return { operator: this.operator(index), start, at, end: this.end(index) };
  }

  add(operator: number, start: number, at: number, end: number): void {
    const index = this.#length++;
    if (index === this.#operators.length) this.#grow();
    this.#operators[index] = operator;
    this.#places[index * 3] = start;
    this.#places[index * 3 + 1] = at;
    this.#places[index * 3 + 2] = end;
  }

  #grow(): void {
    const operators = new Uint16Array(this.#operators.length * 2);
    operators.set(this.#operators);
    this.#operators = operators;
    const places = new Uint32Array(this.#places.length * 2);
    places.set(this.#places);
    this.#places = places;
  }
}

/** All operators of PDF 1.7, and three words that are operands. */
const NAMES =
  `b B b* B* BDC BI BMC BT BX c cm CS cs d d0 d1 Do DP EI EMC ET EX f F f* G g gs h i ID j
  J K k l m M MP n q Q re RG rg ri s S SC sc SCN scn sh T* Tc Td TD Tf Tj TJ TL Tm Tr Ts Tw Tz v w W
  W* y ' " true false null`.split(/\s+/);
/** By their bytes, put into one number. */
const CODES = new Map(NAMES.map((name, code) => [keyOf(Buffer.from(name), 0, name.length), code]));
const FIRST_OPERAND = NAMES.indexOf("true");
const PICTURE = NAMES.indexOf("BI");

function keyOf(bytes: Buffer, from: number, to: number): number {
  let key = to - from;
  for (let at = from; at < to; at++) key = key * 256 + (bytes[at] as number);
  return key;
}

/**
 * Finds every operation, in order; an inline picture is one, named `BI`.
 *
 * What lies between two operations is white space and comments only. Throws `pdf-broken`.
 */
export function scanContent(bytes: Buffer): Operations {
  const operations = new Operations();
  let start = -1;
  let at = 0;
  while (at < bytes.length) {
    const byte = bytes[at] as number;
    const kind = KIND[byte];
    if (kind === 1) {
      at++;
      continue;
    }
    if (byte === PERCENT) {
      at = lineEnd(bytes, at);
      continue;
    }
    if (start === -1) start = at;
    if (kind === 2) {
      at = delimited(bytes, at, byte);
      continue;
    }
    const from = at;
    at = wordEnd(bytes, at);
    const code = isNumber(byte) ? FIRST_OPERAND : codeOf(bytes, from, at);
    if (code >= FIRST_OPERAND) continue;
    if (code === PICTURE) at = pictureEnd(bytes, at);
    operations.add(code, start, from, at);
    start = -1;
  }
  if (start !== -1) throw broken("A page's contents are cut off.");
  return operations;
}

/** Numbers begin with a digit, a sign or a point; all of these come before the letters. */
const isNumber = (byte: number) => byte < 0x3a && byte !== 0x27 && byte !== 0x22;

function codeOf(bytes: Buffer, from: number, to: number): number {
  const code = to - from > 5 ? undefined : CODES.get(keyOf(bytes, from, to));
  if (code !== undefined) return code;
  throw broken(`It has ${shown(bytes.toString("latin1", from, to))} in a page.`);
}

/** The operands of an operation. Throws `pdf-broken`. */
export function operands(bytes: Buffer, { start, at }: Operation): Value[] {
  const lexer = new Lexer(bytes.subarray(0, at), start);
  const values: Value[] = [];
  while (lexer.skip() !== -1) values.push(lexer.value());
  return values;
}

/** The operands of an operation that takes nothing but numbers: the fast way. */
export function numbers(bytes: Buffer, { start, at }: Operation): number[] {
  const found: number[] = [];
  for (let next = start; next < at; ) {
    if (KIND[bytes[next] as number] === 1) {
      next++;
      continue;
    }
    const end = wordEnd(bytes, next);
    found.push(numberOf(bytes, next, end));
    next = Math.max(end, next + 1);
  }
  return found;
}

function numberOf(bytes: Buffer, start: number, end: number): number {
  const negative = bytes[start] === 0x2d;
  let value = 0;
  let below = 0;
  for (let at = negative ? start + 1 : start; at < end; at++) {
    const byte = bytes[at] as number;
    if (byte === 0x2e && below === 0) below = 1;
    else if (byte < 0x30 || byte > 0x39) return Number(bytes.toString("latin1", start, end));
    else {
      value = value * 10 + byte - 0x30;
      below *= 10;
    }
  }
  return (negative ? -value : value) / Math.max(1, below);
}

function lineEnd(bytes: Buffer, from: number): number {
  let at = from;
  while (at < bytes.length && bytes[at] !== 10 && bytes[at] !== 13) at++;
  return at;
}

function wordEnd(bytes: Buffer, from: number): number {
  let at = from;
  while (at < bytes.length && KIND[bytes[at] as number] === 0) at++;
  return at;
}

/** Past a string or a name, or one bracket. */
function delimited(bytes: Buffer, at: number, byte: number): number {
  if (byte === PAREN) return stringEnd(bytes, at);
  if (byte === SLASH) return wordEnd(bytes, at + 1);
  if (byte !== LESS) return at + 1;
  if (bytes[at + 1] === LESS) return at + 2;
  const end = bytes.indexOf(GREATER, at);
  if (end === -1) throw broken("A string has no end.");
  return end + 1;
}

/** The bytes of an inline picture may be anything; it ends with EI between white space. */
function pictureEnd(bytes: Buffer, from: number): number {
  const data = /\bID\s/.exec(bytes.toString("latin1", from))?.index;
  if (data !== undefined) {
    for (
      let at = bytes.indexOf("EI", from + data + 2);
      at !== -1;
      at = bytes.indexOf("EI", at + 1)
    ) {
      const after = KIND[bytes[at + 2] ?? 32];
      if (KIND[bytes[at - 1] as number] === 1 && after === 1) return at + 2;
    }
  }
  throw broken("A picture in a page has no end.");
}
