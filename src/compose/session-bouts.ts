/** One exercise of a session as a screen needs it: the numbers to count, and the words to show. */

import type { Bout } from "../dose/types.ts";
import type { ProgramExercise } from "../program/program.ts";
import { keptClearOf } from "../schedule/event-clear.ts";
import { toGram } from "../units/mass.ts";
import { exerciseAnchor } from "./anchors.ts";
import { needsGoodDay } from "./bad-day.ts";
import type { Composing } from "./composing.ts";
import { doseWords, wayWords } from "./dose-words.ts";
import { startSign } from "./flag-words.ts";
import { painWords } from "./pain-words.ts";
import type { SessionBout } from "./session-model.ts";
import { sideName } from "./side-words.ts";

/** A bout with its words. */
export function sessionBout(
  bout: Bout,
  exercise: ProgramExercise,
  { program, library, write }: Composing,
): SessionBout {
  const { card } = exercise.card;
  const { work, load, pace, rest, effort } = doseWords(bout, exercise.card, library.words, write);
  return {
    key: bout.key,
    card: card.id,
    anchor: exerciseAnchor(exercise.card),
    title: card.title,
    when: startSign(exercise, program, write),
    side: bout.side,
    sideWords: sideName(exercise, write),
    needsGoodDay: needsGoodDay(exercise),
    running: card.trains === "running",
    sets: bout.sets,
    reps: bout.reps,
    holdS: bout.holdS,
    timeS: bout.timeS,
    distanceM: bout.distanceM,
    turns: bout.turns,
    tempo: bout.tempo,
    first: card.pace.first,
    liftWord: wayWords(card, "lift", write),
    lowerWord: wayWords(card, "lower", write),
    fastS: program.clinic.dosing.fast_part,
    restS: bout.restS,
    restRepsS: bout.restRepsS,
    effort: bout.effort,
    kg: bout.load.kg === undefined ? undefined : toGram(bout.load.kg),
    tissues: card.tissues,
    recoveryS: card.recovery,
    keptClearOf: keptClearOf(exercise, bout.effort, program),
    dose: [work, load, pace, rest, effort].filter((part) => part !== undefined),
    pain: exercise.pain,
    painWords: painWords(exercise.pain, write),
  };
}
