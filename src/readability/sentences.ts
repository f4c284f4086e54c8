/** The sentences of Markdown text, each with where it begins. */
import { type Block, blocksOf } from "./blocks.ts";
import type { Language } from "./languages.ts";
import { type Word, wordsOf } from "./words.ts";

export interface Sentence {
  /** On one line, without emphasis marks. */
  readonly text: string;
  readonly words: readonly Word[];
  /** Where it begins in the Markdown, from 0. */
  readonly line: number;
  readonly column: number;
}

/** The sentences of a Markdown text. An item of a list is at least one, with or without a full stop. */
export function sentencesOf(markdown: string, language: Language): readonly Sentence[] {
  return blocksOf(markdown).flatMap((block) => sentencesOfBlock(block, language));
}

function sentencesOfBlock(block: Block, language: Language): Sentence[] {
  const text = block.text.includes("](") ? withoutAddresses(block.text) : block.text;
  const tokens = [...text.matchAll(/\S+/g)];
  const found: Sentence[] = [];
  const placeOf = placesIn(block, text);
  let start: number | undefined;
  tokens.forEach((token, index) => {
    start ??= token.index;
    const next = tokens[index + 1]?.[0];
    if (next !== undefined && !endsSentence(token[0], next, language)) return;
    const typed = text.slice(start, token.index + token[0].length);
    const words = wordsOf(typed, language);
    if (words.length > 0) {
      found.push({ text: plain(typed), words, ...placeOf(start) });
      start = undefined;
    }
  });
  return found;
}

/** Whether a token is the last of its sentence. */
function endsSentence(token: string, next: string, language: Language): boolean {
  if (!/[.!?…]/.test(token.slice(-12))) return false;
  const closed = token.slice(-12).replace(/["'”’»)\]*_~`]+$/, "");
  if (!/[.!?…]$/.test(closed)) return false;
  const bare = closed.toLowerCase().replace(/^["'“‘«([*_~`]+/, "");
  if (language.shortForms.has(bare)) return false;
  const capitalNext = /^["'“‘«([*_~`]*[\p{Lu}\d]/u.test(next);
  if (language.endingForms.has(bare) || /(?:…|\.\.\.)$/.test(closed)) return capitalNext;
  if (/^\p{Lu}\.$/u.test(closed) && closed !== "I.") return false;
  const ordinal = language.afterOrdinal;
  return !(ordinal !== undefined && /^\d{1,3}\.$/.test(closed) && ordinal.test(next));
}

/** Addresses of links are not read; blanks keep every place where it was. */
const withoutAddresses = (text: string): string =>
  text.replace(/\]\([^()\s]{0,200}\)/g, (link) => `]${" ".repeat(link.length - 1)}`);

const plain = (typed: string): string => (PLAIN.test(typed) ? typed : withoutMarks(typed));

const PLAIN = /^[A-Za-z0-9 .,:;?!'"()-]*$/;

const withoutMarks = (typed: string): string =>
  typed
    .replace(/[*_`~[\]]/g, "")
    .replace(/[\s\p{Cc}]+/gu, " ")
    .trim();

/** Finds the place of an offset; offsets are asked for in ascending order. */
function placesIn(block: Block, text: string) {
  const rows = text.split("\n");
  let row = 0;
  let begin = 0;
  return (offset: number): { line: number; column: number } => {
    for (let length = rows[row]?.length ?? 0; begin + length < offset; ) {
      begin += length + 1;
      row += 1;
      length = rows[row]?.length ?? 0;
    }
    const at = block.lines[row] ?? { line: 0, column: 0 };
    return { line: at.line, column: at.column + offset - begin };
  };
}
