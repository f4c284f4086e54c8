/** Warnings for texts that are harder to read than the clinic's limit, with their hardest sentences. */
import type { LibraryCard } from "../cards/library.ts";
import type { Clinic } from "../clinic/schema.ts";
import type { FaultCode } from "../faults/catalogue.ts";
import { Fault } from "../faults/fault.ts";
import type { ReadPlan } from "../plan/read-plan.ts";
import type { Protocol } from "../protocols/schema.ts";
import type { Read } from "../read/source.ts";
import {
  type ClientText,
  cardTexts,
  clinicTexts,
  planTexts,
  protocolTexts,
} from "./client-texts.ts";
import { plainerWords } from "./plain-words.ts";
import { type HardSentence, type Reading, readText } from "./read-text.ts";
import { shortProblem } from "./short-text.ts";

/** The code of every warning about readability. */
export const HARD_TO_READ = "hard-to-read" satisfies FaultCode;

/**
 * The grade a text may reach where a clinic says nothing else: 6, as the American Medical
 * Association advises for what patients read (Weiss 2007, Health literacy and patient safety).
 */
export const USUAL_GRADE = 6;

/** How many sentences and long words a warning shows. */
const SHOWN_SENTENCES = 3;
const SHOWN_WORDS = 6;
const SHOWN_LETTERS = 120;

/** Warnings for a card's texts in a language over a grade. */
export const cardTextFaults = (card: LibraryCard, grade: number, language: string): Fault[] =>
  faultsOf(cardTexts(card), grade, language);

/** Warnings for a protocol's texts in a language over a grade. */
export const protocolTextFaults = (
  protocol: Read<Protocol>,
  grade: number,
  language: string,
): Fault[] => faultsOf(protocolTexts(protocol), grade, language);

/** Warnings for a plan's goals and note in a language over a grade. */
export const planTextFaults = (plan: ReadPlan, grade: number, language: string): Fault[] =>
  faultsOf(planTexts(plan), grade, language);

/** Warnings for a clinic's own texts in a language over a grade. */
export const clinicTextFaults = (clinic: Read<Clinic>, grade: number, language: string): Fault[] =>
  faultsOf(clinicTexts(clinic), grade, language);

const faultsOf = (texts: readonly ClientText[], grade: number, language: string): Fault[] =>
  texts.flatMap((text) => textFault(text, grade, language) ?? []);

/**
 * The warning for one text; undefined where it is plain enough or its language cannot be judged.
 *
 * A text of LEAST_WORDS words and more is judged by its grade, a shorter one by its longest sentence
 * and its long words. SMOG is named where it is known but does not decide: it is made for readers
 * who understand everything, and no clinic's section has its 30 sentences.
 */
export function textFault(text: ClientText, grade: number, language: string): Fault | undefined {
  const reading = readText(text.markdown, language);
  const problem = reading && problemOf(reading, grade);
  const [worst] = reading?.hardest ?? [];
  if (problem === undefined || reading === undefined || worst === undefined) return undefined;
  const place = text.place(worst.line, worst.column);
  const message = `${text.name.charAt(0).toUpperCase()}${text.name.slice(1)} ${problem}.`;
  return new Fault(HARD_TO_READ, message, {
    level: "warning",
    place,
    frame: text.source.frame(place),
    hint: hintOf(text, reading, grade, language),
  });
}

/** What is wrong in words, for the end of a sentence about the text. */
function problemOf(reading: Reading, limit: number): string | undefined {
  if (reading.grade !== undefined) {
    if (rounded(reading.grade) <= limit) return undefined;
    const smog = reading.smog === undefined ? "" : ` (SMOG ${shown(reading.smog)})`;
    return `reads at grade ${shown(reading.grade)}${smog}; the limit is ${limit}`;
  }
  const short = shortProblem(reading, limit);
  if (short === undefined) return undefined;
  return short.kind === "long-sentence"
    ? `has a sentence of ${short.words} words; for grade ${limit} the most is ${short.most}`
    : `has ${short.found.length} long words (${short.found.slice(0, SHOWN_WORDS).join(", ")}) in ${reading.words}; for grade ${limit} the most is ${short.most}`;
}

function hintOf(text: ClientText, reading: Reading, limit: number, language: string): string {
  const hardest = reading.hardest
    .filter(({ grade }, at) => at === 0 || grade > limit)
    .slice(0, SHOWN_SENTENCES);
  const words = [...new Set(hardest.flatMap(({ longWords }) => longWords))];
  const plainer = plainerWords(words, language).map(([long, plain]) => `“${plain}” for “${long}”`);
  return [
    "Make sentences shorter and long words plain, the hardest first:",
    ...hardest.map((sentence) => sentenceLine(text, sentence)),
    ...(words.length > 0 ? [`Long words: ${words.slice(0, SHOWN_WORDS).join(", ")}.`] : []),
    ...(plainer.length > 0 ? [`Say ${plainer.join(", ")}.`] : []),
  ].join("\n");
}

function sentenceLine(text: ClientText, { sentence, grade, line, column, words }: HardSentence) {
  const at = text.place(line, column);
  const cut = sentence.length > SHOWN_LETTERS ? `${sentence.slice(0, SHOWN_LETTERS)}…` : sentence;
  const length = words === 1 ? "1 word" : `${words} words`;
  return `${at.line}:${at.column} (grade ${shown(grade)}, ${length}) ${cut}`;
}

const rounded = (grade: number): number => Math.round(grade * 10) / 10;
const shown = (grade: number): string => rounded(grade).toFixed(1);
