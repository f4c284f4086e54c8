/** Decides whether a finished PDF may say that it is made for everyone: what is still missing. */
import type { PdfFont } from "../fonts/fonts.ts";
import type { PdfObjects } from "../objects/objects.ts";
import { Name, Ref, Text, type Value } from "../objects/values.ts";
import type { About } from "../structure/metadata.ts";
import { width } from "../structure/tables.ts";
import { everyTag, isMark, isTag, type Tag } from "../structure/tags.ts";

export interface Finished {
  readonly about: About;
  readonly tags: Tag;
  /** By page object: the numbers of its marked content. All else in a page is an artifact. */
  readonly marked: ReadonlyMap<number, ReadonlySet<number>>;
  readonly fonts: readonly PdfFont[];
  /** Whether some glyph stands for a missing one, or for no character. */
  readonly missing: boolean;
  readonly unnamed: boolean;
}

/** The one gap that no reader can make up for: a box stands where a character should. */
export const MISSING_GLYPH = "A character has no glyph.";

/** All reasons against claiming PDF/UA-1; none when the file may claim it. */
export function gapsOf(pdf: PdfObjects, finished: Finished): string[] {
  return [
    ...gapsOfDocument(finished),
    ...gapsOfContent(finished),
    ...everyTag(finished.tags).flatMap(gapsOfTag),
    ...gapsOfHeadings(finished.tags),
    ...gapsOfAnnotations(pdf, finished),
  ];
}

function gapsOfDocument({ about, fonts, missing, unnamed }: Finished): string[] {
  return [
    ...(about.title === "" ? ["It has no title."] : []),
    ...(about.language === "" ? ["It names no language."] : []),
    ...fonts
      .filter((font) => !font.embedded)
      .map((font) => `The font ${font.name} is not embedded.`),
    ...(missing ? [MISSING_GLYPH] : []),
    ...(unnamed ? ["A glyph has no character."] : []),
  ];
}

/** Every piece of marked content belongs to one tag, and every tag's content is there. */
function gapsOfContent({ tags, marked }: Finished): string[] {
  const gaps: string[] = [];
  const owned = new Map<number, Set<number>>();
  for (const tag of everyTag(tags)) {
    for (const kid of tag.kids) {
      if (!isMark(kid)) continue;
      const marks = owned.get(kid.page) ?? new Set();
      owned.set(kid.page, marks);
      if (marks.has(kid.mark)) gaps.push("Some content belongs to two tags.");
      marks.add(kid.mark);
      if (!marked.get(kid.page)?.has(kid.mark)) gaps.push(`A ${tag.role} has lost its content.`);
    }
  }
  for (const [page, marks] of marked) {
    for (const mark of marks) {
      if (!owned.get(page)?.has(mark)) gaps.push("Some content belongs to no tag.");
    }
  }
  return gaps;
}

/** What may stand directly within lists and tables. */
const WITHIN: Readonly<Record<string, ReadonlySet<string>>> = {
  L: new Set(["LI", "L", "Caption"]),
  LI: new Set(["Lbl", "LBody"]),
  Table: new Set(["TR", "THead", "TBody", "TFoot", "Caption"]),
  TR: new Set(["TH", "TD"]),
  THead: new Set(["TR"]),
  TBody: new Set(["TR"]),
  TFoot: new Set(["TR"]),
};
const ABOVE: Readonly<Record<string, ReadonlySet<string>>> = {
  LI: new Set(["L"]),
  LBody: new Set(["LI"]),
  TR: new Set(["Table", "THead", "TBody", "TFoot"]),
  TH: new Set(["TR"]),
  TD: new Set(["TR"]),
};

function gapsOfTag(tag: Tag): string[] {
  const gaps: string[] = [];
  const allowed = WITHIN[tag.role];
  for (const kid of tag.kids) {
    const role = isTag(kid) ? kid.role : "content";
    if (allowed !== undefined && !allowed.has(role)) gaps.push(`A ${tag.role} holds ${role}.`);
    const above = ABOVE[role];
    if (above !== undefined && !above.has(tag.role)) gaps.push(`A ${role} is in a ${tag.role}.`);
  }
  if ((tag.role === "Figure" || tag.role === "Formula") && !saysSomething(tag)) {
    gaps.push(`A ${tag.role} has no alternative text.`);
  }
  if (tag.role === "TH" && !tag.attributes.has("Scope") && !tag.more.has("ID")) {
    gaps.push("A table head does not say what it is the head of.");
  }
  if (tag.role === "Table") gaps.push(...gapsOfTable(tag));
  if (tag.role === "Note" && !tag.more.has("ID")) gaps.push("A Note has no id.");
  return gaps;
}

function saysSomething(tag: Tag): boolean {
  const alt = tag.more.get("Alt") ?? tag.more.get("ActualText");
  return alt instanceof Text && alt.bytes.trim() !== "";
}

function gapsOfTable(table: Tag): string[] {
  const rows = everyTag(table).filter(({ role }) => role === "TR");
  const spanning = rows.some((row) =>
    row.kids.some((cell) => isTag(cell) && cell.attributes.has("RowSpan")),
  );
  if (spanning) return ["A table has cells over several rows, which are not checked."];
  return new Set(rows.map(width)).size > 1 ? ["A table has rows of different widths."] : [];
}

/** Headings begin with the first level and never leave one out on the way down. */
function gapsOfHeadings(top: Tag): string[] {
  let level = 0;
  for (const { role } of everyTag(top)) {
    const [, digit] = /^H([1-6])$/.exec(role) ?? [];
    if (role === "H") return ["A heading has no level."];
    if (digit === undefined) continue;
    if (Number(digit) > level + 1) return [`The heading levels jump to ${role}.`];
    level = Number(digit);
  }
  return [];
}

function gapsOfAnnotations(pdf: PdfObjects, { tags, marked }: Finished): string[] {
  const gaps: string[] = [];
  const owners = new Map<number, string>();
  for (const tag of everyTag(tags)) {
    for (const kid of tag.kids)
      if ("object" in kid && !isTag(kid)) owners.set(kid.object, tag.role);
  }
  for (const page of marked.keys()) {
    const entries = pdf.dict(new Ref(page));
    const annotations = pdf.items(entries.get("Annots"));
    const tabs = entries.get("Tabs");
    if (annotations.length > 0 && !(tabs instanceof Name && tabs.text === "S")) {
      gaps.push("A page has links in no order.");
    }
    gaps.push(...annotations.flatMap((one) => gapsOfLink(pdf, one, owners)));
  }
  if (pdf.dict(pdf.root).has("AcroForm")) gaps.push("It has a form, which is not checked.");
  return gaps;
}

/** Nothing but links with a tag and a description is known to be in order. */
function gapsOfLink(pdf: PdfObjects, value: Value, owners: ReadonlyMap<number, string>): string[] {
  const entries = pdf.dict(value);
  const subtype = entries.get("Subtype");
  if (!(value instanceof Ref) || !(subtype instanceof Name) || subtype.text !== "Link") {
    return ["A page has something on it that is not checked."];
  }
  const contents = entries.get("Contents");
  const described = contents instanceof Text && contents.bytes !== "";
  return [
    ...(owners.get(value.object) === "Link" ? [] : ["A link has no tag."]),
    ...(described ? [] : ["A link has no description."]),
  ];
}
