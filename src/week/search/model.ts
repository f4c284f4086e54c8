/** A week's problem turned into bit masks, exercises in the order of their ids. */

import { clearedSlots, givenSlots } from "./clear.ts";
import { bitsOf, boutsADay, daySets, evenness, fixedDays, isDated } from "./day-sets.ts";
import { hardDaysAllowed } from "./hard-days.ts";
import { minutesApart } from "./hours-apart.ts";
import {
  DAYS,
  minutesBetween,
  movementOf,
  SLOTS,
  type WeekExercise,
  type WeekProblem,
} from "./problem.ts";

/** Minutes are counted in tenths, so that sums are exact. */
const TENTHS = 10;

export interface DayOption {
  /** 7-bit mask of days. */
  readonly days: number;
  readonly evenness: number;
  /** What its bouts count against preference at least. */
  readonly dislike: number;
  /** How many of its bouts count as moved at least. */
  readonly moved: number;
}

export interface Model {
  readonly exercises: readonly WeekExercise[];
  /** Tenths of a minute of one bout, by exercise. */
  readonly length: Int32Array;
  /** Tenths of a minute free, by slot. */
  readonly room: Int32Array;
  readonly boutsADay: Int32Array;
  /** 21-bit mask of slots where a bout may lie at all, by exercise. */
  readonly domain: Int32Array;
  /** `forbid[(e * 21 + t) * E + f]`: slots closed to f once e lies at t. */
  readonly forbid: Int32Array;
  /** Index of the exercise whose sessions it must share, or −1. */
  readonly sameAs: Int32Array;
  /** The days it can be done on, by exercise; evenest first. */
  readonly options: readonly (readonly DayOption[])[];
  /** 1 where a bout at a slot counts against preference: `[e * 21 + t]`, 0 to 2. */
  readonly dislike: Int32Array;
  /** 1 where a bout at a slot counts as moved, when repairing. */
  readonly shift: Int32Array;
  /** By 7-bit mask of days with hard bouts: 1 where not too many are in a row. */
  readonly hardAllowed: Uint8Array;
}

/** Reads a well-formed problem into masks. */
export function buildModel(problem: WeekProblem): Model {
  const exercises = [...problem.exercises].sort((a, b) => (a.id < b.id ? -1 : a.id > b.id ? 1 : 0));
  const count = exercises.length;
  const room = Int32Array.from(problem.freeMinutes, (free) => Math.floor(free * TENTHS + 1e-6));
  const length = Int32Array.from(exercises, (one) => Math.ceil(one.minutes * TENTHS - 1e-6));
  const domain = Int32Array.from(exercises, (one, e) => {
    let mask = 0;
    for (let t = 0; t < SLOTS; t++) if ((room[t] ?? 0) >= (length[e] ?? 0)) mask |= 1 << t;
    return mask & ~clearedSlots(one, problem) & ~givenSlots(one, problem);
  });
  const forbid = new Int32Array(count * SLOTS * count);
  exercises.forEach((one, e) => {
    exercises.forEach((other, f) => {
      for (let t = 0; t < SLOTS; t++) {
        forbid[(e * SLOTS + t) * count + f] = forbiddenBy(one, t, other, problem);
      }
    });
  });
  return {
    exercises,
    length,
    room,
    boutsADay: Int32Array.from(exercises, (one) => boutsADay(one.times)),
    domain,
    forbid,
    sameAs: Int32Array.from(exercises, (one) =>
      exercises.findIndex((other) => other.id === one.sameSessionAs),
    ),
    options: exercises.map((one, e) => dayOptions(one, domain[e] ?? 0, openDays(room), problem)),
    dislike: bySlot(exercises, (one, t) => dislikes(one, t, problem)),
    shift: bySlot(exercises, (one, t) => shifts(one, t, problem)),
    hardAllowed: hardDaysAllowed(problem),
  };
}

/** Slots of `other` that are closed once `one` lies at slot t. */
function forbiddenBy(one: WeekExercise, t: number, other: WeekExercise, problem: WeekProblem) {
  const wraps = problem.wraps && !isDated(one.times) && !isDated(other.times);
  const apart = minutesApart(one, other, problem.groupHours);
  const twins = one !== other && movementOf(one) === movementOf(other);
  const ordered = isOnceADay(one) && isOnceADay(other);
  const first = ordered && (other.after ?? []).includes(one.id);
  const last = ordered && (one.after ?? []).includes(other.id);
  let mask = 0;
  if (apart === 0 && !first && !last) return mask;
  for (let u = 0; u < SLOTS; u++) {
    const close = t === u ? twins : minutesBetween(t, u, problem.clock, wraps) < apart;
    const sameDay = Math.floor(t / 3) === Math.floor(u / 3);
    if (close || (sameDay && ((first && u < t) || (last && u > t)))) mask |= 1 << u;
  }
  return mask;
}

/** Whether it has at most one bout a day, so that its order in the day can be stated. */
function isOnceADay(one: WeekExercise): boolean {
  return boutsADay(one.times) === 1;
}

function openDays(room: Int32Array): number {
  let mask = 0;
  for (let t = 0; t < SLOTS; t++) if ((room[t] ?? 0) > 0) mask |= 1 << Math.floor(t / 3);
  return mask;
}

/** The sets of days on which an exercise may be done, evenest first. */
function dayOptions(
  one: WeekExercise,
  domain: number,
  open: number,
  problem: WeekProblem,
): DayOption[] {
  const each = boutsADay(one.times);
  const dislike: number[] = [];
  const moved: number[] = [];
  let usable = 0;
  for (let day = 0; day < DAYS; day++) {
    const slots = bitsOf(domain & (7 << (3 * day)));
    if (slots.length >= each) usable |= 1 << day;
    const least = (costs: number[]) =>
      costs
        .sort((a, b) => a - b)
        .slice(0, each)
        .reduce((sum, value) => sum + value, 0);
    dislike.push(least(slots.map((t) => dislikes(one, t, problem))));
    moved.push(least(slots.map((t) => shifts(one, t, problem))));
  }
  const total = (days: number, costs: readonly number[]) =>
    bitsOf(days).reduce((sum, day) => sum + (costs[day] ?? 0), 0);
  const fixed = fixedDays(one.times, open);
  const sets =
    fixed === undefined ? daySets("perWeek" in one.times ? one.times.perWeek : 0) : [fixed];
  return sets
    .filter((days) => (days & ~usable) === 0)
    .map((days) => ({
      days,
      evenness: fixed === undefined ? evenness(days) : 0,
      dislike: total(days, dislike),
      moved: total(days, moved),
    }))
    .sort((a, b) => a.evenness - b.evenness || a.days - b.days);
}

function shifts(one: WeekExercise, t: number, problem: WeekProblem): number {
  return problem.aim === "repair" && isMoved(one, t, problem) ? 1 : 0;
}

function isMoved(one: WeekExercise, t: number, problem: WeekProblem): boolean {
  const before = problem.previous?.get(one.id);
  return before !== undefined && !before.includes(t);
}

function dislikes(one: WeekExercise, t: number, problem: WeekProblem): number {
  const off = one.preferredSlots !== undefined && !one.preferredSlots.includes(t) ? 1 : 0;
  return off + (isMoved(one, t, problem) ? 1 : 0);
}

function bySlot(
  exercises: readonly WeekExercise[],
  value: (one: WeekExercise, t: number) => number,
): Int32Array {
  return Int32Array.from({ length: exercises.length * SLOTS }, (_, i) => {
    const one = exercises[Math.floor(i / SLOTS)];
    return one === undefined ? 0 : value(one, i % SLOTS);
  });
}
