/** Seeded programs of a few weeks, and the same with one change, as a plan is changed at a review. */
import type {
  IssuedSession,
  LaidWeek,
  ProgramExercise,
  ProgramWeeks,
} from "../../../src/week/program/program-types.ts";
import { dayNumber, isoDate } from "../../../src/week/search/dates.ts";
import type { WeekProblem } from "../../../src/week/search/problem.ts";
import { seededWeek } from "../search/seeded.ts";
import { MONDAY } from "./program-support.ts";

const START = dayNumber(MONDAY) ?? 0;
const WEEKS = 6;

/** Six weeks in phases of so many weeks, made from a seeded week of `count` exercises. */
export function seededProgram(seed: number, count: number, phaseWeeks: number): ProgramWeeks {
  const week = seededWeek(seed, count, false);
  const list = week.exercises.map(({ times, ...one }): ProgramExercise => {
    if ("onDays" in times) return { ...one, times: { perWeek: 1 } };
    return { ...one, times: "everyDays" in times ? { everyDays: times.everyDays } : times };
  });
  const phases = Array.from({ length: WEEKS / phaseWeeks }, (_, phase) => ({
    id: `phase-${phase}`,
    weeks: Array.from({ length: phaseWeeks }, () => ({
      exercises: list.map((one) => ({ ...one, minutes: one.minutes + phase })),
    })),
  }));
  return {
    firstDate: MONDAY,
    clock: week.clock,
    phases,
    days: Array.from({ length: 7 * WEEKS }, (_, day) => freeOn(day % 7, week, WEEKS / phaseWeeks)),
    events: Array.from({ length: WEEKS }, (_, index) =>
      week.events.map(({ day, ...event }) => ({
        ...event,
        date: isoDate(START + 7 * index + day),
      })),
    ).flat(),
    groupHours: week.groupHours,
    ...(week.maxHardDaysInRow === undefined ? {} : { maxHardDaysInRow: week.maxHardDaysInRow }),
  };
}

function freeOn(day: number, { freeMinutes }: WeekProblem, more: number) {
  const at = (part: number) => {
    const minutes = freeMinutes[3 * day + part] ?? 0;
    return minutes > 0 ? minutes + more * 3 : 0;
  };
  return { free: { morning: at(0), midday: at(1), evening: at(2) } };
}

export const CHANGES = [
  "a day away",
  "an event",
  "more minutes",
  "more often",
  "less often",
  "one more exercise",
  "one fewer exercise",
  "another exercise in its place",
] as const;
export type PlanChange = (typeof CHANGES)[number];

/** The program with one change from the given week on, or in that week where it is a day's. */
export function changed(program: ProgramWeeks, what: PlanChange, from: number): ProgramWeeks {
  const inWeeks = (edit: (list: readonly ProgramExercise[]) => readonly ProgramExercise[]) => {
    let index = 0;
    const phases = program.phases.map((phase) => ({
      ...phase,
      weeks: phase.weeks.map(({ exercises }) => ({
        exercises: index++ >= from ? edit(exercises) : exercises,
      })),
    }));
    return { ...program, phases };
  };
  const first = (edit: (one: ProgramExercise) => ProgramExercise) =>
    inWeeks((list) => list.map((one, at) => (at === 0 ? edit(one) : one)));
  const times = (step: number) =>
    first((one) => {
      const { times } = one;
      if (!("perWeek" in times)) return one;
      return { ...one, times: { perWeek: Math.min(6, Math.max(1, times.perWeek + step)) } };
    });
  switch (what) {
    case "a day away": {
      const closed = { free: { morning: 0, midday: 0, evening: 0 }, why: "away" };
      const away = 7 * from + 2;
      return { ...program, days: program.days.map((day, at) => (at === away ? closed : day)) };
    }
    case "an event": {
      const date = isoDate(START + 7 * from + 4);
      const match = { id: "match", name: "match", date, part: "midday" as const, hard: true };
      const events = [...program.events, { ...match, groups: [], clearBeforeHours: 30 }];
      return { ...program, events };
    }
    case "more minutes":
      return first((one) => ({ ...one, minutes: one.minutes + 4 }));
    case "more often":
      return times(1);
    case "less often":
      return times(-1);
    case "one more exercise":
      return inWeeks((list) => [...list, { ...extra, groups: list[0]?.groups ?? [] }]);
    case "one fewer exercise":
      return inWeeks((list) => {
        const [gone, ...others] = list;
        const without = others.filter((one) => one.sameSessionAs !== gone?.id);
        return without.map(({ after, ...one }) => one);
      });
    case "another exercise in its place":
      return first((one) => ({ ...one, recoveryHours: one.recoveryHours + 12 }));
  }
}

const extra: ProgramExercise = {
  id: "extra",
  minutes: 5,
  times: { perWeek: 2 },
  recoveryHours: 48,
  hard: true,
  groups: [],
};

/** A layout as the client has it. */
export function issuedSessions(program: ProgramWeeks, weeks: readonly LaidWeek[]): IssuedSession[] {
  const plan = program.phases.flatMap((phase) => phase.weeks);
  return weeks.flatMap(({ week, sessions }) =>
    sessions.map(({ date, part, bouts }) => ({
      date,
      part,
      bouts: bouts.map(({ exercise }) => {
        const one = plan[week]?.exercises.find(({ id }) => id === exercise);
        if (one === undefined) throw new Error(`${exercise} is not in week ${week}`);
        const { hard, groups, recoveryHours } = one;
        return { exercise, hard, groups, recoveryHours };
      }),
    })),
  );
}

/** Bouts of a week by exercise and slot: "calf 5". */
export function boutsOf({ firstDate, sessions }: LaidWeek): { id: string; slot: number }[] {
  const parts = ["morning", "midday", "evening"];
  return sessions.flatMap(({ date, part, bouts }) => {
    const day = (dayNumber(date) ?? 0) - (dayNumber(firstDate) ?? 0);
    return bouts.map(({ exercise }) => ({ id: exercise, slot: 3 * day + parts.indexOf(part) }));
  });
}
