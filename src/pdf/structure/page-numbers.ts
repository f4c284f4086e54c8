/**
 * Page numbers in the contents without printing twice: the booklet is printed with digits that only
 * keep the place, and once it is known on which page everything lies, the right digits are written
 * over them.
 */
import { operands } from "../objects/content.ts";
import type { PdfObjects } from "../objects/objects.ts";
import { Name, Ref, writeNumber } from "../objects/values.ts";
import { decodeName } from "./destinations.ts";
import { type Mark, type Showing, textOf } from "./marks.ts";
import { everyTag, isMark, isTag, type Kid, type MarkKid, type Tag } from "./tags.ts";

/** By anchor: the digits that keep the place of its page's number, and where they are aligned. */
export interface NumberPlaces {
  readonly digits: ReadonlyMap<string, string>;
  readonly end: "right" | "left";
}

/** The HTML with digits in the places of page numbers. */
export interface DraftHtml extends NumberPlaces {
  readonly html: string;
}

/** Ask for a number, and it is one that occurs nowhere else in a booklet. */
class Sentinels extends Map<string, number> {
  override get(anchor: string): number {
    const known = super.get(anchor);
    if (known !== undefined) return known;
    const number = 918_273_640_000 + this.size;
    this.set(anchor, number);
    return number;
  }
}

/**
 * Renders HTML to print once: `render` is given a number for whatever anchor it asks for.
 *
 * Returns undefined when a number stands anywhere but alone in an element, as a clinic's own
 * template may have it: such a booklet has to be printed twice.
 */
export function draftHtml(
  render: (pages: ReadonlyMap<string, number>) => string,
  end: "right" | "left" = "right",
): DraftHtml | undefined {
  const sentinels = new Sentinels();
  let html = render(sentinels);
  const digits = new Map<string, string>();
  for (const [anchor, number] of sentinels) {
    const parts = html.split(String(number));
    if (parts.length !== 2 || !parts[0]?.endsWith(">") || !parts[1]?.startsWith("<")) {
      return undefined;
    }
    // All ten digits in turn, so that the printed font has them.
    const first = (digits.size * 2) % 10;
    const place = first === 0 ? "10" : `${first}${first + 1}`;
    digits.set(anchor, place);
    html = parts.join(place);
  }
  return { html, digits, end };
}

/** What a page needs to have to be written in. */
interface NumberedPage {
  readonly page: number;
  readonly content: Buffer;
  readonly marks: { readonly marks: ReadonlyMap<number, Mark> };
}

interface Edit {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/**
 * Writes the page of each anchor over the digits that keep its place.
 *
 * Returns the new contents by page; undefined when some place is not found or is not of the form
 * that can be written over (or a page has more digits than there is room for).
 */
export function fillNumbers(
  pdf: PdfObjects,
  top: Tag,
  pages: readonly NumberedPage[],
  { digits, end, numbers }: NumberPlaces & { readonly numbers: ReadonlyMap<string, number> },
): Map<number, Buffer> | undefined {
  const byPage = new Map(pages.map((page) => [page.page, page]));
  const edits = new Map<number, Edit[]>();
  const open = new Map(digits);
  for (const tag of everyTag(top)) {
    const anchor = tag.role === "Link" ? anchorOf(pdf, tag) : undefined;
    const place = anchor === undefined ? undefined : open.get(anchor);
    const kid = lastMark(tag);
    if (anchor === undefined || place === undefined || kid === undefined) continue;
    const page = byPage.get(kid.page);
    const mark = page?.marks.marks.get(kid.mark);
    if (page === undefined || mark === undefined || textOf(mark).trim() !== place) continue;
    const number = numbers.get(anchor);
    const [showing, ...more] = mark.showings;
    if (number === undefined || showing === undefined || more.length > 0) return undefined;
    const edit = editOf(page.content, showing, { digits: String(number), end });
    if (edit === undefined) return undefined;
    edits.set(kid.page, [...(edits.get(kid.page) ?? []), edit]);
    open.delete(anchor);
  }
  if (open.size > 0) return undefined;
  return new Map(
    [...edits].map(([page, all]) => [page, edited(byPage.get(page)?.content ?? NONE, all)]),
  );
}

const NONE = Buffer.alloc(0);

/** The anchor within the document that a link leads to. */
function anchorOf(pdf: PdfObjects, link: Tag): string | undefined {
  const area = link.kids.find((kid) => !isTag(kid) && !isMark(kid));
  if (area === undefined || isTag(area) || isMark(area)) return undefined;
  const target = pdf.dict(new Ref(area.object)).get("Dest");
  return target instanceof Name ? decodeName(target.text) : undefined;
}

function lastMark(tag: Tag): MarkKid | undefined {
  const last = tag.kids.findLast((kid: Kid) => isTag(kid) || isMark(kid));
  if (last === undefined) return undefined;
  if (isTag(last)) return lastMark(last);
  return isMark(last) ? last : undefined;
}

/** Sets place and text anew, in one go: the two operations follow each other. */
function editOf(
  content: Buffer,
  { text, font, size, operation, place }: Showing,
  wanted: { readonly digits: string; readonly end: "right" | "left" },
): Edit | undefined {
  if (place === undefined || !/^\d+$/.test(text) || wanted.digits.length > text.length) {
    return undefined;
  }
  if (content.toString("latin1", place.end, operation.start).trim() !== "") return undefined;
  const codes = [...wanted.digits].map((digit) => font.code(digit));
  const widths = new Set([...text, ...wanted.digits].map((digit) => widthOf(font, digit)));
  const [width] = widths;
  if (widths.size !== 1 || width === undefined) return undefined;
  const matrix = operands(content, place).filter((value) => typeof value === "number");
  const [a = 1, b = 0, , , x = 0, y = 0] = matrix;
  const free = text.length - wanted.digits.length;
  const move = wanted.end === "left" ? 0 : (free * width * size) / 1000;
  const moved = [...matrix.slice(0, 4), round(x + move * a), round(y + move * b)];
  const shown = codes.map((code) => (code ?? 0).toString(16).padStart(4, "0")).join("");
  return {
    start: place.start,
    end: operation.end,
    text: `${moved.map(writeNumber).join(" ")} Tm\n<${shown}> Tj`,
  };
}

function widthOf(font: Showing["font"], digit: string): number | undefined {
  const code = font.code(digit);
  return code === undefined ? undefined : font.width(code);
}

const round = (value: number) => Math.round(value * 1e5) / 1e5;

function edited(content: Buffer, edits: readonly Edit[]): Buffer {
  const pieces: Buffer[] = [];
  let copied = 0;
  for (const { start, end, text } of [...edits].sort((a, b) => a.start - b.start)) {
    pieces.push(content.subarray(copied, start), Buffer.from(text, "latin1"));
    copied = end;
  }
  return Buffer.concat([...pieces, content.subarray(copied)]);
}
