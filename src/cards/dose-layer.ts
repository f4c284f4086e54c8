/** A card's own dose as the lowest layer of a dose. */
import type { DoseLayer } from "../prescription/merge.ts";
import type { LibraryCard } from "./library.ts";

export function cardLayer({ card, source }: LibraryCard): DoseLayer {
  return { by: "card", part: card.dose, placeOf: (field) => source.at(["dose", field]) };
}
