/** The weeks of a program as problems for the search. */
import { PARTS } from "../../units/day-parts.ts";
import { clearedSlots } from "../search/clear.ts";
import { dayNumber, weekday } from "../search/dates.ts";
import {
  type Clearance,
  DAYS,
  type GivenBout,
  type Placement,
  SLOTS,
  type WeekEvent,
  type WeekExercise,
  type WeekProblem,
} from "../search/problem.ts";
import { type DatedCourse, type DayState, everyNDays, type PastDays } from "./every-n-days.ts";
import { type IssuedWeek, issuedWeek } from "./issued-week.ts";
import type { ProgramDay, ProgramExercise, ProgramWeeks, TakenBouts } from "./program-types.ts";

export interface ProgramWeek {
  /** Week of the program, from 0. */
  readonly index: number;
  readonly phase: string;
  /** Day number of its first day. */
  readonly start: number;
  /** What the client already has of it. */
  readonly issued: IssuedWeek | undefined;
  /** The week standing alone, with events a week before and after it. */
  readonly problem: WeekProblem;
  /** Dates on which an every-n-days exercise fell due on a closed day. */
  readonly slipped: readonly {
    readonly exercise: string;
    readonly day: number;
    readonly to?: number;
  }[];
  /** Bouts that days taken cost it; below 0 where one comes that a week before waited for. */
  readonly taken: readonly TakenBouts[];
}

/**
 * The problem of each week. `offset` is the day of the course on which the exercises done every n
 * days begin.
 */
export function programWeeks(program: ProgramWeeks, offset: number): ProgramWeek[] {
  const first = dayNumber(program.firstDate) ?? 0;
  const plain = program.phases
    .flatMap((phase) => phase.weeks.map((each) => ({ phase: phase.id, list: each.exercises })))
    .map(({ phase, list }, index) => {
      const start = first + DAYS * index;
      const events = eventsAround(program, start);
      return { phase, list, index, start, problem: bareProblem(program, index, start, events) };
    });
  const courses = datedCourses(plain, program, offset, pastDays(program, first));
  const daily = dailyDays(plain, program);
  return plain.map(({ phase, list, index, start, problem }) => {
    const inWeek = (day: number) => Math.floor(day / DAYS) === index;
    const issued = issuedWeek(program.issued, start);
    const gone = issued?.gone ?? 0;
    const taken = list.flatMap((one) => {
      const { times } = one;
      if ("perWeek" in times) return [];
      if ("perDay" in times) {
        const left = (daily.get(one.id)?.[index] ?? []).filter((day) => day >= gone);
        return { exercise: one.id, bouts: times.perDay * (DAYS - gone - left.length) };
      }
      const course = courses.get(times.everyDays);
      const count = (days: readonly number[] = []) => days.filter(inWeek).length;
      return { exercise: one.id, bouts: count(course?.untaken) - count(course?.days) };
    });
    const slipped = list.flatMap((one) => {
      const course = "everyDays" in one.times ? courses.get(one.times.everyDays) : undefined;
      return (course?.slipped ?? [])
        .filter(({ day }) => inWeek(day))
        .map((slip) => ({ exercise: one.id, ...slip }));
    });
    const exercises = list.map((one) => {
      const bare = bareExercise(one, list, problem.events);
      const { times } = one;
      if ("perWeek" in times) return { ...bare, times };
      if ("perDay" in times) {
        return { ...bare, times: { ...times, days: daily.get(one.id)?.[index] ?? [] } };
      }
      const days = (courses.get(times.everyDays)?.days ?? []).filter(inWeek);
      const onDays = days.map((day) => day % DAYS);
      return { ...bare, times: { onDays, every: times.everyDays } };
    });
    return { index, phase, start, slipped, taken, issued, problem: { ...problem, exercises } };
  });
}

/** The bouts of a placement as seen from a week so many weeks later (or earlier, if negative). */
export function boutsSeenFrom(
  exercises: readonly WeekExercise[],
  placement: Placement,
  weeksLater: number,
): GivenBout[] {
  return exercises.flatMap((one) =>
    (placement.get(one.id) ?? []).map((slot) => ({
      exercise: one.id,
      ...(one.movement === undefined ? {} : { movement: one.movement }),
      slot: slot - SLOTS * weeksLater,
      hard: one.hard,
      groups: one.groups,
      recoveryHours: one.recoveryHours,
    })),
  );
}

function bareProblem(
  program: ProgramWeeks,
  index: number,
  start: number,
  events: readonly WeekEvent[],
): WeekProblem {
  const days = program.days.slice(DAYS * index, DAYS * (index + 1));
  return {
    clock: program.clock,
    freeMinutes: days.flatMap((day) => PARTS.map((part) => day.free[part])),
    exercises: [],
    events,
    groupHours: program.groupHours,
    ...(program.maxHardDaysInRow === undefined
      ? {}
      : { maxHardDaysInRow: program.maxHardDaysInRow }),
    ...(program.changeoverMinutes === undefined
      ? {}
      : { changeoverMinutes: program.changeoverMinutes }),
    wraps: false,
    firstWeekday: weekday(start),
    ...(program.origins === undefined ? {} : { origins: program.origins }),
  };
}

function eventsAround(program: ProgramWeeks, start: number): WeekEvent[] {
  return program.events
    .map(({ date, ...event }) => ({ ...event, day: (dayNumber(date) ?? 0) - start }))
    .filter(({ day }) => day >= -DAYS && day < 2 * DAYS)
    .sort((a, b) => a.day - b.day || (a.id < b.id ? -1 : 1));
}

/** The exercise without what it says of exercises and events that this week does not have. */
function bareExercise(
  one: ProgramExercise,
  list: readonly ProgramExercise[],
  events: readonly WeekEvent[],
): Omit<WeekExercise, "times"> {
  const { times: _, minutesBySets: _sets, after, sameSessionAs, clearBefore, ...rest } = one;
  const isHere = (id: string) => list.some((other) => other.id === id);
  const clear = clearBefore?.map((each): Clearance => {
    if (typeof each.events === "string") return each;
    const named = each.events.filter((id) => events.some((event) => event.id === id));
    return { hours: each.hours, events: named };
  });
  return {
    ...rest,
    ...(after === undefined ? {} : { after: after.filter(isHere) }),
    ...(sameSessionAs !== undefined && isHere(sameSessionAs) ? { sameSessionAs } : {}),
    ...(clear === undefined ? {} : { clearBefore: clear }),
  };
}

/** The days of the program that are gone, with those on which each exercise was issued. */
function pastDays(
  { issued }: ProgramWeeks,
  first: number,
): { until: number; of: (exercise: string) => number[] } {
  const until = issued === undefined ? 0 : Math.max(0, (dayNumber(issued.today) ?? 0) - first);
  const of = (exercise: string) =>
    (issued?.sessions ?? [])
      .filter(({ bouts }) => bouts.some((bout) => bout.exercise === exercise))
      .map(({ date }) => (dayNumber(date) ?? Number.NaN) - first);
  return { until, of };
}

/**
 * By exercise done daily, its days in each week: all but those taken. Where every day of its weeks is
 * taken, nothing of it would be left to do: then all of them, so that the layout can tell that it does
 * not fit.
 */
function dailyDays(
  weeks: readonly { readonly list: readonly ProgramExercise[] }[],
  program: ProgramWeeks,
): Map<string, number[][]> {
  const open = weeks.map((_, index) => daysNotTaken(program, index));
  const all = Array.from({ length: DAYS }, (_, day) => day);
  const ids = new Set(
    weeks.flatMap(({ list }) => list.flatMap(({ id, times }) => ("perDay" in times ? [id] : []))),
  );
  const isOpen = (id: string) =>
    weeks.some(({ list }, at) => open[at]?.length !== 0 && list.some((one) => one.id === id));
  return new Map([...ids].map((id) => [id, isOpen(id) ? open : weeks.map(() => all)]));
}

/** Days of a week on which the client has time, or would have to have it: all but those taken. */
function daysNotTaken(program: ProgramWeeks, index: number): number[] {
  return Array.from({ length: DAYS }, (_, day) => day).filter((day) => {
    const date = program.days[DAYS * index + day];
    if (date === undefined) return false;
    return PARTS.some((part) => date.free[part] > 0) || !isTimeTaken(date, 1, 0);
  });
}

/**
 * Whether a bout of these minutes would have time on a date in the client's usual week, so that
 * something on the date itself takes it; `closed` are parts kept clear of events, as bits.
 */
function isTimeTaken(date: ProgramDay, minutes: number, closed: number): boolean {
  if (date.usual === undefined && date.why !== undefined) return true;
  const usual = date.usual ?? date.free;
  return PARTS.some((part, p) => {
    const isGone = date.free[part] < minutes || ((closed >> p) & 1) === 1;
    return usual[part] >= minutes && isGone;
  });
}

/** The dates of what is done every n days, and those it would have if no day were taken. */
interface ProgramCourse extends DatedCourse {
  readonly untaken: readonly number[];
}

/** By n, the dates of all exercises done every n days; they share their days. */
function datedCourses(
  weeks: readonly { readonly list: readonly ProgramExercise[]; readonly problem: WeekProblem }[],
  program: ProgramWeeks,
  offset: number,
  past: ReturnType<typeof pastDays>,
): Map<number, ProgramCourse> {
  const states = new Map<number, DayState[]>();
  const issued = new Map<number, Set<number>>();
  weeks.forEach(({ list, problem }, index) => {
    for (const one of list) {
      if (!("everyDays" in one.times)) continue;
      const n = one.times.everyDays;
      const all = states.get(n) ?? new Array<DayState>(DAYS * weeks.length).fill("absent");
      states.set(n, all);
      issued.set(n, new Set([...(issued.get(n) ?? []), ...past.of(one.id)]));
      const bare = { ...bareExercise(one, list, problem.events), times: { onDays: [] } };
      const closed = clearedSlots(bare, problem);
      for (let day = 0; day < DAYS; day++) {
        const parts = [0, 1, 2].map((part) => 3 * day + part);
        const isOpen = parts.some(
          (t) => (problem.freeMinutes[t] ?? 0) >= one.minutes && ((closed >> t) & 1) === 0,
        );
        const at = DAYS * index + day;
        const date = program.days[at];
        const isTaken = date !== undefined && isTimeTaken(date, one.minutes, closed >> (3 * day));
        if (!isOpen) all[at] = isTaken && all[at] !== "never-open" ? "taken" : "never-open";
        else if (all[at] === "absent") all[at] = "open";
      }
    }
  });
  return new Map(
    [...states].map(([n, all]) => {
      const gone: PastDays = { until: past.until, issued: issued.get(n) ?? new Set() };
      const from = Math.min(offset, n - 1);
      const free = all.map((state) => (state === "taken" ? "open" : state));
      const { days: untaken } = everyNDays(free, n, from, gone);
      return [n, { ...everyNDays(all, n, from, gone), untaken }];
    }),
  );
}
