/** Keeps an exercise to one piece of equipment, so that a client does not change it from week to week. */

import type { DoseContext, Work } from "./context.ts";
import { atOrUnder, type Made, type Makes, nextAbove } from "./equipment.ts";
import type { ProvenanceStep } from "./types.ts";

/** The load to take, and what there is to say about its piece where there is more than one. */
export interface OnePiece {
  readonly made: Made;
  readonly provenance: readonly ProvenanceStep[];
}

/**
 * The load of the piece used last, where that is at most one makeable step under the best load
 * within the limit, `free`, and a rise that is still to come is not lost by it; else `free`. Never
 * more than `free`. `target`: the best load at or under the target, without the limit.
 */
export function onePiece(
  context: DoseContext,
  { history, stated }: Work,
  makes: readonly Makes[],
  free: Made,
  target: Made,
): OnePiece {
  const last = history.findLast(({ load }) => load.equipment !== undefined)?.load;
  const before = last?.equipment;
  if (before === undefined || before === free.have) return { made: free, provenance: [] };
  const own = atOrUnder(
    makes.filter(({ have }) => have === before),
    free.kg,
  );
  const exact = stated.dose.target?.kind === "load";
  if (own && keeps(makes, own, free, target, last?.kg ?? 0, exact)) {
    const less =
      own.kg < free.kg ? `, at most one step under the ${context.mass(free.kg)} of` : ", as does";
    const says = `The exercise stays with the ${before}, which makes ${context.mass(own.kg)}${less} the ${free.have}.`;
    return { made: own, provenance: [equipmentStep(says, own.kg)] };
  }
  const can = own
    ? `makes only ${context.mass(own.kg)} at or under that`
    : "makes nothing so light";
  const says = `The exercise changes from the ${before} to the ${free.have} for ${context.mass(free.kg)}: the ${before} ${can}.`;
  return { made: free, provenance: [equipmentStep(says, free.kg)] };
}

function keeps(
  makes: readonly Makes[],
  own: Made,
  free: Made,
  target: Made,
  lastKg: number,
  exact: boolean,
): boolean {
  const atMostOneUnder = (kg: number) => own.kg >= kg || (nextAbove(makes, own.kg)?.kg ?? kg) >= kg;
  if (exact) return own.kg >= free.kg;
  return atMostOneUnder(target.kg) || (own.kg > lastKg && atMostOneUnder(free.kg));
}

const equipmentStep = (says: string, kg: number): ProvenanceStep => ({
  step: "equipment",
  says,
  value: kg,
  unit: "kg",
});
