/** Programs for the tests, written briefly. 2027-01-04 is a Monday. */

import type {
  LaidWeek,
  LayoutResult,
  ProgramDay,
  ProgramExercise,
  ProgramWeeks,
} from "../../../src/week/program/program-types.ts";
import { dayNumber } from "../../../src/week/search/dates.ts";

import { CLOCK } from "../search/support.ts";

export const MONDAY = "2027-01-04";

export function programExercise(id: string, more: Partial<ProgramExercise> = {}): ProgramExercise {
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

/** 30 minutes every evening. */
export const EVENING: ProgramDay = { free: { morning: 0, midday: 0, evening: 30 } };
export const CLOSED: ProgramDay = { free: { morning: 0, midday: 0, evening: 0 } };

/** One phase of the same exercises for so many weeks, with an evening free every day. */
export function course(
  weeks: number,
  exercises: readonly ProgramExercise[],
  more: Partial<ProgramWeeks> = {},
): ProgramWeeks {
  return {
    firstDate: MONDAY,
    clock: CLOCK,
    phases: [{ id: "one", weeks: Array.from({ length: weeks }, () => ({ exercises })) }],
    days: new Array<ProgramDay>(7 * weeks).fill(EVENING),
    events: [],
    groupHours: {},
    ...more,
  };
}

export function laidOut(result: LayoutResult): readonly LaidWeek[] {
  if (result.status !== "laid-out") throw new Error(JSON.stringify(result, null, 1));
  return result.weeks;
}

/** The dates of one exercise, ascending. */
export function datesOf(weeks: readonly LaidWeek[], exercise: string): string[] {
  return weeks.flatMap((week) =>
    week.sessions
      .filter((session) => session.bouts.some((bout) => bout.exercise === exercise))
      .map((session) => session.date),
  );
}

/** Days from each date to the next. */
export function gaps(dates: readonly string[]): number[] {
  const days = dates.map((date) => dayNumber(date) ?? Number.NaN);
  return days.slice(1).map((day, i) => day - (days[i] ?? Number.NaN));
}
