/**
 * Every single change and every pair, with its cost, by the table above `COSTS`: written from that
 * text, for weeks whose parts of the day begin far enough apart.
 */
import { PARTS } from "../../../src/units/day-parts.ts";
import type { ProgramExercise, ProgramWeeks } from "../../../src/week/program/program-types.ts";

export interface State {
  readonly free: readonly number[];
  /** Slots that cannot be had. */
  readonly taken: readonly boolean[];
  readonly exercises: readonly ProgramExercise[];
}

/** One change: what it costs and what it makes of a week. `thing` is the same for steps of one thing. */
export interface Step {
  readonly thing: string;
  readonly cost: number;
  readonly make: (week: State) => State;
}

/** The week of a program of one week. */
export function stateOf(program: ProgramWeeks): State {
  return {
    free: program.days.flatMap(({ free }) => [free.morning, free.midday, free.evening]),
    taken: program.days.flatMap(({ taken }) => PARTS.map((part) => taken?.includes(part) === true)),
    exercises: program.phases[0]?.weeks[0]?.exercises ?? [],
  };
}

export function stepsOf(week: State): Step[] {
  const steps: Step[] = [];
  const longest = Math.max(...week.free, ...week.exercises.map(({ minutes }) => minutes));
  const cap = 5 * Math.ceil(longest / 5);
  week.free.forEach((now, t) => {
    const set = (minutes: number) => (state: State) => ({
      ...state,
      free: state.free.map((each, u) => (u === t ? minutes : each)),
    });
    if (now > 0) {
      for (const more of [5, 10, 15]) {
        steps.push({ thing: `slot ${t}`, cost: more / 5, make: set(now + more) });
      }
    } else if (!week.taken[t]) {
      const usual = week.free.some((each, u) => u % 3 === t % 3 && each > 0);
      steps.push({ thing: `slot ${t}`, cost: usual ? 3 : 4, make: set(cap) });
    }
  });
  for (const { id, times, minutesBySets } of week.exercises) {
    const change = (more: Partial<ProgramExercise>) => (state: State) => ({
      ...state,
      exercises: state.exercises.map((one) => (one.id === id ? { ...one, ...more } : one)),
    });
    const sets = minutesBySets ?? [];
    [...sets].reverse().forEach((minutes, less) => {
      steps.push({ thing: `sets ${id}`, cost: 4 * (less + 1), make: change({ minutes }) });
    });
    fewer(times).forEach((often, less) => {
      steps.push({ thing: `times ${id}`, cost: 5 * (less + 1), make: change({ times: often }) });
    });
  }
  return steps;
}

function fewer(times: ProgramExercise["times"]): ProgramExercise["times"][] {
  if ("everyDays" in times) throw new Error("not for every n days");
  const down = (from: number) => Array.from({ length: from - 1 }, (_, i) => from - 1 - i);
  return "perWeek" in times
    ? down(times.perWeek).map((perWeek) => ({ perWeek }))
    : [
        ...down(times.perDay).map((perDay) => ({ perDay })),
        ...down(7).map((perWeek) => ({ perWeek })),
      ];
}
