/** Tells on which page of a printed PDF each link target lies, for page numbers in its contents. */
import { broken } from "../objects/broken.ts";
import { type PdfObjects, readPdf } from "../objects/objects.ts";
import { Ref } from "../objects/values.ts";

/**
 * Reads the named destinations: the ids of HTML elements that some link of the document points to.
 *
 * Returns the page of each, counted from 1; empty when nothing is linked. Throws `pdf-broken`.
 */
export function readDestinations(bytes: Uint8Array): Map<string, number> {
  return destinationsOf(readPdf(bytes));
}

/** The same of a PDF that has been read. */
export function destinationsOf(pdf: PdfObjects): Map<string, number> {
  const destinations = new Map<string, number>();
  const numbers = new Map(pageObjects(pdf).map((object, index) => [object, index + 1]));
  for (const [name, value] of pdf.dict(pdf.dict(pdf.root).get("Dests"))) {
    const [target] = pdf.items(value);
    const page = target instanceof Ref ? numbers.get(target.object) : undefined;
    if (page === undefined) throw broken(`Link target ${name} is on no page.`);
    destinations.set(decodeName(name), page);
  }
  return destinations;
}

/** Object numbers of the pages, in order; at least one. Throws `pdf-broken`. */
export function pageObjects(pdf: PdfObjects): number[] {
  const pages: number[] = [];
  const seen = new Set<number>();
  const open = [...pdf.items(pdf.dict(pdf.root).get("Pages"))];
  if (open.length === 0) throw broken("It has no Pages.");
  for (let one = open.pop(); one !== undefined; one = open.pop()) {
    if (!(one instanceof Ref)) throw broken("A page is not an object of its own.");
    if (seen.has(one.object)) throw broken("Its pages lead in a circle.");
    seen.add(one.object);
    const kids = pdf.dict(one).get("Kids");
    if (kids === undefined) pages.push(one.object);
    else open.push(...[...pdf.items(kids)].reverse());
  }
  if (pages.length === 0) throw broken("It has no page.");
  return pages;
}

/** In a PDF name, `#25` stands for a byte; in the link that it came from, `%c3%a4` for others. */
export function decodeName(name: string): string {
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
