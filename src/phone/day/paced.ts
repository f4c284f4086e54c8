/** What was paced of an exercise, as the diary has it. */
import type { DiaryEntry } from "../../diary/entry.ts";
import type { SetDone } from "../pace/done.ts";
import { withExercise } from "./entries.ts";

/** How much was paced: whole sets, and the fewest repetitions of one where they fell short. */
export interface Paced {
  readonly sets: number;
  readonly reps: number | undefined;
  /** Whether it was all that was planned. */
  readonly whole: boolean;
}

/** The amounts of the sets that were begun, of so many planned. */
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

/** The entry with what was paced of an exercise so far; one that hurt was tried. */
export function withPaced(
  entry: DiaryEntry,
  card: string,
  { sets, reps, whole }: Paced,
  today: string,
): DiaryEntry {
  const known = entry.exercises.find((one) => one.card === card);
  const tried = sets > 0 || known?.pain !== undefined;
  const done = whole ? "yes" : tried ? "part" : "no";
  return withExercise(entry, card, { done, real: { sets, reps, kg: known?.real.kg } }, today);
}
