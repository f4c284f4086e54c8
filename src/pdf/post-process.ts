/**
 * Finishes what the browser printed: puts its tags in order, marks all else as artifacts, says what
 * the document is, and writes it small; the same booklet of the same date is the same bytes,
 * whichever page printed it.
 */

import { gapsOf } from "./claim/claim.ts";
import { PdfFonts } from "./fonts/fonts.ts";
import { broken } from "./objects/broken.ts";
import { type Operations, scanContent } from "./objects/content.ts";
import { type PdfObjects, readPdf } from "./objects/objects.ts";
import { Name, Ref, Stream } from "./objects/values.ts";
import { compressed, writePdf } from "./objects/write.ts";
import { wrapArtifacts } from "./structure/artifacts.ts";
import { describeFigures, describeLinks, figureMarks, renumberIds } from "./structure/describe.ts";
import { destinationsOf, pageObjects } from "./structure/destinations.ts";
import { type Mark, type PageMarks, readMarks, textOf } from "./structure/marks.ts";
import { readAbout, setAbout, setMetadata } from "./structure/metadata.ts";
import { fillNumbers, type NumberPlaces } from "./structure/page-numbers.ts";
import { orderTags, type Shows } from "./structure/structure.ts";
import { everyTag, isMark, type Kid, readTags, type Tag, writeTags } from "./structure/tags.ts";

export interface FinishedPdf {
  readonly pdf: Uint8Array;
  /** Why the file does not claim PDF/UA-1; none when it does. */
  readonly gaps: readonly string[];
}

/** Finishes a tagged PDF of the browser and tells what is missing for PDF/UA-1. Throws `pdf-broken`. */
export function finishPdf(bytes: Uint8Array, { date }: { readonly date: Date }): FinishedPdf {
  return finish(readPrinted(bytes), date);
}

/**
 * The same for a PDF whose contents have digits in place of page numbers: writes the numbers.
 *
 * Where that cannot be done it returns the numbers instead, to print again with them.
 */
export function finishNumbered(
  bytes: Uint8Array,
  { date, places }: { readonly date: Date; readonly places: NumberPlaces },
): FinishedPdf | ReadonlyMap<string, number> {
  const printed = readPrinted(bytes);
  const numbers = destinationsOf(printed.pdf);
  const filled = fillNumbers(printed.pdf, printed.tags, printed.pages, { ...places, numbers });
  if (filled === undefined) return numbers;
  const pages = printed.pages.map((page) => {
    const content = filled.get(page.page);
    return content === undefined ? page : page.again(content);
  });
  return finish({ ...printed, pages }, date);
}

interface Printed {
  readonly pdf: PdfObjects;
  readonly tags: Tag;
  readonly fonts: PdfFonts;
  readonly pages: readonly PrintedPage[];
}

interface PrintedPage {
  readonly page: number;
  /** Object of its content stream. */
  readonly stream: number;
  readonly content: Buffer;
  readonly operations: Operations;
  readonly marks: PageMarks;
  /** The page with other contents. */
  again(content: Buffer): PrintedPage;
}

function readPrinted(bytes: Uint8Array): Printed {
  const pdf = readPdf(bytes);
  const fonts = new PdfFonts(pdf);
  const tags = readTags(pdf);
  const figures = figureMarks(tags);
  const pages = pageObjects(pdf).map((page) => {
    const [contents, ...more] = pdf.items(pdf.dict(new Ref(page)).get("Contents"));
    const stream = pdf.resolve(contents);
    if (!(contents instanceof Ref) || !(stream instanceof Stream) || more.length > 0) {
      throw broken("A page has not one content stream.");
    }
    const own = { fonts: fonts.ofPage(page), boxed: figures.get(page) ?? new Set<number>() };
    const read = (content: Buffer): PrintedPage => {
      const operations = scanContent(content);
      const marks = readMarks(content, operations, own);
      return { page, stream: contents.object, content, operations, marks, again: read };
    };
    return read(pdf.data(stream));
  });
  return { pdf, fonts, tags, pages };
}

function finish({ pdf, fonts, tags, pages }: Printed, date: Date): FinishedPdf {
  const about = readAbout(pdf);
  const marks = new Map(pages.map(({ page, marks }) => [page, marks.marks]));
  const markOf = (kid: Kid) => (isMark(kid) ? marks.get(kid.page)?.get(kid.mark) : undefined);
  renumberIds(tags);
  orderTags(tags, (kid) => showsOf(markOf(kid)));
  describeFigures(tags, markOf);
  describeLinks(pdf, tags, markOf);
  const marked = markPages(pdf, tags, pages);
  setAbout(pdf, about, date);
  writeTags(pdf, tags);
  const gaps = gapsOf(pdf, {
    about,
    tags,
    marked,
    fonts: fonts.all(),
    missing: pages.some(({ marks }) => marks.missing),
    unnamed: pages.some(({ marks }) => marks.unnamed),
  });
  setMetadata(pdf, about, { date, accessible: gaps.length === 0 });
  return { pdf: writePdf(pdf), gaps: [...new Set(gaps)] };
}

/** Makes artifacts of all that has no tag, and returns what is marked in each page. */
function markPages(
  pdf: PdfObjects,
  tags: Tag,
  pages: readonly PrintedPage[],
): Map<number, ReadonlySet<number>> {
  const owned = new Map<number, Set<number>>();
  for (const { kids } of everyTag(tags)) {
    for (const { page, mark } of kids.filter(isMark)) {
      owned.set(page, (owned.get(page) ?? new Set()).add(mark));
    }
  }
  const marked = new Map<number, ReadonlySet<number>>();
  for (const { page, stream, content, operations, marks } of pages) {
    const decoration = new Set<number>();
    for (const [id, mark] of marks.marks) {
      if (showsOf(mark) !== "text" && !owned.get(page)?.has(id)) decoration.add(id);
    }
    const wrapped = wrapArtifacts(content, operations, decoration);
    marked.set(page, wrapped.marked);
    pdf.set(stream, compressed(wrapped.content));
    pdf.dict(new Ref(page)).set("Tabs", new Name("S"));
  }
  return marked;
}

/** Text that is nothing but spaces still parts two words: it stays. */
function showsOf(mark: Mark | undefined): Shows {
  if (mark === undefined) return "nothing";
  if (textOf(mark) !== "") return "text";
  return mark.picture ? "picture" : "nothing";
}
