/** What of a week a client already has from an earlier booklet. */
import { dayNumber } from "../search/dates.ts";
import { DAYS, dayOf, type GivenBout, type Placement, slotOf } from "../search/problem.ts";
import type { ProgramWeeks } from "./program-types.ts";

export interface IssuedWeek {
  /** Every bout of the week that was issued, also of exercises that it no longer has. */
  readonly bouts: readonly GivenBout[];
  /** The same by exercise. */
  readonly placement: Placement;
  /** So many of its days are gone, and their bouts are past changing: 7 where the week is past. */
  readonly gone: number;
}

/**
 * What was issued of the week that begins on day number `start`; undefined where nothing was and
 * none of its days are gone, so that it is laid out as if for the first time.
 */
export function issuedWeek(issued: ProgramWeeks["issued"], start: number): IssuedWeek | undefined {
  if (issued === undefined) return undefined;
  const bouts = issued.sessions
    .flatMap((session) => {
      const day = (dayNumber(session.date) ?? Number.NaN) - start;
      if (!(day >= 0 && day < DAYS)) return [];
      return session.bouts.map((bout) => ({ ...bout, slot: slotOf(day, session.part) }));
    })
    .sort((a, b) => a.slot - b.slot);
  const today = (dayNumber(issued.today) ?? start) - start;
  const gone = Math.min(DAYS, Math.max(0, today));
  if (bouts.length === 0 && gone === 0) return undefined;
  const placement = new Map<string, number[]>();
  for (const { exercise, slot } of bouts) {
    placement.set(exercise, [...(placement.get(exercise) ?? []), slot]);
  }
  return { bouts, placement, gone };
}

/** The bouts of a placement on the days that are gone, or on the days that are left. */
export function boutsOnDays(placement: Placement, isWanted: (day: number) => boolean): Placement {
  return new Map(
    [...placement].map(([id, slots]) => [id, slots.filter((slot) => isWanted(dayOf(slot)))]),
  );
}
