/** Dates and weekdays of a week's slots. */

import { isDate, isoDate, weekday, dayNumber as wholeDays } from "../../units/dates.ts";
import type { PartOfDay } from "../../units/day-parts.ts";
import { dayOf, partOf, type Slot } from "./problem.ts";

export { isoDate, weekday } from "../../units/dates.ts";

/** Days from 1970-01-01 to an ISO date; undefined where the text is no date of the calendar. */
export function dayNumber(date: string): number | undefined {
  return isDate(date) ? wholeDays(date) : undefined;
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
export function placeOf(slot: Slot, weekStart: number): { date: string; part: PartOfDay } {
  return { date: isoDate(weekStart + dayOf(slot)), part: partOf(slot) };
}
