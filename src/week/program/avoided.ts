/** Why exercises were kept off some days of a week that was laid out. */
import { clearReason } from "../search/clear.ts";
import { isoDate, weekdayName } from "../search/dates.ts";
import {
  DAYS,
  dayOf,
  type Placement,
  type WeekExercise,
  type WeekProblem,
} from "../search/problem.ts";
import type { AvoidedDay } from "./program-types.ts";

/**
 * The days without a bout of an exercise for which there is a reason beyond choice: an event, a
 * closed day, too few minutes. Exercises with the same reason on the same day are named together.
 *
 * @param start day number of the first day of the week
 * @param why by day of the week, why the day is closed or short, where the caller knows
 */
export function avoidedDays(
  problem: WeekProblem,
  placement: Placement,
  start: number,
  why: readonly (string | undefined)[],
): AvoidedDay[] {
  const avoided: AvoidedDay[] = [];
  for (let day = 0; day < DAYS; day++) {
    const byReason = new Map<string, AvoidedDay>();
    for (const one of problem.exercises) {
      if ((placement.get(one.id) ?? []).some((t) => dayOf(t) === day)) continue;
      const found = reasonFor(one, day, problem, start, why[day]);
      if (found === undefined) continue;
      const known = byReason.get(found.sentence);
      byReason.set(found.sentence, {
        ...found,
        date: isoDate(start + day),
        exercises: [...(known?.exercises ?? []), one.id],
      });
    }
    avoided.push(...byReason.values());
  }
  return avoided;
}

function reasonFor(
  one: WeekExercise,
  day: number,
  problem: WeekProblem,
  start: number,
  why: string | undefined,
): Pick<AvoidedDay, "reason" | "sentence"> | undefined {
  const slots = [3 * day, 3 * day + 1, 3 * day + 2];
  const minutes = Math.max(...slots.map((t) => problem.freeMinutes[t] ?? 0));
  if (minutes === 0) {
    const reason =
      why === undefined ? { kind: "closed" as const } : { kind: "closed" as const, why };
    return { reason, sentence: why ?? "no free time" };
  }
  const roomy = slots.filter((t) => (problem.freeMinutes[t] ?? 0) >= one.minutes);
  if (roomy.length === 0) {
    return { reason: { kind: "too-short", minutes }, sentence: `only ${minutes} minutes free` };
  }
  const reasons = roomy.map((t) => clearReason(one, t, problem));
  const first = reasons[0];
  if (first === undefined || reasons.some((reason) => reason === undefined)) return undefined;
  const at = start + first.event.day;
  const whose = `${weekdayName(at)}’s ${first.event.name}`;
  return {
    reason: { kind: first.kind, event: { name: first.event.name, date: isoDate(at) } },
    sentence: first.kind === "clear-before" ? `clear of ${whose}` : `recovering from ${whose}`,
  };
}
