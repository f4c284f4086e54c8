/** How long bouts in different sessions keep apart. */
import { minutesOf, movementOf, type WeekExercise, type WeekProblem } from "./problem.ts";

/** What matters for it: of an exercise, or of a bout of the week before or after. */
type Apart = Pick<WeekExercise, "id" | "movement" | "hard" | "groups" | "recoveryHours">;

/**
 * Minutes between bouts of two exercises, or of one exercise, in different sessions, start to start;
 * exactly as many are enough. Recovery counts between bouts of one movement; hours of a tissue group
 * between hard bouts of it.
 */
export function minutesApart(
  one: Apart,
  other: Apart,
  groupHours: WeekProblem["groupHours"],
): number {
  const own =
    movementOf(one) === movementOf(other) ? Math.max(one.recoveryHours, other.recoveryHours) : 0;
  if (!one.hard || !other.hard) return minutesOf(own);
  const shared = one.groups.filter((group) => other.groups.includes(group));
  return minutesOf(Math.max(own, ...shared.map((group) => groupHours[group] ?? 0)));
}
