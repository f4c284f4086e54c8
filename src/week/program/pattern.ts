/** The weekly pattern of a phase: the layout of its typical week, repeating. */
import {
  DAYS,
  type GivenBout,
  type Placement,
  type WeekExercise,
  type WeekProblem,
} from "../search/problem.ts";
import { type SolveOptions, solveWeek } from "../search/solve.ts";
import type { ProgramWeek } from "./program-weeks.ts";

/** A phase's pattern, and whether it was shown to be the best before the search came to its limit. */
export interface Pattern {
  readonly placement: Placement;
  readonly proven: boolean;
  /** What the exercises of the typical week like best. */
  readonly wishes: Wishes;
}

/** The slots that each exercise of a week likes best, as texts to compare. */
type Wishes = ReadonlyMap<string, string>;

/** The patterns of a phase by the turn they are for; undefined where no pattern was found. */
export type Patterns = ReadonlyMap<string, Pattern | undefined>;

/**
 * Lays out the typical week of a phase as a pattern that repeats: the free minutes, events and
 * frequencies that most of its weeks have, with the longest bouts among those weeks. Undefined
 * where there is no such pattern; the weeks are then laid out one by one.
 *
 * @param before bouts of the week before the phase, kept clear of where that is possible
 * @param between bouts of another pattern of the phase with which this one takes turns; then the
 *   pattern need not go with itself, but with that one before and after it
 * @param previous the pattern of the phase before, to stay near it
 */
export function phasePattern(
  weeks: readonly ProgramWeek[],
  before: readonly GivenBout[],
  between: readonly GivenBout[],
  previous: Placement | undefined,
  options: SolveOptions,
): Pattern | undefined {
  const alike = mostCommon(mostCommon(weeks, circumstances), frequencies);
  const first = alike[0];
  if (first === undefined) return undefined;
  const wishes = wishesOf(first);
  const { previous: _none, ...typical } = first.problem;
  const repeating: WeekProblem = {
    ...typical,
    events: typical.events.filter((event) => event.day >= 0 && event.day < DAYS),
    ...(previous === undefined ? {} : { previous }),
    wraps: between.length === 0,
  };
  const named = withoutMissingEvents(repeating);
  const longest = { ...named, exercises: longestBouts(alike, named.exercises) };
  const given = [...before, ...between];
  for (const problem of [{ ...longest, given }, { ...longest, given: between }, longest, named]) {
    const answer = solveWeek(problem, options);
    if (answer.status === "solved") return { placement: answer.placement, proven: true, wishes };
    if (answer.status === "unknown" && answer.found !== undefined) {
      return { placement: answer.found.placement, proven: false, wishes };
    }
  }
  return undefined;
}

/** Free minutes and events of a week, as a text to compare. */
export function circumstances({ problem }: ProgramWeek): string {
  const events = problem.events
    .filter(({ day }) => day >= 0 && day < DAYS)
    .map((event) => [
      event.day,
      event.part,
      event.hard,
      event.groups,
      event.clearBeforeHours,
      event.clearAfterHours,
    ]);
  return JSON.stringify([problem.freeMinutes, events]);
}

export const wishesOf = ({ problem }: ProgramWeek): Wishes =>
  new Map(problem.exercises.map(({ id, preferredSlots = [] }) => [id, preferredSlots.join()]));

/** Exercises of a week that like other slots best than in the week of these wishes: by a rota days wander. */
export function wanderers(week: ProgramWeek, wishes: Wishes): ReadonlySet<string> {
  const own = [...wishesOf(week)];
  return new Set(own.flatMap(([id, slots]) => (wishes.get(id) === slots ? [] : [id])));
}

/** The days of what is done on dates, as a text to compare: every second day gives two such texts. */
export function turn({ problem }: ProgramWeek): string {
  const days = problem.exercises.flatMap(({ times }) => ("onDays" in times ? times.onDays : []));
  return [...new Set(days)].sort().join();
}

/** Which exercises a week has and how often, as a text to compare. */
export function frequencies({ problem }: ProgramWeek): string {
  return JSON.stringify(problem.exercises.map((one) => [one.id, one.times]));
}

/** The weeks that agree in the text most weeks have; the earliest such text among equals. */
function mostCommon(
  weeks: readonly ProgramWeek[],
  text: (each: ProgramWeek) => string,
): readonly ProgramWeek[] {
  const groups = new Map<string, ProgramWeek[]>();
  for (const each of weeks) {
    const key = text(each);
    groups.set(key, [...(groups.get(key) ?? []), each]);
  }
  let most: readonly ProgramWeek[] = [];
  for (const group of groups.values()) if (group.length > most.length) most = group;
  return most;
}

function longestBouts(
  weeks: readonly ProgramWeek[],
  exercises: readonly WeekExercise[],
): WeekExercise[] {
  return exercises.map((one) => {
    const all = weeks.flatMap(({ problem }) =>
      problem.exercises.filter((other) => other.id === one.id).map((other) => other.minutes),
    );
    return { ...one, minutes: Math.max(one.minutes, ...all) };
  });
}

function withoutMissingEvents(problem: WeekProblem): WeekProblem {
  const ids = new Set(problem.events.map((event) => event.id));
  return {
    ...problem,
    exercises: problem.exercises.map((one) =>
      one.clearBefore === undefined
        ? one
        : {
            ...one,
            clearBefore: one.clearBefore.map((each) =>
              typeof each.events === "string"
                ? each
                : { hours: each.hours, events: each.events.filter((id) => ids.has(id)) },
            ),
          },
    ),
  };
}
