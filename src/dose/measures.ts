/** Finds the measures that count for an exercise: the right card, the right side, the latest of them. */

import type { LibraryCard } from "../cards/library.ts";
import type { Measure } from "../plan/schema.ts";
import type { ProgramExercise } from "../program/program.ts";
import { counted } from "../units/counted.ts";
import { showTime } from "../units/rounding.ts";
import type { WorkSide } from "../units/side.ts";
import { type DoseContext, sayCard, type Work } from "./context.ts";
import { sayList } from "./findings.ts";

export type RepetitionTest = Extract<Measure, { test: "repetitions" }>;
export type HoldTest = Extract<Measure, { test: "hold" }>;

/** A measure with its place in the plan's list and the card it was taken on. */
export interface Picked<M extends Measure> {
  readonly measure: M;
  readonly index: number;
  readonly card: LibraryCard;
}

/** What the measure is needed for, as words for a fault: "15 RM", and how bad it is to have none. */
export interface Need {
  readonly what: string;
  readonly level: "error" | "warning";
}

const TEST_WORDS = {
  repetitions: "repetition test",
  hold: "measure of the best hold",
  speed: "measure of speed",
};

/**
 * The latest measure for each side the exercise is done on (one for left, right, both and none; two
 * for each, as far as there are any). Measures of the cards under `capacity_from` count as well.
 * Faults: measure-missing, measure-side, measure-old.
 */
export function pickMeasures<T extends Measure["test"]>(
  context: DoseContext,
  work: Work,
  test: T,
  need: Need,
): Picked<Extract<Measure, { test: T }>>[] {
  const all = candidates(context, work.exercise, test);
  const picked: Picked<Extract<Measure, { test: T }>>[] = [];
  const lacking: string[] = [];
  for (const side of sidesOf(work.exercise.side)) {
    const fits = all.filter(({ measure }) => fitsSide(measure, side));
    const latest = fits.reduce<(typeof fits)[number] | undefined>(
      (best, one) => (best === undefined || isLater(one, best, work) ? one : best),
      undefined,
    );
    if (latest) picked.push(latest);
    else lacking.push(side);
  }
  for (const one of picked) reportAge(context, one);
  if (lacking.length === 0) return picked;
  const other = all.filter((one) => !picked.includes(one)).at(-1);
  if (picked.length > 0) reportOneSide(context, work, test, lacking, picked[0]);
  else if (other) reportSide(context, work, test, need, other);
  else reportMissing(context, work, test, need);
  return picked;
}

/** Whether there is a measure of this kind for a side on which the exercise is done. */
export const isMeasured = (
  context: DoseContext,
  exercise: ProgramExercise,
  test: Measure["test"],
): boolean =>
  candidates(context, exercise, test).some(({ measure }) =>
    sidesOf(exercise.side).some((side) => fitsSide(measure, side)),
  );

function candidates<T extends Measure["test"]>(
  context: DoseContext,
  { card }: ProgramExercise,
  test: T,
): Picked<Extract<Measure, { test: T }>>[] {
  return context.program.plan.value.measures.flatMap((measure, index) => {
    if (!isTest(measure, test)) return [];
    const own = measure.card === card.card.id;
    if (!own && !card.card.capacity_from.includes(measure.card)) return [];
    const tested = own ? card : context.cardOf(measure.card);
    return tested ? [{ measure, index, card: tested }] : [];
  });
}

function isTest<T extends Measure["test"]>(
  measure: Measure,
  test: T,
): measure is Extract<Measure, { test: T }> {
  return measure.test === test;
}

/** Later by date; on the same day the exercise's own card, then the later in the plan. */
function isLater(one: Picked<Measure>, than: Picked<Measure>, { exercise }: Work): boolean {
  if (one.measure.on !== than.measure.on) return one.measure.on > than.measure.on;
  const own = (picked: Picked<Measure>) => (picked.measure.card === exercise.card.card.id ? 1 : 0);
  return own(one) >= own(than);
}

type Side = "left" | "right" | "both" | "any";

function sidesOf(side: WorkSide): Side[] {
  if (side === "each") return ["left", "right"];
  return side === "none" ? ["any"] : [side];
}

function fitsSide(measure: Measure, side: Side): boolean {
  return measure.test === "speed" || side === "any" || measure.side === side;
}

function reportAge(context: DoseContext, { measure, index, card }: Picked<Measure>): void {
  const { plan, clinic } = context.program;
  const age = (Date.parse(plan.value.starts) - Date.parse(measure.on)) / 1000;
  if (!(age > clinic.limits.measure_age)) return;
  const weeks = Math.floor(age / (7 * 86400));
  context.findings.add({
    code: "measure-old",
    cause: String(index),
    level: "warning",
    place: () => plan.source.at(["measures", index, "on"]),
    say: () =>
      `The ${TEST_WORDS[measure.test]} of ${sayCard(card)} is ${counted(weeks, "week")} old when the plan starts; the clinic's limit is ${counted(Math.round(clinic.limits.measure_age / (7 * 86400)), "week")}.`,
    hint: "Measure again, and add the new measure.",
  });
}

function reportMissing(context: DoseContext, work: Work, test: Measure["test"], need: Need): void {
  const { source } = context.program.plan;
  const { card, side } = work.exercise;
  context.findings.add(
    {
      code: "measure-missing",
      cause: `${card.card.id} ${side} ${test}`,
      level: need.level,
      place: () => source.at(["measures"]),
      say: (weeks) =>
        `${sayCard(card)} has no ${TEST_WORDS[test]}${onSide(side)}, so ${need.what} cannot be computed (${weeks}).`,
      hint: `Add a measure with test: ${test} and card: ${card.card.id}, or state the dose without it.`,
    },
    work.week,
  );
}

function reportSide(
  context: DoseContext,
  work: Work,
  test: Measure["test"],
  need: Need,
  other: Picked<Measure>,
): void {
  const { card, side } = work.exercise;
  const measured = other.measure.test === "speed" ? "both" : other.measure.side;
  context.findings.add(
    {
      code: "measure-side",
      cause: `${card.card.id} ${side} ${test}`,
      level: need.level,
      place: () => context.program.plan.source.at(["measures", other.index, "side"]),
      say: (weeks) =>
        `${sayCard(card)} is done ${sideWords(side)}, but its ${TEST_WORDS[test]} was taken ${sideWords(measured)}; ${need.what} cannot be computed (${weeks}).`,
      hint: `Measure ${sideWords(side)}.`,
    },
    work.week,
  );
}

function reportOneSide(
  context: DoseContext,
  work: Work,
  test: Measure["test"],
  lacking: readonly string[],
  used: Picked<Measure> | undefined,
): void {
  const { card } = work.exercise;
  context.findings.add({
    code: "measure-side",
    cause: `${card.card.id} one side ${test}`,
    level: "warning",
    place: () => context.program.plan.source.at(["measures", used?.index ?? 0, "side"]),
    say: () =>
      `${sayCard(card)} is done on both sides in turn, but the ${sayList(lacking)} side has no ${TEST_WORDS[test]}; both are dosed by the other side.`,
    hint: `Measure the ${sayList(lacking)} side as well; it may be the weaker one.`,
  });
}

function onSide(side: WorkSide): string {
  return side === "none" ? "" : ` ${sideWords(side)}`;
}

/** A side as an adverb: "on the left", "on both sides together". */
function sideWords(side: WorkSide): string {
  if (side === "left" || side === "right") return `on the ${side}`;
  if (side === "each") return "on each side";
  return side === "both" ? "on both sides together" : "without a side";
}

/** A measure in a sentence: "12 repetitions with 20 kg on the left, 2026-10-01". */
export function sayMeasure(
  context: DoseContext,
  { measure, card }: Picked<Measure>,
  exercise: ProgramExercise,
): string {
  const of = card.card.id === exercise.card.card.id ? "" : ` of ${sayCard(card)}`;
  if (measure.test === "speed") return `Speed measured${of} on ${measure.on}`;
  const what =
    measure.test === "hold"
      ? `${showTime(measure.time)} held`
      : counted(measure.reps, "repetition");
  const load = measure.load > 0 ? ` with ${context.mass(measure.load)}` : " without added load";
  return `${what}${of}${load} ${sideWords(measure.side)}, measured on ${measure.on}`;
}
