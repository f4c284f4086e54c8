/** What a browser may do with a booklet: apply its one style element and run its one script, each known by its hash. */
import { createHash } from "node:crypto";
import { Fault } from "../faults/fault.ts";

/** A script for the end of the document. */
export interface BookletScript {
  readonly code: string;
  /** JSON text, which the script finds in the element `booklet-data`. */
  readonly data: string;
}

/**
 * The Content-Security-Policy of a document with this style element and, where there is one, this
 * script. Nothing else that stands in the document has an effect, and nothing is fetched or sent.
 */
export function policyFor(style: string, script: BookletScript | undefined): string {
  return [
    "default-src 'none'",
    `style-src ${sourceOf(style)}`,
    ...(script === undefined ? [] : [`script-src ${sourceOf(script.code)}`]),
    "img-src data:",
    "font-src data:",
    "base-uri 'none'",
    "form-action 'none'",
  ].join("; ");
}

/**
 * The text of the style element that `styles` stand in, with whatever a clinic's own document puts
 * around them; empty where they stand in none.
 */
export function styleElementText(html: string, styles: string): string {
  const at = html.indexOf(styles);
  const [opening = ""] = /^[\s\S]*<style\b[^>]*>/i.exec(html.slice(0, at)) ?? [];
  const after = html.slice(at + styles.length);
  const end = after.search(/<\/style/i);
  if (opening === "" || end < 0) return "";
  return html.slice(opening.length, at) + styles + after.slice(0, end);
}

/** The elements for a script: the place it draws in, its data and itself; empty where there is none. */
export function scriptElements(script: BookletScript | undefined): string {
  if (script === undefined) return "";
  const { code, data } = script;
  if (/<\/script|<!--/i.test(code)) {
    throw new Fault("internal", "The script of the booklet would end its own element.", {
      hint: "Write </script and <!-- in it with \\u003c.",
    });
  }
  return [
    '<div id="phone" hidden></div>',
    `<script type="application/json" id="booklet-data">${inElement(data)}</script>`,
    `<script>${code}</script>`,
  ].join("\n");
}

/** JSON that cannot end its element, nor a line of a script: all three stand only in strings. */
function inElement(json: string): string {
  return json.replace(
    /[<\u2028\u2029]/g,
    (letter) => `\\u${letter.charCodeAt(0).toString(16).padStart(4, "0")}`,
  );
}

/** The hash of an element's text, which a browser takes after it has read the HTML. */
function sourceOf(text: string): string {
  const read = text.replace(/\r\n?/g, "\n").replaceAll("\0", "\uFFFD");
  return `'sha256-${createHash("sha256").update(read).digest("base64")}'`;
}
