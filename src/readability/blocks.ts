/** The running text of Markdown, paragraph by paragraph and item by item, with where each line stands. */
import MarkdownIt from "markdown-it";

/** A paragraph or list item. Headings are none: they are labels, not sentences. */
export interface Block {
  /** The text as typed; its lines as they were broken. */
  readonly text: string;
  /** For each line of `text`, the line and column of the Markdown at which it begins, from 0. */
  readonly lines: readonly { readonly line: number; readonly column: number }[];
}

const markdown = new MarkdownIt("zero").enable(["list", "heading", "lheading", "blockquote", "hr"]);

/** One line that begins as no heading, list, quotation or rule does: a block as it stands. */
const ONE_LINE = /^[\p{L}“"'‘({][^\r\n]*$/u;

/** The blocks of a Markdown text in their order. */
export function blocksOf(text: string): readonly Block[] {
  if (ONE_LINE.test(text)) return [{ text, lines: [{ line: 0, column: 0 }] }];
  const typed = text.split(/\r\n?|\n/);
  const tokens = markdown.parse(text, {});
  return tokens.flatMap((token, index) => {
    if (token.type !== "inline" || token.content.trim() === "") return [];
    if (tokens[index - 1]?.type === "heading_open") return [];
    const first = token.map?.[0] ?? 0;
    const lines = token.content.split("\n").map((part, offset) => ({
      line: first + offset,
      column: Math.max(0, (typed[first + offset] ?? "").indexOf(part)),
    }));
    return [{ text: token.content, lines }];
  });
}
