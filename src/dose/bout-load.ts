/** The load of a bout: what the target asks for, as near below it as the client's equipment can come. */

import { atMost, floorTo, show, showPercent } from "../units/rounding.ts";
import { bandLoad } from "./band-load.ts";
import { bodyPart } from "./capacity.ts";
import type { DoseContext, Work } from "./context.ts";
import { atOrUnder, type Made, type Makes, nextAbove, silentFor } from "./equipment.ts";
import { feltLoad } from "./felt-load.ts";
import { reportBodyAlone, reportMisfit, reportTooHeavy } from "./load-faults.ts";
import { type LoadTarget, loadTarget, speedTarget } from "./target.ts";
import type { BoutLoad, Loaded, ProvenanceStep } from "./types.ts";

/**
 * The load of one bout. `mostReps`: the most repetitions of its sets, if it has any.
 * Faults: those of targets and measures; load-not-makeable, with the easier card to offer.
 */
export function loadOf(context: DoseContext, work: Work, mostReps: number | undefined): Loaded {
  const { load } = work.exercise.card.card;
  if (load.kind === "speed" || work.stated.dose.target?.kind === "percent-speed") {
    return speedLoad(context, work);
  }
  if (load.kind === "band" || load.add === "band") return bandLoad(context, work, mostReps);
  if (load.kind === "weight" || load.add === "weight") return weightLoad(context, work, mostReps);
  return bodyLoad(context, work, mostReps);
}

function speedLoad(context: DoseContext, work: Work): Loaded {
  const aimed = speedTarget(context, work);
  if (aimed && aimed.value > 0) {
    return { load: { kind: "speed", kmH: aimed.value }, provenance: aimed.provenance };
  }
  return felt({ kind: "speed", words: feltLoad("a speed", work) });
}

/** Body or nothing: it cannot be changed, but a measure can show that it is too heavy. */
function bodyLoad(context: DoseContext, work: Work, mostReps: number | undefined): Loaded {
  const { card } = work.exercise.card;
  const { target } = work.stated.dose;
  const body = bodyPart(context, work.exercise.card);
  const kind = card.load.kind === "body" || (card.load.body_share ?? 0) > 0 ? "body" : "none";
  const load: BoutLoad = { kind, ...(body && { systemKg: floorTo(body, 0.1) }) };
  if (target === undefined || isAmount(target.kind)) return { load, provenance: [] };
  if (kind === "none" || target.kind === "load" || target.kind === "band") {
    reportMisfit(context, work, "this exercise has no load that can be chosen");
    return { load, provenance: [] };
  }
  const aimed = loadTarget(context, work, mostReps, "warning");
  if (aimed && !atMost(0, aimed.externalKg)) reportTooHeavy(context, work, "the body's own weight");
  const says = "The body's own weight is the load; this exercise has nothing to add.";
  return { load, provenance: aimed ? [...aimed.provenance, { step: "equipment", says }] : [] };
}

function weightLoad(context: DoseContext, work: Work, mostReps: number | undefined): Loaded {
  const { card } = work.exercise.card;
  const { target } = work.stated.dose;
  const required = card.load.kind === "weight";
  const addedTo = required ? undefined : ("body" as const);
  const body = bodyPart(context, work.exercise.card);
  const alone: BoutLoad = {
    kind: card.load.kind === "body" || (card.load.body_share ?? 0) > 0 ? "body" : "none",
    ...(body && { systemKg: floorTo(body, 0.1) }),
  };
  if (target === undefined) {
    return required
      ? felt({ kind: "weight", words: feltLoad("a weight", work) })
      : { load: alone, provenance: [] };
  }
  if (target.kind === "band") {
    reportMisfit(context, work, "this exercise is loaded with a weight and not with a band");
    return felt({ kind: "weight", addedTo, words: feltLoad("a weight", work) });
  }
  const aimed = loadTarget(context, work, mostReps, needLevel(target.kind));
  if (aimed === undefined) {
    return felt({ kind: "weight", addedTo, words: feltLoad("a weight", work) });
  }
  if (!required && isAmount(target.kind) && atMost(aimed.externalKg, 0)) {
    return { load: alone, provenance: aimed.provenance };
  }
  return outfit(context, work, aimed, required);
}

/** Repetitions in reserve can be found by feel; all other targets need their measure. */
function needLevel(kind: string): "error" | "warning" {
  return kind === "reserve" ? "warning" : "error";
}

/** The largest load at or under the target that the client's equipment makes; 0 is the body alone. */
function outfit(context: DoseContext, work: Work, aimed: LoadTarget, required: boolean): Loaded {
  const makes = context.makesFor(work.exercise.card);
  const made = aimed.externalKg >= 0 ? atOrUnder(makes, aimed.externalKg) : undefined;
  const tooHeavy = !required && !atMost(0, aimed.externalKg);
  if (tooHeavy) reportTooHeavy(context, work, "the body's own weight");
  if (required && !made) reportNoLoad(context, work, makes, aimed.externalKg);
  if (!required && makes.length === 0 && aimed.externalKg >= 0.1) {
    reportBodyAlone(context, work, `${show(floorTo(aimed.externalKg, 0.1))} kg`);
  }
  const kept = keepStep(context, work, makes, made);
  const kg = kept?.kg ?? (required || tooHeavy ? undefined : 0);
  const load: BoutLoad = {
    kind: "weight",
    ...(!required && { addedTo: "body" as const }),
    kg,
    targetKg: Math.max(0, floorTo(aimed.externalKg, 0.1)),
    ...(kept && { equipment: kept.have }),
    ...(kg === undefined ? { words: feltLoad("a weight", work) } : aboutLoad(kg, aimed, makes)),
  };
  const steps = equipmentSteps(aimed.externalKg, made, nextAbove(makes, made?.kg ?? 0), required);
  const limit = made && kept && kept.kg < made.kg ? [limitStep(context, work, kept.kg)] : [];
  return { load, provenance: [...aimed.provenance, ...(tooHeavy ? [] : steps), ...limit] };
}

/**
 * A computed load that would rise by more than the clinic's limit since last week: as far as the
 * limit allows, or where the equipment is too coarse for that by one step. A load stated in
 * kilograms is taken as stated.
 */
function keepStep(
  context: DoseContext,
  { before, stated }: Work,
  makes: readonly Makes[],
  made: Made | undefined,
): Made | undefined {
  // A week whose target could not be made counts as 0; one without a target says nothing.
  const last = before?.kg ?? (before?.targetKg === undefined ? undefined : 0);
  if (!made || last === undefined || stated.dose.target?.kind === "load") return made;
  const most = last + (before?.systemKg ?? last) * context.program.clinic.limits.load_step;
  if (atMost(made.kg, most)) return made;
  const within = atOrUnder(makes, most);
  if (within && !atMost(within.kg, last)) return within;
  const next = nextAbove(makes, last);
  return next && next.kg < made.kg ? next : made;
}

function limitStep(context: DoseContext, { before }: Work, kg: number): ProvenanceStep {
  const limit = showPercent(context.program.clinic.limits.load_step);
  return {
    step: "limit",
    says: `The week before had ${show(before?.kg ?? 0)} kg; the clinic lets the load moved grow by at most ${limit} a week, or by one step of the equipment: ${show(kg)} kg.`,
    value: kg,
    unit: "kg",
    source: "the clinic's limits: load_step",
  };
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
  const silent = makes.length === 0 ? silentFor(work.exercise.card.card, equipment) : [];
  reportTooHeavy(context, work, lightest(makes, silent), targetKg);
}

function equipmentSteps(
  target: number,
  made: Made | undefined,
  next: Made | undefined,
  required: boolean,
): ProvenanceStep[] {
  if (!made) {
    const least = next ? ` (the lightest is ${show(next.kg)} kg)` : "";
    const then = required ? "." : ": the body's own weight alone.";
    const says = `Nothing the client has makes a load at or under the target${least}${then}`;
    return [{ step: "equipment", says, ...(!required && { value: 0, unit: "kg" }) }];
  }
  const { kg, have } = made;
  const step = next && kg > 0 ? `; the next it makes is ${show(next.kg)} kg` : "; it makes no more";
  const says = `The client's ${have} makes ${show(kg)} kg at or under the target${step}.`;
  const steps: ProvenanceStep[] = [{ step: "equipment", says, value: kg, unit: "kg" }];
  if (target - kg > 1e-6) {
    const down = `Rounded down from ${show(target)} kg to ${show(kg)} kg.`;
    steps.push({ step: "rounding", says: down, value: kg, unit: "kg" });
  }
  return steps;
}

function lightest(makes: readonly Makes[], silent: readonly string[]): string {
  const least = nextAbove(makes, 0);
  if (least) return `the lightest load the client has, ${show(least.kg)} kg,`;
  return silent.length > 0
    ? `the client's ${silent.join(" or ")}, for which the plan gives no loads,`
    : "";
}

function isAmount(kind: string): boolean {
  return kind === "percent-hold" || kind === "percent-reps";
}

function felt(load: BoutLoad): Loaded {
  const { words } = load;
  return { load, provenance: words ? [{ step: "stated", says: `Left to feel: ${words}.` }] : [] };
}
