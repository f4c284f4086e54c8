/** The exercises of a program, each card once: the order of their pages. */
import type { Program, ProgramExercise } from "./program.ts";

/** The exercises of a program in the order in which they first come, each card once. */
export function exercisesOf({ phases }: Program): ProgramExercise[] {
  const byCard = new Map<string, ProgramExercise>();
  for (const exercise of phases.flatMap((phase) => phase.exercises)) {
    if (!byCard.has(exercise.card.card.id)) byCard.set(exercise.card.card.id, exercise);
  }
  return [...byCard.values()];
}
