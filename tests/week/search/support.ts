/** Weeks for the tests, written briefly. */
import { PARTS, type PartOfDay } from "../../../src/units/day-parts.ts";
import { DAYS, type WeekExercise, type WeekProblem } from "../../../src/week/search/problem.ts";

/** The clock of a plan that says no hours: 07:00, 13:00, 19:00. */
export const CLOCK = { morning: 420, midday: 780, evening: 1140 } as const;

const EVERY_DAY = [0, 1, 2, 3, 4, 5, 6];

/** Free minutes of the week: by part of the day, the same minutes on the days named. */
export function free(
  ...spans: readonly { part: PartOfDay; minutes: number; days?: readonly number[] }[]
): number[] {
  const minutes = new Array<number>(3 * DAYS).fill(0);
  for (const { part, minutes: each, days = EVERY_DAY } of spans) {
    for (const day of days) minutes[3 * day + PARTS.indexOf(part)] = each;
  }
  return minutes;
}

/** An exercise of 10 minutes, three times a week, that asks for nothing else. */
export function exercise(id: string, more: Partial<WeekExercise> = {}): WeekExercise {
  return {
    id,
    minutes: 10,
    times: { perWeek: 3 },
    recoveryHours: 0,
    hard: false,
    groups: [],
    ...more,
  };
}

/** A weekly pattern with 30 minutes every evening unless said otherwise. */
export function week(
  exercises: readonly WeekExercise[],
  more: Partial<WeekProblem> = {},
): WeekProblem {
  return {
    clock: CLOCK,
    freeMinutes: free({ part: "evening", minutes: 30 }),
    exercises,
    events: [],
    groupHours: {},
    wraps: true,
    ...more,
  };
}
