/** A page as someone reads it: headings, paragraphs, items of lists, rows of tables, one after another. */

export type Block =
  | { readonly kind: "heading"; readonly level: number; readonly text: string }
  | { readonly kind: "text"; readonly text: string }
  | { readonly kind: "item"; readonly text: string }
  /** A drawing, by the words that stand for it. */
  | { readonly kind: "picture"; readonly text: string }
  | { readonly kind: "row"; readonly cells: readonly Cell[] };

export interface Cell {
  readonly head: boolean;
  readonly text: string;
  /** A date in full that only some ways of showing the page print; undefined where there is none. */
  readonly long?: string;
}

/** One line, with plain spaces and nothing at its ends. */
export const oneLine = (text: string): string =>
  text
    .normalize("NFC")
    .replace(/[\u00AD\u2066\u2069]/g, "")
    .replace(/\s+/g, " ")
    .trim();
