/** The load of a bout: what the target asks for, as near below it as the client's equipment can come. */

import { atMost, floorTo } from "../units/rounding.ts";
import { bandLoad } from "./band-load.ts";
import { bodyPart } from "./capacity.ts";
import type { DoseContext, Work } from "./context.ts";
import { feltLoad } from "./felt-load.ts";
import { reportMisfit, reportTooHeavy } from "./load-faults.ts";
import { makeLoad } from "./make-load.ts";
import { speedLoad } from "./speed-load.ts";
import { loadTarget } from "./target.ts";
import type { BoutLoad, Loaded } from "./types.ts";

/**
 * The load of one bout. `mostReps`: the most repetitions of its sets, if it has any.
 * Faults: those of targets and measures; load-not-makeable, with the easier card to offer; load-held,
 * load-coarse, load-short.
 */
export function loadOf(context: DoseContext, work: Work, mostReps: number | undefined): Loaded {
  const { load } = work.exercise.card.card;
  const aim = work.stated.dose.target?.kind;
  if (load.kind === "speed" || aim === "percent-speed" || aim === "speed") {
    return speedLoad(context, work);
  }
  if (load.kind === "band" || load.add === "band") return bandLoad(context, work, mostReps);
  if (load.kind === "weight" || load.add === "weight") return weightLoad(context, work, mostReps);
  return bodyLoad(context, work, mostReps);
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
  return makeLoad(context, work, aimed, { required, reps: mostReps });
}

/** Repetitions in reserve can be found by feel; all other targets need their measure. */
function needLevel(kind: string): "error" | "warning" {
  return kind === "reserve" ? "warning" : "error";
}

function isAmount(kind: string): boolean {
  return kind === "percent-hold" || kind === "percent-reps";
}

function felt(load: BoutLoad): Loaded {
  const { words } = load;
  return { load, provenance: words ? [{ step: "stated", says: `Left to feel: ${words}.` }] : [] };
}
