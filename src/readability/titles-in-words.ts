/** Texts for clients that name another card's exercise in plain words, so that nothing can keep it from a client. */
import type { LibraryCard } from "../cards/library.ts";
import { Fault } from "../faults/fault.ts";
import type { Protocol } from "../protocols/schema.ts";
import type { Read } from "../read/source.ts";
import { type ClientText, cardTexts, protocolTexts } from "./client-texts.ts";

/** What cards are called in one language, by their ids. */
export type Titles = ReadonlyMap<string, string>;

/** The titles of cards, each language by itself. */
export function titlesByLanguage(cards: readonly LibraryCard[]): ReadonlyMap<string, Titles> {
  const all = new Map<string, Map<string, string>>();
  for (const { card } of cards) {
    const titles = all.get(card.language) ?? new Map<string, string>();
    all.set(card.language, titles.set(card.id, card.title));
  }
  return all;
}

/** A warning, title-in-words, for each other card that a card's texts for clients name. */
export const cardTitleFaults = (card: LibraryCard, titles: Titles): Fault[] =>
  cardTexts(card).flatMap((text) =>
    faultsIn(
      text,
      titles,
      card.card.id,
      "Say it without the exercise: a client who may not do it would read of it all the same.",
    ),
  );

/** A warning, title-in-words, for each card that a protocol's texts for clients name by its title. */
export const protocolTitleFaults = (protocol: Read<Protocol>, titles: Titles): Fault[] =>
  protocolTexts(protocol).flatMap((text) => faultsIn(text, titles, undefined, undefined));

/** Titles of one word are words of every day: nobody could write without them. */
const LEAST_WORDS = 2;

function faultsIn(
  { name, markdown, source, place }: ClientText,
  titles: Titles,
  own: string | undefined,
  hint: string | undefined,
): Fault[] {
  let left = markdown;
  const ownTitle = own === undefined ? undefined : titles.get(own);
  // a title may hold a shorter one
  const longestFirst = [...titles].sort(([, a], [, b]) => b.length - a.length);
  return longestFirst.flatMap(([id, title]) => {
    const words = title.trim().split(/\s+/);
    if (words.length < LEAST_WORDS) return [];
    const found = new RegExp(
      `(?<![\\p{L}\\p{N}])${words.map(escaped).join("\\s+")}(?![\\p{L}\\p{N}])`,
      "giu",
    );
    const [first] = left.matchAll(found);
    left = left.replace(found, (text) => "#".repeat(text.length));
    if (!first || title === ownTitle) return [];
    const before = markdown.slice(0, first.index).split("\n");
    const at = place(before.length - 1, before.at(-1)?.length ?? 0);
    const start = name.charAt(0).toUpperCase() + name.slice(1);
    return [
      new Fault("title-in-words", `${start} names the exercise of ${id} in plain words.`, {
        level: "warning",
        place: at,
        frame: source.frame(at),
        hint:
          hint ??
          `Under move_on, go_back and when write {${id}}, and each client reads what they have in its place; elsewhere say it without the exercise.`,
      }),
    ];
  });
}

const escaped = (word: string): string => word.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
