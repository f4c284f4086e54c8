/** Finds cards that could stand in for one that does not fit a client. Proposals only: nothing is swapped here. */
import type { Library, LibraryCard } from "../cards/library.ts";
import type { Plan } from "../plan/schema.ts";

/**
 * Cards of the same quality and main tissue that this client may do and has the equipment for:
 * named alternatives first, then the nearest by demand, easier before harder.
 */
export function proposals(card: LibraryCard, library: Library, plan: Plan): LibraryCard[] {
  const wanted = card.card;
  return [...library.cards.values()]
    .filter(({ card: other }) => other.id !== wanted.id)
    .filter(
      ({ card: other }) =>
        wanted.alternatives.includes(other.id) ||
        (other.trains === wanted.trains && other.tissues[0] === wanted.tissues[0]),
    )
    .filter((other) => rulingOut(other, plan) === undefined && missing(other, plan).length === 0)
    .sort((a, b) => rank(a) - rank(b) || (a.card.id < b.card.id ? -1 : 1));

  function rank({ card: other }: LibraryCard): number {
    if (wanted.alternatives.includes(other.id)) return -1;
    const step = other.demand - wanted.demand;
    return step <= 0 ? -step : step + 0.5;
  }
}

/** The first flag of this client that rules the card out, and why. */
export function rulingOut(
  { card }: LibraryCard,
  plan: Plan,
): { readonly flag: string; readonly why: string } | undefined {
  return card.not_for.find(({ flag }) => plan.flags.includes(flag));
}

/** What the card needs and the client does not have; `a|b` where one of several would do. */
export function missing({ card }: LibraryCard, plan: Plan): string[] {
  const have = new Set(plan.equipment.map((item) => (typeof item === "string" ? item : item.have)));
  const lacking = card.equipment.filter((item) => !have.has(item));
  const needsLoad = card.load.kind === "weight" || card.load.kind === "band";
  if (needsLoad && card.load.with.length > 0 && !card.load.with.some((item) => have.has(item))) {
    lacking.push(card.load.with.join("|"));
  }
  return lacking;
}
