/** What a client reads of their health flags: words of care for as long as they hold, and what waits for a review. */
import type { LibraryCard } from "../cards/library.ts";
import { careIn, waitsForReview } from "../program/flags.ts";
import { doneWeeks } from "../program/phase-weeks.ts";
import type { Program, ProgramExercise, ProgramPhase } from "../program/program.ts";
import type { Writer } from "./numbers.ts";

/** Words of care of a card, each with its end where the flag ends before the card's last week. */
export function careWords(
  card: LibraryCard,
  program: Program,
  write: Writer,
  weeks: readonly number[] = doneWeeks(program, card.card.id),
): string[] {
  return careIn(card, program.flags, weeks).map(({ care: { say }, until }) =>
    until === undefined ? say : write.words.say("care_until", { n: until, say }),
  );
}

/**
 * The signs to move on from a phase. Where all that the next one asks waits for a review, or a sign of the
 * course is not this client's, the clinician's word is one of them: nobody moves on alone.
 */
export function moveOnWords(
  { moveOn, moveOnAsks }: ProgramPhase,
  next: ProgramPhase | undefined,
  { flags }: Program,
  { words }: Writer,
): readonly string[] {
  const waits = next?.exercises.every(({ card }) => waitsForReview(card, flags)) ?? false;
  return waits || moveOnAsks ? [...moveOn, words.say("start_review")] : moveOn;
}

/**
 * The sign without which an exercise is not begun: the protocol's, and the clinician's word where that sign
 * is not this client's or a health flag rules the exercise out until a review. Undefined for all others.
 */
export function startSign(
  { card, when, asksFirst }: Pick<ProgramExercise, "card" | "when" | "asksFirst">,
  { flags }: Program,
  { words }: Writer,
): string | undefined {
  if (!asksFirst && !waitsForReview(card, flags)) return when;
  const review = words.say("start_review");
  return when === undefined ? review : `${when} ${review}`;
}
