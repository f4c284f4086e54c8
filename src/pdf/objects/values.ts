/** The values that a PDF is made of, how they are read from its bytes, and how they are written. */
import { broken } from "./broken.ts";

/** `/Name`; the text is kept as it stands in the file, `#25` and all. */
export class Name {
  readonly text: string;
  constructor(text: string) {
    this.text = text;
  }
}

/** A string; one character a byte. */
export class Text {
  readonly bytes: string;
  constructor(bytes: string) {
    this.bytes = bytes;
  }
}

/** `12 0 R`. */
export class Ref {
  readonly object: number;
  constructor(object: number) {
    this.object = object;
  }
}

const REFS: Ref[] = [];

/** The reference to an object; one object for all that name a low number. */
export function ref(object: number): Ref {
  if (object >= 1 << 16) return new Ref(object);
  REFS[object] ??= new Ref(object);
  return REFS[object] as Ref;
}

/** A dictionary with bytes, which are encoded as its `Filter` says. */
export class Stream {
  readonly dict: Dict;
  readonly data: Uint8Array;
  constructor(dict: Dict, data: Uint8Array) {
    this.dict = dict;
    this.data = data;
  }
}

/** A dictionary: few keys, so that a list is faster than a table, and there are thousands. */
export class Dict implements Iterable<[string, Value]> {
  /** Keys and values in turn. */
  readonly #items: (string | Value)[] = [];

  constructor(entries: Iterable<readonly [string, Value]> = []) {
    for (const [key, value] of entries) this.add(key, value);
  }

  get size(): number {
    return this.#items.length / 2;
  }

  get(key: string): Value | undefined {
    const index = this.#find(key);
    return index === -1 ? undefined : (this.#items[index + 1] as Value);
  }

  has(key: string): boolean {
    return this.#find(key) !== -1;
  }

  set(key: string, value: Value): this {
    const index = this.#find(key);
    if (index === -1) return this.add(key, value);
    this.#items[index + 1] = value;
    return this;
  }

  /** Adds a key that is not there yet. */
  add(key: string, value: Value): this {
    this.#items.push(key, value);
    return this;
  }

  delete(key: string): void {
    const index = this.#find(key);
    if (index !== -1) this.#items.splice(index, 2);
  }

  *[Symbol.iterator](): Generator<[string, Value]> {
    for (let index = 0; index < this.#items.length; index += 2) {
      yield [this.#items[index] as string, this.#items[index + 1] as Value];
    }
  }

  /** The same, a key and its value at a time, without a list for each. */
  each(take: (key: string, value: Value) => void): void {
    for (let index = 0; index < this.#items.length; index += 2) {
      take(this.#items[index] as string, this.#items[index + 1] as Value);
    }
  }

  #find(key: string): number {
    for (let index = 0; index < this.#items.length; index += 2) {
      if (this.#items[index] === key) return index;
    }
    return -1;
  }
}

export type Value = null | boolean | number | Name | Text | Ref | Stream | Dict | Value[];

/** A dictionary of what is defined. */
export function dict(entries: Readonly<Record<string, Value | undefined>>): Dict {
  const map = new Dict();
  for (const key in entries) {
    const value = entries[key];
    if (value !== undefined) map.add(key, value);
  }
  return map;
}

/** A text as a PDF string: ASCII as it is, all else as UTF-16 with its mark. */
export function textString(text: string): Text {
  if (/^[\x20-\x7e]*$/.test(text)) return new Text(text);
  return new Text(Buffer.from(`\uFEFF${text}`, "utf16le").swap16().toString("latin1"));
}

/** What a text string says: UTF-16 or UTF-8 by its mark, else byte for byte. */
export function readText({ bytes }: Text): string {
  const raw = Buffer.from(bytes, "latin1");
  if (bytes.startsWith("\xfe\xff") && raw.length % 2 === 0) {
    return raw.subarray(2).swap16().toString("utf16le");
  }
  return bytes.startsWith("\xef\xbb\xbf") ? raw.toString("utf8", 3) : bytes;
}

/** Writes a value; the body of a stream is not part of it. `numbers` are objects' new numbers. */
export function writeValue(value: Value, numbers?: ReadonlyMap<number, number>): string {
  if (typeof value === "number") return writeNumber(value);
  if (value instanceof Ref) {
    return `${numbers === undefined ? value.object : (numbers.get(value.object) ?? 0)} 0 R`;
  }
  if (value instanceof Name) return `/${value.text}`;
  if (value instanceof Text) return writeText(value.bytes);
  if (value === null || typeof value === "boolean") return String(value);
  if (value instanceof Stream) return writeValue(value.dict, numbers);
  let text = "";
  if (Array.isArray(value)) {
    for (const one of value) text = joined(text, writeValue(one, numbers));
    return `[${text}]`;
  }
  value.each((key, one) => {
    text = joined(`${text}/${key}`, writeValue(one, numbers));
  });
  return `<<${text}>>`;
}

/** A number as short as it can be; a PDF knows no exponents. */
export function writeNumber(value: number): string {
  if (!Number.isFinite(value)) throw broken("It holds a number without end.");
  if (Number.isInteger(value)) return value.toFixed(0);
  const text = value.toFixed(8).replace(/\.?0+$/, "");
  return text.replace(/^(-?)0\./, "$1.").replace(/^-0?$/, "0");
}

/** Puts a space only where two parts would run into one. */
function joined(text: string, part: string): string {
  const apart =
    text !== "" && isWord(text.charCodeAt(text.length - 1)) && isWord(part.charCodeAt(0));
  return apart ? `${text} ${part}` : text + part;
}

const DELIMITER = new Uint8Array(256);
for (const byte of Buffer.from("<>[]()/")) DELIMITER[byte] = 1;
const isWord = (code: number) => DELIMITER[code] !== 1;

function writeText(bytes: string): string {
  if (/^[\x20-\x7e]*$/.test(bytes)) return `(${bytes.replace(/[\\()]/g, "\\$&")})`;
  return `<${Buffer.from(bytes, "latin1").toString("hex")}>`;
}
