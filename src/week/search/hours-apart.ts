/** How many hours bouts in different sessions keep apart. */
import type { WeekExercise, WeekProblem } from "./problem.ts";

/** What matters for it: of an exercise, or of a bout of the week before or after. */
type Apart = Pick<WeekExercise, "hard" | "groups" | "recoveryHours"> & { readonly id: string };

/**
 * Hours between bouts of two exercises, or of one exercise, in different sessions, start to start.
 * Recovery counts between bouts of one exercise; hours of a tissue group between hard bouts of it.
 */
export function hoursApart(
  one: Apart,
  other: Apart,
  groupHours: WeekProblem["groupHours"],
): number {
  const own = one.id === other.id ? one.recoveryHours : 0;
  if (!one.hard || !other.hard) return own;
  const shared = one.groups.filter((group) => other.groups.includes(group));
  return Math.max(own, ...shared.map((group) => groupHours[group] ?? 0));
}
