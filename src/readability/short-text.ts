/** Whether a text too short for a formula is plain: by its longest sentence and its long words. */
import type { Reading } from "./read-text.ts";

/** What makes a short text hard; undefined where it is not. */
export type ShortProblem =
  | { readonly kind: "long-sentence"; readonly words: number; readonly most: number }
  | { readonly kind: "long-words"; readonly found: readonly string[]; readonly most: number };

/**
 * The most words in one sentence at a grade: Flesch–Kincaid (Kincaid et al. 1975) turned round, with
 * 1.3 syllables a word, as plain speech about the body has. At grade 6: 16 words.
 */
export function mostWords(grade: number): number {
  return Math.max(5, Math.floor((grade + 15.59 - 11.8 * 1.3) / 0.39));
}

/**
 * The most different words of three syllables and more, figures aside. The program's own rule, no
 * published formula: one for every eight words begun at grade 6, in proportion at other grades; one
 * is always allowed, since some names of things have no short form.
 */
export function mostLongWords(words: number, grade: number): number {
  return Math.max(1, Math.ceil((words * Math.max(0, grade)) / 48));
}

/** What is too hard in a short text, if anything is. */
export function shortProblem(reading: Reading, grade: number): ShortProblem | undefined {
  const longest = Math.max(0, ...reading.hardest.map(({ words }) => words));
  if (longest > mostWords(grade)) {
    return { kind: "long-sentence", words: longest, most: mostWords(grade) };
  }
  const most = mostLongWords(reading.words, grade);
  const found = [...new Set(reading.hardest.flatMap(({ longWords }) => longWords))];
  return found.length > most ? { kind: "long-words", found, most } : undefined;
}
