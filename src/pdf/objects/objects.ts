/**
 * Reads the objects of a PDF as the browser writes it: one plain cross-reference table, no object
 * streams, no encryption, no updates.
 */
import { inflateSync } from "node:zlib";
import { broken } from "./broken.ts";
import { Lexer } from "./lexer.ts";
import { Dict, Name, Ref, Stream, type Value } from "./values.ts";

/** Objects by number; each is read when it is first asked for. */
export class PdfObjects {
  readonly #file: Buffer;
  readonly #offsets: ReadonlyMap<number, number>;
  readonly #read = new Map<number, Value>();
  readonly root: Ref;
  readonly info: Ref;
  #next: number;

  constructor(file: Buffer, offsets: ReadonlyMap<number, number>, trailer: Dict) {
    this.#file = file;
    this.#offsets = offsets;
    this.#next = Math.max(0, ...offsets.keys()) + 1;
    const [root, info] = [trailer.get("Root"), trailer.get("Info")];
    if (!(root instanceof Ref)) throw broken("It has no Root.");
    if (!(info instanceof Ref)) throw broken("It has no Info.");
    this.root = root;
    this.info = info;
  }

  /** The object with this number. Throws `pdf-broken` when there is none. */
  get(object: number): Value {
    const known = this.#read.get(object);
    if (known !== undefined) return known;
    const offset = this.#offsets.get(object);
    if (offset === undefined) throw broken(`Object ${object} is missing.`);
    const value = this.#readAt(object, offset);
    this.#read.set(object, value);
    return value;
  }

  set(object: number, value: Value): void {
    this.#read.set(object, value);
  }

  add(value: Value): Ref {
    const object = this.#next++;
    this.#read.set(object, value);
    return new Ref(object);
  }

  /** The value itself, where a reference may stand for it. */
  resolve(value: Value | undefined): Value | undefined {
    let found = value;
    for (let step = 0; found instanceof Ref; step++) {
      if (step > 8) throw broken("Its references lead in a circle.");
      found = this.get(found.object);
    }
    return found;
  }

  /** A dictionary, that of a stream too; empty where there is none. */
  dict(value: Value | undefined): Dict {
    const found = this.resolve(value);
    if (found instanceof Dict) return found;
    return found instanceof Stream ? found.dict : new Dict();
  }

  /** The items of an array; of one value alone, that one. */
  items(value: Value | undefined): readonly Value[] {
    const found = this.resolve(value);
    if (found === undefined || found === null) return [];
    return Array.isArray(found) ? found : [value as Value];
  }

  /** The bytes of a stream, decoded. */
  data(stream: Stream): Buffer {
    const filter = this.resolve(stream.dict.get("Filter"));
    const [only, ...more] = Array.isArray(filter) ? filter : [filter];
    if (only === undefined) return asBuffer(stream.data);
    if (more.length > 0 || !(only instanceof Name) || only.text !== "FlateDecode") {
      throw broken("It holds a stream of an unknown form.");
    }
    try {
      return inflateSync(stream.data, { maxOutputLength: MAX_STREAM });
    } catch {
      throw broken("It holds a stream that cannot be unpacked.");
    }
  }

  #readAt(object: number, offset: number): Value {
    const head = `${object} 0 obj`;
    if (this.#file.toString("latin1", offset, offset + head.length) !== head) {
      throw broken(`Object ${object} is not where it should be.`);
    }
    const lexer = new Lexer(this.#file, offset + head.length);
    const value = lexer.value();
    lexer.skip();
    const word = lexer.word();
    if (word === "endobj") return value;
    if (word !== "stream" || !(value instanceof Dict)) throw broken(`Object ${object} is cut off.`);
    const start = lexer.at + (this.#file[lexer.at] === 13 ? 2 : 1);
    const length = this.resolve(value.get("Length"));
    if (typeof length !== "number") throw broken(`Object ${object} has no length.`);
    const end = start + length;
    if (!/^\s*endstream/.test(this.#file.toString("latin1", end, end + 12))) {
      throw broken(`Object ${object} is cut off.`);
    }
    return new Stream(value, this.#file.subarray(start, end));
  }
}

/** More than any page needs: a file made to fill the memory is broken. */
const MAX_STREAM = 256 * 1024 * 1024;

export function asBuffer(bytes: Uint8Array): Buffer {
  return Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}

/**
 * Reads the cross-reference table.
 *
 * Throws `pdf-broken` when the file is cut off or not of the form above.
 */
export function readPdf(bytes: Uint8Array): PdfObjects {
  const file = asBuffer(bytes);
  const table = file.toString("latin1", tableOffset(file));
  const end = table.lastIndexOf("trailer");
  if (!table.startsWith("xref") || end === -1) {
    throw broken("Its cross-reference table is not a plain one.");
  }
  const trailer = new Lexer(asBuffer(Buffer.from(table.slice(end + 7), "latin1"))).value();
  if (!(trailer instanceof Dict)) throw broken("It has no trailer.");
  if (trailer.has("Prev") || trailer.has("Encrypt")) {
    throw broken("It is encrypted or has been changed.");
  }
  return new PdfObjects(file, readTable(table.slice(0, end)), trailer);
}

/** Throws `pdf-broken` unless the bytes begin and end as a PDF does: a part of one is not handed out. */
export function checkWhole(bytes: Uint8Array): void {
  tableOffset(asBuffer(bytes));
}

function tableOffset(file: Buffer): number {
  if (file.toString("latin1", 0, 5) !== "%PDF-") throw broken("It does not start as a PDF.");
  const tail = file.toString("latin1", Math.max(0, file.length - 2048));
  const [, start] = /startxref\s+(\d+)\s+%%EOF\s*$/.exec(tail) ?? [];
  if (start === undefined) throw broken("It is cut off.");
  return Number(start);
}

/** Offsets by object number of the objects in use. */
function readTable(table: string): Map<number, number> {
  const offsets = new Map<number, number>();
  const line = /(\d+) (\d+)(?: ([nf]))?\s+/y;
  line.lastIndex = table.indexOf("\n") + 1;
  let object = 0;
  for (let found = line.exec(table); found !== null; found = line.exec(table)) {
    const [, first, , use] = found;
    if (use === undefined) object = Number(first);
    else if (use === "n") offsets.set(object++, Number(first));
    else object++;
  }
  if (offsets.size === 0) throw broken("It holds nothing.");
  return offsets;
}
