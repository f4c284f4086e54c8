/** The figures of the library's cards, read for the tests. */
import { readLibrary } from "../../src/cards/read-library.ts";
import type { Figure } from "../../src/figure/format/schema.ts";
import { DAY, worldWith } from "../support/world.ts";

/** Every figure by the id of its card. */
export function cardFigures(): ReadonlyMap<string, Figure> {
  const { library } = readLibrary(worldWith(), ["exercises"], DAY);
  return new Map(
    [...library.cards.values()].flatMap(({ card }) =>
      card.figure ? [[card.id, card.figure] as const] : [],
    ),
  );
}
