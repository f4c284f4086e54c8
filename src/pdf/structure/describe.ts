/** Says in words and numbers what a PDF only shows: what links lead to, where figures stand. */
import { BOX_NONE, type Box, joined } from "../objects/boxes.ts";
import type { PdfObjects } from "../objects/objects.ts";
import { dict, Name, Ref, Text, textString } from "../objects/values.ts";
import { type Mark, textOf } from "./marks.ts";
import { everyTag, isMark, isTag, type Kid, type Tag } from "./tags.ts";

type MarkOf = (kid: Kid) => Mark | undefined;

/** Gives each area of a link the link's own text as its description. */
export function describeLinks(pdf: PdfObjects, top: Tag, markOf: MarkOf): void {
  for (const tag of everyTag(top)) {
    if (tag.role !== "Link") continue;
    const text = wordsOf(tag, markOf).join(" ").replace(/\s+/g, " ").trim();
    for (const kid of tag.kids) {
      if (isTag(kid) || isMark(kid) || text === "") continue;
      pdf.dict(new Ref(kid.object)).set("Contents", textString(text));
    }
  }
}

/** All that is shown below a tag, piece by piece; of a figure its alternative text. */
function wordsOf(tag: Tag, markOf: MarkOf): string[] {
  const alt = tag.more.get("Alt");
  if (alt instanceof Text && tag.role === "Figure") return [alt.bytes];
  return tag.kids.flatMap((kid) => {
    if (isTag(kid)) return wordsOf(kid, markOf);
    const mark = markOf(kid);
    return mark === undefined ? [] : [textOf(mark)];
  });
}

/** By page: the marked content of all figures. */
export function figureMarks(top: Tag): Map<number, Set<number>> {
  const pages = new Map<number, Set<number>>();
  for (const figure of everyTag(top)) {
    if (figure.role !== "Figure") continue;
    for (const { kids } of everyTag(figure)) {
      for (const { page, mark } of kids.filter(isMark)) {
        pages.set(page, (pages.get(page) ?? new Set()).add(mark));
      }
    }
  }
  return pages;
}

/** Says where each figure stands, if it is on one page. */
export function describeFigures(top: Tag, markOf: MarkOf): void {
  for (const tag of everyTag(top)) {
    if (tag.role !== "Figure" || tag.attributes.size > 0) continue;
    const marks = tag.kids.filter(isMark);
    if (new Set(marks.map(({ page }) => page)).size !== 1) continue;
    const box = marks.reduce<Box>((sum, kid) => joined(sum, markOf(kid)?.box ?? sum), BOX_NONE);
    if (!box.every(Number.isFinite)) continue;
    tag.attributes = dict({
      O: new Name("Layout"),
      Placement: new Name("Block"),
      BBox: box.map((side) => Math.round(side * 100) / 100),
    });
  }
}

/** Counts the ids of table heads from 1, in order: the browser's depend on what it did before. */
export function renumberIds(top: Tag): void {
  const ids = new Map<string, Text>();
  for (const { more } of everyTag(top)) {
    const id = more.get("ID");
    if (id instanceof Text && !ids.has(id.bytes)) ids.set(id.bytes, new Text(`h${ids.size + 1}`));
    if (id instanceof Text) more.set("ID", ids.get(id.bytes) ?? id);
  }
  for (const { attributes } of everyTag(top)) {
    const heads = attributes.get("Headers");
    if (!Array.isArray(heads)) continue;
    attributes.set(
      "Headers",
      heads.map((head) => (head instanceof Text ? (ids.get(head.bytes) ?? head) : head)),
    );
  }
}
