/** What was paced of an exercise, as one amount. */
import type { Paced } from "../store/settings.ts";
import type { SetDone } from "./done.ts";

/** Two readings of what was paced, where a part of it went by unseen. */
interface Unsure {
  /** Without it: this is known. */
  readonly seen: Paced;
  /** With it, if the client says that it was done. */
  readonly all: Paced;
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

/** What is known of it, and what there is to ask back; undefined where all of it was seen. */
export function unsureOf(done: readonly SetDone[], planned: number): Unsure | undefined {
  const seen = done.filter(({ unseen }) => !unseen);
  if (seen.length === done.length) return undefined;
  return { seen: { ...pacedOf(seen, planned), whole: false }, all: pacedOf(done, planned) };
}
