/** Sets of days of the week as 7-bit masks: which there are, and how evenly they are spaced. */
import { DAYS, type Times } from "./problem.ts";

/** Number of bits that are set. */
export function countBits(mask: number): number {
  let count = 0;
  for (let rest = mask; rest !== 0; rest &= rest - 1) count += 1;
  return count;
}

/** The positions of the bits that are set, ascending. */
export function bitsOf(mask: number): number[] {
  const bits: number[] = [];
  for (let rest = mask; rest !== 0; rest &= rest - 1) bits.push(31 - Math.clz32(rest & -rest));
  return bits;
}

/** All sets of `count` days, ascending as numbers. */
export function daySets(count: number): number[] {
  const sets: number[] = [];
  for (let mask = 0; mask < 1 << DAYS; mask++) if (countBits(mask) === count) sets.push(mask);
  return sets;
}

/**
 * Cost of unevenness of a set of days: (Σ gaps² − least possible) / 2, the gaps counted in days
 * around the week. 0 for the most even sets; a whole number.
 */
export function evenness(mask: number): number {
  const days = bitsOf(mask);
  if (days.length === 0) return 0;
  const squares = days.reduce((sum, day, i) => {
    const next = days[(i + 1) % days.length] ?? day;
    const gap = (next - day + DAYS - 1) % DAYS;
    return sum + (gap + 1) ** 2;
  }, 0);
  const short = Math.floor(DAYS / days.length);
  const long = DAYS % days.length;
  const least = long * (short + 1) ** 2 + (days.length - long) * short ** 2;
  return (squares - least) / 2;
}

/** The days that are fixed by how often it is done; undefined where the search may choose them. */
export function fixedDays(times: Times, openDays: number): number | undefined {
  if ("perDay" in times) return times.days === undefined ? openDays : maskOf(times.days);
  if ("onDays" in times) return maskOf(times.onDays);
  if ("everyDays" in times) {
    let mask = 0;
    for (let day = times.firstDay; day < DAYS; day += times.everyDays) mask |= 1 << day;
    return mask;
  }
  return undefined;
}

function maskOf(days: readonly number[]): number {
  return days.reduce((mask, day) => mask | (1 << day), 0);
}

/** Bouts on each day on which it is done. */
export function boutsADay(times: Times): number {
  return "perDay" in times ? times.perDay : 1;
}

/** Whether its days do not repeat from week to week, so that hours are not counted around the week. */
export function isDated(times: Times): boolean {
  return "everyDays" in times || "onDays" in times;
}
