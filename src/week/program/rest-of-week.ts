/** What is left to place of a week of which days are gone, and how much of it has room. */
import {
  dayOf,
  type GivenBout,
  SLOTS,
  type Times,
  type WeekExercise,
  type WeekProblem,
} from "../search/problem.ts";
import { type SolveOptions, solveWeek } from "../search/solve.ts";
import type { IssuedWeek } from "./issued-week.ts";
import type { LostBouts } from "./program-types.ts";

/** The days that are left, with what was issued on the days gone as bouts that are not to be moved. */
export function restOfWeek(
  problem: WeekProblem,
  { bouts, gone }: IssuedWeek,
  before: readonly GivenBout[],
): WeekProblem {
  const past = bouts.filter(({ slot }) => dayOf(slot) < gone);
  const counts = new Map<string, number>();
  for (const { id, times } of problem.exercises) {
    const done = past.filter((bout) => bout.exercise === id).length;
    if ("perWeek" in times) counts.set(id, Math.max(0, times.perWeek - done));
  }
  const left = withCounts(problem, counts);
  return {
    ...left,
    exercises: left.exercises.map((one) => ({ ...one, times: daysLeft(one.times, gone) })),
    freeMinutes: Array.from({ length: SLOTS }, (_, slot) =>
      dayOf(slot) < gone ? 0 : (problem.freeMinutes[slot] ?? 0),
    ),
    given: [...before, ...past],
  };
}

/** The days on which it is still to be done. */
function daysLeft(times: Times, gone: number): Times {
  const isLeft = (day: number) => day >= gone;
  if ("onDays" in times) return { ...times, onDays: times.onDays.filter(isLeft) };
  if (!("perDay" in times) || times.days === undefined) return times;
  return { ...times, days: times.days.filter(isLeft) };
}

/**
 * As much of a week as has room, the exercises that come first before the others, and what is lost.
 * An exercise that shares the sessions of another goes where that one does, or not at all.
 */
export function mostThatFits(
  problem: WeekProblem,
  options: SolveOptions,
): { problem: WeekProblem; lost: readonly LostBouts[] } {
  const counts = new Map(problem.exercises.map(({ id }) => [id, 0]));
  const hosts = problem.exercises.filter(({ sameSessionAs }) => sameSessionAs === undefined);
  const guests = problem.exercises.filter(({ sameSessionAs }) => sameSessionAs !== undefined);
  for (const one of [...hosts, ...guests]) {
    const most =
      one.sameSessionAs !== undefined && (counts.get(one.sameSessionAs) ?? 0) === 0
        ? 0
        : wanted(one.times);
    const least = "perWeek" in one.times ? 1 : most;
    for (let count = most; count > 0 && count >= least; count--) {
      counts.set(one.id, count);
      const answer = solveWeek(withCounts(problem, counts), { ...options, any: true });
      if (answer.status === "solved") break;
      counts.set(one.id, 0);
    }
  }
  return {
    problem: withCounts(problem, counts),
    lost: problem.exercises.flatMap(({ id, times }) => {
      const bouts = wanted(times) - (counts.get(id) ?? 0);
      return bouts > 0 ? [{ exercise: id, bouts }] : [];
    }),
  };
}

/** Bouts that an exercise is to have; those of what is done daily count by the day. */
function wanted(times: Times): number {
  if ("perWeek" in times) return times.perWeek;
  if ("perDay" in times) return times.perDay;
  return "onDays" in times ? times.onDays.length : 1;
}

/** The week with so many bouts of the exercises named; those with none are not in it. */
function withCounts(problem: WeekProblem, counts: ReadonlyMap<string, number>): WeekProblem {
  const exercises = problem.exercises.filter(({ id }) => counts.get(id) !== 0);
  const isHere = (id: string) => exercises.some((one) => one.id === id);
  return {
    ...problem,
    exercises: exercises.map(({ after, sameSessionAs, ...one }): WeekExercise => {
      const count = counts.get(one.id);
      return {
        ...one,
        ...("perWeek" in one.times && count !== undefined ? { times: { perWeek: count } } : {}),
        ...(after === undefined ? {} : { after: after.filter(isHere) }),
        ...(sameSessionAs !== undefined && isHere(sameSessionAs) ? { sameSessionAs } : {}),
      };
    }),
  };
}
