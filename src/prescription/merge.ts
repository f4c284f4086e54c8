/** Brings together what is said about one dose, one statement over another; what is said later wins. */

import type { Place } from "../faults/fault.ts";
import type { DosePart } from "./fields.ts";
import type { CompleteDose, StatedDose, Statement } from "./stated.ts";

/** Some fields of a dose, who stated them, and where each stands. */
export interface DoseLayer {
  readonly by: Statement["by"];
  readonly part: DosePart;
  readonly placeOf: (field: keyof DosePart) => Place;
}

type Field = keyof DosePart;

const FREQUENCY: readonly Field[] = ["per_week", "per_day", "every"];
const COUNTED: readonly Field[] = ["reps", "rest_reps"];

/**
 * One part of a dose over another, field by field. This is the only place where doses are merged:
 * a row of a protocol's table over its dose, a protocol over a card, a plan over both.
 *
 * Whoever states what a set is means all of it, so what cannot be true beside it goes:
 *
 * | stated | drops of what was said before |
 * | --- | --- |
 * | `time` | `reps`, `rest_reps`, `tempo`, `hold`, `distance`, `turns` |
 * | `turns` | `reps`, `rest_reps`, `tempo`, `hold`, `distance`, `time` |
 * | `distance` | `tempo`, `hold`, `time`, `turns`; `reps` and `rest_reps` unless they counted a distance |
 * | `hold` | `time`, `turns`, `distance` and how often it was gone |
 * | `reps` | `time`, `turns`; `distance` unless it was gone several times |
 * | one of `per_week`, `per_day`, `every` | the other two |
 *
 * A target of best hold counts as a stated `hold`, one of most reps as stated `reps`, and both go
 * with them. One number of repetitions a set (a list) also says how many sets there are, unless the
 * same statement says it. Everything else stays: a hold over repetitions holds each of them; a
 * tempo or a number of sets that does not fit what it comes to stand beside is found by
 * `shapeProblem`, and never mended here.
 */
export function mergeDose<T extends DosePart>(base: T, over: DosePart): T {
  const merged: T = { ...base };
  for (const field of droppedBy(base, over)) delete merged[field];
  for (const [field, value] of Object.entries(over)) {
    if (value !== undefined) Object.assign(merged, { [field]: value });
  }
  const sets = setsOfList(over);
  return sets === undefined ? merged : Object.assign(merged, { sets });
}

/**
 * The dose of all layers, first to last; undefined where no layer says how many sets. A hold that one
 * layer states over the repetitions of another is marked: nobody said whether each is held, or one
 * hold takes their place.
 */
export function mergeLayers(layers: readonly DoseLayer[]): StatedDose | undefined {
  let dose: DosePart = {};
  let unclearHold = false;
  const stated: Partial<Record<Field, Statement>> = {};
  for (const { by, part, placeOf } of layers) {
    if (part.reps !== undefined || part.time !== undefined || part.turns !== undefined) {
      unclearHold = false;
    } else if (isHeld(part) && !isHeld(dose) && dose.reps !== undefined) unclearHold = true;
    for (const field of droppedBy(dose, part)) delete stated[field];
    for (const field of Object.keys(part) as Field[]) {
      if (part[field] !== undefined) stated[field] = { by, place: placeOf(field) };
    }
    if (setsOfList(part) !== undefined && stated.reps) stated.sets = stated.reps;
    dose = mergeDose(dose, part);
  }
  const unclear = unclearHold && isHeld(dose) ? { unclearHold } : {};
  return hasSets(dose) ? { dose, stated, ...unclear } : undefined;
}

const isHeld = ({ hold, target }: DosePart): boolean =>
  hold !== undefined || target?.kind === "percent-hold";

/** The fields of `base` that what `over` states takes away; see `mergeDose`. */
function droppedBy(base: DosePart, over: DosePart): ReadonlySet<Field> {
  const aim = over.target?.kind;
  const says = (field: Field) => over[field] !== undefined;
  const dropped = new Set<Field>();
  const drop = (...fields: readonly Field[]) => {
    for (const field of fields) dropped.add(field);
  };
  if (FREQUENCY.some(says)) drop(...FREQUENCY);
  if (says("time") || says("turns")) drop(...COUNTED, "tempo", "hold", "distance");
  if (says("time")) drop("turns");
  if (says("turns")) drop("time");
  if (says("distance")) {
    drop("tempo", "hold", "time", "turns");
    if (base.distance === undefined) drop(...COUNTED);
  }
  if (says("hold") || aim === "percent-hold") {
    drop("time", "turns", "distance");
    if (base.distance !== undefined) drop(...COUNTED);
  }
  if (says("reps") || aim === "percent-reps") {
    drop("time", "turns");
    if (base.reps === undefined) drop("distance");
  }
  if (dropped.has("hold") && base.target?.kind === "percent-hold") drop("target");
  if (dropped.has("reps") && base.target?.kind === "percent-reps") drop("target");
  return dropped;
}

/** The number of sets that a list of repetitions implies, where the part does not state it itself. */
function setsOfList({ sets, reps }: DosePart): number | undefined {
  return sets === undefined && reps !== undefined && reps.length > 1 ? reps.length : undefined;
}

const hasSets = (dose: DosePart): dose is CompleteDose => dose.sets !== undefined;
