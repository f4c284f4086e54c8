/** Parts of the day and dates of sessions as the client reads them, also where their day passes midnight. */
import type { Session } from "../schedule/schedule.ts";
import { clockText, type DayClock, momentOf, onTheWall, passesMidnight } from "../units/clock.ts";
import { PARTS, type PartOfDay } from "../units/day-parts.ts";
import type { Words } from "../words/words.ts";
import type { Writer } from "./numbers.ts";

/** "Evening"; the clock time where the client's day passes midnight: nobody's morning begins at 22:00. */
export function partName(part: PartOfDay, clock: DayClock, words: Words): string {
  return passesMidnight(clock) ? clockText(clock[part]) : words.say(`part.${part}`);
}

/** The same within a sentence: "evening". */
export function partWithin(part: PartOfDay, clock: DayClock, words: Words): string {
  return passesMidnight(clock) ? clockText(clock[part]) : words.say(`part.within.${part}`);
}

/** How the booklet calls each part of the day. */
export function partNames(clock: DayClock, words: Words): Record<PartOfDay, string> {
  const names = PARTS.map((part) => [part, partName(part, clock, words)] as const);
  return Object.fromEntries(names) as Record<PartOfDay, string>;
}

/** The date that a calendar on the wall shows when a session begins. */
export function wallDate(session: Pick<Session, "date" | "part">, clock: DayClock): string {
  return onTheWall(momentOf(session, clock)).date;
}

/** "Evening"; in a day's column of the calendar "02:00 (Tue)" where that is on the next date. */
export function partInDay(
  session: Pick<Session, "date" | "part">,
  clock: DayClock,
  write: Writer,
): string {
  const name = partName(session.part, clock, write.words);
  const date = wallDate(session, clock);
  return date === session.date ? name : `${name} (${write.weekday(date, "short")})`;
}
