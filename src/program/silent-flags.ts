/** Health flags of a client of which no card says anything: the clinician is told that they change nothing. */
import type { Library } from "../cards/library.ts";
import { Fault } from "../faults/fault.ts";
import type { Plan } from "../plan/schema.ts";
import type { Read } from "../read/source.ts";
import { asFlag } from "./flags.ts";

/** A warning, flag-silent, for every flag that no card of the library rules out or has words of care for. */
export function silentFlags({ value, source }: Read<Plan>, { cards }: Library): Fault[] {
  const heard = new Set(
    [...cards.values()]
      .flatMap(({ card }) => [...card.not_for, ...card.care])
      .map(({ flag }) => flag),
  );
  return value.flags.flatMap((stated, at) => {
    const { flag } = asFlag(stated);
    if (heard.has(flag)) return [];
    const place = source.at(["flags", at]);
    return [
      new Fault(
        "flag-silent",
        `The flag ${flag} changes nothing in this booklet: no card of the library is ruled out by it or has words of care for it.`,
        {
          level: "warning",
          place,
          frame: source.frame(place),
          hint: "Decide for each exercise what it means for this client: leave it out, swap it, or say it in the note. A clinic’s own card can state it under not_for or care.",
        },
      ),
    ];
  });
}
