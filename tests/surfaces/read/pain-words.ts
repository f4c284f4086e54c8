/** Sentences of pain read back: the most that is all right during an exercise, and in the hours after. */
import type { Fact, Say } from "../facts.ts";
import type { Context } from "./context.ts";
import { plainNumber, readNumber } from "./numbers.ts";

export const FREE = "free";

export interface SaidPain {
  readonly during: string;
  readonly after: string;
}

const HOURS_AFTER = {
  en: [
    / In the hours after, there should be no new pain\.$/,
    / In the hours after, up to ([\d.]+) out of 10 is all right\.$/,
  ],
  de: [
    / In den Stunden danach soll kein neuer Schmerz da sein\.$/,
    / In den Stunden danach ist Schmerz bis ([\d,]+) von 10 in Ordnung\.$/,
  ],
} as const;

/** The rule of an exercise or of a session in a sentence or two. Throws where no rule reads it. */
export function readPain(text: string, context: Context): SaidPain {
  const { filled, label } = context;
  const { rule, after } = cutHoursAfter(text, context);
  for (const where of ["pain.exercise", "session.pain"]) {
    if (rule === label(`${where}.pain-free`)) return said(FREE, after);
    const [during] = filled(`${where}.monitored`, rule) ?? [];
    if (during !== undefined) return said(number(during, context), after);
  }
  throw new Error(`no rule reads the pain sentence "${text}"`);
}

/** Where the hours after are not told apart, one number holds for both. */
const said = (during: string, after: string | undefined): SaidPain => ({
  during,
  after: after ?? during,
});

function cutHoursAfter(text: string, context: Context) {
  const [none, some] = HOURS_AFTER[context.language];
  const later = some.exec(text)?.[1];
  const after = later === undefined ? undefined : number(later, context);
  return {
    rule: text.replace(none, "").replace(some, ""),
    after: none.test(text) ? FREE : after,
  };
}

/** What is said to pain over the limit, or of the hours after: "free", or the number. */
export function readOver(text: string, which: "over" | "after", context: Context): string {
  if (text === context.label(`pain.rules.pain-free.${which}`)) return FREE;
  const [said] = context.filled(`pain.rules.monitored.${which}`, text) ?? [];
  if (said === undefined) throw new Error(`no rule reads "${text}"`);
  return number(said, context);
}

/** How much pain to call from, in the rule or the sign that says so; undefined for any other line. */
export function callLevelIn(text: string, context: Context): string | undefined {
  const [level] = context.filled("pain.call", text) ?? context.filled("stop.severe", text) ?? [];
  return level === undefined ? undefined : number(level, context);
}

/** Says the level to call from, once for each of the lines that state it; "(not said)" where none does. */
export function sayCallLevel(
  lines: readonly string[],
  say: Say,
  place: string,
  context: Context,
): void {
  const levels = lines.flatMap((line) => callLevelIn(line, context) ?? []);
  for (const level of levels.length > 0 ? levels : ["(not said)"])
    say("pain to call from", "", level, place);
}

const number = (text: string, { language }: Context): string =>
  plainNumber(readNumber(text, language));

export function painFacts(title: string, { during, after }: SaidPain, place: string): Fact[] {
  return [
    { kind: "pain during", key: title, value: during, place },
    { kind: "pain after", key: title, value: after, place },
  ];
}

/** "Title: keep this one free of pain."; undefined for any other line. */
export function readException(
  text: string,
  context: Context,
): { readonly title: string; readonly pain: SaidPain } | undefined {
  const { rule, after } = cutHoursAfter(text, context);
  const [free] = context.filled("pain.exception.pain-free", rule) ?? [];
  if (free !== undefined && context.isTitle(free)) return { title: free, pain: said(FREE, after) };
  const [title, during] = context.filled("pain.exception.monitored", rule) ?? [];
  if (title === undefined || during === undefined || !context.isTitle(title)) return undefined;
  return { title, pain: said(number(during, context), after) };
}
