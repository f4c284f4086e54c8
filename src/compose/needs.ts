/** What an exercise takes for this client: the things that make its load, and all else it needs. */

import type { SectionKey } from "../cards/sections.ts";
import { equipmentFor, sectionFor } from "../cards/variants.ts";
import type { ProgramExercise } from "../program/program.ts";
import { usableThings } from "../program/propose.ts";
import type { Composing } from "./composing.ts";
import { thingName } from "./dose-words.ts";
import { sidedText } from "./side-words.ts";

type Parts = Pick<Composing, "program" | "dosed" | "library">;

/** What makes the load of an exercise in any week of the program: equipment's words. */
export function loadMakers(
  exercise: ProgramExercise,
  { program, dosed, library }: Parts,
): string[] {
  const { card } = exercise.card;
  const makers = dosed.weeks.flatMap(({ bouts }) =>
    bouts
      .filter((bout) => bout.card === card.id)
      .flatMap(({ load: { kind, kg, equipment } }) => {
        if (kg === 0 || (kind !== "weight" && kind !== "band")) return [];
        if (equipment !== undefined) return [equipment];
        // a band, or a weight left to feel: what the client has for it, the card's first choice first
        const things = usableThings(exercise.card, program.plan.value, library.words);
        return things.filter((thing) => library.words.equipment[thing]?.makes === kind).slice(0, 1);
      }),
  );
  return [...new Set(makers)];
}

/** Everything the client needs: the card's equipment, what makes the load, and what a word of care takes. */
export function needsOf(exercise: ProgramExercise, parts: Parts): string[] {
  const { card } = exercise.card;
  const { flags } = parts.program.plan.value;
  const makers = loadMakers(exercise, parts);
  const care = card.care.filter(({ flag }) => flags.includes(flag));
  return [
    ...new Set([
      ...equipmentFor(card, makers),
      ...makers,
      ...care.flatMap(({ equipment }) => equipment),
    ]),
  ];
}

/** A section of the card for this client's side and things; where things differ, each under its name. */
export function sectionText(
  exercise: ProgramExercise,
  section: SectionKey,
  composing: Composing,
): string {
  const texts = sectionFor(exercise.card, section, loadMakers(exercise, composing));
  const named = texts.map(({ things, text }) => {
    const names = things.map((thing) => thingName(thing, composing.library.words));
    const head = texts.length > 1 ? `**${composing.write.list(names)}**\n\n` : "";
    return head + text;
  });
  return sidedText(named.join("\n\n"), exercise, composing.write);
}
