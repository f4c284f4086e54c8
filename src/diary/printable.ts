/** Texts of clients made safe to print: a terminal obeys control characters wherever they come from. */

/** Controls (of the terminal too), marks that turn the writing direction, line separators, half characters. */
const CONTROL = /[\p{Cc}\u061C\u200E\u200F\u2028-\u202E\u2066-\u2069\p{Surrogate}]/gu;

/** The same text with a visible mark in place of each such character, so that columns stay right. */
export const printable = (text: string): string => text.replace(CONTROL, "\uFFFD");

/** On one line: runs of blanks and line breaks become one space. */
export const oneLine = (text: string): string => printable(text.replace(/\s+/g, " ").trim());

/** JSON with such characters written as escapes; it means the same. */
export const printableJson = (value: unknown): string =>
  JSON.stringify(value, null, 2).replace(CONTROL, (character) =>
    character === "\n" ? character : `\\u${character.charCodeAt(0).toString(16).padStart(4, "0")}`,
  );
