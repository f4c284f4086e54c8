/**
 * Whether a week has any place at all: every exercise's possible sets of slots, tried one after the
 * other. Written from what the rules say, without the search, its model or its verifier.
 */
import { PARTS } from "../../../src/units/day-parts.ts";
import type { WeekExercise, WeekProblem } from "../../../src/week/search/problem.ts";

const SLOTS = Array.from({ length: 21 }, (_, t) => t);
const hour = (t: number, { clock }: WeekProblem): number =>
  24 * Math.floor(t / 3) + clock[PARTS[t % 3] ?? "morning"] / 60;
const dayOf = (t: number): number => Math.floor(t / 3);

/** Hours are not whole; exactly as many as asked for are enough. */
const NEARLY = 1e-6;

/** More tries than these leave the question open. */
const MOST_TRIES = 100_000;

/** One exercise with the slots of its bouts. */
interface Placed {
  readonly one: WeekExercise;
  readonly slots: readonly number[];
}

/** True or false; undefined where it would take too long to say. */
export function fits(problem: WeekProblem): boolean | undefined {
  const all = problem.exercises
    .map((one) => ({ one, ways: waysOf(one, problem) }))
    .sort((a, b) => a.ways.length - b.ways.length);
  const room = problem.freeMinutes.map(tenths);
  let tries = 0;

  const place = (placed: readonly Placed[]): boolean => {
    const next = all[placed.length];
    if (next === undefined) return hardDaysKept(problem, placed);
    const { one, ways } = next;
    const minutes = tenths(one.minutes);
    return ways.some((slots) => {
      tries += 1;
      if (tries > MOST_TRIES || slots.some((t) => (room[t] ?? 0) < minutes)) return false;
      const mine = { one, slots };
      if (!placed.every((other) => goTogether(mine, other, problem))) return false;
      for (const t of slots) room[t] = (room[t] ?? 0) - minutes;
      const done = place([...placed, mine]);
      for (const t of slots) room[t] = (room[t] ?? 0) + minutes;
      return done;
    });
  };

  const found = place([]);
  return !found && tries > MOST_TRIES ? undefined : found;
}

const tenths = (minutes: number): number => Math.round(minutes * 10);

/** All sets of slots that one exercise could have by itself. */
function waysOf(one: WeekExercise, problem: WeekProblem): number[][] {
  const { times } = one;
  // Hard bouts of a tissue keep its hours, also those of one exercise.
  const tissues = one.hard ? one.groups.map((group) => problem.groupHours[group] ?? 0) : [];
  const hours = Math.max(one.recoveryHours, ...tissues);
  if (!("perWeek" in times) && !("perDay" in times)) throw new Error("only times a week or a day");
  const free = (t: number) => problem.freeMinutes[t] ?? 0;
  const may = SLOTS.filter((t) => free(t) >= one.minutes && !isKeptClear(one, t, problem));
  let ways: { slots: number[]; days: number }[] = [{ slots: [], days: 0 }];
  for (let day = 0; day < 7; day++) {
    const bouts = "perDay" in times ? times.perDay : 1;
    const sets = subsets(may.filter((t) => dayOf(t) === day)).filter((s) => s.length === bouts);
    ways = ways.flatMap(({ slots, days }) => {
      const done = sets
        .map((set) => ({ slots: [...slots, ...set], days: days + 1 }))
        .filter(({ slots: both }) => recovers(both, hours, problem))
        .filter((way) => !("perWeek" in times) || way.days <= times.perWeek);
      return "perDay" in times ? done : [{ slots, days }, ...done];
    });
  }
  return ways
    .filter(({ days }) => !("perWeek" in times) || days === times.perWeek)
    .map(({ slots }) => slots);
}

function recovers(slots: readonly number[], hours: number, problem: WeekProblem): boolean {
  const apart = (t: number, u: number) => hour(u, problem) - hour(t, problem);
  return slots.every((t) => slots.every((u) => u <= t || apart(t, u) >= hours - NEARLY));
}

function isKeptClear(one: WeekExercise, t: number, problem: WeekProblem): boolean {
  return problem.events.some((event) => {
    const at = 24 * event.day + problem.clock[event.part] / 60;
    const ahead = at - hour(t, problem);
    const touches = event.groups.some((group) => one.groups.includes(group));
    const own = (one.clearBefore ?? []).filter(({ events: meant }) =>
      meant === "any" ? true : meant === "touching" ? touches : meant.includes(event.id),
    );
    const before = own.map(({ hours }) => hours);
    const matters = one.hard && (touches || event.groups.length === 0);
    if (matters) before.push(event.clearBeforeHours ?? 0);
    if (ahead >= -NEARLY && ahead < Math.max(0, ...before) - NEARLY) return true;
    return matters && ahead <= NEARLY && -ahead < (event.clearAfterHours ?? 0) - NEARLY;
  });
}

/** Whether two exercises keep the hours of a tissue, their order and their common session. */
function goTogether(a: Placed, b: Placed, problem: WeekProblem): boolean {
  const { groupHours } = problem;
  const shared = a.one.groups.filter((group) => b.one.groups.includes(group));
  const hours = a.one.hard && b.one.hard ? shared.map((group) => groupHours[group] ?? 0) : [];
  const apart = Math.max(0, ...hours);
  if (apart > 0) {
    const near = (t: number) =>
      b.slots.some(
        (u) => t !== u && Math.abs(hour(t, problem) - hour(u, problem)) < apart - NEARLY,
      );
    if (a.slots.some(near)) return false;
  }
  return followsRight(a, b) && followsRight(b, a);
}

/** Whether one lies in the sessions of the other, and after it, where it says so. */
function followsRight({ one, slots }: Placed, other: Placed): boolean {
  if (one.sameSessionAs === other.one.id && !slots.every((t) => other.slots.includes(t))) {
    return false;
  }
  const often = [one, other.one].some(({ times }) => "perDay" in times && times.perDay > 1);
  if (often || !one.after?.includes(other.one.id)) return true;
  return !slots.some((t) => other.slots.some((u) => dayOf(t) === dayOf(u) && t < u));
}

function hardDaysKept(problem: WeekProblem, placed: readonly Placed[]): boolean {
  const most = problem.maxHardDaysInRow;
  if (most === undefined) return true;
  const days = new Set(problem.events.filter(({ hard }) => hard).map(({ day }) => day));
  for (const { one, slots } of placed) if (one.hard) for (const t of slots) days.add(dayOf(t));
  return SLOTS.every((first) =>
    Array.from({ length: most + 1 }, (_, i) => first - 7 + i).some((day) => !days.has(day)),
  );
}

function subsets(slots: readonly number[]): number[][] {
  const all: number[][] = [[]];
  for (const t of slots) all.push(...all.map((set) => [...set, t]));
  return all;
}
