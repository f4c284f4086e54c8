/** Dates as day numbers: whole days in UTC, so that daylight saving never matters. */
import { dayOf, PARTS, type Part, partOf, type Slot } from "./problem.ts";

const MS_A_DAY = 86_400_000;

/**
 * Days from 1970-01-01 to an ISO date (YYYY-MM-DD); undefined where the text is no date of the
 * calendar.
 */
export function dayNumber(date: string): number | undefined {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(date)) return undefined;
  const number = Date.parse(`${date}T00:00:00Z`) / MS_A_DAY;
  return Number.isInteger(number) && isoDate(number) === date ? number : undefined;
}

/** The ISO date of a day number. */
export function isoDate(day: number): string {
  return new Date(day * MS_A_DAY).toISOString().slice(0, 10);
}

/** The weekday of a day number: 0 is Monday. 1970-01-01 was a Thursday. */
export function weekday(day: number): number {
  return (((day + 3) % 7) + 7) % 7;
}

export const WEEKDAY_NAMES = [
  "Monday",
  "Tuesday",
  "Wednesday",
  "Thursday",
  "Friday",
  "Saturday",
  "Sunday",
] as const;

/** The English name of the weekday of a day number. */
export function weekdayName(day: number): string {
  return WEEKDAY_NAMES[weekday(day)] ?? "";
}

/** Date and part of the day of a slot, in a week that begins on day number `weekStart`. */
export function placeOf(slot: Slot, weekStart: number): { date: string; part: Part } {
  return { date: isoDate(weekStart + dayOf(slot)), part: partOf(slot) };
}

/** The slot of a weekday (0 is Monday) and part, in a week that begins on day number `weekStart`. */
export function slotOfWeekday(day: number, part: Part, weekStart: number): Slot {
  return 3 * ((day - weekday(weekStart) + 7) % 7) + PARTS.indexOf(part);
}
