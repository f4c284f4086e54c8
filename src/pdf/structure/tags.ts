/** The tree of tags of a PDF as plain nodes: read from its objects, and written back to them. */
import { broken } from "../objects/broken.ts";
import type { PdfObjects } from "../objects/objects.ts";
import { Dict, dict, Name, Ref, ref, Text, type Value } from "../objects/values.ts";

/** A piece of marked content of a page. */
export interface MarkKid {
  readonly page: number;
  readonly mark: number;
}
/** An annotation, such as the area of a link. */
export interface ObjectKid {
  readonly page: number;
  readonly object: number;
}
export type Kid = Tag | MarkKid | ObjectKid;

export interface Tag {
  role: string;
  kids: Kid[];
  /** What is said of a list or a table cell, without what goes without saying. */
  attributes: Dict;
  /** Alternative text, id, language and so on. */
  readonly more: Dict;
  /** Object that it was read from; undefined for a new one. */
  readonly object: number | undefined;
}

export const isTag = (kid: Kid): kid is Tag => (kid as Tag).role !== undefined;
export const isMark = (kid: Kid): kid is MarkKid => (kid as MarkKid).mark !== undefined;

export function newTag(role: string, kids: Kid[] = []): Tag {
  return { role, kids, attributes: NOTHING, more: NOTHING, object: undefined };
}

/** The tag and all below it, in reading order. */
export function everyTag(tag: Tag, found: Tag[] = []): Tag[] {
  found.push(tag);
  for (const kid of tag.kids) if (isTag(kid)) everyTag(kid, found);
  return found;
}

/** For all that have none; never changed. */
const NOTHING = new Dict();

const DEPTH = 200;
const STRUCTURE = new Set(["Type", "S", "P", "K", "Pg", "A"]);

/** Reads the tree. Throws `pdf-broken` when there is none or it is not a tree. */
export function readTags(pdf: PdfObjects): Tag {
  const root = pdf.dict(pdf.dict(pdf.root).get("StructTreeRoot"));
  const reader = new TagReader(pdf);
  const kids = pdf.items(root.get("K")).flatMap((kid) => reader.kid(kid, undefined, 0));
  const [top, ...others] = kids;
  if (top === undefined || !isTag(top)) throw broken("It has no tags.");
  if (others.length > 0) throw broken("It has more than one tree of tags.");
  return top;
}

class TagReader {
  readonly #pdf: PdfObjects;
  readonly #seen = new Set<number>();

  constructor(pdf: PdfObjects) {
    this.#pdf = pdf;
  }

  /** What a kid is; `above` is the page of the tag that it belongs to. Nothing where it is none. */
  kid(value: Value, above: number | undefined, depth: number): Kid[] {
    if (depth > DEPTH) throw broken("Its tags lie too deep within each other.");
    if (typeof value === "number") return [markOf(above, value)];
    if (value instanceof Ref) {
      if (this.#seen.has(value.object)) throw broken("Its tags lead in a circle.");
      this.#seen.add(value.object);
    }
    const entries = this.#pdf.dict(value);
    const page = refOf(entries.get("Pg")) ?? above;
    const annotation = refOf(entries.get("Obj"));
    if (annotation !== undefined) return [{ page: page ?? 0, object: annotation }];
    const mark = entries.get("MCID");
    if (typeof mark === "number") return [markOf(page, mark)];
    const role = entries.get("S");
    if (!(role instanceof Name)) return [];
    const kids: Kid[] = [];
    for (const one of this.#pdf.items(entries.get("K"))) {
      kids.push(...this.kid(one, page, depth + 1));
    }
    let more = NOTHING;
    entries.each((key, one) => {
      if (STRUCTURE.has(key)) return;
      if (more === NOTHING) more = new Dict();
      more.add(key, one);
    });
    const attributes = readAttributes(this.#pdf, entries);
    return [{ role: role.text, kids, attributes, more, object: refOf(value) }];
  }
}

/** More than any page has: a list of that length can still be written. */
const MARKS = 1e6;

function markOf(page: number | undefined, mark: number): MarkKid {
  if (page === undefined) throw broken("A tag names no page.");
  if (!Number.isInteger(mark) || mark < 0 || mark > MARKS) throw broken("A tag has no such mark.");
  return { page, mark };
}

function refOf(value: Value | undefined): number | undefined {
  return value instanceof Ref ? value.object : undefined;
}

/** One dictionary of all attributes; a tag has only ever attributes of one owner. */
function readAttributes(pdf: PdfObjects, entries: Dict): Dict {
  if (!entries.has("A")) return NOTHING;
  const all = new Dict();
  for (const one of pdf.items(entries.get("A"))) {
    pdf.dict(one).each((key, value) => {
      if ((key === "RowSpan" || key === "ColSpan") && value === 1) return;
      if (key === "ListNumbering" && value instanceof Name && value.text === "None") return;
      all.set(key, value);
    });
  }
  return all.size > 1 ? all : NOTHING;
}

/** Tags that are none of PDF 1.7, and what is nearest to them there. */
const NEAREST: Readonly<Record<string, string>> = {
  Strong: "Span",
  Em: "Span",
  Sub: "Span",
  Title: "P",
  Aside: "Div",
  FENote: "Note",
  DocumentFragment: "Div",
};

/** All roles of PDF 1.7. */
const STANDARD: ReadonlySet<string> = new Set(
  `Document Part Art Sect Div BlockQuote Caption TOC TOCI Index NonStruct Private P H H1 H2 H3 H4 H5
  H6 L LI Lbl LBody Table TR TH TD THead TBody TFoot Span Quote Note Reference BibEntry Code Link
  Annot Ruby RB RT RP Warichu WT WP Figure Formula Form`.split(/\s+/),
);

/** Writes the tree: elements, where each piece of content and each id belongs, and a map of roles. */
export function writeTags(pdf: PdfObjects, top: Tag): void {
  const root = pdf.dict(pdf.root).get("StructTreeRoot");
  if (!(root instanceof Ref)) throw broken("It has no tags.");
  const owners = new Owners(pdf);
  const roles = new Map<string, Value>();
  const ids: [string, Ref][] = [];
  const refs = new Map<Tag, Ref>();
  for (const tag of everyTag(top)) {
    refs.set(tag, tag.object === undefined ? pdf.add(null) : ref(tag.object));
    const nearest = STANDARD.has(tag.role) ? undefined : (NEAREST[tag.role] ?? "Div");
    if (nearest !== undefined) roles.set(tag.role, new Name(nearest));
  }
  const write = (tag: Tag, parent: Ref) => {
    const self = refs.get(tag) as Ref;
    const pages = new Set(tag.kids.flatMap((kid) => (isTag(kid) ? [] : [kid.page])));
    const [page] = pages.size === 1 ? pages : [];
    const kids = tag.kids.map((kid): Value => {
      if (isTag(kid)) return refs.get(kid) as Ref;
      owners.add(kid, self);
      const own = page === undefined ? ref(kid.page) : undefined;
      if (!isMark(kid)) return dict({ Type: new Name("OBJR"), Obj: ref(kid.object), Pg: own });
      if (own === undefined) return kid.mark;
      return dict({ Type: new Name("MCR"), Pg: own, MCID: kid.mark });
    });
    const id = tag.more.get("ID");
    if (id instanceof Text) ids.push([id.bytes, self]);
    const entries = new Dict().add("S", new Name(tag.role)).add("P", parent);
    if (page !== undefined) entries.add("Pg", ref(page));
    if (kids.length > 0) entries.add("K", kids.length === 1 ? (kids[0] as Value) : kids);
    if (tag.attributes.size > 0) entries.add("A", tag.attributes);
    tag.more.each((key, one) => void entries.add(key, one));
    pdf.set(self.object, entries);
    for (const kid of tag.kids) if (isTag(kid)) write(kid, self);
  };
  write(top, root);
  ids.sort(([a], [b]) => (a < b ? -1 : 1));
  pdf.set(
    root.object,
    dict({
      Type: new Name("StructTreeRoot"),
      K: refs.get(top),
      ...owners.tree(),
      IDTree: ids.length === 0 ? undefined : idTree(ids),
      RoleMap: roles.size === 0 ? undefined : new Dict([...roles].sort()),
    }),
  );
  dropLost(pdf, new Set([...refs.values()].map(({ object }) => object)));
}

function idTree(ids: readonly [string, Ref][]): Dict {
  return dict({ Names: ids.flatMap(([id, owner]): Value[] => [new Text(id), owner]) });
}

/** Which tag each piece of marked content and each annotation belongs to. */
class Owners {
  readonly #pdf: PdfObjects;
  readonly #pages = new Map<number, Ref[]>();
  readonly #objects: [number, Ref][] = [];

  constructor(pdf: PdfObjects) {
    this.#pdf = pdf;
  }

  add(kid: MarkKid | ObjectKid, owner: Ref): void {
    if (isMark(kid)) {
      const marks = this.#pages.get(kid.page) ?? [];
      this.#pages.set(kid.page, marks);
      marks[kid.mark] = owner;
    } else this.#objects.push([kid.object, owner]);
  }

  /** Numbers pages and annotations anew, and lists their owners by these numbers. */
  tree(): { ParentTree: Dict; ParentTreeNextKey: number } {
    const list: Value[] = [];
    let key = 0;
    for (const [page, marks] of this.#pages) {
      this.#pdf.dict(ref(page)).set("StructParents", key);
      list.push(key++, this.#pdf.add(Array.from(marks, (owner) => owner ?? null)));
    }
    for (const [object, owner] of this.#objects) {
      this.#pdf.dict(ref(object)).set("StructParent", key);
      list.push(key++, owner);
    }
    return { ParentTree: dict({ Nums: list }), ParentTreeNextKey: key };
  }
}

/** An outline entry may name a tag that is no more. */
function dropLost(pdf: PdfObjects, tags: ReadonlySet<number>): void {
  const open = [...pdf.items(pdf.dict(pdf.dict(pdf.root).get("Outlines")).get("First"))];
  const seen = new Set<number>();
  for (let one = open.pop(); one !== undefined; one = open.pop()) {
    if (!(one instanceof Ref) || seen.has(one.object)) continue;
    seen.add(one.object);
    const entry = pdf.dict(one);
    const tag = entry.get("SE");
    if (tag !== undefined && !(tag instanceof Ref && tags.has(tag.object))) entry.delete("SE");
    for (const key of ["Next", "First"]) open.push(...pdf.items(entry.get(key)));
  }
}
