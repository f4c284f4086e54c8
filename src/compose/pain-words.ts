/** Pain rules in sentences: the only place where limits become words, for every page, calendar and screen. */
import { type GeneralRule, generalRule } from "../pain/general-rule.ts";
import type { PainLimits } from "../pain/limits.ts";
import type { ProgramExercise } from "../program/program.ts";
import type { Writer } from "./numbers.ts";
import type { PainWords } from "./session-model.ts";

/** The rule of an exercise on its own page: how much pain is all right here. */
export function exerciseRule(limits: PainLimits, write: Writer): string {
  const says = write.words.say(`pain.exercise.${limits.kind}`, numbers(limits, write));
  return withAfter(says, limits, write);
}

/** The rule of the exercises done together in a session, then each exercise that has another, and when to call. */
export function sessionRules(
  exercises: readonly ProgramExercise[],
  callLevel: number,
  write: Writer,
): string[] {
  const rule = ruleOf(exercises);
  return [
    generalSentence(rule.limits, write),
    ...exceptionSentences(rule, write),
    callSentence(callLevel, write),
  ];
}

/** When exercises done together hurt too much and what to do then; after it each that has another rule. */
export function overSentences(exercises: readonly ProgramExercise[], write: Writer): string[] {
  const rule = ruleOf(exercises);
  return [sentences(rule.limits, write).over, ...named(rule, write)];
}

/** The rule in one sentence where it stands for several exercises. */
export function generalSentence(limits: PainLimits, write: Writer): string {
  const says = write.words.say(`session.pain.${limits.kind}`, numbers(limits, write));
  return withAfter(says, limits, write);
}

/** "Ankle circles: keep this one free of pain." for each exercise with another rule; then what they mean together. */
export function exceptionSentences(rule: GeneralRule<ProgramExercise>, write: Writer): string[] {
  const { limits, exceptions } = rule;
  const differs = exceptions.some(({ pain }) => pain.after !== limits.after);
  const together = differs ? [write.words.say("pain.together")] : [];
  return [...named(rule, write), ...together];
}

const named = ({ exceptions }: GeneralRule<ProgramExercise>, write: Writer): string[] =>
  exceptions.map(({ card, pain }) => {
    const values = { title: card.card.title, ...numbers(pain, write) };
    return withAfter(write.words.say(`pain.exception.${pain.kind}`, values), pain, write);
  });

/** The rules of the pain page: while exercising, after it, from week to week, and when it is too much. */
export function ruleSentences(limits: PainLimits, write: Writer): string[] {
  const { during, after, week, more, over } = sentences(limits, write);
  return [during, after, week, more, over];
}

/** What holds from the next time on of an exercise that hurt too much. */
export const lessSentence = ({ words }: Writer): string => words.say("pain.less");

/** From how much pain on to stop and call, whatever the exercise. */
export const callSentence = (callLevel: number, { words, number }: Writer): string =>
  words.say("pain.call", { level: number(callLevel) });

/** The same as a sign to stop and call for, as lists of such signs have it. */
export const severeSign = (callLevel: number, { words, number }: Writer): string =>
  words.say("stop.severe", { level: number(callLevel) });

/** What a screen says to a number of pain. */
export function painWords(limits: PainLimits, write: Writer): PainWords {
  const { after, more, over } = sentences(limits, write);
  return { rule: exerciseRule(limits, write), over, after, worse: more };
}

/** The rule of several exercises; a card that comes in several phases counts once. */
export function ruleOf(exercises: readonly ProgramExercise[]): GeneralRule<ProgramExercise> {
  return generalRule([...new Map(exercises.map((one) => [one.card.card.id, one])).values()]);
}

function sentences(limits: PainLimits, write: Writer) {
  const { kind } = limits;
  const later = limits.after === 0 ? "pain-free" : "monitored";
  const values = numbers(limits, write);
  const say = (key: string) => write.words.say(`pain.rules.${key}`, values);
  return {
    during: say(`${kind}.during`),
    after: say(`${later}.after`),
    week: say(`${kind}.week`),
    more: say(`${kind}.more`),
    over: say(`${kind}.over`),
  };
}

/** The sentence gives one number: where another holds in the hours after, that is added. */
function withAfter(says: string, limits: PainLimits, { words, number }: Writer): string {
  if (limits.after === limits.during) return says;
  return `${says} ${words.say("pain.hours-after", { after: number(limits.after) })}`;
}

const numbers = ({ during, after }: PainLimits, { number }: Writer) => ({
  during: number(during),
  after: number(after),
});
