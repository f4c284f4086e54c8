/** The signs to go back a step, with the exercises they name as this client has them. */
import type { LibraryCard } from "../cards/library.ts";
import { easierInPlaceOf } from "../dose/easier.ts";
import { rungsBelow } from "../program/easier.ts";
import { openFlags } from "../program/flags.ts";
import { weeksOfCard, weeksOfPhase } from "../program/phase-weeks.ts";
import type { ProgramPhase } from "../program/program.ts";
import { fits } from "../program/propose.ts";
import { cardsNamed, withNames } from "../protocols/named-cards.ts";
import type { WeekSpan } from "../units/week-span.ts";
import type { Composing } from "./composing.ts";

type Card = LibraryCard | undefined;

/**
 * A phase's signs. The first sentence of each is the sign, the others what to do then. A sign of an
 * exercise that the client does not have in the phase is not theirs, and left out. Where what to do is
 * such an exercise, what is below it on its ladder stands there, if that has a page in this booklet;
 * else the client does less and calls.
 */
export function goBackWords(phase: ProgramPhase, composing: Composing): string[] {
  const { words } = composing.write;
  const span = weeksOfPhase(phase);
  if (!span) return [];
  const has = booklet(phase, span, composing);
  return phase.goBack.flatMap((text) => {
    const [sign = "", ...advice] = text.split(/(?<=[.!?]) /);
    const about = cardsNamed(sign).map(has.inPlaceOf);
    if (about.includes(undefined)) return [];
    const says = advice.map((sentence) => {
      const toDo = (id: string) => has.toDo(id, about);
      return cardsNamed(sentence).map(toDo).includes(undefined)
        ? words.say("go_back.less")
        : withNames(sentence, (id) => nameOf(toDo(id)));
    });
    return [withNames(sign, (id) => nameOf(has.inPlaceOf(id))), ...new Set(says)].join(" ");
  });

  function nameOf(card: Card): string {
    return words.say("go_back.named", { title: card?.card.title ?? "" });
  }
}

/** Which exercises of the booklet a client in a phase may be sent to. */
function booklet(phase: ProgramPhase, span: WeekSpan, composing: Composing) {
  const { dosed, library, program } = composing;
  const plan = program.plan.value;
  const weeks = Array.from({ length: span.last - span.first + 1 }, (_, at) => span.first + at);
  const flags = openFlags(program.flags, weeks);
  const here = (change: { readonly card: string; readonly phase?: string | undefined }) =>
    change.phase === undefined || change.phase === phase.id;
  const leftOut = new Set(plan.leave_out.filter(here).map(({ card }) => card));
  const easier = new Set(
    [...easierInPlaceOf(program, dosed, library)].flatMap(([card, others]) =>
      others.some((one) => beginsBy(one.card.card.id, span.last)) ? [card] : [],
    ),
  );

  return { inPlaceOf, toDo };

  /** The card, where the client has it by the end of the phase, else what the plan swaps it for. */
  function inPlaceOf(id: string): Card {
    const swaps = plan.swap.filter((swap) => swap.card === id && here(swap));
    return [id, ...swaps.map(({ to }) => to)]
      .flatMap((one) => library.cards.get(one) ?? [])
      .find(isGiven);
  }

  /** The card or what is in its place, else the nearest below it; never what was too much. */
  function toDo(id: string, tooMuch: readonly Card[]): Card {
    const card = inPlaceOf(id) ?? library.cards.get(id);
    if (!card) return undefined;
    return [card, ...rungsBelow(card, library)].find(
      (one) => !tooMuch.includes(one) && (isGiven(one) || easier.has(one)),
    );
  }

  /** Whether the plan gives it by the end of the phase, and nothing speaks against it from the beginning on. */
  function isGiven(card: LibraryCard): boolean {
    const { id } = card.card;
    if (leftOut.has(id) || !beginsBy(id, span.last)) return false;
    return beginsBy(id, span.first) || fits(card, plan, flags, library.words);
  }

  function beginsBy(id: string, week: number): boolean {
    return (weeksOfCard(program, id)?.first ?? Number.POSITIVE_INFINITY) <= week;
  }
}
