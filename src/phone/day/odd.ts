/** Amounts that are more likely a slip than what was done: asked back once before they are written. */
import type { Amount, DiaryExercise } from "../../diary/entry.ts";

export interface Odd {
  readonly amount: keyof Amount;
  /** none: nothing at all of what is said to be done; more: far more than was planned. */
  readonly kind: "none" | "more";
  readonly wrote: number;
  readonly planned: number;
}

/**
 * Over how many times the planned amount is asked back. No source; common practice has none. A digit too
 * many gives ten times as much, and twice the plan at one sitting is rare enough to be asked about.
 */
const TIMES = 2;

const AMOUNTS = ["sets", "reps", "kg"] as const;

/**
 * What a change makes odd of an exercise; undefined where it makes nothing so. What was odd before has been
 * asked about, and a step from there is no slip. `planned`: with repetitions also where sets differ.
 */
export function oddOf(
  { done, real }: Pick<DiaryExercise, "done" | "real">,
  change: Partial<Pick<DiaryExercise, "done" | "real">>,
  planned: Amount,
): Odd | undefined {
  const after = { done, real, ...change };
  const isNone = (one: typeof after, amount: keyof Amount) =>
    amount !== "kg" && one.done !== "no" && one.real[amount] === 0;
  for (const amount of AMOUNTS) {
    const plan = planned[amount];
    const wrote = after.real[amount];
    if (plan === undefined || wrote === undefined) continue;
    const odd = { amount, wrote, planned: plan };
    if (isNone(after, amount) && !isNone({ done, real }, amount)) return { ...odd, kind: "none" };
    if (wrote > TIMES * Math.max(plan, real[amount] ?? 0)) return { ...odd, kind: "more" };
  }
  return undefined;
}
