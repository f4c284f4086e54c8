/** A night belongs to the day before it: a session goes on past midnight, and the morning is asked for in the morning. */
import type { DayClock, Moment } from "../../units/clock.ts";
import { addDays } from "../../units/dates.ts";
import type { SessionPlace } from "../store/settings.ts";

/** So long before the first part of a client's day their morning has come: 04:00 for 07:00. Our own choice. */
const EARLY_MINUTES = 180;

/** The day whose morning has come: until then, the day before. */
export function wakingDay({ date, minutes }: Moment, clock: DayClock): string {
  return minutes < clock.morning - EARLY_MINUTES ? addDays(date, -1) : date;
}

/** The place of a session that can be gone on with: begun on this day, or in the night that is not over. */
export function underWay(
  place: SessionPlace | undefined,
  waking: string,
): SessionPlace | undefined {
  return place && place.day >= waking ? place : undefined;
}
