/** From what a dose aims at to a number: a load, a hold, repetitions or a speed. */

import type { Target } from "../prescription/fields.ts";
import { targetText } from "../prescription/serialise.ts";
import { counted } from "../units/counted.ts";
import { floorTo, show, showPercent } from "../units/rounding.ts";
import { bestHold, bodyPart, mostReps, oneRm, reportBodyMass } from "./capacity.ts";
import { type DoseContext, sayPlace, type Work } from "./context.ts";
import type { Need } from "./measures.ts";
import { rmShare } from "./rm-tables.ts";
import type { ProvenanceStep } from "./types.ts";

/** A load aimed at. `externalKg` may be negative: then the body's share alone is too heavy. */
export interface LoadTarget {
  readonly externalKg: number;
  readonly systemKg: number | undefined;
  readonly provenance: readonly ProvenanceStep[];
}

/** A number aimed at that is not a load: seconds, repetitions, or metres a second. */
export interface AmountTarget {
  readonly value: number;
  readonly provenance: readonly ProvenanceStep[];
}

/** A target as the clinician writes it. */
export function sayTarget(target: Target, context: Pick<DoseContext, "mass">): string {
  if (target.kind === "rm") return `${target.reps} RM`;
  if (target.kind === "reserve") return `${target.reps} in reserve`;
  if (target.kind === "load") return context.mass(target.kg);
  if (target.kind === "band") return `band ${target.level}`;
  if (target.kind === "speed" || target.kind === "percent-speed") return targetText(target);
  return `${showPercent(target.share)} of ${SHARE_OF[target.kind]}`;
}

const SHARE_OF = {
  "percent-1rm": "1RM",
  "percent-hold": "best hold",
  "percent-reps": "most reps",
};

/**
 * The load a target asks for: load moved as a share of 1RM, less the share of body mass.
 * `reps`: the most repetitions of a set, for a target of repetitions in reserve.
 * Undefined for targets that are no load, and where measures are missing (then with a fault).
 */
export function loadTarget(
  context: DoseContext,
  work: Work,
  reps: number | undefined,
  level: Need["level"],
): LoadTarget | undefined {
  const { target } = work.stated.dose;
  if (target === undefined) return undefined;
  const body = bodyPart(context, work.exercise.card);
  if (target.kind === "load") {
    const says = `A load of ${context.mass(target.kg)} is asked for`;
    const provenance = [targetStep(work, says, target.kg)];
    return {
      externalKg: target.kg,
      systemKg: body === undefined ? undefined : target.kg + body,
      provenance,
    };
  }
  const need = { what: sayTarget(target, context), level };
  if (target.kind === "percent-reps" || target.kind === "percent-hold") {
    return testedLoad(context, work, need, body);
  }
  const share = shareOf(context, target, reps);
  if (share === undefined) return undefined;
  const max = oneRm(context, work, need);
  if (max === undefined) return undefined;
  if (body === undefined) {
    reportBodyMass(context, work, need);
    return undefined;
  }
  const systemKg = max.value * share.share;
  const externalKg = systemKg - body;
  const provenance = [
    ...max.provenance,
    {
      ...targetStep(
        work,
        `${sayTarget(target, context)} is ${showPercent(share.share)} of 1RM, ${share.says}: ${context.mass(systemKg)} of load moved`,
        systemKg,
      ),
      ...(share.source !== undefined && { source: share.source }),
    },
    ...(body > 0 ? [bodyStep(context, body, externalKg)] : []),
  ];
  return { externalKg, systemKg, provenance };
}

/** Share of the best hold, in whole seconds, rounded down; may be 0. */
export function holdTarget(context: DoseContext, work: Work): AmountTarget | undefined {
  const { target } = work.stated.dose;
  if (target?.kind !== "percent-hold") return undefined;
  const best = bestHold(context, work, { what: sayTarget(target, context), level: "error" });
  return best && amount(context, work, target, best, 1, "s");
}

/** Share of the most repetitions, rounded down; may be 0. */
export function repsTarget(context: DoseContext, work: Work): AmountTarget | undefined {
  const { target } = work.stated.dose;
  if (target?.kind !== "percent-reps") return undefined;
  const most = mostReps(context, work, { what: sayTarget(target, context), level: "error" });
  return most && amount(context, work, target, most, 1, "repetitions");
}

function shareOf(context: DoseContext, target: Target, reps: number | undefined) {
  const { rm_to_load: method, one_rm: formula } = context.program.clinic.dosing;
  if (target.kind === "percent-1rm") {
    return { share: target.share, says: "as stated", source: undefined };
  }
  if (target.kind === "rm") return rmShare(method, formula, target.reps);
  if (target.kind !== "reserve" || reps === undefined) return undefined;
  const found = rmShare(method, formula, reps + target.reps);
  const says = `${counted(reps, "repetition")} with ${target.reps} in reserve are a ${reps + target.reps} RM, `;
  return found && { ...found, says: says + found.says };
}

/** The load of the test that a share of the most repetitions, or of the best hold, is taken from. */
function testedLoad(context: DoseContext, work: Work, need: Need, body: number | undefined) {
  const held = work.stated.dose.target?.kind === "percent-hold";
  const most = held ? bestHold(context, work, need) : mostReps(context, work, need);
  if (most?.systemKg === undefined || body === undefined) return undefined;
  const externalKg = Math.max(0, most.systemKg - body);
  const says = `The load is that of the test, ${context.mass(externalKg)} besides the body`;
  return {
    externalKg,
    systemKg: externalKg + body,
    provenance: [targetStep(work, says, externalKg)],
  };
}

function amount(
  context: DoseContext,
  work: Work,
  target: Extract<Target, { share: number }>,
  capacity: { readonly value: number; readonly provenance: readonly ProvenanceStep[] },
  step: number,
  unit: string,
): AmountTarget {
  const exact = capacity.value * target.share;
  const value = Math.max(0, floorTo(exact, step));
  const provenance: ProvenanceStep[] = [
    ...capacity.provenance,
    targetStep(work, `${sayTarget(target, context)} is ${show(exact)} ${unit}`, exact, unit),
  ];
  if (value < exact)
    provenance.push({
      step: "rounding",
      says: `Rounded down to ${show(value)} ${unit}.`,
      value,
      unit,
    });
  return { value, provenance };
}

export function targetStep(work: Work, says: string, value: number, unit = "kg"): ProvenanceStep {
  const statement = work.stated.stated.target;
  return {
    step: "target",
    says: `${says}.`,
    value: floorTo(value, 0.01),
    unit,
    ...(statement && { source: sayPlace(statement.place) }),
  };
}

function bodyStep(context: DoseContext, body: number, externalKg: number): ProvenanceStep {
  const left =
    externalKg < 0
      ? "that alone is more than the target."
      : `${context.mass(externalKg)} is left to add.`;
  return {
    step: "target",
    says: `The body's own share is ${context.mass(body)}; ${left}`,
    value: Math.max(0, floorTo(externalKg, 0.01)),
    unit: "kg",
  };
}
