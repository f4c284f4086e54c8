/**
 * Places a week that the client already has in another form: what is past stays, and of the rest as
 * few bouts as possible lie elsewhere than they were issued.
 */
import { PARTS } from "../../units/day-parts.ts";
import {
  DAYS,
  dayOf,
  type FoundWeek,
  type Placement,
  type WeekProblem,
} from "../search/problem.ts";
import type { SolveOptions } from "../search/solve.ts";
import { verifyPlacement } from "../search/verify.ts";
import { boutsOnDays, type IssuedWeek } from "./issued-week.ts";
import { boutsBefore, onlyFor, type Placed, place } from "./placed.ts";
import { boutsSeenFrom, type ProgramWeek } from "./program-weeks.ts";
import { mostThatFits, restOfWeek } from "./rest-of-week.ts";

type Found = FoundWeek & { readonly proven: boolean };

/** Whether the week is past: nothing in it can be placed anew. */
export function isGone({ issued }: ProgramWeek): boolean {
  return issued?.gone === DAYS;
}

/**
 * The week as it was issued where that still keeps every rule, else with the fewest moved bouts, this
 * week and the next together. In a week of which days are gone, or which follows a week that is past,
 * bouts without room are lost and named. Undefined where the week has no place.
 */
export function placeAgain(
  weeks: readonly ProgramWeek[],
  placed: readonly Placed[],
  index: number,
  options: SolveOptions,
): Placed | undefined {
  const week = weeks[index];
  const issued = week?.issued;
  if (week === undefined || issued === undefined) return undefined;
  const expected = issued.placement;
  if (isGone(week)) return { placement: onlyFor(week.problem, expected), proven: true, expected };
  const rest = restOfWeek(week.problem, issued, boutsBefore(weeks, placed, index));
  const left = (day: number) => day >= issued.gone;
  const kept = onlyFor(rest, boutsOnDays(expected, left));
  const whole = (placement: Placement) => withPast(week.problem, issued, placement);
  if (keepsRules(rest, kept)) return { placement: whole(kept), proven: true, expected };
  const repairing = {
    issued: expected,
    last: placed[index - 1]?.placement,
    next: weeks[index + 1],
  };
  const found = repair(rest, repairing, options);
  if (typeof found !== "string") {
    return { placement: whole(found.placement), proven: found.proven, expected };
  }
  if (found === "unknown") return undefined;
  if (issued.gone === 0) {
    // A week that follows one that is past may lose bouts to it, but not to the plan itself.
    const before = weeks[index - 1];
    if (before === undefined || !isGone(before)) return undefined;
    if (typeof place(week.problem, { ...options, any: true }) === "string") return undefined;
  }
  const { problem, lost } = mostThatFits(rest, options);
  const fitting = repair(problem, repairing, options);
  if (typeof fitting === "string") return undefined;
  return { placement: whole(fitting.placement), proven: fitting.proven, expected, lost };
}

interface Repairing {
  readonly issued: Placement;
  /** The week before as it was placed. */
  readonly last: Placement | undefined;
  readonly next: ProgramWeek | undefined;
}

function repair(
  rest: WeekProblem,
  { issued, last, next }: Repairing,
  options: SolveOptions,
): Found | "impossible" | "unknown" {
  const near = nearIssued(rest, issued);
  const alone = place(near, options);
  if (typeof alone === "string") return alone;
  const after =
    next?.issued === undefined
      ? []
      : boutsSeenFrom(next.problem.exercises, onlyFor(next.problem, next.issued.placement), -1);
  const besideNext = { ...near, given: [...(near.given ?? []), ...after] };
  if (after.length === 0) return steady(near, alone, last, options);
  if (keepsRules(besideNext, alone.placement)) return steady(besideNext, alone, last, options);
  const beside = place(besideNext, options);
  if (typeof beside === "string") return steady(near, alone, last, options);
  const cost = (found: Found) =>
    found.objective.moved + movedNext(near, found.placement, next, options);
  return cost(alone) < cost(beside)
    ? steady(near, alone, last, options)
    : steady(besideNext, beside, last, options);
}

/** How many bouts of the next week have to move once this week lies so. */
function movedNext(
  { exercises }: WeekProblem,
  placement: Placement,
  next: ProgramWeek | undefined,
  options: SolveOptions,
): number {
  if (next?.issued === undefined) return 0;
  const problem = { ...next.problem, given: boutsSeenFrom(exercises, placement, 1) };
  if (keepsRules(problem, onlyFor(problem, next.issued.placement))) return 0;
  const found = place(nearIssued(problem, next.issued.placement), options);
  return typeof found === "string" ? Number.POSITIVE_INFINITY : found.objective.moved;
}

/**
 * Exercises that were not issued lie where the week before has them, where that moves no other: so
 * what is new keeps its days from week to week.
 */
function steady(
  near: WeekProblem,
  found: Found,
  last: Placement | undefined,
  options: SolveOptions,
): Found {
  const fresh = near.exercises.filter(({ id }) => !near.previous?.has(id) && last?.has(id));
  if (fresh.length === 0) return found;
  const previous = new Map(near.previous);
  for (const { id } of fresh) previous.set(id, last?.get(id) ?? []);
  const other = place({ ...near, previous }, options);
  if (typeof other === "string") return found;
  const moved = movedFrom(near.previous ?? new Map(), other.placement);
  return moved === found.objective.moved ? other : found;
}

/** Bouts that lie elsewhere than where they were; exercises that were nowhere do not count. */
function movedFrom(before: Placement, now: Placement): number {
  let moved = 0;
  for (const [id, slots] of now) {
    const then = before.get(id);
    if (then !== undefined) moved += slots.filter((slot) => !then.includes(slot)).length;
  }
  return moved;
}

/** The problem with the fewest bouts moved from where they were issued as its first aim. */
function nearIssued(problem: WeekProblem, issued: Placement): WeekProblem {
  const previous = new Map(issued);
  const exercises = problem.exercises.map((one) => {
    const slots = issued.get(one.id);
    if (!("onDays" in one.times) || slots === undefined) return one;
    // Its days are counted, not chosen: on a day that it did not have it may lie anywhere, and where
    // nothing else speaks against it keeps its part of the day.
    const days = new Set(slots.map(dayOf));
    const fresh = one.times.onDays.filter((day) => !days.has(day));
    previous.set(one.id, [
      ...slots,
      ...fresh.flatMap((day) => PARTS.map((_, part) => 3 * day + part)),
    ]);
    const part = (slots[0] ?? 0) % PARTS.length;
    const usual = [...slots, ...fresh.map((day) => 3 * day + part)];
    return { preferredSlots: usual, ...one };
  });
  return { ...problem, exercises, previous, aim: "repair" };
}

function withPast({ exercises }: WeekProblem, issued: IssuedWeek, rest: Placement): Placement {
  const past = boutsOnDays(issued.placement, (day) => day < issued.gone);
  return new Map(
    exercises.map(({ id }) => [id, [...(past.get(id) ?? []), ...(rest.get(id) ?? [])]]),
  );
}

function keepsRules(problem: WeekProblem, placement: Placement): boolean {
  return verifyPlacement(problem, placement).length === 0;
}
