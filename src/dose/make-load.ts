/** What the client takes for a target: as near below it as the equipment, the step limit and one piece allow. */

import { atMost, floorTo } from "../units/rounding.ts";
import type { DoseContext, Work } from "./context.ts";
import { atOrUnder, type Made, type Makes, nextAbove, silentFor } from "./equipment.ts";
import { feltLoad } from "./felt-load.ts";
import {
  reportBodyAlone,
  reportCoarse,
  reportHeld,
  reportShort,
  reportTooHeavy,
} from "./load-faults.ts";
import { limitStep, type StepBase, stepBase, withinStep } from "./load-step.ts";
import { nextLoadIfBeaten } from "./next-load.ts";
import { type OnePiece, onePiece } from "./one-piece.ts";
import type { LoadTarget } from "./target.ts";
import type { BoutLoad, Loaded, ProvenanceStep } from "./types.ts";

/**
 * The largest load at or under the target that the client's equipment makes, no further above what
 * was lifted lately than the clinic's limit, and with the piece used before where that costs little;
 * 0 is the body alone. `required`: the exercise cannot be done without. `reps`: the most of a set.
 * Faults: load-not-makeable, load-held, load-coarse, load-short.
 */
export function makeLoad(
  context: DoseContext,
  work: Work,
  aimed: LoadTarget,
  { required, reps }: { readonly required: boolean; readonly reps: number | undefined },
): Loaded {
  const makes = context.makesFor(work.exercise.card);
  const made = atOrUnder(makes, aimed.externalKg);
  const tooHeavy = !required && !atMost(0, aimed.externalKg);
  if (tooHeavy) reportTooHeavy(context, work, "the body's own weight");
  if (required && !made) reportNoLoad(context, work, makes, aimed.externalKg);
  if (!required && makes.length === 0 && aimed.externalKg >= 0.1) {
    reportBodyAlone(context, work, context.mass(floorTo(aimed.externalKg, 0.1)));
  }
  const base = stepBase(context, work, reps);
  const chosen = made && choose(context, work, makes, { made, targetKg: aimed.externalKg, base });
  const kg = chosen?.made.kg ?? (required || tooHeavy ? undefined : 0);
  const load: BoutLoad = {
    kind: "weight",
    ...(!required && { addedTo: "body" as const }),
    kg,
    targetKg: Math.max(0, floorTo(aimed.externalKg, 0.1)),
    ...(chosen && { equipment: chosen.made.have }),
    ...(kg === undefined ? { words: feltLoad("a weight", work) } : aboutLoad(kg, aimed, makes)),
  };
  reportCoarse(context, work, load, base);
  reportShort(context, work, load);
  const steps = equipmentSteps(context, aimed.externalKg, made, makes, required);
  return {
    load,
    provenance: [...aimed.provenance, ...(tooHeavy ? [] : steps), ...(chosen?.provenance ?? [])],
    next: nextLoadIfBeaten(context, work, load),
  };
}

/** The load made for the target, held to the limit and to one piece, with what there is to say. */
function choose(
  context: DoseContext,
  work: Work,
  makes: readonly Makes[],
  aim: {
    readonly made: Made;
    readonly targetKg: number;
    readonly base: StepBase | undefined;
  },
): OnePiece {
  const { made, base, targetKg } = aim;
  const free = withinStep(context, work, makes, made, base);
  const piece = onePiece(context, work, makes, free, made);
  if (!base || free.kg >= made.kg) return piece;
  const next = nextAbove(makes, free.kg);
  if (next && next.kg < made.kg) {
    const takenKg = piece.made.kg;
    reportHeld(context, work, { takenKg, madeKg: made.kg, targetKg, base });
  }
  const limit = limitStep(context, base, free.kg);
  return { made: piece.made, provenance: [limit, ...piece.provenance] };
}

/** The load moved, and the next load there is with the step to it. */
function aboutLoad(kg: number, { systemKg, externalKg }: LoadTarget, makes: readonly Makes[]) {
  const moved = systemKg === undefined ? undefined : kg + systemKg - externalKg;
  const next = nextAbove(makes, kg);
  const base = moved ?? kg;
  return {
    ...(moved !== undefined && { systemKg: floorTo(moved, 0.1) }),
    ...(next && { nextKg: next.kg }),
    ...(next && base > 0 && { nextStep: Math.round(((next.kg - kg) / base) * 1000) / 1000 }),
  };
}

function reportNoLoad(
  context: DoseContext,
  work: Work,
  makes: readonly Makes[],
  targetKg: number,
): void {
  const { equipment } = context.program.plan.value;
  const silent = silentFor(work.exercise.card.card, equipment);
  const least = nextAbove(makes, 0);
  const what = least
    ? `the lightest load the client has, ${context.mass(least.kg)},`
    : silent.length > 0
      ? `the client's ${silent.join(" or ")}, for which the plan gives no loads`
      : "";
  reportTooHeavy(context, work, what, targetKg);
}

function equipmentSteps(
  context: DoseContext,
  target: number,
  made: Made | undefined,
  makes: readonly Makes[],
  required: boolean,
): ProvenanceStep[] {
  const next = nextAbove(makes, made?.kg ?? 0);
  if (!made) {
    const least = next ? ` (the lightest is ${context.mass(next.kg)})` : "";
    const then = required ? "." : ": the body's own weight alone.";
    const says = `Nothing the client has makes a load at or under the target${least}${then}`;
    return [{ step: "equipment", says, ...(!required && { value: 0, unit: "kg" }) }];
  }
  const { kg, have } = made;
  const step = next ? `; the next there is is ${context.mass(next.kg)}` : "; there is no more";
  const says = `The client's ${have} makes ${context.mass(kg)} at or under the target${step}.`;
  const steps: ProvenanceStep[] = [{ step: "equipment", says, value: kg, unit: "kg" }];
  if (target - kg > 1e-6) {
    const down = `Rounded down from ${context.mass(target)} to ${context.mass(kg)}.`;
    steps.push({ step: "rounding", says: down, value: kg, unit: "kg" });
  }
  return steps;
}
