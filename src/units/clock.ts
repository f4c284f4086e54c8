/** The client's day on the clock: when its parts begin, how long each can last, and what date that is. */
import { addDays, dayNumber } from "./dates.ts";
import { PARTS, type PartOfDay } from "./day-parts.ts";

/** Minutes of a whole day. A night in which clocks change counts as any other. */
export const DAY_MINUTES = 1440;

/** When each part of the day begins, as a plan writes it: HH:MM. */
export type PartTimes = Readonly<Record<PartOfDay, string>>;

/**
 * When each part of a client's day begins, in minutes from midnight of its date. The day is named by the
 * date on which its first part begins; from 1440 on a part lies after midnight, on the next date.
 */
export type DayClock = Readonly<Record<PartOfDay, number>>;

/** A moment of a client's calendar: a date, YYYY-MM-DD, and minutes from its midnight, of any size. */
export interface Moment {
  readonly date: string;
  readonly minutes: number;
}

/** When a part of a client's day begins. */
export function momentOf(
  { date, part }: { readonly date: string; readonly part: PartOfDay },
  clock: DayClock,
): Moment {
  return { date, minutes: clock[part] };
}

/** Minutes from midnight of a clock time, HH:MM. */
export function clockMinutes(clock: string): number {
  const [hours = 0, minutes = 0] = clock.split(":").map(Number);
  return hours * 60 + minutes;
}

/**
 * The clock of a day whose parts begin at these times: each part at the first such time after the part
 * before it. 22:00, 02:00 and 06:00 are one day that begins in the evening.
 */
export function dayClock(times: PartTimes): DayClock {
  const after = (clock: string, before: number): number => {
    const minutes = clockMinutes(clock);
    return minutes + DAY_MINUTES * Math.floor((before - minutes) / DAY_MINUTES + 1);
  };
  const morning = clockMinutes(times.morning);
  const midday = after(times.midday, morning);
  return { morning, midday, evening: after(times.evening, midday) };
}

/** Whether the parts come one after the other within one day: 07:00, 19:00 and 13:00 do not. */
export function rises(clock: DayClock): boolean {
  return clock.evening - clock.morning < DAY_MINUTES;
}

/** Whether some part of the day lies after midnight. */
export function passesMidnight(clock: DayClock): boolean {
  return clock.evening >= DAY_MINUTES;
}

/** Minutes from the start of a part to the start of the next; of the last, to the first of the next day. */
export function minutesToNext(clock: DayClock, part: PartOfDay): number {
  const next = PARTS[PARTS.indexOf(part) + 1];
  return (next === undefined ? clock.morning + DAY_MINUTES : clock[next]) - clock[part];
}

/**
 * When a client's day ends, in minutes from midnight of its date: at midnight, or, where its parts pass
 * midnight, halfway from its last part to the first of the next day.
 */
export function dayEnds(clock: DayClock): number {
  if (!passesMidnight(clock)) return DAY_MINUTES;
  return clock.evening + Math.floor(minutesToNext(clock, "evening") / 2);
}

/** Minutes that work begun with a part can last: to the next part, and not past the end of the client's day. */
export function minutesInPart(clock: DayClock, part: PartOfDay): number {
  return Math.min(minutesToNext(clock, part), dayEnds(clock) - clock[part]);
}

/** The same moment with a date of the calendar and minutes from 0 to 1439: what a clock on the wall shows. */
export function onTheWall({ date, minutes }: Moment): Moment {
  const days = Math.floor(minutes / DAY_MINUTES);
  return { date: addDays(date, days), minutes: minutes - days * DAY_MINUTES };
}

/** HH:MM of a moment. */
export function clockText(minutes: number): string {
  const inDay = ((minutes % DAY_MINUTES) + DAY_MINUTES) % DAY_MINUTES;
  const two = (n: number) => String(n).padStart(2, "0");
  return `${two(Math.floor(inDay / 60))}:${two(inDay % 60)}`;
}

/** What calendar and clock on the wall show: YYYY-MM-DDTHH:MM. */
export function wallText(moment: Moment): string {
  const { date, minutes } = onTheWall(moment);
  return `${date}T${clockText(minutes)}`;
}

/** Minutes from one moment to another. */
export function minutesBetween(from: Moment, to: Moment): number {
  return (dayNumber(to.date) - dayNumber(from.date)) * DAY_MINUTES + to.minutes - from.minutes;
}
