/** Reads values of PDF syntax one after another, in the file's objects and in its contents. */
import { broken } from "./broken.ts";
import { Dict, Name, type Ref, ref, Text, type Value } from "./values.ts";

/** What a byte is: 0 part of a word, 1 white space, 2 delimiter. */
export const KIND = new Uint8Array(256);
for (const byte of [0, 9, 10, 12, 13, 32]) KIND[byte] = 1;
for (const byte of Buffer.from("()<>[]{}/%")) KIND[byte] = 2;

/** Deeper than any PDF of a browser; a file made to exhaust the stack is broken. */
const DEPTH = 64;

export const [PAREN, LESS, GREATER, SLASH, PERCENT] = [0x28, 0x3c, 0x3e, 0x2f, 0x25] as const;
const [CLOSE_PAREN, OPEN, CLOSE, BACKSLASH] = [0x29, 0x5b, 0x5d, 0x5c] as const;

export class Lexer {
  readonly bytes: Buffer;
  at: number;

  constructor(bytes: Buffer, at = 0) {
    this.bytes = bytes;
    this.at = at;
  }

  /** Goes to the next byte that is neither white space nor part of a comment. */
  skip(): number {
    const { bytes } = this;
    while (this.at < bytes.length) {
      const byte = bytes[this.at] as number;
      if (byte === PERCENT) {
        while (this.at < bytes.length && bytes[this.at] !== 10 && bytes[this.at] !== 13) this.at++;
      } else if (KIND[byte] !== 1) return byte;
      else this.at++;
    }
    return -1;
  }

  /** The word of letters and digits that starts here. */
  word(): string {
    const start = this.at;
    while (this.at < this.bytes.length && KIND[this.bytes[this.at] as number] === 0) this.at++;
    return this.bytes.toString("latin1", start, this.at);
  }

  /** Reads a value. Throws `pdf-broken`. */
  value(depth = 0): Value {
    const byte = this.skip();
    if (byte === -1) throw broken("It is cut off within a value.");
    if (depth > DEPTH) throw broken("Its values lie too deep within each other.");
    if (byte === SLASH) return this.#name();
    if (byte === PAREN) return new Text(this.#literal());
    if (byte === OPEN) return this.#array(depth);
    if (byte === LESS) {
      return this.bytes[this.at + 1] === LESS ? this.#dict(depth) : new Text(this.#hex());
    }
    if (KIND[byte] !== 0) throw broken(`It has a stray ${String.fromCharCode(byte)}.`);
    return this.#integer() ?? this.#atom();
  }

  /** A number of digits only, or a reference; the fast way. */
  #integer(): Value | undefined {
    const { bytes } = this;
    let at = this.at;
    let value = 0;
    for (let digit = digitAt(bytes, at); digit >= 0; digit = digitAt(bytes, ++at)) {
      value = value * 10 + digit;
    }
    if (at === this.at || at - this.at > 15 || KIND[bytes[at] ?? 32] === 0) return undefined;
    this.at = at;
    return this.#reference(value) ?? value;
  }

  #atom(): Value {
    const word = this.word();
    if (word === "true") return true;
    if (word === "false") return false;
    if (word === "null") return null;
    if (!NUMBER.test(word)) throw broken(`It has ${shown(word)} in place of a value.`);
    return Number(word);
  }

  /** The rest of `12 0 R`, if that is what this is. */
  #reference(object: number): Ref | undefined {
    const { bytes, at } = this;
    if (bytes[at] !== 32 || bytes[at + 1] !== 0x30 || bytes[at + 2] !== 32) return undefined;
    if (bytes[at + 3] !== 0x52 || KIND[bytes[at + 4] ?? 32] === 0) return undefined;
    this.at += 4;
    return ref(object);
  }

  #name(): Name {
    const start = ++this.at;
    while (this.at < this.bytes.length && KIND[this.bytes[this.at] as number] === 0) this.at++;
    return nameOf(this.bytes, start, this.at);
  }

  #array(depth: number): Value[] {
    const items: Value[] = [];
    this.at++;
    while (this.skip() !== CLOSE) items.push(this.value(depth + 1));
    this.at++;
    return items;
  }

  #dict(depth: number): Dict {
    const entries = new Dict();
    this.at += 2;
    while (this.skip() !== GREATER) {
      if (this.bytes[this.at] !== SLASH) throw broken("A dictionary has a key that is no name.");
      const { text } = this.#name();
      entries.add(text, this.value(depth + 1));
    }
    if (this.bytes[this.at + 1] !== GREATER) throw broken("A dictionary has no end.");
    this.at += 2;
    return entries;
  }

  #hex(): string {
    const end = this.bytes.indexOf(GREATER, this.at);
    if (end === -1) throw broken("A string has no end.");
    const digits = this.bytes.toString("latin1", this.at + 1, end).replace(/\s+/g, "");
    if (/[^0-9A-Fa-f]/.test(digits)) throw broken("A string has digits that are none.");
    this.at = end + 1;
    return Buffer.from(digits.length % 2 ? `${digits}0` : digits, "hex").toString("latin1");
  }

  #literal(): string {
    const start = this.at;
    this.at = stringEnd(this.bytes, start);
    const raw = this.bytes.toString("latin1", start + 1, this.at - 1);
    return /[\\\r]/.test(raw) ? raw.replace(ESCAPE, unescaped) : raw;
  }
}

const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)$/;
const ESCAPE = /\\(?:([0-7]{1,3})|(\r\n?|\n)|([\s\S]))|\r\n?/g;
const LETTERS: Readonly<Record<string, string>> = { n: "\n", r: "\r", t: "\t", b: "\b", f: "\f" };

/** Names already met: most of a file's are the same few. */
const NAMES: Name[] = new Array(512).fill(new Name(""));

function nameOf(bytes: Buffer, start: number, end: number): Name {
  let hash = 0;
  for (let at = start; at < end; at++) hash = (hash * 31 + (bytes[at] as number)) & 511;
  const known = NAMES[hash] as Name;
  if (known.text.length === end - start && isAt(bytes, start, known.text)) return known;
  const name = new Name(bytes.toString("latin1", start, end));
  NAMES[hash] = name;
  return name;
}

function isAt(bytes: Buffer, start: number, text: string): boolean {
  for (let index = 0; index < text.length; index++) {
    if (bytes[start + index] !== text.charCodeAt(index)) return false;
  }
  return true;
}

function digitAt(bytes: Buffer, at: number): number {
  const digit = (bytes[at] ?? 0) - 48;
  return digit <= 9 ? digit : -1;
}

function unescaped(all: string, octal?: string, line?: string, letter?: string): string {
  if (octal !== undefined) return String.fromCharCode(Number.parseInt(octal, 8) & 255);
  if (line !== undefined) return "";
  if (letter !== undefined) return LETTERS[letter] ?? letter;
  return all === "" ? "" : "\n";
}

/** Where the literal string that starts here has ended. Throws `pdf-broken`. */
export function stringEnd(bytes: Buffer, start: number): number {
  let depth = 0;
  for (let at = start; at < bytes.length; at++) {
    const byte = bytes[at];
    if (byte === BACKSLASH) at++;
    else if (byte === PAREN) depth++;
    else if (byte === CLOSE_PAREN && --depth === 0) return at + 1;
  }
  throw broken("A string has no end.");
}

/** A word of the file as it can be shown. */
export function shown(word: string): string {
  return JSON.stringify(word.slice(0, 20));
}
