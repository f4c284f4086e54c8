/** Tells on which page of a printed PDF each link target lies, for page numbers in its contents. */
import { broken, type PdfFile, readPdf, reference } from "./pdf-objects.ts";

/**
 * Reads the named destinations: the ids of HTML elements that some link of the document points to.
 *
 * Returns the page of each, counted from 1; empty when nothing is linked. Throws `pdf-broken`.
 */
export function readDestinations(bytes: Uint8Array): Map<string, number> {
  const pdf = readPdf(bytes);
  const destinations = new Map<string, number>();
  const catalogue = pdf.text(pdf.root);
  if (!/\/Dests\s/.test(catalogue)) return destinations;
  const numbers = new Map(pageObjects(pdf).map((object, index) => [object, index + 1]));
  const entries = pdf.text(reference(catalogue, "Dests"));
  for (const match of entries.matchAll(/\/([^\s[\]<>()/%]+)\s*\[(\d+) 0 R/g)) {
    const [, name = "", object] = match;
    const page = numbers.get(Number(object));
    if (page === undefined) throw broken(`Link target ${name} is on no page.`);
    destinations.set(decodeName(name), page);
  }
  return destinations;
}

/** Number of pages. Throws `pdf-broken` when the bytes are not a whole PDF. */
export function pageCount(bytes: Uint8Array): number {
  return pageObjects(readPdf(bytes)).length;
}

/** Object numbers of the pages, in order. */
function pageObjects(pdf: PdfFile): number[] {
  const pages: number[] = [];
  const seen = new Set<number>();
  const open = [reference(pdf.text(pdf.root), "Pages")];
  for (let object = open.pop(); object !== undefined; object = open.pop()) {
    if (seen.has(object)) throw broken("Its pages lead in a circle.");
    seen.add(object);
    const text = pdf.text(object);
    const [, kids] = /\/Kids\s*\[([^\]]*)\]/.exec(text) ?? [];
    if (kids === undefined) pages.push(object);
    else open.push(...[...kids.matchAll(/(\d+) 0 R/g)].map(([, kid]) => Number(kid)).reverse());
  }
  return pages;
}

/** In a PDF name, `#25` stands for a byte; in the link that it came from, `%c3%a4` for others. */
function decodeName(name: string): string {
  const bytes = name.replace(/#([0-9A-Fa-f]{2})/g, (_, hex: string) =>
    String.fromCharCode(Number.parseInt(hex, 16)),
  );
  const link = Buffer.from(bytes, "latin1").toString("utf8");
  try {
    return decodeURIComponent(link);
  } catch {
    return link;
  }
}
