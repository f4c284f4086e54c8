/** Exercises that are done only in place of others, on a day when these are too much: each in short. */

import { easierBout, easierInPlaceOf } from "../dose/easier.ts";
import { exercisesOf } from "../program/exercises.ts";
import { doneWeeks } from "../program/phase-weeks.ts";
import { easierAnchor } from "./anchors.ts";
import type { Composing } from "./composing.ts";
import { doseWords } from "./dose-words.ts";
import type { EasierExercise } from "./exercise-model.ts";
import { figureFor } from "./exercise-pages.ts";
import { careWords } from "./flag-words.ts";
import { needsOf, sectionText, stopText, thingsOf } from "./needs.ts";
import { exerciseRule } from "./pain-words.ts";
import { sideName } from "./side-words.ts";

/** One entry for each card that a page names as easier and that has no page of its own. */
export function easierExercises(composing: Composing): EasierExercise[] {
  const { program, dosed, library, write } = composing;
  const { words } = write;
  const pages = exercisesOf(program);
  return [...easierInPlaceOf(program, dosed, library)].map(([card, others]): EasierExercise => {
    const { exercise, bout } = easierBout(card, others, program, dosed, library);
    const weeks = others.flatMap((one) => doneWeeks(program, one.card.card.id));
    const things = thingsOf(exercise, [bout], composing);
    const { work, load, pace, rest, effort } = doseWords(bout, card, library.words, write);
    const numbers = others.map((one) => pages.indexOf(one) + 1);
    return {
      anchor: easierAnchor(card),
      title: card.card.title,
      insteadOf: words.say("easier.instead", {
        n: numbers.length,
        list: write.list(numbers.map(String)),
      }),
      side: sideName(exercise, write),
      figure: figureFor(exercise),
      needs: needsOf(exercise, things, program, weeks).map(
        (item) => library.words.equipment[item]?.say ?? item,
      ),
      dose: [work, load, pace, rest, effort].filter((part) => part !== undefined),
      setUp: sectionText(exercise, "setUp", things, composing),
      move: sectionText(exercise, "move", things, composing),
      stop: stopText(exercise, things, composing),
      pain: exerciseRule(exercise.pain, write),
      care: careWords(card, program, write, weeks),
    };
  });
}
