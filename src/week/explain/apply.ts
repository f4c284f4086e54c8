/** A program with changes made to it, as the plan with those changes would state it. */
import { PARTS, type PartOfDay } from "../../units/day-parts.ts";
import type {
  ProgramDay,
  ProgramExercise,
  ProgramTimes,
  ProgramWeeks,
} from "../program/program-types.ts";
import { dayNumber, weekday } from "../search/dates.ts";
import type { Change } from "./explain-types.ts";

/** The program with the changes made, one after the other. */
export function withChanges(program: ProgramWeeks, changes: readonly Change[]): ProgramWeeks {
  return changes.reduce(withChange, program);
}

function withChange(program: ProgramWeeks, change: Change): ProgramWeeks {
  switch (change.kind) {
    case "open-slot":
    case "more-minutes":
      return withMinutes(program, change);
    case "fewer-sets":
      return withExercise(program, change.exercise, change.weeks, (one) =>
        withSets(one, change.sets),
      );
    case "less-often":
      return withExercise(program, change.exercise, change.weeks, (one) =>
        timesInAWeek(change.times) < timesInAWeek(one.times)
          ? { ...one, times: change.times }
          : one,
      );
  }
}

/** A part of a weekday with other minutes on every date on which it is not taken. */
function withMinutes(
  program: ProgramWeeks,
  change: Extract<Change, { kind: "open-slot" | "more-minutes" }>,
): ProgramWeeks {
  const first = weekday(dayNumber(program.firstDate) ?? 0);
  const spare = program.changeoverMinutes ?? 0;
  const { part, minutes } = change;
  const changed = (now: number) => {
    if (change.kind === "more-minutes") return now > 0 ? now + minutes : 0;
    return now > 0 ? now : minutes + spare;
  };
  const days = program.days.map((day, index): ProgramDay => {
    if ((first + index) % 7 !== change.weekday) return day;
    const usual = { ...usualMinutes(day), [part]: changed(usualMinutes(day)[part]) };
    if (isTaken(day, part)) return { ...day, usual };
    return { ...day, usual, free: { ...day.free, [part]: changed(day.free[part]) } };
  });
  return { ...program, days };
}

/** Minutes of a date in the client's usual week, whether or not they are taken on it. */
export function usualMinutes(day: ProgramDay): Readonly<Record<PartOfDay, number>> {
  return day.usual ?? day.free;
}

/** Whether a part of a date cannot be had at all. */
export function isTaken(day: ProgramDay, part: PartOfDay): boolean {
  return day.taken?.includes(part) === true;
}

/** Every part of every weekday in which some date of the program lies, Monday 0. */
export function weeklyParts(
  program: ProgramWeeks,
): { weekday: number; part: PartOfDay; days: readonly ProgramDay[] }[] {
  const first = weekday(dayNumber(program.firstDate) ?? 0);
  return Array.from({ length: 7 }, (_, offset) => offset).flatMap((offset) =>
    PARTS.map((part) => ({
      weekday: (first + offset) % 7,
      part,
      days: program.days.filter((_, index) => index % 7 === offset),
    })),
  );
}

function withExercise(
  program: ProgramWeeks,
  id: string,
  weeks: readonly number[],
  change: (one: ProgramExercise) => ProgramExercise,
): ProgramWeeks {
  let index = 0;
  const phases = program.phases.map((phase) => ({
    ...phase,
    weeks: phase.weeks.map((week) => {
      const isMeant = weeks.includes(index);
      index += 1;
      if (!isMeant) return week;
      return { exercises: week.exercises.map((one) => (one.id === id ? change(one) : one)) };
    }),
  }));
  return { ...program, phases };
}

function withSets(one: ProgramExercise, sets: number): ProgramExercise {
  const minutes = one.minutesBySets?.[sets - 1];
  if (minutes === undefined || one.minutesBySets === undefined) return one;
  return { ...one, minutes, minutesBySets: one.minutesBySets.slice(0, sets - 1) };
}

/** Times in a week of seven days, to compare two ways of saying how often. */
export function timesInAWeek(times: ProgramTimes): number {
  if ("perWeek" in times) return times.perWeek;
  return "perDay" in times ? 7 * times.perDay : 7 / times.everyDays;
}
