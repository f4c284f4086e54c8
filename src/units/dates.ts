/** Calendar dates as YYYY-MM-DD, counted in whole days so that clocks and time zones cannot matter. */

const DAY_MS = 86_400_000;

/** Days since 1970-01-01 of a date that exists. */
export function dayNumber(date: string): number {
  return Math.round(Date.parse(`${date}T00:00:00Z`) / DAY_MS);
}

/** The date of a day number. */
export function isoDate(day: number): string {
  return new Date(day * DAY_MS).toISOString().slice(0, 10);
}

/** Whether a text is a date of the calendar, written YYYY-MM-DD. */
export function isDate(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  const day = dayNumber(text);
  return !Number.isNaN(day) && isoDate(day) === text;
}

/** The date some days later (or earlier, if negative). */
export function addDays(date: string, days: number): string {
  return isoDate(dayNumber(date) + days);
}

/** Weekday of a day number, from 0, Monday, to 6, Sunday. 1970-01-01 was a Thursday. */
export function weekday(day: number): number {
  return (((day + 3) % 7) + 7) % 7;
}

/** Weekday of a date, from 0, Monday, to 6, Sunday. */
export function weekdayOf(date: string): number {
  return weekday(dayNumber(date));
}
