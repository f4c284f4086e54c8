/** The client's day and the time in it where the client is, from an instant. */
import { DAY_MINUTES, type Moment } from "../../units/clock.ts";
import { addDays, dayNumber } from "../../units/dates.ts";

/**
 * The client's day and time at an instant, in the time zone that the device is set to. Where the day
 * ends after midnight, the hours until then belong to the date before: 02:00 is minute 1560 of it.
 *
 * @param ends when the client's day ends, in minutes from midnight of its date
 */
export function localTime(instant: Date, ends: number): Moment {
  const two = (n: number) => String(n).padStart(2, "0");
  const date = `${String(instant.getFullYear()).padStart(4, "0")}-${two(instant.getMonth() + 1)}-${two(instant.getDate())}`;
  const minutes = instant.getHours() * 60 + instant.getMinutes();
  return minutes < ends - DAY_MINUTES
    ? { date: addDays(date, -1), minutes: minutes + DAY_MINUTES }
    : { date, minutes };
}

/** Whole days from one date to another. */
export function daysBetween(from: string, to: string): number {
  return dayNumber(to) - dayNumber(from);
}
