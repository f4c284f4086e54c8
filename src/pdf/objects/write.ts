/** Writes a PDF as small as it goes: objects packed together, everything compressed. */
import { createHash } from "node:crypto";
import { deflateSync } from "node:zlib";
import type { PdfObjects } from "./objects.ts";
import { Dict, dict, Name, Ref, Stream, Text, type Value, writeValue } from "./values.ts";

/** Objects in one packed stream; a reader unpacks all of them to get at one. */
const PACKED = 4000;
/** Higher ones take much longer and save little. */
const LEVEL = 6;
const HEAD = "%PDF-1.7\n%\xe2\xe3\xcf\xd3\n";

/** Where an object lies: by itself at an offset, or at a place within a packed stream. */
export type Place =
  | { readonly offset: number }
  | { readonly within: number; readonly index: number };

/**
 * Writes all objects that can be reached from the catalogue, numbered anew in the order in which
 * they are met; same objects, same bytes.
 */
export function writePdf(pdf: PdfObjects): Uint8Array {
  const numbers = new Map<number, number>();
  const order: Value[] = [];
  for (const start of [pdf.root, pdf.info]) number(pdf, start, numbers, order);
  const file = new FileWriter();
  const packed: [number, string][] = [];
  for (const [index, value] of order.entries()) {
    if (value instanceof Stream) {
      file.stream(index + 1, value, numbers);
      continue;
    }
    const text = writeValue(value, numbers);
    // The catalogue stays by itself, so that it can be changed when the file is protected.
    if (index === 0) file.plain(1, text);
    else packed.push([index + 1, text]);
  }
  let next = order.length + 1;
  for (let from = 0; from < packed.length; from += PACKED) {
    file.pack(next++, packed.slice(from, from + PACKED));
  }
  return file.done(next, { Root: new Ref(1), Info: new Ref(numbers.get(pdf.info.object) ?? 0) });
}

/** Numbers what can be reached from here, without recursion: trees may be deep and wide. */
function number(pdf: PdfObjects, from: Ref, numbers: Map<number, number>, order: Value[]): void {
  const open: Value[] = [from];
  for (let value = open.pop(); value !== undefined; value = open.pop()) {
    if (value instanceof Ref) {
      if (numbers.has(value.object)) continue;
      const found = pdf.get(value.object);
      order.push(found);
      numbers.set(value.object, order.length);
      push(open, found);
    } else push(open, value);
  }
}

/** Puts the parts of a value on the pile, so that the first is the next to be taken. */
function push(open: Value[], value: Value): void {
  const from = open.length;
  const add = (part: Value) => {
    if (typeof part === "object" && part !== null) open.push(part);
  };
  if (Array.isArray(value)) value.forEach(add);
  else if (value instanceof Dict) value.each((_, part) => add(part));
  else if (value instanceof Stream) value.dict.each((_, part) => add(part));
  for (let low = from, high = open.length - 1; low < high; low++, high--) {
    const part = open[low] as Value;
    open[low] = open[high] as Value;
    open[high] = part;
  }
}

/** A stream of these bytes, compressed. */
export function compressed(data: Uint8Array, entries: Dict = new Dict()): Stream {
  const filtered = new Dict(entries).set("Filter", new Name("FlateDecode"));
  return new Stream(filtered, deflateSync(data, { level: LEVEL }));
}

/** The bytes of a file, one object after the other, and where each lies. */
export class FileWriter {
  readonly #pieces: Buffer[] = [Buffer.from(HEAD, "latin1")];
  readonly #places = new Map<number, Place>();
  #length = HEAD.length;

  place(object: number, place: Place): void {
    this.#places.set(object, place);
  }

  plain(object: number, text: string): void {
    this.#begin(object);
    this.#add(`${object} 0 obj\n${text}\nendobj\n`);
  }

  stream(object: number, { dict: entries, data }: Stream, numbers?: ReadonlyMap<number, number>) {
    this.#begin(object);
    const head = new Dict(entries).set("Length", data.length);
    this.#add(`${object} 0 obj\n${writeValue(head, numbers)}\nstream\n`);
    this.#add(data);
    this.#add("\nendstream\nendobj\n");
  }

  /** Packs objects that are no streams into one stream. */
  pack(object: number, objects: readonly (readonly [number, string])[]): void {
    let at = 0;
    const heads: string[] = [];
    for (const [index, [inner, text]] of objects.entries()) {
      heads.push(`${inner} ${at}`);
      at += text.length + 1;
      this.#places.set(inner, { within: object, index });
    }
    const head = `${heads.join(" ")}\n`;
    const body = Buffer.from(`${head}${objects.map(([, text]) => text).join("\n")}`, "latin1");
    const entries = dict({ Type: new Name("ObjStm"), N: objects.length, First: head.length });
    this.stream(object, compressed(body, entries));
  }

  /** Adds the cross-reference stream and ends the file. `id` is of the contents where none is given. */
  done(object: number, trailer: Record<string, Value | undefined>): Uint8Array {
    const start = this.#length;
    this.#begin(object);
    const id = createHash("sha256").update(Buffer.concat(this.#pieces)).digest();
    const names = new Text(id.toString("latin1", 0, 16));
    this.stream(
      object,
      compressed(
        this.#rows(object + 1),
        dict({
          Type: new Name("XRef"),
          Size: object + 1,
          W: [1, 4, 2],
          DecodeParms: dict({ Predictor: 12, Columns: 7 }),
          ID: [names, names],
          ...trailer,
        }),
      ),
    );
    this.#add(`startxref\n${start}\n%%EOF\n`);
    return new Uint8Array(Buffer.concat(this.#pieces));
  }

  /** The table, each row as its difference from the one before. */
  #rows(size: number): Buffer {
    const rows = Buffer.alloc(size * 8);
    let before = Buffer.alloc(7);
    for (let object = 0; object < size; object++) {
      const row = Buffer.alloc(7);
      const place = this.#places.get(object);
      if (place === undefined) row.writeUInt16BE(object === 0 ? 0xffff : 0, 5);
      else if ("offset" in place) {
        row[0] = 1;
        row.writeUInt32BE(place.offset, 1);
      } else {
        row[0] = 2;
        row.writeUInt32BE(place.within, 1);
        row.writeUInt16BE(place.index, 5);
      }
      rows[object * 8] = 2;
      for (let at = 0; at < 7; at++) {
        rows[object * 8 + 1 + at] = ((row[at] as number) - (before[at] as number)) & 255;
      }
      before = row;
    }
    return rows;
  }

  #begin(object: number): void {
    this.#places.set(object, { offset: this.#length });
  }

  #add(piece: string | Uint8Array): void {
    const bytes = typeof piece === "string" ? Buffer.from(piece, "latin1") : Buffer.from(piece);
    this.#pieces.push(bytes);
    this.#length += bytes.length;
  }
}
