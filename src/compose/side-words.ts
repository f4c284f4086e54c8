/** Words for the side that works: "Left leg", "Do this with your left leg." */
import { withSide } from "../cards/placeholders.ts";
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

/** A text of a card, in the card's own language, with the words for the client's side in place of its placeholders. */
export const sidedText = (text: string, { card, side }: ProgramExercise): string =>
  withSide(text, side, card.card.language);
