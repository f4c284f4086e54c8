/** The part of the client's day that a time lies in. */
import type { DayClock } from "../../units/clock.ts";
import { PARTS, type PartOfDay } from "../../units/day-parts.ts";

/** The part whose beginning is nearest; of two as near, the later. */
export function partNow(minutes: number, clock: DayClock): PartOfDay {
  const near = (part: PartOfDay) => Math.abs(clock[part] - minutes);
  return [...PARTS].reverse().reduce((best, part) => (near(part) < near(best) ? part : best));
}

/** The sessions of a day with those first whose part of the day is now or yet to come. */
export function comingFirst<One extends { readonly part: PartOfDay }>(
  sessions: readonly One[],
  now: PartOfDay,
): readonly One[] {
  const late = ({ part }: One) => PARTS.indexOf(part) < PARTS.indexOf(now);
  return [...sessions.filter((one) => !late(one)), ...sessions.filter(late)];
}
