/** One exercise of a session as a screen needs it: the numbers to count, and the words to show. */

import type { Bout } from "../dose/types.ts";
import type { ProgramExercise } from "../program/program.ts";
import type { Composing } from "./composing.ts";
import { doseWords } from "./dose-words.ts";
import type { Writer } from "./numbers.ts";
import { exerciseAnchor } from "./phase-pages.ts";
import type { PainWords, SessionBout } from "./session-model.ts";
import { sideName } from "./side-words.ts";

/** A bout with its words. */
export function sessionBout(
  bout: Bout,
  exercise: ProgramExercise,
  { program, library, write }: Composing,
): SessionBout {
  const { words } = write;
  const { card } = exercise.card;
  const { work, load, pace, rest, effort } = doseWords(bout, exercise.card, library.words, write);
  return {
    key: bout.key,
    card: card.id,
    anchor: exerciseAnchor(exercise.card),
    title: card.title,
    side: bout.side,
    sideWords: sideName(exercise, write),
    running: card.trains === "running",
    sets: bout.sets,
    reps: bout.reps,
    holdS: bout.holdS,
    timeS: bout.timeS,
    distanceM: bout.distanceM,
    tempo: bout.tempo,
    first: card.pace.first,
    liftWord: card.pace.lift ?? words.say("dose.pace.up"),
    lowerWord: card.pace.lower ?? words.say("dose.pace.down"),
    fastS: program.clinic.dosing.fast_part,
    restS: bout.restS,
    restRepsS: bout.restRepsS,
    effort: bout.effort,
    kg: bout.load.kg,
    recoveryS: card.recovery,
    dose: [work, load, pace, rest, effort].filter((part) => part !== undefined),
    pain: exercise.pain,
    painWords: painWords(exercise, write),
  };
}

function painWords({ pain }: ProgramExercise, { words, number }: Writer): PainWords {
  const values = { during: number(pain.during), after: number(pain.after) };
  const more = `pain.rules.${pain.kind}.more`;
  return {
    rule: words.say(`pain.exercise.${pain.kind}`, values),
    over: words.say(`pain.rules.${pain.kind}.over`, values),
    after: words.say(`pain.rules.${pain.kind}.after`, values),
    worse: words.has(more) ? words.say(more, values) : words.say("pain.zone.too-much.says"),
  };
}
