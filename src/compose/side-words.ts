/** Words for the side that works: "Left leg", "Do this with your left leg." */
import type { ProgramExercise } from "../program/program.ts";
import type { Writer } from "./numbers.ts";

/** "Left leg", "Each leg in turn", "Both legs"; undefined for an exercise without sides. */
export function sideName({ card, side }: ProgramExercise, { words }: Writer): string | undefined {
  return side === "none" ? undefined : words.say(`side.${card.card.limb}.${side}`);
}

/** "Do this with your left leg."; undefined for an exercise without sides. */
export function sideSentence(
  { card, side }: ProgramExercise,
  { words }: Writer,
): string | undefined {
  return side === "none" ? undefined : words.say(`side.sentence.${card.card.limb}.${side}`);
}

/** A text of a card with the words for the client's side in place of its placeholders. */
export function sidedText(text: string, { side }: ProgramExercise, { words }: Writer): string {
  return text
    .replaceAll("{side}", words.say(`side.word.${side}`))
    .replaceAll("{other}", words.say(`side.other.${side}`));
}
