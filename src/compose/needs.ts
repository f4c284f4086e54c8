/** What an exercise takes for this client: the things that make its load, and all else it needs. */

import { careFor, withCare } from "../cards/care.ts";
import type { SectionKey } from "../cards/sections.ts";
import { equipmentFor, sectionFor } from "../cards/variants.ts";
import type { Bout } from "../dose/types.ts";
import { openFlags } from "../program/flags.ts";
import { doneWeeks, flagsOfCard } from "../program/phase-weeks.ts";
import type { Program, ProgramExercise } from "../program/program.ts";
import { usableThings } from "../program/propose.ts";
import type { Composing } from "./composing.ts";
import { capital, thingName } from "./dose-words.ts";
import { severeSign } from "./pain-words.ts";
import { sidedText } from "./side-words.ts";

type Parts = Pick<Composing, "program" | "dosed" | "library">;

/** What makes the load of an exercise in any week of the program: equipment's words. */
export function loadMakers(exercise: ProgramExercise, parts: Parts): string[] {
  const { id } = exercise.card.card;
  const all = parts.dosed.weeks.flatMap(({ bouts }) => bouts.filter(({ card }) => card === id));
  return thingsOf(exercise, all, parts);
}

/** What makes the loads of some bouts of an exercise. */
export function thingsOf(
  { card }: ProgramExercise,
  bouts: readonly Pick<Bout, "load">[],
  { program, library }: Pick<Parts, "program" | "library">,
): string[] {
  const flags = flagsOfCard(program, card.card.id);
  const makers = bouts.flatMap(({ load: { kind, kg, equipment } }) => {
    if (kg === 0 || (kind !== "weight" && kind !== "band")) return [];
    if (equipment !== undefined) return [equipment];
    // a band, or a weight left to feel: what the client has for it, the card's first choice first
    const things = usableThings(card, program.plan.value, flags, library.words);
    return things.filter((thing) => library.words.equipment[thing]?.makes === kind).slice(0, 1);
  });
  return [...new Set(makers)];
}

/**
 * Everything the client needs for a card whose load is made by `things`: its equipment, these things, and
 * what a word of care takes.
 */
export function needsOf(
  { card }: ProgramExercise,
  things: readonly string[],
  program: Program,
  weeks: readonly number[] = doneWeeks(program, card.card.id),
): string[] {
  const care = careFor(card.card, openFlags(program.flags, weeks));
  return [
    ...new Set([
      ...equipmentFor(card.card, things),
      ...things,
      ...care.flatMap(({ equipment }) => equipment),
    ]),
  ];
}

/**
 * A section of the card for this client's side, flags and the things that make the load; where things
 * differ, each under its name.
 */
export function sectionText(
  exercise: ProgramExercise,
  section: SectionKey,
  things: readonly string[],
  composing: Composing,
): string {
  const texts = sectionFor(exercise.card, section, things);
  const { card } = exercise.card;
  const care = careFor(card, flagsOfCard(composing.program, card.id));
  const named = texts.map(({ things: own, text }) => {
    const names = own.map((thing) => thingName(thing, composing.library.words));
    const head = texts.length > 1 ? `**${capital(composing.write.list(names))}**\n\n` : "";
    return head + withCare(text, section, care);
  });
  return sidedText(named.join("\n\n"), exercise);
}

/** The signs to stop an exercise for: how much pain, which holds for every exercise, and then the card's own. */
export function stopText(
  exercise: ProgramExercise,
  things: readonly string[],
  composing: Composing,
): string {
  const severe = severeSign(composing.program.callLevel, composing.write);
  return `- ${severe}\n${sectionText(exercise, "stop", things, composing)}`;
}
