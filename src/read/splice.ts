/** Makes edits in a file's front matter so that every byte that they do not concern stays as it is. */
import { isDeepStrictEqual } from "node:util";
import {
  type Document,
  isCollection,
  isMap,
  isNode,
  isPair,
  isScalar,
  isSeq,
  type Pair,
  parseDocument,
  stringify,
  type YAMLMap,
  type YAMLSeq,
} from "yaml";
import { type Edit, edited, isGroup, type Path, type Value } from "../edits/edit.ts";
import { splitMarkdown, YAML_OPTIONS } from "./front-matter.ts";
import { blockItem, blockPair, flowText } from "./yaml-text.ts";

export interface Spliced {
  readonly text: string;
  /** Fields of the front matter that had to be written anew as a whole; comments inside them are gone. */
  readonly reprinted: readonly string[];
}

/**
 * A file's text with the edits made in its front matter. Only the text of the value is replaced, or a
 * line or item put in:
 *
 * - A new item stands behind the last one and its comment, a new field behind the last of its group, a new
 *   field of the file at the end of the front matter. Comments below what was last stay below what is new.
 * - A group that stays is changed field by field. A list, text or number that is replaced takes the
 *   comments inside it with it; comments above it and behind it stay.
 * - New lines end as the file's do.
 *
 * What comes out is parsed again and has to hold exactly the data that the edits make. Where it does not,
 * the field of the file that was edited is written anew, and named in `reprinted`. Undefined where that
 * does not hold the data either, or where the front matter cannot be read.
 */
export function spliceFrontMatter(text: string, edits: readonly Edit[]): Spliced | undefined {
  const place = yamlPlace(text);
  const before = splitMarkdown("", text).split;
  if (place === undefined || before === undefined) return undefined;
  const reprinted: string[] = [];
  let yaml = text.slice(place.from, place.to);
  for (const edit of edits) {
    const made = madeIn(yaml, edit);
    if (made === undefined) return undefined;
    yaml = made.yaml;
    if (made.reprinted !== undefined) reprinted.push(made.reprinted);
  }
  const whole = `${text.slice(0, place.from)}${yaml}${text.slice(place.to)}`;
  const after = splitMarkdown("", whole).split;
  const holds =
    after !== undefined &&
    after.body === before.body &&
    isDeepStrictEqual(after.data, edited(before.data, edits));
  return holds ? { text: whole, reprinted: [...new Set(reprinted)] } : undefined;
}

/** Where the front matter's YAML stands in a file, its last line break included. */
function yamlPlace(text: string): { readonly from: number; readonly to: number } | undefined {
  const from = /^\uFEFF?---[^\r\n]*\r?\n/.exec(text)?.[0].length;
  if (from === undefined) return undefined;
  const to = text.indexOf("\n---", from - 1) + 1;
  return to < from ? undefined : { from, to };
}

interface Made {
  readonly yaml: string;
  readonly reprinted?: string;
}

/** YAML with one edit made, by splice or by writing its field anew; undefined where neither is right. */
function madeIn(yaml: string, edit: Edit): Made | undefined {
  const document = parseDocument(yaml, YAML_OPTIONS);
  if (document.errors.length > 0) return undefined;
  const wanted = edited(document.toJS({ maxAliasCount: 0 }), [edit]);
  const parts = partsOf(document, edit);
  const spliced = parts ? allIn(yaml, parts) : splicedIn(yaml, document, edit);
  if (spliced !== undefined && holds(spliced, wanted)) return { yaml: spliced };
  const name = String(edit.path[0]);
  const anew = isGroup(wanted) ? fieldAnew(yaml, document, name, wanted[name]) : undefined;
  return anew !== undefined && holds(anew, wanted) ? { yaml: anew, reprinted: name } : undefined;
}

function allIn(yaml: string, edits: readonly Edit[]): string | undefined {
  let now = yaml;
  for (const edit of edits) {
    const made = madeIn(now, edit);
    if (made === undefined || made.reprinted !== undefined) return undefined;
    now = made.yaml;
  }
  return now;
}

function holds(yaml: string, wanted: unknown): boolean {
  const document = parseDocument(yaml, YAML_OPTIONS);
  return (
    document.errors.length === 0 && isDeepStrictEqual(document.toJS({ maxAliasCount: 0 }), wanted)
  );
}

/** A group over a group with no other fields: an edit for each field that differs. */
function partsOf(document: Document, { kind, path, value }: Edit): Edit[] | undefined {
  const node = document.getIn(path, true);
  if (kind !== "set" || !isMap(node) || !isGroup(value)) return undefined;
  const now: unknown = node.toJS(document);
  if (!isGroup(now) || !Object.keys(now).every((name) => name in value)) return undefined;
  return Object.entries(value as Readonly<Record<string, Value>>)
    .filter(([name, one]) => !isDeepStrictEqual(now[name], one))
    .map(([name, one]) => ({ kind: "set", path: [...path, name], value: one }));
}

function splicedIn(
  yaml: string,
  document: Document,
  { kind, path, value }: Edit,
): string | undefined {
  const inner = kind === "append" ? [value] : value;
  let node: unknown = document.contents;
  for (const [depth, key] of path.entries()) {
    const rest = nested(path.slice(depth + 1), inner);
    if (isMap(node)) {
      const pair: Pair | undefined = node.items.find((item) => keyOf(item) === key);
      if (pair === undefined) return withPair(yaml, node, String(key), rest, depth === 0);
      if (isEmpty(pair.value)) return withFirstValue(yaml, node, pair, rest);
      node = pair.value;
    } else if (isSeq(node) && typeof key === "number") {
      node = node.items[key];
    } else return undefined;
  }
  if (kind === "append") return isSeq(node) ? withItem(yaml, node, value) : undefined;
  const [from, to] = [startOf(node), endOf(yaml, node)];
  if (from === undefined || to === undefined) return undefined;
  return replaced(yaml, from, to, flowText(value));
}

/** A value inside groups that are not there yet. */
function nested(path: Path, value: Value): Value {
  return path.reduceRight<Value>((inner, key) => ({ [String(key)]: inner }), value);
}

/** A group with one field more. */
function withPair(
  yaml: string,
  map: YAMLMap,
  key: string,
  value: Value,
  isTop: boolean,
): string | undefined {
  if (map.flow) return withFlowItem(yaml, map, `${flowText(key)}: ${flowText(value)}`);
  const [from, to] = [startOf(map.items[0]), endOf(yaml, map)];
  if (from === undefined || to === undefined) return undefined;
  const indent = " ".repeat(from - lineStart(yaml, from));
  return withLines(yaml, isTop ? yaml.length : lineEnd(yaml, to), blockPair(indent, key, value));
}

/** A field that was left empty. */
function withFirstValue(yaml: string, map: YAMLMap, pair: Pair, value: Value): string | undefined {
  const key = isNode(pair.key) ? pair.key.range : undefined;
  if (!key) return undefined;
  const colon = yaml.indexOf(":", key[1]) + 1;
  if (!map.flow && Array.isArray(value) && value.some(isGroup)) {
    const indent = " ".repeat(key[0] - lineStart(yaml, key[0]) + 2);
    const lines = value.flatMap((item: Value) => blockItem(indent, item));
    return withLines(yaml, lineEnd(yaml, colon), lines);
  }
  return replaced(yaml, colon, colon, ` ${flowText(value)}`);
}

/** A list with one item more, written as its last item is. */
function withItem(yaml: string, list: YAMLSeq, value: Value): string | undefined {
  if (list.flow) return withFlowItem(yaml, list, flowText(value));
  const [from, to] = [startOf(list), endOf(yaml, list)];
  if (from === undefined || to === undefined) return undefined;
  const indent = " ".repeat(from - lineStart(yaml, from));
  const last = list.items.at(-1);
  const lines =
    isMap(last) && !last.flow ? blockItem(indent, value) : [`${indent}- ${flowText(value)}`];
  return withLines(yaml, lineEnd(yaml, to), lines);
}

/** A group or list in brackets with one item more. */
function withFlowItem(yaml: string, all: YAMLMap | YAMLSeq, item: string): string | undefined {
  const range = all.range;
  if (!range) return undefined;
  const close = range[1] - 1;
  const last = all.items.at(-1);
  if (last === undefined) {
    if (yaml.slice(range[0] + 1, close).trim() !== "") return undefined;
    return replaced(yaml, range[0] + 1, close, isMap(all) ? ` ${item} ` : item);
  }
  const end = endOf(yaml, last);
  if (end === undefined) return undefined;
  const tail = yaml.slice(end, close);
  const comma = /^[ \t]*,/.exec(tail)?.[0].length;
  if (!tail.includes("\n")) {
    const at = end + (comma ?? 0);
    return replaced(yaml, at, at, comma === undefined ? `, ${item}` : ` ${item}`);
  }
  const from = startOf(last) ?? end;
  const lead = /^[ \t]*/.exec(yaml.slice(lineStart(yaml, from), from))?.[0] ?? "";
  const indent = lineStart(yaml, from) + lead.length === from ? lead : `${lead}  `;
  const line = `${indent}${item}${comma === undefined ? "" : ","}`;
  const below = withLines(yaml, lineEnd(yaml, end), [line]);
  return comma === undefined ? replaced(below, end, end, ",") : below;
}

/** A field of the file written anew; a new one stands at the end. */
function fieldAnew(yaml: string, document: Document, name: string, value: unknown): string {
  const text = stringify({ [name]: value }, { ...YAML_OPTIONS, lineWidth: 0 }).trimEnd();
  const lines = text.split("\n");
  const map = document.contents;
  const pair = isMap(map) ? map.items.find((item) => keyOf(item) === name) : undefined;
  const [from, to] = [startOf(pair), endOf(yaml, pair)];
  if (from === undefined || to === undefined) return withLines(yaml, yaml.length, lines);
  return replaced(yaml, from, to, lines.join(lineBreak(yaml)));
}

const replaced = (text: string, from: number, to: number, by: string): string =>
  `${text.slice(0, from)}${by}${text.slice(to)}`;

/** Whole lines put in where a line begins. */
function withLines(yaml: string, at: number, lines: readonly string[]): string {
  const end = lineBreak(yaml);
  return replaced(yaml, at, at, lines.map((line) => `${line}${end}`).join(""));
}

const lineBreak = (text: string): string => (/^[^\n]*\r\n/.test(text) ? "\r\n" : "\n");
const lineStart = (text: string, at: number): number => text.lastIndexOf("\n", at - 1) + 1;

/** The start of the next line. */
function lineEnd(text: string, at: number): number {
  const end = text.indexOf("\n", at);
  return end < 0 ? text.length : end + 1;
}

const keyOf = (pair: Pair): unknown => (isScalar(pair.key) ? pair.key.value : pair.key);

/** Whether nothing is written where a value could stand. */
const isEmpty = (value: unknown): boolean =>
  value === null ||
  (isScalar(value) && value.value === null && value.range?.[0] === value.range?.[1]);

function startOf(node: unknown): number | undefined {
  if (isPair(node)) return startOf(node.key);
  return isNode(node) ? node.range?.[0] : undefined;
}

/** The end of what is written of a node, without line breaks and comments behind it. */
function endOf(yaml: string, node: unknown): number | undefined {
  if (isPair(node)) return endOf(yaml, isEmpty(node.value) ? node.key : node.value);
  if (!isNode(node) || !node.range) return undefined;
  if (isCollection(node) && !node.flow) return endOf(yaml, node.items.at(-1));
  const [from, to] = node.range;
  return from + yaml.slice(from, to).trimEnd().length;
}
