/** Which exercises a client in a phase may be told of: the one home of this question for all signs of a course. */
import type { Library, LibraryCard } from "../cards/library.ts";
import { openFlags } from "./flags.ts";
import { weeksOfCard, weeksOfPhase } from "./phase-weeks.ts";
import type { Program, ProgramPhase } from "./program.ts";
import { fits } from "./propose.ts";

/** The exercises of a client in a phase, by the ids that a course names them by. */
export interface NamedExercises {
  /** Whether the plan gives the card by the end of the phase, and nothing speaks against it from the beginning on. */
  isGiven(card: LibraryCard): boolean;
  /** Whether the card is given by the end of the phase, or comes after it. */
  isTheirs(id: string): boolean;
  /** The card, where it is given, else what the plan swaps it for; undefined where the client has neither. */
  inPlaceOf(id: string): LibraryCard | undefined;
  /** Flags of which nobody can say that they have ended before the phase. */
  readonly flags: readonly string[];
}

/** Undefined for a phase in which this client has no exercises. */
export function namedExercises(
  phase: ProgramPhase,
  program: Program,
  library: Library,
): NamedExercises | undefined {
  const span = weeksOfPhase(phase);
  if (!span) return undefined;
  const { first, last } = span;
  const plan = program.plan.value;
  const weeks = Array.from({ length: last - first + 1 }, (_, at) => first + at);
  const flags = openFlags(program.flags, weeks);
  const here = (change: { readonly phase?: string | undefined }) =>
    change.phase === undefined || change.phase === phase.id;
  const leftOut = new Set(plan.leave_out.filter(here).map(({ card }) => card));

  return { isGiven, isTheirs, inPlaceOf, flags };

  function inPlaceOf(id: string): LibraryCard | undefined {
    const swaps = plan.swap.filter(({ card }) => card === id);
    // what an earlier part of the course has in its place counts after what this one has
    const inOrder = [...swaps.filter(here), ...swaps.filter((swap) => !here(swap))];
    return [id, ...inOrder.map(({ to }) => to)]
      .flatMap((one) => library.cards.get(one) ?? [])
      .find(isGiven);
  }

  function isGiven(card: LibraryCard): boolean {
    const { id } = card.card;
    if (leftOut.has(id) || !beginsBy(id, last)) return false;
    return beginsBy(id, first) || fits(card, plan, flags, library.words);
  }

  function isTheirs(id: string): boolean {
    const card = library.cards.get(id);
    if (!card) return false;
    return isGiven(card) || (weeksOfCard(program, id)?.first ?? 0) > last;
  }

  function beginsBy(id: string, week: number): boolean {
    return (weeksOfCard(program, id)?.first ?? Number.POSITIVE_INFINITY) <= week;
  }
}
