/** How hard a text is to read: its counts, its grade by published formulas, and its hardest sentences. */
import type { Counts } from "./formulas.ts";
import { type Language, languageOf } from "./languages.ts";
import { type Sentence, sentencesOf } from "./sentences.ts";
import type { Word } from "./words.ts";

export interface HardSentence {
  readonly sentence: string;
  readonly grade: number;
  readonly words: number;
  /** Its words with a part of three syllables and more, figures aside, each once, in their order. */
  readonly longWords: readonly string[];
  /** Where it begins in the Markdown, from 0. */
  readonly line: number;
  readonly column: number;
}

export interface Reading {
  readonly words: number;
  readonly sentences: number;
  readonly syllables: number;
  /** Words of three syllables and more. */
  readonly polysyllables: number;
  /** English: Flesch Reading Ease; German: Amstad's. Undefined under LEAST_WORDS words. */
  readonly fleschEase: number | undefined;
  /** English: Flesch–Kincaid; German: first Wiener Sachtextformel. Undefined under LEAST_WORDS words. */
  readonly grade: number | undefined;
  /** SMOG, long form; English only. Undefined under LEAST_SENTENCES sentences. */
  readonly smog: number | undefined;
  /** All sentences, the hardest first. */
  readonly hardest: readonly HardSentence[];
}

/**
 * The fewest words that a formula judges. The formulas were made on samples of 100 words and more
 * (Flesch 1948); under 15 one word of four syllables moves the grade by two and more.
 */
const LEAST_WORDS = 15;

/** The fewest sentences that SMOG judges: a third of the 30 it was made for (McLaughlin 1969). */
const LEAST_SENTENCES = 10;

/**
 * The fewest words of a sentence for a grade of its own; plain words fill a shorter one up, since one
 * long word alone says nothing of the sentence.
 */
const FILLED_TO = 5;

/** Reads a Markdown text in a language such as en or de-AT; undefined for a language without a judgement. */
export function readText(markdown: string, language: string): Reading | undefined {
  const known = languageOf(language);
  if (known === undefined) return undefined;
  const before = known === judged.language ? judged.readings.get(markdown) : undefined;
  if (before !== undefined) return before;
  const reading = readSentences(sentencesOf(markdown, known), known);
  if (known !== judged.language || judged.readings.size >= MOST_KEPT) {
    judged = { language: known, readings: new Map() };
  }
  if (markdown.length <= LONGEST_KEPT) judged.readings.set(markdown, reading);
  return reading;
}

/** Readings of short texts in the language last asked for: cards repeat the same words of care. */
let judged = { language: languageOf("en"), readings: new Map<string, Reading>() };
const MOST_KEPT = 2000;
const LONGEST_KEPT = 400;

function readSentences(sentences: readonly Sentence[], language: Language): Reading {
  const each = sentences.map(({ words }) => countsOf(words));
  const counts = each.reduce(sum, NONE);
  const enough = counts.words >= LEAST_WORDS;
  return {
    words: counts.words,
    sentences: counts.sentences,
    syllables: counts.syllables,
    polysyllables: counts.polysyllables,
    fleschEase: enough ? language.ease(counts) : undefined,
    grade: enough ? language.grade(counts) : undefined,
    smog: counts.sentences >= LEAST_SENTENCES ? language.smog(counts) : undefined,
    hardest: sentences
      .map((sentence, at) => hardness(sentence, each[at] ?? NONE, language))
      .sort((a, b) => b.grade - a.grade || a.line - b.line || a.column - b.column),
  };
}

function hardness(
  { text, words, line, column }: Sentence,
  counts: Counts,
  language: Language,
): HardSentence {
  const missing = Math.max(0, FILLED_TO - counts.words);
  const plain = { ...NONE, words: missing, syllables: missing, monosyllables: missing };
  const long = words.flatMap((word) => (word.long ? [word.text.toLowerCase()] : []));
  return {
    sentence: text,
    grade: language.grade(sum(counts, plain)) ?? 0,
    words: counts.words,
    longWords: [...new Set(long)],
    line,
    column,
  };
}

const NONE: Counts = {
  words: 0,
  sentences: 0,
  syllables: 0,
  polysyllables: 0,
  monosyllables: 0,
  longWords: 0,
};

const sum = (a: Counts, b: Counts): Counts => ({
  words: a.words + b.words,
  sentences: a.sentences + b.sentences,
  syllables: a.syllables + b.syllables,
  polysyllables: a.polysyllables + b.polysyllables,
  monosyllables: a.monosyllables + b.monosyllables,
  longWords: a.longWords + b.longWords,
});

/** The counts of one sentence. */
function countsOf(words: readonly Word[]): Counts {
  const counts = { ...NONE, words: words.length, sentences: 1 };
  for (const { text, syllables } of words) {
    counts.syllables += syllables;
    if (syllables >= 3) counts.polysyllables += 1;
    if (syllables === 1) counts.monosyllables += 1;
    if (text.length > 6 && (text.match(/\p{L}/gu)?.length ?? 0) > 6) counts.longWords += 1;
  }
  return counts;
}
