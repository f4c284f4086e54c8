/** A page for each exercise: why it is there, the dose now, the steps, what to feel, check and stop for. */

import { figureOf, svgUrl } from "../cards/figures.ts";
import { easierOf } from "../dose/easier.ts";
import { exercisesOf } from "../program/exercises.ts";
import { weeksOfCard } from "../program/phase-weeks.ts";
import type { ProgramExercise } from "../program/program.ts";
import { easierAnchor, exerciseAnchor } from "./anchors.ts";
import type { Composing } from "./composing.ts";
import { capital, weekWords } from "./dose-words.ts";
import type { DoseLine, ExercisePage } from "./exercise-model.ts";
import { careWords, startSign } from "./flag-words.ts";
import { loadMakers, needsOf, sectionText, stopText } from "./needs.ts";
import { exerciseRule } from "./pain-words.ts";
import { dosesIn } from "./phase-pages.ts";
import { sidedText, sideName, sideSentence } from "./side-words.ts";

/** Pages in the order in which the exercises first come; an exercise of several phases has one page. */
export function exercisePages(composing: Composing): ExercisePage[] {
  const { program, write } = composing;
  const exercises = exercisesOf(program);
  return exercises.map((exercise, index): ExercisePage => {
    const { card } = exercise.card;
    const makers = loadMakers(exercise, composing);
    const phases = program.phases.flatMap((phase) => {
      const here = phase.exercises.find((one) => one.card.card.id === card.id);
      // the page says above what is needed: one thing to take need not be named in every row
      const named = makers.length > 1;
      return here
        ? [
            {
              title: phase.title,
              when: startSign(here, program, write),
              doses: dosesIn(phase, here, composing, named),
            },
          ]
        : [];
    });
    const signs = new Set(phases.map(({ when }) => when));
    const [always] = signs.size === 1 ? signs : [];
    return {
      anchor: exerciseAnchor(exercise.card),
      number: index + 1,
      title: card.title,
      why: exercise.why,
      side: sideName(exercise, write),
      sideSentence: sideSentence(exercise, write),
      figure: figureFor(exercise),
      needs: needsOf(exercise, makers, program).map(
        (item) => composing.library.words.equipment[item]?.say ?? item,
      ),
      phases: phases.map((phase) =>
        phase.when === always ? { ...phase, when: undefined } : phase,
      ),
      always: constant(phases.flatMap((phase) => phase.doses)),
      when: always,
      setUp: sectionText(exercise, "setUp", makers, composing),
      move: sectionText(exercise, "move", makers, composing),
      feel: sectionText(exercise, "feel", makers, composing),
      check: sectionText(exercise, "check", makers, composing),
      stop: stopText(exercise, makers, composing),
      pain: exerciseRule(exercise.pain, write),
      care: careWords(exercise.card, program, write),
      easier: easierWords(exercise, exercises, composing),
    };
  });
}

/** Width of a clinic's own picture, in millimetres. */
const IMAGE_WIDTH = 70;

/** A picture of somebody who lies is low: it is widened until a hand and a foot are seen. In millimetres. */
const LEAST_HIGH = 20;
const MOST_WIDE = 100;
const widthOf = ({ width, height }: { readonly width: number; readonly height: number }) =>
  height >= LEAST_HIGH ? width : Math.min(MOST_WIDE, Math.round((width * LEAST_HIGH) / height));

/** The picture in the client's own side; none where it cannot be drawn right. */
export function figureFor(exercise: ProgramExercise): ExercisePage["figure"] {
  const { card, side } = exercise;
  const alt = (own: string) =>
    card.picture === undefined ? own : sidedText(card.picture, exercise);
  if (card.image) {
    return { url: card.image.url, alt: alt(card.image.alt), captions: [], width: IMAGE_WIDTH };
  }
  const drawing = figureOf(card, side === "both" ? "none" : side);
  if (drawing?.svg === undefined) return undefined;
  const captions = (card.captions ?? drawing.captions).map((says, at, all) => ({
    number: all.length > 1 ? at + 1 : undefined,
    says,
  }));
  return { url: svgUrl(drawing.svg), alt: alt(drawing.alt), captions, width: widthOf(drawing) };
}

/** What is the same in every week: said once, as sentences. */
function constant(doses: readonly DoseLine[]): string[] {
  const fields = ["pace", "rest", "effort", "often"] as const;
  return fields.flatMap((field) => {
    const said = new Set(doses.map((dose) => dose[field]));
    const [only] = said;
    return said.size === 1 && only !== undefined ? [`${capital(only)}.`] : [];
  });
}

/** What to do on a day when it is too much: an exercise that is in the booklet, or less of this one. */
function easierWords(
  exercise: ProgramExercise,
  pages: readonly ProgramExercise[],
  { program, dosed, library, write }: Composing,
): ExercisePage["easier"] {
  const { words } = write;
  const easier = easierOf(exercise, program, dosed, library);
  if (!easier) return { says: words.say("easier.less"), anchor: undefined };
  const { id, title } = easier.card.card;
  if (!easier.known)
    return { says: words.say("easier.other", { title }), anchor: easierAnchor(easier.card) };
  const n = pages.findIndex(({ card }) => card.card.id === id) + 1;
  const last = weeksOfCard(program, id)?.last ?? 1;
  const weeks = weekWords(last, last, write);
  return {
    says: words.say("easier.known", { n, title, weeks }),
    anchor: exerciseAnchor(easier.card),
  };
}
