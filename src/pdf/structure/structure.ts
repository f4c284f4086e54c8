/** Puts the tree of tags in order: nothing without a meaning, lists and tables as a reader expects them. */

import { Dict, textString } from "../objects/values.ts";
import { regularTable } from "./tables.ts";
import { isMark, isTag, type Kid, newTag, type Tag } from "./tags.ts";

/** Parts of a line of text. */
const INLINE = new Set(
  "Span Strong Em Sub Link Quote Code Reference Annot Ruby RB RT RP Note BibEntry".split(" "),
);
/** Hold other blocks and no text of their own. */
const GROUPS = new Set(
  "Document Part Art Sect Div BlockQuote Aside Index DocumentFragment".split(" "),
);
const TABLE_PARTS = new Set("Table TR THead TBody TFoot".split(" "));
/** Say something even when empty. */
const KEPT = new Set(["TH", "TD", "TR", "Figure", "Formula", "Form"]);

/** What a piece of marked content shows, as far as the tags care. */
export type Shows = "text" | "picture" | "nothing";

/**
 * Puts the tree in order and returns the marked content that belongs to no tag any more: lines and
 * areas behind the text.
 *
 * Wrappers that mean nothing give way to what is in them; text that stands in a group directly
 * becomes a paragraph; list items get a body; rows of tables get all their cells. Reading order and
 * texts stay as they are.
 */
export function orderTags(top: Tag, shows: (kid: Kid) => Shows): void {
  top.kids = inGroup(top.kids.flatMap((kid) => settled(kid, false, shows)));
}

/** What stands in the place of one kid. `inText` tells whether a block of text is above it. */
function settled(kid: Kid, inText: boolean, shows: (kid: Kid) => Shows): Kid[] {
  if (!isTag(kid)) return isMark(kid) && !isText(shows(kid)) ? [] : [kid];
  const { role } = kid;
  // A marker of a list may be drawn; a figure is.
  if (role === "Figure" || role === "Formula") return [{ ...kid, kids: [...contentOf(kid)] }];
  if (role === "Lbl") return [label(kid, shows)];
  if (role === "NonStruct") return dissolved(kid, inText, shows);
  const within = !GROUPS.has(role) && !TABLE_PARTS.has(role) && role !== "L";
  const kids = kid.kids.flatMap((one) => settled(one, within, shows));
  if (kids.length === 0 && !KEPT.has(role)) return [];
  return [{ ...kid, ...shaped(kid, kids) }];
}

function shaped(tag: Tag, kids: Kid[]): Partial<Tag> {
  if (tag.role === "L") return { kids: kids.map(asItem) };
  if (tag.role === "LI") return { kids: withBody(kids) };
  if (tag.role === "Table") return regularTable(kids);
  return { kids: GROUPS.has(tag.role) ? inGroup(kids) : kids };
}

const isText = (what: Shows) => what === "text" || what === "picture";

/** A wrapper without a meaning: what is in it, as a paragraph or a section where it is one. */
function dissolved(tag: Tag, inText: boolean, shows: (kid: Kid) => Shows): Kid[] {
  const kids = tag.kids.flatMap((one) => settled(one, inText, shows));
  if (inText || tag.kids.every((kid) => !isTag(kid)) || kids.length === 0) return kids;
  if (kids.every(isInline)) return [newTag("P", kids)];
  const blocks = inGroup(kids);
  const [first] = blocks;
  const headed = first !== undefined && isTag(first) && /^H[1-6]$/.test(first.role);
  return headed ? [newTag("Sect", blocks)] : blocks;
}

const isInline = (kid: Kid) => !isTag(kid) || INLINE.has(kid.role);

/** Makes paragraphs of the text that stands between blocks. */
function inGroup(kids: readonly Kid[]): Kid[] {
  const blocks: Kid[] = [];
  let paragraph: Tag | undefined;
  for (const kid of kids) {
    if (!isInline(kid)) {
      paragraph = undefined;
      blocks.push(kid);
    } else if (paragraph === undefined) {
      paragraph = newTag("P", [kid]);
      blocks.push(paragraph);
    } else paragraph.kids.push(kid);
  }
  return blocks;
}

/** All marked content below a tag. */
function* contentOf(tag: Tag): Generator<Kid> {
  for (const kid of tag.kids) {
    if (isTag(kid)) yield* contentOf(kid);
    else yield kid;
  }
}

/** A list's marker; one that is drawn is said to be a bullet. */
function label(tag: Tag, shows: (kid: Kid) => Shows): Tag {
  const kids = [...contentOf(tag)];
  const more = new Dict(tag.more);
  if (kids.every((kid) => shows(kid) !== "text")) more.set("ActualText", textString("•"));
  return { ...tag, kids, more };
}

function asItem(kid: Kid): Kid {
  if (isTag(kid) && (kid.role === "LI" || kid.role === "L" || kid.role === "Caption")) return kid;
  return newTag("LI", [newTag("LBody", [kid])]);
}

function withBody(kids: readonly Kid[]): Kid[] {
  const ofItem = (kid: Kid) => isTag(kid) && (kid.role === "Lbl" || kid.role === "LBody");
  const labels = kids.filter(ofItem);
  const rest = kids.filter((kid) => !ofItem(kid));
  return rest.length === 0 ? labels : [...labels, newTag("LBody", rest)];
}
