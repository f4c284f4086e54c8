/** What was paced of an exercise, as the diary has it. */
import type { DiaryEntry } from "../../diary/entry.ts";
import type { Paced } from "../store/settings.ts";
import { withExercise } from "./entries.ts";

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

/**
 * The same while it is not known whether more was done. It counts as tried, so that its rest is kept and
 * its next morning asked for; where nothing is known of it, without a number.
 */
export function withPacedSoFar(
  entry: DiaryEntry,
  card: string,
  seen: Paced,
  today: string,
): DiaryEntry {
  if (seen.sets > 0) return withPaced(entry, card, seen, today);
  return withExercise(entry, card, { done: "part" }, today);
}
