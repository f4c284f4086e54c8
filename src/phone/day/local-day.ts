/** The day and the time of day where the client is, from an instant. */
import { dayNumber } from "../../units/dates.ts";

/** A moment on the client's own calendar: date YYYY-MM-DD, minutes since midnight. */
export interface LocalTime {
  readonly date: string;
  readonly minutes: number;
}

/** The local date and time of day of an instant, in the time zone that the device is set to. */
export function localTime(instant: Date): LocalTime {
  const two = (n: number) => String(n).padStart(2, "0");
  return {
    date: `${String(instant.getFullYear()).padStart(4, "0")}-${two(instant.getMonth() + 1)}-${two(instant.getDate())}`,
    minutes: instant.getHours() * 60 + instant.getMinutes(),
  };
}

/** Minutes since midnight of a clock time, HH:MM. */
export function clockMinutes(clock: string): number {
  const [hours = 0, minutes = 0] = clock.split(":").map(Number);
  return hours * 60 + minutes;
}

/** Hours from one local moment to another, by the calendar: a night in which clocks change counts as any other. */
export function hoursBetween(from: LocalTime, to: LocalTime): number {
  return (dayNumber(to.date) - dayNumber(from.date)) * 24 + (to.minutes - from.minutes) / 60;
}

/** Whole days from one date to another. */
export function daysBetween(from: string, to: string): number {
  return dayNumber(to) - dayNumber(from);
}
