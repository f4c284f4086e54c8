/** The order of exercises inside a session. */
import type { WeekExercise } from "../search/problem.ts";

/**
 * Sorted so that each comes after those it names in `after`; otherwise in the order given, which
 * is the order of the protocol or plan. Circles are the caller's to reject beforehand.
 */
export function sessionOrder<E extends Pick<WeekExercise, "id" | "after">>(
  exercises: readonly E[],
): E[] {
  const sorted: E[] = [];
  const left = [...exercises];
  while (left.length > 0) {
    const ready = left.findIndex(
      (one) => !left.some((other) => other !== one && (one.after ?? []).includes(other.id)),
    );
    sorted.push(...left.splice(Math.max(0, ready), 1));
  }
  return sorted;
}
