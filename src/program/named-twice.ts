/** A card may stand once in a phase: two doses of it would share one diary, one page and one recovery. */
import { Fault } from "../faults/fault.ts";
import type { Source } from "../read/source.ts";
import type { Named } from "./changes.ts";

/** A fault for each exercise of a phase whose card the phase has already; the protocol's own comes first. */
export function namedTwice(list: readonly Named[], phase: string): Fault[] {
  const own = list.filter(({ origin }) => origin === "protocol");
  const first = (card: string) => [...own, ...list].find((named) => named.card === card);
  return list
    .filter((named) => first(named.card) !== named)
    .map(({ card, source, path, origin }) =>
      twice(source, path, `“${phase}” has ${card} already.`, HINTS[origin]),
    );
}

const HINTS = {
  protocol: "Give its doses in one entry, by weeks.",
  swap: "Swap for another card, or leave this exercise out and change the dose of the other (redose).",
  add: "Change its dose with redose instead, or name the phase that does not have it (phase: …).",
} as const;

function twice(source: Source, path: Named["path"], message: string, hint: string): Fault {
  const place = source.at(path);
  return new Fault("card-twice", message, { place, frame: source.frame(place), hint });
}
