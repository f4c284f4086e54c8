/** What a plan asks for in each week of the calendar, from its text, its course and the cards alone. */

import type { DoseText, PhaseText, ProtocolText } from "../surfaces/shipped.ts";
import { datesOf, hasTime, isAway } from "./days.ts";
import { type AgeText, wholeCard } from "./library.ts";
import type { ChangeText, PlanText, SpanText } from "./plan-text.ts";

/** One exercise of a phase in one week. */
export interface Entry {
  /** Phase and card: what outputs call it. */
  readonly key: string;
  readonly phase: string;
  readonly card: string;
  /** Card, protocol and plan, what is said later over what is said before. */
  readonly dose: DoseText;
}

export interface AskedWeek {
  /** Week of the calendar, from 1. */
  readonly number: number;
  /** Week of the course; undefined where the client is away for all of it. */
  readonly course: number | undefined;
  readonly entries: readonly Entry[];
}

/** A phase with the weeks of the course that it has in this plan. */
export interface PlacedPhase {
  readonly phase: PhaseText;
  readonly first: number;
  /** By its weeks in this plan, the week of the protocol's phase whose doses it has. */
  readonly follows: readonly number[];
}

export type Course = ProtocolText & { readonly age?: AgeText };

/** The phases on the weeks of the course: extended ones longer, those that begin later moved. */
export function phasesOf(plan: PlanText, { phases }: Course): PlacedPhase[] {
  let next = 1;
  const begins = phases.map(({ from_week, weeks }) => {
    const first = from_week ?? next;
    next = first + weeks;
    return first;
  });
  return phases.map((phase, at) => {
    const more = (id: string) => plan.extend.filter((one) => one.phase === id);
    const moved = phases
      .filter((_, other) => other < at && (begins[other] ?? 1) < (begins[at] ?? 1))
      .flatMap(({ id }) => more(id))
      .reduce((sum, { weeks }) => sum + weeks, 0);
    const own = Array.from({ length: phase.weeks }, (_, week) => week + 1);
    const again = more(phase.id).flatMap(({ weeks, repeat_week = phase.weeks }) =>
      Array<number>(weeks).fill(repeat_week),
    );
    return {
      phase,
      first: (begins[at] ?? 1) + moved,
      follows: [...own, ...again].sort((a, b) => a - b),
    };
  });
}

/** Weeks of the course that this plan prints. */
export function courseWeeks(plan: PlanText, course: Course): number {
  const last = Math.max(
    ...phasesOf(plan, course).map(({ first, follows }) => first + follows.length - 1),
  );
  return Math.min(plan.weeks ?? last, last);
}

/** The week of the course in each week of the calendar: weeks without any day move it or leave one out. */
export function calendarOf(plan: PlanText, course: Course): (number | undefined)[] {
  const weeks = courseWeeks(plan, course);
  const calendar: (number | undefined)[] = [];
  for (let next = 1; next <= weeks; ) {
    const then = thenOf(plan, datesOf(plan, calendar.length + 1));
    calendar.push(then === undefined ? next : undefined);
    if (then !== "shift") next += 1;
    if (calendar.length > 200) throw new Error("the client never comes back");
  }
  return calendar;
}

/** What becomes of a week away; undefined for one that is none. */
function thenOf(plan: PlanText, dates: readonly string[]): "shift" | "skip" | undefined {
  const away = dates.filter((date) => isAway(plan, date));
  if (away.length === 0 || dates.some((date) => hasTime(plan, date))) return undefined;
  const days = (then: "shift" | "skip") =>
    away.filter((date) =>
      plan.week.away.some((one) => {
        if (typeof one === "string") return one === date && then === "shift";
        return date >= one.from && date <= one.to && (one.then ?? "shift") === then;
      }),
    ).length;
  return days("skip") > days("shift") ? "skip" : "shift";
}

/** Everything that is asked for, week by week of the calendar. */
export function askedWeeks(plan: PlanText, course: Course): AskedWeek[] {
  const phases = phasesOf(plan, course);
  return calendarOf(plan, course).map((week, at) => ({
    number: at + 1,
    course: week,
    entries:
      week === undefined
        ? []
        : phases.flatMap((phase) =>
            entriesOf(plan, phase, week - phase.first + 1, (add) => holderOf(add, phases, week)),
          ),
  }));
}

/** Of the phases that hold in a week the one that began last: there an addition to the course is done. */
function holderOf(
  add: SpanText,
  phases: readonly PlacedPhase[],
  courseWeek: number,
): PlacedPhase["phase"] | undefined {
  const holding = phases.filter(({ phase, first, follows }) => {
    const week = courseWeek - first + 1;
    return follows[week - 1] !== undefined && isFor(add, phase.id, week);
  });
  const last = Math.max(...holding.map(({ first }) => first));
  return holding.findLast(({ first }) => first === last)?.phase;
}

function entriesOf(
  plan: PlanText,
  { phase, follows }: PlacedPhase,
  week: number,
  holder: (add: SpanText) => PlacedPhase["phase"] | undefined,
): Entry[] {
  const followed = follows[week - 1];
  if (followed === undefined) return [];
  const here = <T extends SpanText>(changes: readonly T[]) =>
    changes.filter((change) => isFor(change, phase.id, week));
  const entry = (card: string, layers: readonly DoseText[]): Entry => {
    const again = here(plan.redose).filter((change) => change.card === card);
    const doses = [wholeCard(card).dose, ...layers, ...again.map(({ dose }) => dose)];
    return { key: `${phase.id}/${card}`, phase: phase.id, card, dose: merged(doses) };
  };
  const kept = phase.exercises.flatMap((exercise) => {
    const { card } = exercise;
    const row = rowOf(exercise, followed);
    const named = ({ card: other }: ChangeText) => other === card;
    if (row === "none" || here(plan.leave_out).some(named)) return [];
    const layers = [exercise.dose ?? {}, ...(row === undefined ? [] : [row])];
    const swap = here(plan.swap).find(named);
    return [swap ? entry(swap.to, [...layers, swap.dose ?? {}]) : entry(card, layers)];
  });
  const added = here(plan.add).filter((add) => add.phase !== undefined || holder(add) === phase);
  return [...kept, ...added.map(({ card, dose }) => entry(card, [dose]))];
}

/** Whether a change is for a week of a phase, counted from its first. */
export function isFor({ phase, weeks }: SpanText, id: string, week: number): boolean {
  const [first = 1, last = first] = (weeks ?? "").split("-").map(Number);
  return (phase ?? id) === id && (weeks === undefined || (week >= first && week <= last));
}

/** The row of an exercise's table for a week of its phase; undefined where the dose holds alone. */
function rowOf(
  { weeks = {} }: PhaseText["exercises"][number],
  week: number,
): DoseText | "none" | undefined {
  const found = Object.entries(weeks).find(([key]) => isFor({ weeks: key }, "", week))?.[1];
  return typeof found === "string" ? "none" : found;
}

const HOW_OFTEN = ["per_week", "per_day", "every"] as const;

/** Doses one over the other; who says how often says all of it. */
function merged(doses: readonly DoseText[]): DoseText {
  return doses.reduce((before, dose) => {
    const says = HOW_OFTEN.some((field) => field in dose);
    const kept = Object.entries(before).filter(
      ([field]) => !says || !HOW_OFTEN.some((one) => one === field),
    );
    return { ...Object.fromEntries(kept), ...dose };
  }, {});
}
