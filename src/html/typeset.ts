/** Where a line may break: a number stays with what it counts, and blanks stay in the text of what is printed. */

const NO_BREAK = "\u00a0";

/** What a number counts, in the languages of the frame; longer words are not needed to understand it. */
const UNITS =
  "kg|lb|km/h|km|cm|mm|m|s|h|min|%|out of|von|seconds?|minutes?|hours?|times|Sekunden?|Minuten?|Stunden?|Mal";
const NUMBER_AND_UNIT = new RegExp(`(?<=\\d) (?=(?:${UNITS})(?![\\p{L}\\d]))`, "gu");
/** "8 out of 10", "3 sets of 15", "6 to 8": the second number stays with the word before it. */
const SECOND_NUMBER = /(?<=\d[^<>\d]{0,12} ?(?:\bout of|\bof|\bto|\bvon|\bbis|\bzu|×)) (?=\d)/gu;
const BETWEEN = /(?<=\d[ \u00a0]out) (?=of\s\d)/gu;
const FIRST_NUMBER = /(?<=\d) (?=(?:to|bis|×)\s\d)/gu;

/** The text of one element with blanks that do not break where a number would be torn from its unit. */
export function bindNumbers(text: string): string {
  if (!/\d/.test(text)) return text;
  return text
    .replace(FIRST_NUMBER, NO_BREAK)
    .replace(SECOND_NUMBER, NO_BREAK)
    .replace(NUMBER_AND_UNIT, NO_BREAK)
    .replace(BETWEEN, NO_BREAK);
}

/** Elements whose text is drawn as it is written, or not at all. */
const AS_IS = /^<(svg|style|script|title|pre|code)\b/;

/** Elements that begin and end a line: no blank stands at their edges. */
const BLOCKS = new Set(
  "article aside body br caption dd div dl dt figcaption figure footer h1 h2 h3 h4 h5 h6 header hr li main nav ol p section table tbody td tfoot th thead tr ul".split(
    " ",
  ),
);

const isBlock = (tag: string | undefined): boolean =>
  tag !== undefined && BLOCKS.has(/^<\/?([a-z0-9]+)/.exec(tag)?.[1] ?? "");

/**
 * HTML with the numbers of its texts bound, and no blank but those between words, so that print can keep
 * every one of them. Tags, attributes, pictures, styles and scripts stay as they are.
 */
export function typeset(html: string): string {
  const pieces = html.split(/(<[^>]*>)/);
  let closing = "";
  return pieces
    .map((piece, at) => {
      // every other piece is a tag
      if (at % 2 === 0)
        return closing === "" ? textBetween(piece, pieces[at - 1], pieces[at + 1]) : piece;
      if (closing === "") {
        const [, name] = AS_IS.exec(piece) ?? [];
        if (name !== undefined && !piece.endsWith("/>")) closing = `</${name}>`;
      } else if (piece === closing) closing = "";
      return piece;
    })
    .join("");
}

function textBetween(text: string, before: string | undefined, after: string | undefined): string {
  let plain = text.replace(/[ \t\r\n]+/g, " ");
  if (before === undefined || isBlock(before)) plain = plain.replace(/^ /, "");
  if (after === undefined || isBlock(after)) plain = plain.replace(/ $/, "");
  return bindNumbers(plain);
}
