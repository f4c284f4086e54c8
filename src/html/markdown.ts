/** Turns the Markdown of cards and notes into HTML that is safe to print. */
import MarkdownIt from "markdown-it";

/**
 * Paragraphs, lists, emphasis and line breaks are all that a text of a booklet needs.
 *
 * Headings are left out, since the page has its own; so are HTML, pictures and addresses found in
 * the text. What is left out prints as it was typed.
 */
const markdown = new MarkdownIt("zero", { html: false, linkify: false, breaks: false }).enable([
  "list",
  "emphasis",
  "escape",
  "entity",
  "newline",
  "link",
]);

/** A link may only lead to another place of the same booklet. */
markdown.validateLink = (address) => /^#[\w-]+$/.test(address);

/** The HTML of a Markdown text, empty when the text is. */
export function renderMarkdown(text: string): string {
  return markdown.render(text).trim();
}
