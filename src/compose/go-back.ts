/** The signs to go back a step, with the exercises they name as this client has them. */
import type { LibraryCard } from "../cards/library.ts";
import { easierInPlaceOf } from "../dose/easier.ts";
import { rungsBelow } from "../program/easier.ts";
import { type NamedExercises, namedExercises } from "../program/named.ts";
import { weeksOfCard, weeksOfPhase } from "../program/phase-weeks.ts";
import type { ProgramPhase } from "../program/program.ts";
import { cardsNamed, withNames } from "../protocols/named-cards.ts";
import { quoted } from "../words/languages.ts";
import type { Composing } from "./composing.ts";

type Card = LibraryCard | undefined;

/**
 * A phase's signs. The first sentence of each is the sign, the others what to do then. A sign of an
 * exercise that the client does not have in the phase is not theirs, and left out. Where what to do is
 * such an exercise, what is below it on its ladder stands there, if that has a page in this booklet;
 * else the client does less and calls.
 */
export function goBackWords(phase: ProgramPhase, composing: Composing): string[] {
  const { program, library, write } = composing;
  const { language } = program.protocol.value;
  const named = namedExercises(phase, program, library);
  if (!named) return [];
  const stepBack = stepsBack(phase, named, composing);
  return phase.goBack.flatMap((text) => {
    const [sign = "", ...advice] = text.split(/(?<=[.!?]) /);
    const about = cardsNamed(sign).map(named.inPlaceOf);
    if (about.includes(undefined)) return [];
    const says = advice.map((sentence) => {
      const toDo = (id: string) => stepBack(id, about);
      return cardsNamed(sentence).map(toDo).includes(undefined)
        ? write.words.say("go_back.less")
        : withNames(sentence, (id) => nameOf(toDo(id)));
    });
    return [withNames(sign, (id) => nameOf(named.inPlaceOf(id))), ...new Set(says)].join(" ");
  });

  function nameOf(card: Card): string {
    return quoted(card?.card.title ?? "", language);
  }
}

/** What to do in place of what was too much: a card, what is in its place, or the nearest below it; never what was too much. */
function stepsBack(
  phase: ProgramPhase,
  { isGiven, inPlaceOf }: NamedExercises,
  { dosed, library, program }: Composing,
) {
  const last = weeksOfPhase(phase)?.last ?? 0;
  const easier = new Set(
    [...easierInPlaceOf(program, dosed, library)].flatMap(([card, others]) =>
      others.some((one) => (weeksOfCard(program, one.card.card.id)?.first ?? last + 1) <= last)
        ? [card]
        : [],
    ),
  );
  return (id: string, tooMuch: readonly Card[]): Card => {
    const card = inPlaceOf(id) ?? library.cards.get(id);
    if (!card) return undefined;
    return [card, ...rungsBelow(card, library)].find(
      (one) => !tooMuch.includes(one) && (isGiven(one) || easier.has(one)),
    );
  };
}
