/** The words of a stretch of text and their syllables as a reader would say them. */
import type { Language } from "./languages.ts";

export interface Word {
  /** As typed, without the signs around it. */
  readonly text: string;
  readonly syllables: number;
  /** Whether a part of it, figures aside, has three syllables and more: a word to be put more plainly. */
  readonly long: boolean;
}

/** Letters with their apostrophes, figures with their marks, and signs that are said aloud. */
const PARTS = /\p{L}[\p{L}\p{M}'’]*|\d+(?:[.,]\d+)*|[%°×&+=€£$½¼]|(?<=\d)[–-](?=\d)/gu;

/** Signs within a token at which one word ends and the next begins; a range such as 2–3 stays one. */
const BETWEEN = /—|\/|…|(?<!\d)–|–(?!\d)/u;

/** Figures of a telephone number, which nobody reads as words, and full hours on the clock. */
const TELEPHONE = /(?<![\d.,])\+?\d{2,12}(?:[ -]\d{2,6}){0,5}(?![\d.,]\d)/g;
const LEAST_TELEPHONE = 7;
const FULL_HOUR = /(?<!\d)(\d{1,2}):00(?!\d)/g;

/** What stands for the client's side, or for an exercise: a word of one syllable, such as left or right. */
const PLACEHOLDER = /\{[\w-]{1,60}\}/g;

/** What most tokens are: a plain word, with a comma or the like after it; not a short form with a full stop. */
const USUAL = /^([a-z]{2,40})[,:;!?]?$/i;

/**
 * The words in a stretch of text.
 *
 * What white space surrounds is one word, a number or a hyphenated word too, with the syllables
 * that are said for it (Flesch 1948, J Appl Psychol 32:221); bare signs are none.
 */
export function wordsOf(text: string, language: Language): readonly Word[] {
  const words: Word[] = [];
  let afterNumber = false;
  for (const token of asSaid(text).split(/\s+/)) {
    const usual = USUAL.exec(token)?.[1];
    if (usual !== undefined && !afterNumber && !isSpelled(usual)) {
      const syllables = language.syllables(usual);
      words.push({ text: usual, syllables, long: syllables >= 3 });
      continue;
    }
    const short = shortForm(token, language);
    for (const piece of short === undefined ? token.split(BETWEEN) : [short]) {
      const parts = piece.match(PARTS) ?? [];
      let syllables = 0;
      let long = false;
      for (const part of parts) {
        const said = spoken(part, afterNumber, language).map(language.syllables);
        syllables += said.reduce((sum, count) => sum + count, 0);
        long ||= /^\p{L}/u.test(part) && said.some((count) => count >= 3);
        afterNumber = /^\d/.test(part);
      }
      if (syllables === 0) continue;
      words.push({ text: short === undefined ? trimmed(piece) : token, syllables, long });
    }
  }
  return words;
}

/** The text with its placeholders, clock times and telephone numbers as they are said. */
function asSaid(text: string): string {
  const filled = text.includes("{") ? text.replace(PLACEHOLDER, "left") : text;
  if (!/\d\d|:00/.test(filled)) return filled;
  return filled
    .replace(FULL_HOUR, "$1")
    .replace(TELEPHONE, (figures) =>
      figures.replace(/\D/g, "").length >= LEAST_TELEPHONE ? "this" : figures,
    );
}

/** A token without the signs before its first and after its last letter or figure. */
const trimmed = (token: string): string =>
  token.replace(/^[^\p{L}\d]+/u, "").replace(/(?<=[\p{L}\p{M}\d%])[^\p{L}\p{M}\d%]+$/u, "");

function shortForm(token: string, { shortForms, endingForms }: Language): string | undefined {
  if (token.length > 12) return undefined;
  const bare = token
    .toLowerCase()
    .replace(/^[("'“‘[]+/, "")
    .replace(/[)\]"'”’,;:]+$/, "");
  return shortForms.get(bare) ?? endingForms.get(bare);
}

function spoken(part: string, afterNumber: boolean, language: Language): readonly string[] {
  if (/^\d/.test(part)) return language.number(part);
  const sign = language.signs.get(part === "-" ? "–" : part);
  if (sign !== undefined) return [sign];
  if (!/^\p{L}/u.test(part)) return [];
  const unit = afterNumber ? language.units.get(part) : undefined;
  if (unit !== undefined) return [unit];
  if (!isSpelled(part)) return [part];
  return [...part].flatMap((letter) => (letter === "W" ? ["double", "you"] : [letter]));
}

/** Short forms said letter by letter: capitals without a vowel between them, such as MRI or GP. */
const isSpelled = (part: string): boolean => /^\p{Lu}[B-DF-HJ-NP-TV-XZ]{1,3}[AI]?$/u.test(part);
