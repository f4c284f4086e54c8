/** The client's free time and events on a date: usual weeks, other weeks, and days of a rota. */
import type { Plan } from "../plan/schema.ts";
import type { Path } from "../read/source.ts";
import { dayNumber, weekdayOf } from "../units/dates.ts";
import { type PartOfDay, WEEKDAYS } from "../units/day-parts.ts";

export interface FreeDay {
  /** Seconds of free time by part of the day, before events take any. */
  readonly parts: Readonly<Partial<Record<PartOfDay, number>>>;
  /** Whether it is a day off of a rota. */
  readonly off: boolean;
  /** Where the plan says so. */
  readonly path: Path;
}

/** The free time of a date. Other weeks come before the rota, and that before the usual week. */
export function freeDay({ week }: Plan, date: string): FreeDay {
  const weekday = WEEKDAYS[weekdayOf(date)] ?? "mon";
  const other = week.other_weeks.findIndex((span) => isWithin(date, span));
  const off = isDayOff(week.rota, date);
  const spell = week.other_weeks[other];
  if (spell) {
    return {
      parts: spell.free[weekday] ?? {},
      off: off === true,
      path: ["week", "other_weeks", other, "free"],
    };
  }
  if (week.rota !== undefined && off !== undefined) {
    const { free_on, free_off } = week.rota;
    const name = off ? "free_off" : "free_on";
    return { parts: off ? free_off : free_on, off, path: ["week", "rota", name] };
  }
  return { parts: week.free[weekday] ?? {}, off: false, path: ["week", "free"] };
}

/** Whether an event is on a date. */
export function isOn(event: Plan["week"]["events"][number], date: string): boolean {
  if (event.on !== undefined) return event.on.includes(date);
  return event.day === WEEKDAYS[weekdayOf(date)] && isWithin(date, event);
}

/** Whether a date lies in a span, its last day included; where an end is not given, it has none. */
export const isWithin = (
  date: string,
  { from, until }: { readonly from?: string | undefined; readonly until?: string | undefined },
): boolean => (from === undefined || date >= from) && (until === undefined || date <= until);

/** Whether a date is a day off of the rota; undefined where that does not hold. */
function isDayOff(rota: Plan["week"]["rota"], date: string): boolean | undefined {
  if (rota === undefined || !isWithin(date, rota)) return undefined;
  const day = dayNumber(date) - dayNumber(rota.from);
  return day % (rota.on + rota.off) >= rota.on;
}
