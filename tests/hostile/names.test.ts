/** Markup, template code and odd letters typed by people: they print as typed and do nothing. */

import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { makeBooklet, makeProgram } from "../../src/booklet.ts";
import { loadAssets } from "../../src/html/assets.ts";
import { renderHtml } from "../../src/html/html.ts";
import { asSigned } from "../support/signed.ts";
import { change, DAY, DEMO, demoClinic, english, ROOT, shippedText } from "../support/world.ts";

const words = english();
const assets = await loadAssets(join(ROOT, "templates"), words);
const FILE = `${DEMO}/achilles.md`;

function htmlWith(edits: readonly (readonly [string, string])[]): string {
  const text = edits.reduce((all, [from, to]) => change(all, from, to), shippedText(FILE));
  const workspace = demoClinic({ [FILE]: text });
  const { value, faults } = makeProgram(workspace, FILE);
  if (!value) throw new Error(faults.map(({ message }) => message).join("\n"));
  return renderHtml(makeBooklet(asSigned(value), workspace, words, DAY), assets);
}

const quoted = (text: string) => JSON.stringify(text);

/** What a reader sees of the HTML. */
const read = (html: string) =>
  html
    .replace(/<style>[\s\S]*?<\/style>/g, "")
    .replace(/<[^>]*>/g, "")
    .replace(/&#x([0-9A-F]+);/gi, (_, hex) => String.fromCodePoint(Number.parseInt(hex, 16)))
    .replaceAll("&lt;", "<")
    .replaceAll("&gt;", ">")
    .replaceAll("&quot;", '"')
    .replaceAll("&amp;", "&");

describe("a name prints as typed", () => {
  test.each([
    ["markup", "<b>Edda</b> & Co"],
    ["a script", "<script>alert(1)</script>"],
    ["an image", '<img src=x onerror="alert(1)">'],
    ["template code", "{{name}} {{{name}}} {{> cover}}"],
    ["a helper call", '{{t "stop.heading"}}'],
    ["message format", "{n, plural, one {x} other {y}} '{' it''s"],
    ["placeholders of cards", "{side} {other}"],
    ["an entity", "&amp; &lt;b&gt;"],
    ["Markdown", "*Edda* [x](javascript:alert(1))"],
    ["the end of a style", "</style><script>alert(1)</script>"],
    ["quotes and a backslash", `Edda "the 'Rock'" \\ O'Neil`],
    ["replacement patterns", "$& $1 $` $'"],
    ["Polish and Czech letters", "Łucja Ďábelská-Żółć"],
    ["Greek", "Ελένη"],
  ])("%s", (_name, name) => {
    const html = htmlWith([["name: Edda Marlowe", `name: ${quoted(name)}`]]);
    expect(read(html)).toContain(name);
    expect(html).not.toMatch(/<script|onerror="alert|<b>Edda/);
  });
});

describe("the clinician's note is Markdown without HTML", () => {
  test.each([
    ["HTML", "<script>alert(1)</script>"],
    ["a link outside", "[look](https://example.org/x)"],
    ["a script link", "[look](javascript:alert(1))"],
    ["a picture", "![x](https://example.org/x.png)"],
    ["a data picture", "![x](data:image/svg+xml,<svg onload=alert(1)>)"],
    ["template code", "{{{client.name}}}"],
  ])("%s", (_name, note) => {
    const html = htmlWith([["Dear Edda,", note]]);
    expect(html).not.toMatch(/<script|<svg onload|href="(?!tel:|mailto:|#)|src="(?!data:image)/);
    expect(html).not.toContain('example.org/x.png"');
  });
});
