/** What was paced of an exercise, as one amount. */
import type { SetDone } from "./done.ts";

interface Paced {
  readonly sets: number;
  readonly reps: number | undefined;
  readonly whole: boolean;
}

/**
 * The sets that were begun, and the fewest repetitions of one where they fell short; whole where it was
 * all of so many planned.
 */
export function pacedOf(done: readonly SetDone[], planned: number): Paced {
  const begun = done.filter(({ seconds, reps }) => seconds > 0 || (reps ?? 0) > 0);
  const sets = new Set(begun.map(({ set }) => set)).size;
  const short = begun.filter(({ whole }) => !whole).flatMap(({ reps }) => reps ?? []);
  return {
    sets,
    reps: short.length > 0 ? Math.min(...short) : undefined,
    whole: sets >= planned && done.every(({ whole }) => whole),
  };
}
