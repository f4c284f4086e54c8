/** Advice on a dosed program, as warnings: a tissue left out, no easier card. */

import type { Card } from "../cards/schema.ts";
import { weeksOfCard } from "../program/phase-weeks.ts";
import { type DoseContext, sayCard } from "./context.ts";
import { sayList } from "./findings.ts";
import type { DosedWeek } from "./types.ts";

/**
 * Faults, all warnings: tissue-untrained, no-easier-rung; each once a cause, with the weeks it holds in.
 */
export function advise(context: DoseContext, weeks: readonly DosedWeek[]): void {
  for (const week of weeks) {
    if (!context.program.awayWeeks.includes(week.week)) adviseOnTissues(context, week);
  }
  adviseOnLadders(context);
}

/**
 * Main tissues are those that the main exercises of the protocol's and the plan's phases load first. Where
 * one of these loads it, a stretch or a loose movement does not stand in.
 */
function adviseOnTissues(context: DoseContext, { week, bouts }: DosedWeek): void {
  const here = bouts.flatMap(({ card }) => context.cardOf(card)?.card ?? []);
  const trained = new Set(here.flatMap(({ tissues }) => tissues));
  const loaded = new Set(here.filter(isLoading).flatMap(({ tissues }) => tissues));
  const { program } = context;
  for (const phase of program.phases) {
    if (week < phase.firstWeek || week >= phase.firstWeek + phase.weeks) continue;
    for (const [tissue, byLoad] of mainTissues(context, phase.id)) {
      if ((byLoad ? loaded : trained).has(tissue)) continue;
      context.findings.add(
        {
          code: "tissue-untrained",
          cause: `${phase.id} ${tissue}`,
          level: "warning",
          place: () => phase.exercises[0]?.place ?? program.plan.source.at(["protocol"]),
          say: (weeks) =>
            `No exercise loads the ${tissue} in ${weeks}, though the phase “${phase.title}” is for it.`,
          hint: "Add an exercise for it, or keep one of those left out.",
        },
        week,
      );
    }
  }
}

/** The main tissues of a phase, and whether one of its main exercises loads it, more than moves it. */
function mainTissues(context: DoseContext, phaseId: string): Map<string, boolean> {
  const { phases, protocol } = context.program;
  const own = phases.find(({ id }) => id === phaseId)?.exercises ?? [];
  const stated = protocol.value.phases.find(({ id }) => id === phaseId)?.exercises ?? [];
  const cards = [
    ...own.filter(({ main }) => main).map(({ card }) => card.card),
    ...stated.filter(({ main }) => main).flatMap(({ card }) => context.cardOf(card)?.card ?? []),
  ];
  const tissues = new Map<string, boolean>();
  for (const card of cards) {
    const [first] = card.tissues;
    if (first === undefined) continue;
    tissues.set(first, (tissues.get(first) ?? false) || isLoading(card));
  }
  return tissues;
}

const isLoading = ({ trains }: Card): boolean => trains !== "mobility" && trains !== "relaxation";

/** From this demand on a card is expected to have an easier one; those below are the foot of a ladder. */
const LADDER_DEMAND = 3;

function adviseOnLadders(context: DoseContext): void {
  for (const { exercises } of context.program.phases) {
    for (const { card, main, place } of exercises) {
      const { demand, easier } = card.card;
      if (!main || demand < LADDER_DEMAND || !isLoading(card.card)) continue;
      const below = context.hasLibrary
        ? (context.easierThan(card) ?? easier.find(({ to }) => weeksOfCard(context.program, to)))
        : easier[0];
      if (below !== undefined) continue;
      context.findings.add({
        code: "no-easier-rung",
        cause: card.card.id,
        level: "warning",
        place: () => place,
        say: () =>
          `${sayCard(card)} has no easier card to step down to when it is too much; the booklet says to do fewer, then to leave it and call.`,
        hint: noRungHint(
          easier.map(({ to }) => to),
          context,
        ),
      });
    }
  }
}

function noRungHint(named: readonly string[], context: DoseContext): string {
  if (named.length === 0) return "Name one under easier on its card.";
  const unknown = context.hasLibrary ? named.filter((id) => !context.cardOf(id)) : named;
  if (unknown.length === named.length)
    return `Its card names ${sayList(unknown)}, which the library does not have.`;
  return `None of the cards below it (the next: ${sayList(named)}) is one that this client may do and has the equipment for. Tell the client what to do on a bad day, in the note.`;
}
