/** What was paced of an exercise, as the diary has it. */
import type { DiaryEntry } from "../../diary/entry.ts";
import { withExercise } from "./entries.ts";

/** How much was paced: whole sets, and the fewest repetitions of one where they fell short. */
export interface Paced {
  readonly sets: number;
  readonly reps: number | undefined;
  /** Whether it was all that was planned. */
  readonly whole: boolean;
}

/** The entry with what was paced of an exercise so far; one that hurt was tried. */
export function withPaced(
  entry: DiaryEntry,
  card: string,
  { sets, reps, whole }: Paced,
  today: string,
): DiaryEntry {
  const known = entry.exercises.find((one) => one.card === card);
  const tried = sets > 0 || known?.pain !== undefined || known?.sudden !== undefined;
  const done = whole ? "yes" : tried ? "part" : "no";
  return withExercise(entry, card, { done, real: { sets, reps, kg: known?.real.kg } }, today);
}
