/** The dates of exercises done every n days, counted on through the whole program. */

/**
 * What one day offers an exercise: not in its week at all, open to it, taken on this date by
 * something in the plan (away, an event), or never open, since the usual week has no time on it.
 */
export type DayState = "absent" | "open" | "taken" | "never-open";

export interface DatedCourse {
  /** Days of the program, from 0, on which it is done. */
  readonly days: readonly number[];
  /** Days on which it fell due but could not be done, with the day it waited for, if any. */
  readonly slipped: readonly { readonly day: number; readonly to?: number }[];
}

/** Days before `until` are gone: what was issued on them is what was done. */
export interface PastDays {
  readonly until: number;
  readonly issued: ReadonlySet<number>;
}

/**
 * Every n days from the first day of the course, `offset` days in. A day that is taken is not left
 * out: the bout waits for the next open day and the count goes on from there, so that n days are
 * always kept between bouts. After a gap in the course the count begins anew. A day on which the
 * usual week has no time is no reason to wait: what falls due on it stays there, so that the layout
 * can tell that it does not fit. So it does where every day is taken and nothing would be left to
 * do. On days that are gone the course is what was issued, and it is counted on from there.
 *
 * Every second day so becomes four and three sessions in turn: 42 in 84 days (Rathleff et al.
 * 2015, Scand J Med Sci Sports 25:e292).
 */
export function everyNDays(
  states: readonly DayState[],
  n: number,
  offset: number,
  past: PastDays = { until: 0, issued: new Set() },
): DatedCourse {
  const isHopeless = !states.includes("open");
  const days: number[] = [];
  const slipped: { day: number; to?: number }[] = [];
  let due: number | undefined;
  let waiting: number | undefined;
  states.forEach((state, day) => {
    if (state === "absent") {
      if (waiting !== undefined) slipped.push({ day: waiting });
      due = undefined;
      waiting = undefined;
      return;
    }
    if (day < past.until) {
      if (!past.issued.has(day)) return;
      days.push(day);
      due = day + n;
      return;
    }
    due ??= day + offset;
    if (day < due) return;
    if (!isHopeless && (waiting === undefined ? state === "taken" : state !== "open")) {
      waiting ??= day;
      return;
    }
    if (waiting !== undefined) slipped.push({ day: waiting, to: day });
    waiting = undefined;
    days.push(day);
    due = day + n;
  });
  if (waiting !== undefined) slipped.push({ day: waiting });
  return { days, slipped };
}
