/** Brings together what card, protocol and plan say about one dose; what is said later wins. */

import type { Place } from "../faults/fault.ts";
import type { DosePart } from "./fields.ts";
import type { CompleteDose, StatedDose, Statement } from "./stated.ts";

/** Some fields of a dose, who stated them, and where each stands. */
export interface DoseLayer {
  readonly by: Statement["by"];
  readonly part: DosePart;
  readonly placeOf: (field: keyof DosePart) => Place;
}

const FREQUENCY = ["per_week", "per_day", "every"] as const;
const COUNTED = ["reps", "hold"] as const;
const TIMED = ["time", "distance"] as const;

/**
 * The dose of all layers, first to last. Stating one way of saying how often drops the others;
 * stating a time or distance drops counted repetitions, and the other way about.
 * Undefined where no layer says how many sets.
 */
export function mergeDose(layers: readonly DoseLayer[]): StatedDose | undefined {
  const dose: Record<string, unknown> = {};
  const stated: Partial<Record<keyof DosePart, Statement>> = {};
  const drop = (fields: readonly (keyof DosePart)[]) => {
    for (const field of fields) {
      delete dose[field];
      delete stated[field];
    }
  };
  for (const layer of layers) {
    const says = (field: keyof DosePart) => layer.part[field] !== undefined;
    if (FREQUENCY.some(says)) drop(FREQUENCY);
    if (TIMED.some(says) && !COUNTED.some(says)) drop([...COUNTED, ...TIMED, "tempo"]);
    if (COUNTED.some(says) && !TIMED.some(says)) drop(TIMED);
    for (const field of Object.keys(layer.part) as (keyof DosePart)[]) {
      if (!says(field)) continue;
      dose[field] = layer.part[field];
      stated[field] = { by: layer.by, place: layer.placeOf(field) };
    }
  }
  return hasSets(dose) ? { dose, stated } : undefined;
}

function hasSets(dose: Record<string, unknown>): dose is CompleteDose & Record<string, unknown> {
  return dose.sets !== undefined;
}
