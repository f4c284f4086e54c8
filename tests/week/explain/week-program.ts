/** A week of the tests as a program of its own, to be laid out and explained. */
import type { ProgramExercise, ProgramWeeks } from "../../../src/week/program/program-types.ts";
import { dayNumber, isoDate } from "../../../src/week/search/dates.ts";
import type { WeekProblem } from "../../../src/week/search/problem.ts";
import { MONDAY } from "../program/program-support.ts";

/** The same week so many times over, as one phase, without the weeks around it and earlier layouts. */
export function weekProgram(problem: WeekProblem, weeks = 1): ProgramWeeks {
  const start = dayNumber(MONDAY) ?? 0;
  const exercises = problem.exercises.map(({ times, ...one }): ProgramExercise => {
    if ("onDays" in times) throw new Error(`${one.id} has fixed days`);
    return { ...one, times: "everyDays" in times ? { everyDays: times.everyDays } : times };
  });
  const { clock, freeMinutes, events, groupHours, maxHardDaysInRow } = problem;
  return {
    firstDate: MONDAY,
    clock,
    phases: [{ id: "one", weeks: Array.from({ length: weeks }, () => ({ exercises })) }],
    days: Array.from({ length: 7 * weeks }, (_, day) => {
      const at = (part: number) => freeMinutes[3 * (day % 7) + part] ?? 0;
      return { free: { morning: at(0), midday: at(1), evening: at(2) } };
    }),
    events: Array.from({ length: weeks }, (_, week) =>
      events.map(({ day, ...event }) => ({ ...event, date: isoDate(start + 7 * week + day) })),
    ).flat(),
    groupHours,
    ...(maxHardDaysInRow === undefined ? {} : { maxHardDaysInRow }),
  };
}
