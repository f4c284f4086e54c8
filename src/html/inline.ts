/** Finds what the booklet's policy would leave without effect in a template: styles and scripts amid the HTML. */

import Handlebars from "handlebars";
import { Fault } from "../faults/fault.ts";
import { frameOf } from "../read/source.ts";
import type { TemplateFile } from "./template-file.ts";

/** Without one of these a document would lose its safety, its looks or its text. */
const NEEDED = ["policy", "styles", "body", "scripts"];

/**
 * Refuses style attributes, handlers, scripts, and style elements but the one of `document`, which
 * also has to print all that makes a booklet. Faults: template-broken.
 *
 * The template is read with its expressions blotted out, so that one within a value does not end
 * it. What only comes about when it is filled is not seen here; it has no effect all the same.
 */
export function inlineFaults(
  name: string,
  { file, text }: TemplateFile,
  parsed: hbs.AST.Program,
): Fault[] {
  const blot = new Blot(text);
  blot.accept(parsed);
  const fault = (at: number, message: string, hint: string) => {
    const before = text.slice(0, at).split(/\r\n?|\n/);
    const place = { file, line: before.length, column: (before.at(-1) ?? "").length + 1 };
    return new Fault("template-broken", message, { place, frame: frameOf(text, place), hint });
  };
  const document = name === "document";
  const styles = document ? 1 : 0;
  const missing = NEEDED.filter((word) => document && !blot.printed.has(word));
  return [
    ...missing.map((word) => fault(0, `The document does not print ${word}.`, COMPARE)),
    ...inlineParts(blot.html, styles).map(({ at, what }) => fault(at, SAYS[what], HINTS[what])),
  ];
}

const COMPARE = "Compare it with the shipped document.hbs.";
const OWN_STYLES =
  "Rules of your own can stand after {{{styles}}} in the style element of your own document.hbs.";

const SAYS = {
  attribute: "A style attribute has no effect in a booklet.",
  style: "A style element of its own has no effect in a booklet.",
  handler: "A handler of events never runs in a booklet.",
  script: "A script of a template never runs in a booklet.",
};

const HINTS: Readonly<Record<keyof typeof SAYS, string>> = {
  attribute: `Give the element a class; for the page it is on write data-page="…". ${OWN_STYLES}`,
  style: OWN_STYLES,
  handler: "Take the attribute out.",
  script: "Take the element out.",
};

interface InlinePart {
  readonly at: number;
  readonly what: keyof typeof SAYS;
}

/** Stands for what an expression will print. */
const PRINTED = "\uFFFC";

/** The HTML of a template, letter by letter in its place; all else is blank. */
class Blot extends Handlebars.Visitor {
  /** Names of what it prints. */
  readonly printed = new Set<string>();
  readonly #text: string;
  readonly #lines: readonly number[];
  readonly #pieces: string[] = [];
  #length = 0;

  constructor(text: string) {
    super();
    this.#text = text;
    this.#lines = [
      0,
      ...[...text.matchAll(/\r\n?|\n/g)].map(({ 0: end, index }) => index + end.length),
    ];
  }

  get html(): string {
    return this.#pieces.join("");
  }

  override ContentStatement({ loc }: hbs.AST.ContentStatement): void {
    this.#put(loc, (piece) => piece);
  }

  override MustacheStatement({ loc, path }: hbs.AST.MustacheStatement): void {
    if (path.type === "PathExpression") this.printed.add((path as hbs.AST.PathExpression).original);
    this.#put(loc, (piece) => PRINTED.repeat(piece.length));
  }

  #put({ start, end }: hbs.AST.SourceLocation, show: (piece: string) => string): void {
    const [from, to] = [this.#offset(start), this.#offset(end)];
    this.#pieces.push(" ".repeat(from - this.#length), show(this.#text.slice(from, to)));
    this.#length = to;
  }

  #offset({ line, column }: hbs.AST.Position): number {
    return (this.#lines[line - 1] ?? 0) + column;
  }
}

/** A comment, which may have no end, or the start of a tag. */
const TAG = /<!--(?:-?>|[\s\S]*?(?:--!?>|$))|<([a-z][^\s/>]*)/gi;
/** An attribute with its value, as browsers read them. */
const ATTRIBUTE = /[\s/]*([^\s/>][^\s/>=]*)(\s*=\s*(?:"[^"]*"|'[^']*'|[^\s>]*))?/y;
/** Elements in which a tag is text, wherever they stand. */
const RAW = /^(script|style)$/;

/** The inline parts of a template in order; the first `styles` style elements are allowed. */
function inlineParts(html: string, styles: number): InlinePart[] {
  const found: InlinePart[] = [];
  let allowed = styles;
  const tags = new RegExp(TAG);
  for (let tag = tags.exec(html); tag !== null; tag = tags.exec(html)) {
    const name = (tag[1] ?? "").replace(/\uFFFC.*/, "").toLowerCase();
    if (name === "") continue;
    if (name === "script") found.push({ at: tag.index, what: "script" });
    if (name === "style" && allowed-- < 1) found.push({ at: tag.index, what: "style" });
    const attributes = inlineAttributes(html, tags.lastIndex);
    found.push(...attributes.found);
    tags.lastIndex = RAW.test(name) ? closing(html, name, attributes.end) : attributes.end;
  }
  return found;
}

function inlineAttributes(
  html: string,
  from: number,
): { readonly found: readonly InlinePart[]; readonly end: number } {
  const found: InlinePart[] = [];
  const attributes = new RegExp(ATTRIBUTE);
  attributes.lastIndex = from;
  let end = from;
  for (let one = attributes.exec(html); one !== null; one = attributes.exec(html)) {
    const [all, whole = "", value = ""] = one;
    // the name as far as the template writes it: {{kind}}style is a style where kind is empty
    const name = whole.replace(/^.*\uFFFC(?=[^\uFFFC])/, "").toLowerCase();
    const at = end + all.length - value.length - name.length;
    if (value !== "" && name === "style") found.push({ at, what: "attribute" });
    if (value !== "" && /^on./.test(name)) found.push({ at, what: "handler" });
    end = attributes.lastIndex;
  }
  return { found, end };
}

function closing(html: string, name: string, from: number): number {
  const end = html.slice(from).search(new RegExp(`</${name}`, "i"));
  return end < 0 ? html.length : from + end;
}
