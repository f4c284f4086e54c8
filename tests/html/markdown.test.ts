/** Markdown of cards and notes: what is rendered, and what prints as typed. */
import { expect, test } from "vitest";
import { renderMarkdown } from "../../src/html/markdown.ts";

const RENDERED: [string, string, string][] = [
  ["paragraphs", "One.\n\nTwo.", "<p>One.</p>\n<p>Two.</p>"],
  ["steps", "1. Up\n2. Down", "<ol>\n<li>Up</li>\n<li>Down</li>\n</ol>"],
  ["points", "- Up\n- Down", "<ul>\n<li>Up</li>\n<li>Down</li>\n</ul>"],
  ["emphasis", "**left** *foot*", "<p><strong>left</strong> <em>foot</em></p>"],
  ["a link to a page of the booklet", "[pain](#part-pain)", '<p><a href="#part-pain">pain</a></p>'],
  ["nothing", "", ""],
];

test.each(RENDERED)("renders %s", (_, text, html) => {
  expect(renderMarkdown(text)).toBe(html);
});

const AS_TYPED: [string, string][] = [
  ["HTML", "<b onclick=alert(1)>x</b> <script>y</script>"],
  ["an HTML block", "<div>\nx\n</div>"],
  ["a heading", "# Not a heading"],
  ["an underlined heading", "Not a heading\n==="],
  ["a picture", "![x](https://example.org/x.png)"],
  ["a link out", "[x](https://example.org)"],
  ["a link to a script", "[x](javascript:alert)"],
  ["an address", "www.example.org https://example.org <https://example.org>"],
  ["template code", "{{{name}}} {{> cover}}"],
  ["code", "`x` and\n\n    y"],
];

test.each(AS_TYPED)("prints %s as typed", (_, text) => {
  const html = renderMarkdown(text);
  expect(html).not.toMatch(/<(?!\/?p>)/);
  const printed = html
    .replaceAll(/<\/?p>/g, "")
    .replaceAll("&lt;", "<")
    .replaceAll("&gt;", ">")
    .replaceAll("&quot;", '"')
    .replaceAll("&amp;", "&");
  expect(printed.replaceAll(/\s+/g, " ")).toBe(text.replaceAll(/\s+/g, " "));
});
