/** Calendar dates as YYYY-MM-DD, counted in whole days so that clocks and time zones cannot matter. */

const DAY_MS = 86_400_000;

/** Days since 1970-01-01. */
export function dayNumber(date: string): number {
  return Math.round(Date.parse(`${date}T00:00:00Z`) / DAY_MS);
}

/** The date of a day number. */
function dateOf(day: number): string {
  return new Date(day * DAY_MS).toISOString().slice(0, 10);
}

/** The date some days later (or earlier, if negative). */
export function addDays(date: string, days: number): string {
  return dateOf(dayNumber(date) + days);
}

/** Weekday from 0, Monday, to 6, Sunday. */
export function weekdayOf(date: string): number {
  return (((dayNumber(date) + 3) % 7) + 7) % 7;
}
