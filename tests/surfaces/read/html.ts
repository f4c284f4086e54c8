/** Reads a booklet's HTML file: what it says from top to bottom, its language, its links, its phone data. */
import { type DefaultTreeAdapterMap, parse } from "parse5";
import { type Block, type Cell, oneLine } from "./outline.ts";

type Node = DefaultTreeAdapterMap["node"];
type Element = DefaultTreeAdapterMap["element"];

export interface HtmlFile {
  readonly language: string;
  readonly title: string;
  readonly author: string;
  readonly paper: string;
  readonly blocks: readonly Block[];
  /** Words and address of each link to a telephone. */
  readonly calls: readonly { readonly text: string; readonly href: string }[];
  /** What the script is given, as JSON; undefined where the file has no script. */
  readonly phone: string | undefined;
}

export function readHtml(text: string): HtmlFile {
  const document = parse(withoutStyles(text));
  const root = find(document, (element) => element.tagName === "html");
  const body = find(document, (element) => element.tagName === "body");
  if (!root || !body) throw new Error("the HTML has no body");
  const title = find(document, (element) => element.tagName === "title");
  const author = find(document, (element) => attribute(element, "name") === "author");
  const data = find(document, (element) => attribute(element, "type") === "application/json");
  return {
    language: attribute(root, "lang") ?? "",
    title: title ? textOf(title) : "",
    author: author ? (attribute(author, "content") ?? "") : "",
    paper: /paper-(\w+)/.exec(attribute(root, "class") ?? "")?.[1] ?? "",
    blocks: blocksIn(body),
    calls: findAll(body, (element) => (attribute(element, "href") ?? "").startsWith("tel:")).map(
      (link) => ({ text: textOf(link), href: attribute(link, "href") ?? "" }),
    ),
    phone: data ? rawText(data) : undefined,
  };
}

/** Typeface and style sheets are the most of a file and say nothing. */
const withoutStyles = (text: string): string => text.replace(/<style>[\s\S]*?<\/style>/g, "");

const HEADING = /^h([1-6])$/;
const LINES = new Set(["p", "dt", "dd", "figcaption"]);
const SILENT = new Set(["script", "style", "template", "svg", "caption", "nav"]);
const BLOCKS = new Set([
  "p",
  "svg",
  "ul",
  "ol",
  "table",
  "div",
  "section",
  "dl",
  "h1",
  "h2",
  "h3",
  "h4",
]);

function blocksIn(element: Element): Block[] {
  return children(element).flatMap((child): Block[] => {
    if (isSilent(child)) return [];
    const { tagName } = child;
    const drawn = tagName === "svg" ? attribute(child, "aria-label") : undefined;
    if (drawn !== undefined) return [{ kind: "picture", text: oneLine(drawn) }];
    if (SILENT.has(tagName)) return [];
    const level = HEADING.exec(tagName)?.[1];
    if (level !== undefined)
      return [{ kind: "heading", level: Number(level), text: textOf(child) }];
    if (tagName === "table") return rowsOf(child);
    if (tagName === "li")
      return hasBlocks(child) ? blocksIn(child) : [{ kind: "item", text: textOf(child) }];
    if (LINES.has(tagName)) return [{ kind: "text", text: textOf(child) }];
    return blocksIn(child);
  });
}

function rowsOf(table: Element): Block[] {
  const rows = findAll(table, (element) => element.tagName === "tr");
  return rows.map((row) => ({ kind: "row", cells: children(row).map(cellOf) }));
}

function cellOf(cell: Element): Cell {
  const long = find(cell, isLongDate);
  return {
    head: cell.tagName === "th",
    text: textOf(cell),
    ...(long && { long: oneLine(long.childNodes.map(rawText).join("")) }),
  };
}

const hasBlocks = (element: Element): boolean =>
  children(element).some((child) => BLOCKS.has(child.tagName) || hasBlocks(child));

const isSilent = (element: Element): boolean => attribute(element, "aria-hidden") === "true";

const isElement = (node: Node): node is Element => "tagName" in node;

const children = (element: Element): Element[] => element.childNodes.filter(isElement);

const attribute = (element: Element, name: string): string | undefined =>
  element.attrs.find((one) => one.name === name)?.value;

function rawText(node: Node): string {
  if ("value" in node && node.nodeName === "#text") return node.value;
  if (isElement(node) && isSilentInLine(node)) return "";
  if (isElement(node) && node.tagName === "br") return " ";
  return "childNodes" in node ? node.childNodes.map(rawText).join("") : "";
}

/** A date in full stands beside the short one: either is shown, never both. */
const isLongDate = (element: Element): boolean => attribute(element, "class") === "day-long";

const isSilentInLine = (element: Element): boolean =>
  element.tagName === "svg" || attribute(element, "aria-hidden") === "true" || isLongDate(element);

const textOf = (node: Node): string => oneLine(rawText(node));

function find(node: Node, fits: (element: Element) => boolean): Element | undefined {
  return findAll(node, fits)[0];
}

function findAll(node: Node, fits: (element: Element) => boolean): Element[] {
  const here = isElement(node) && fits(node) ? [node] : [];
  const below =
    "childNodes" in node ? node.childNodes.flatMap((child) => findAll(child, fits)) : [];
  return [...here, ...below];
}
