/** Makes the same booklet of the same date the same bytes, whichever page printed it. */

import { pageCount } from "./pdf-destinations.ts";
import { broken, type PdfFile, readPdf } from "./pdf-objects.ts";

/**
 * Replaces what differs from one print to the next: the two dates become `date`, and the ids that
 * the browser gives to table heads, which depend on what it did before, are counted from 1 in order
 * of appearance.
 *
 * Every replacement has the length of what it replaces, so that the cross-reference table stays
 * right, and the sorted table of ids is sorted anew. Returns a new array. Throws `pdf-broken`.
 */
export function settlePdf(bytes: Uint8Array, date: Date): Uint8Array {
  const pdf = readPdf(bytes);
  const settled = Buffer.from(bytes);
  setDates(pdf, settled, date);
  renumberIds(pdf, settled);
  return new Uint8Array(settled.buffer, settled.byteOffset, settled.byteLength);
}

/** Throws `pdf-broken` unless the bytes are a whole PDF with at least one page. */
export function checkPdf(bytes: Uint8Array): void {
  if (pageCount(bytes) < 1) throw broken("It has no page.");
}

function setDates(pdf: PdfFile, settled: Buffer, date: Date): void {
  const value = `D:${date
    .toISOString()
    .replace(/[^0-9]/g, "")
    .slice(0, 14)}+00'00'`;
  const start = pdf.spans.get(pdf.info)?.start ?? 0;
  let found = 0;
  for (const match of pdf.text(pdf.info).matchAll(/\/(?:CreationDate|ModDate) \(([^()\\]*)\)/g)) {
    const old = match[1] ?? "";
    if (old.length !== value.length) throw broken(`Its date ${old} has an unknown form.`);
    settled.write(value, start + match.index + match[0].length - 1 - old.length, "latin1");
    found++;
  }
  if (found !== 2) throw broken("Its dates are missing.");
}

/**
 * An id as the value of /ID, or in a list (of /Headers). A text that looks like one is the value of
 * another key; brackets within a text are escaped.
 */
const ID = /(?<=\/ID |\[|\) )\(node(\d{8,})\)/g;

/** The one table of all ids, sorted, each with the object that it names. */
const TABLE = /\/Limits \[\(node\d+\) \(node\d+\)\]\s\/Names \[([^\]]*)\]/;

function renumberIds(pdf: PdfFile, settled: Buffer): void {
  const numbers = new Map<string, number>();
  const renumbered = (digits: string) => {
    const number = numbers.get(digits) ?? numbers.size + 1;
    numbers.set(digits, number);
    return `(node${String(number).padStart(digits.length, "0")})`;
  };
  const tables: [number, RegExpExecArray][] = [];
  for (const [object, { start }] of pdf.spans) {
    const text = pdf.text(object);
    if (!text.includes("(node")) continue;
    const table = TABLE.exec(text);
    if (table !== null) {
      tables.push([start + table.index, table]);
      continue;
    }
    for (const { 0: old, 1: digits = "", index } of text.matchAll(ID)) {
      const id = renumbered(digits);
      if (id.length !== old.length) throw broken("Its ids have an unknown form.");
      settled.write(id, start + index, "latin1");
    }
  }
  if (tables.length > 1) throw broken("It has more than one table of ids.");
  for (const [at, table] of tables) settled.write(sortedTable(table, renumbered), at, "latin1");
}

function sortedTable([old, names = ""]: RegExpExecArray, renumber: (digits: string) => string) {
  const pairs = [...names.matchAll(/\(node(\d+)\) (\d+ \d+ R)/g)]
    .map(([, digits = "", object = ""]) => [renumber(digits), object] as const)
    .sort(([a], [b]) => (a < b ? -1 : 1));
  const gap = /\]\s\/Names/.exec(old)?.[0] ?? "";
  const limits = `/Limits [${pairs[0]?.[0]} ${pairs.at(-1)?.[0]}`;
  const table = `${limits}${gap} [${pairs.map((pair) => pair.join(" ")).join(" ")}]`;
  if (table.length !== old.length) throw broken("Its table of ids has an unknown form.");
  return table;
}
