/**
 * Reads the objects of a PDF as the browser writes it: version 1.4 form, one plain
 * cross-reference table, no object streams, no encryption, no updates.
 */
import { Fault } from "../faults/fault.ts";

/** Where an object's text lies in the file; the body of a stream is not part of it. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

export interface PdfFile {
  readonly bytes: Uint8Array;
  /** By object number. */
  readonly spans: ReadonlyMap<number, Span>;
  /** Object numbers of the catalogue and of the document information. */
  readonly root: number;
  readonly info: number;
  /** The text of one object, byte for byte (latin1), from its number to its end. */
  text(object: number): string;
}

/**
 * Reads the cross-reference table and finds every object.
 *
 * Throws `pdf-broken` when the file is cut off or not of the form above.
 */
export function readPdf(bytes: Uint8Array): PdfFile {
  const file = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (file.toString("latin1", 0, 5) !== "%PDF-") throw broken("It does not start as a PDF.");
  const tail = file.toString("latin1", Math.max(0, file.length - 2048));
  const [, startText] = /startxref\s+(\d+)\s+%%EOF\s*$/.exec(tail) ?? [];
  if (startText === undefined) throw broken("It is cut off.");
  const table = file.toString("latin1", Number(startText));
  const trailer = table.slice(Math.max(0, table.lastIndexOf("trailer")));
  const offsets = readTable(table);
  const spans = new Map<number, Span>();
  const inOrder = [...offsets].sort((a, b) => a[1] - b[1]);
  for (const [index, [object, start]] of inOrder.entries()) {
    const next = inOrder[index + 1]?.[1] ?? Number(startText);
    spans.set(object, objectSpan(file, object, start, next));
  }
  return {
    bytes,
    spans,
    root: reference(trailer, "Root"),
    info: reference(trailer, "Info"),
    text: (object) => {
      const span = spans.get(object);
      if (span === undefined) throw broken(`Object ${object} is missing.`);
      return file.toString("latin1", span.start, span.end);
    },
  };
}

/** The object number that `/name 12 0 R` gives in an object's text. */
export function reference(text: string, name: string): number {
  const [, number] = new RegExp(`/${name}\\s+(\\d+)\\s+\\d+\\s+R`).exec(text) ?? [];
  if (number === undefined) throw broken(`It has no ${name}.`);
  return Number(number);
}

export function broken(what: string): Fault {
  return new Fault("pdf-broken", `The printed PDF cannot be read. ${what}`, {
    hint: "Print again, or with another browser (PUPPETEER_EXECUTABLE_PATH).",
  });
}

/** Offsets by object number of the objects in use. */
function readTable(table: string): Map<number, number> {
  if (!table.startsWith("xref")) throw broken("Its cross-reference table is not a plain one.");
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
  if (/\/(Prev|Encrypt)\b/.test(table)) throw broken("It is encrypted or has been changed.");
  if (offsets.size === 0) throw broken("It holds nothing.");
  return offsets;
}

function objectSpan(file: Buffer, object: number, start: number, next: number): Span {
  const head = `${object} 0 obj`;
  if (file.toString("latin1", start, start + head.length) !== head) {
    throw broken(`Object ${object} is not where it should be.`);
  }
  const part = file.subarray(start, next);
  // Line ends within strings are escaped, so that this cannot be part of a text.
  const stream = part.indexOf(">> stream\n");
  const end = stream === -1 ? part.lastIndexOf("endobj") : stream + 2;
  if (end === -1) throw broken(`Object ${object} is cut off.`);
  return { start, end: start + end };
}
