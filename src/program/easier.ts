/** The rungs below an exercise that this client may take on a day when it is too much. */
import type { Library, LibraryCard } from "../cards/library.ts";
import { openFlags } from "./flags.ts";
import { doneWeeks, weeksOfCard } from "./phase-weeks.ts";
import type { Program } from "./program.ts";
import { fits } from "./propose.ts";

/**
 * Cards below `card` on its ladder, by however many rungs: those that the course has given before first,
 * then the harder before the easier. None that a flag of this
 * client rules out, for which equipment is lacking, which the plan leaves out or swaps, that needs a
 * longer rest than the exercise whose place it takes, or that the course gives in the same weeks or later.
 */
export function easierCards(card: LibraryCard, program: Program, library: Library): LibraryCard[] {
  const plan = program.plan.value;
  const phases = program.phases.filter(({ exercises }) =>
    exercises.some((exercise) => exercise.card.card.id === card.card.id),
  );
  const notWanted = new Set(
    [...plan.leave_out, ...plan.swap]
      .filter(({ phase }) => phase === undefined || phases.some(({ id }) => id === phase))
      .map((change) => change.card),
  );
  const begins = weeksOfCard(program, card.card.id)?.first ?? 1;
  const flags = openFlags(program.flags, doneWeeks(program, card.card.id));
  return rungsBelow(card, library)
    .filter(({ card: { id } }) => !notWanted.has(id))
    .filter((one) => fits(one, plan, flags, library.words))
    .filter((one) => one.card.recovery <= card.card.recovery)
    .filter(({ card: { id } }) => (weeksOfCard(program, id)?.last ?? 0) < begins)
    .sort((a, b) => known(b) - known(a) || b.card.demand - a.card.demand);

  function known({ card: { id } }: LibraryCard): number {
    return weeksOfCard(program, id) === undefined ? 0 : 1;
  }
}

/** Every card below on the ladder, each once, nearest first. */
export function rungsBelow(card: LibraryCard, library: Library): LibraryCard[] {
  const found = new Map<string, LibraryCard>();
  const open = [card];
  for (let next = open.shift(); next !== undefined; next = open.shift()) {
    for (const { to } of next.card.easier) {
      const lower = library.cards.get(to);
      if (!lower || lower === card || found.has(to)) continue;
      found.set(to, lower);
      open.push(lower);
    }
  }
  return [...found.values()];
}
