/** Finds cards that could stand in for one that does not fit a client. Proposals only: nothing is swapped here. */
import { careFor, loadThings } from "../cards/care.ts";
import type { Library, LibraryCard } from "../cards/library.ts";
import { equipmentFor } from "../cards/variants.ts";
import type { Vocabulary } from "../cards/vocabulary.ts";
import type { Plan } from "../plan/schema.ts";

/**
 * Cards of the same quality and main tissue that this client may do and has the equipment for:
 * named alternatives first, then the nearest by demand, easier before harder.
 *
 * @param flags those that are open in the weeks in question
 */
export function proposals(
  card: LibraryCard,
  library: Library,
  plan: Plan,
  flags: readonly string[],
): LibraryCard[] {
  const wanted = card.card;
  return [...library.cards.values()]
    .filter(({ card: other }) => other.id !== wanted.id)
    .filter(
      ({ card: other }) =>
        wanted.alternatives.includes(other.id) ||
        (other.trains === wanted.trains && other.tissues[0] === wanted.tissues[0]),
    )
    .filter((other) => fits(other, plan, flags, library.words))
    .sort((a, b) => rank(a) - rank(b) || (a.card.id < b.card.id ? -1 : 1));

  function rank({ card: other }: LibraryCard): number {
    if (wanted.alternatives.includes(other.id)) return -1;
    const step = other.demand - wanted.demand;
    return step <= 0 ? -step : step + 0.5;
  }
}

/** Whether the card is for a client with these flags, and this one has what it needs. */
export const fits = (
  card: LibraryCard,
  plan: Plan,
  flags: readonly string[],
  words: Vocabulary,
): boolean =>
  rulingOut(card, flags) === undefined && missing(card, plan, flags, words).length === 0;

/** The first of these flags that rules the card out, and why. */
export function rulingOut(
  { card }: LibraryCard,
  flags: readonly string[],
): { readonly flag: string; readonly why: string } | undefined {
  const named = card.not_for.find(({ flag }) => flags.includes(flag));
  if (named || !needsLoad(card) || loadThings(card, flags).length > 0) return named;
  const last = careFor(card, flags).findLast(({ not_with }) => not_with.length > 0);
  return last && { flag: last.flag, why: "nothing that makes its load may be used." };
}

const needsLoad = ({ load }: LibraryCard["card"]): boolean =>
  load.kind === "weight" || load.kind === "band";

/**
 * What the card needs and the client does not have; `a|b` where one of several would do. With several
 * things that could make the load, what the best of them lacks. Things of every home are never missing;
 * a thing with which a flag of the client forbids the load is as good as not there.
 */
export function missing(
  { card }: LibraryCard,
  plan: Plan,
  flags: readonly string[],
  words: Vocabulary,
): string[] {
  const lacks = lackingOf(plan, words);
  const things = ownThings(card, plan, flags);
  if (needsLoad(card) && things.length === 0) {
    const could = loadThings(card, flags);
    const load = could.length > 0 ? [could.join("|")] : [];
    return [...lacks(card.equipment), ...load];
  }
  const ways = [...things.map((thing) => [thing]), ...(needsLoad(card) ? [] : [[]])];
  const [least = []] = ways
    .map((way) => lacks(equipmentFor(card, way)))
    .sort((a, b) => a.length - b.length);
  return least;
}

/** What is `missing`, in a sentence: "Jo has no step and no barbell or backpack, which x needs." */
export function lackSentence(name: string, lacks: readonly string[], id: string): string {
  const things = lacks.map((one) => `no ${orList(one.split("|"))}`);
  return `${name} has ${things.join(" and ")}, which ${id} needs.`;
}

const orList = (words: readonly string[]): string =>
  words.length < 2 ? words.join() : `${words.slice(0, -1).join(", ")} or ${words.at(-1)}`;

/** The client's things that can make the card's load, and with which they have all else it needs. */
export function usableThings(
  { card }: Pick<LibraryCard, "card">,
  plan: Plan,
  flags: readonly string[],
  words: Vocabulary,
): readonly string[] {
  const lacks = lackingOf(plan, words);
  return ownThings(card, plan, flags).filter(
    (thing) => lacks(equipmentFor(card, [thing])).length === 0,
  );
}

const ownThings = (card: LibraryCard["card"], plan: Plan, flags: readonly string[]): string[] => {
  const have = haveOf(plan);
  return loadThings(card, flags).filter((item) => have.has(item));
};

const haveOf = ({ equipment }: Plan): ReadonlySet<string> =>
  new Set(equipment.map((item) => (typeof item === "string" ? item : item.have)));

/** Picks what the client does not have and not every home has. */
function lackingOf(plan: Plan, { equipment }: Vocabulary) {
  const have = haveOf(plan);
  return (items: readonly string[]): string[] =>
    items.filter((item) => !have.has(item) && equipment[item]?.home !== true);
}
