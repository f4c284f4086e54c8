/** The client's days away: the weeks without sessions that they make, and the weeks that follow a long break. */
import type { Plan } from "../plan/schema.ts";
import { addDays } from "../units/dates.ts";
import { PARTS, type PartOfDay } from "../units/day-parts.ts";
import { freeDay, isOn } from "./free-time.ts";

/** A break of more days than these is followed by an easier week. Common practice. */
const EASY_BREAK_DAYS = 7;

/** A week with fewer days than these left after a break is too short to ease in; the next one is eased too. */
const LEAST_DAYS_BACK = 4;

type Away = Plan["week"]["away"][number];

/** Whether the client is away on a date. */
export function isAway(plan: Plan, date: string): boolean {
  return plan.week.away.some((away) => covers(away, date));
}

/** Parts of a day in which an event leaves no session, and what it is: one that blocks it, or a hard one. */
export function takenParts(plan: Plan, date: string): Map<PartOfDay, string> {
  return new Map(
    plan.week.events
      .filter((event) => isOn(event, date))
      .filter(({ blocks, hard }) => blocks || hard)
      .map(({ part, what }) => [part, what] as const),
  );
}

/**
 * The week of the course that each week of the calendar holds, from the plan's first day on; undefined
 * for a week away. A week is away where a day of it is and no other day has free time. What `then` says
 * of most of its days away holds: `shift` moves the rest of the course by a week, `skip` leaves this
 * week of the course out; `shift` on a par.
 *
 * @param weeks weeks of the course
 */
export function courseCalendar(plan: Plan, weeks: number): (number | undefined)[] {
  const calendar: (number | undefined)[] = [];
  for (let next = 1; next <= weeks; ) {
    const then = awayThen(plan, weekDates(plan, calendar.length));
    calendar.push(then === undefined ? next : undefined);
    if (then !== "shift") next += 1;
  }
  return calendar;
}

/**
 * The weeks of the calendar, from 1, that come first after more than a week away. The break is counted
 * from its first day away to its last, days without free time between them included. Days away before
 * the course has begun are no break.
 */
export function weeksBack(plan: Plan, calendar: readonly (number | undefined)[]): number[] {
  const back = new Set<number>();
  const firstWeek = calendar.find((week) => week !== undefined) ?? 1;
  // Where its first week was left out, the course has begun without the client.
  let begun = firstWeek > 1;
  let away: { readonly from: number; readonly to: number } | undefined;
  for (let day = 0; day < calendar.length * 7; day++) {
    const date = addDays(plan.starts, day);
    if (isAway(plan, date)) {
      away = { from: away?.from ?? day, to: day };
    } else if (hasTime(plan, date)) {
      if (begun && away && away.to - away.from + 1 > EASY_BREAK_DAYS) {
        const week = Math.floor(day / 7) + 1;
        back.add(week);
        if (7 - (day % 7) < LEAST_DAYS_BACK) back.add(week + 1);
      }
      away = undefined;
      begun = true;
    }
  }
  return [...back].filter((week) => calendar[week - 1] !== undefined);
}

function covers(away: Away, date: string): boolean {
  return typeof away === "string" ? away === date : date >= away.from && date <= away.to;
}

const weekDates = (plan: Plan, index: number): string[] =>
  Array.from({ length: 7 }, (_, day) => addDays(plan.starts, 7 * index + day));

/** Whether the client has any time for a session on a date. */
function hasTime(plan: Plan, date: string): boolean {
  if (isAway(plan, date)) return false;
  const { parts } = freeDay(plan, date);
  const taken = takenParts(plan, date);
  return PARTS.some((part) => (parts[part] ?? 0) > 0 && !taken.has(part));
}

/** What becomes of a week away; undefined for any other week. */
function awayThen(plan: Plan, dates: readonly string[]): "shift" | "skip" | undefined {
  const gone = dates.filter((date) => isAway(plan, date));
  if (gone.length === 0 || dates.some((date) => hasTime(plan, date))) return undefined;
  const count = (then: "shift" | "skip") =>
    gone.filter((date) =>
      plan.week.away.some((away) => covers(away, date) && thenOf(away) === then),
    ).length;
  return count("skip") > count("shift") ? "skip" : "shift";
}

const thenOf = (away: Away): "shift" | "skip" => (typeof away === "string" ? "shift" : away.then);
