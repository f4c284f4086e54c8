/** What the client can do: one repetition maximum, best hold, most repetitions, top speed. */

import { counted } from "../units/counted.ts";
import { atMost, show, tidy } from "../units/rounding.ts";
import { type DoseContext, sayCard, type Work } from "./context.ts";
import {
  type HoldTest,
  type Need,
  type Picked,
  pickMeasures,
  type RepetitionTest,
  sayMeasure,
} from "./measures.ts";
import { FORMULAS, MOST_FACTOR, oneRmFactor } from "./one-rm.ts";
import type { ProvenanceStep } from "./types.ts";

export interface Capacity {
  /** Kilograms of load moved, seconds, repetitions, or metres a second. */
  readonly value: number;
  /** Of most repetitions and best hold: the load moved in the test, in kilograms. */
  readonly systemKg?: number;
  readonly provenance: readonly ProvenanceStep[];
}

/**
 * 1RM as load moved: what is added and the share of body mass together, by the clinic's formula.
 * Of two sides in turn the weaker counts. Undefined where it cannot be computed.
 * Faults: those of measures, and measure-range; measure-missing at the client for body mass.
 */
export function oneRm(context: DoseContext, work: Work, need: Need): Capacity | undefined {
  const tests = pickMeasures(context, work, "repetitions", need);
  return weaker(tests.map((test) => oneRmOf(context, work, test, need)));
}

/** The most repetitions of the latest repetition test, and the load moved in it. */
export function mostReps(context: DoseContext, work: Work, need: Need): Capacity | undefined {
  const tests = pickMeasures(context, work, "repetitions", need);
  return weaker(
    tests.map((test) => ({
      value: test.measure.reps,
      ...testedLoad(context, test),
      provenance: [measureStep(context, work, test, test.measure.reps, "repetitions")],
    })),
  );
}

/** The best hold in seconds. Faults: also wrong-value for a hold of no time. */
export function bestHold(context: DoseContext, work: Work, need: Need): Capacity | undefined {
  const tests = pickMeasures(context, work, "hold", need);
  return weaker(
    tests.map((test) => {
      if (!(test.measure.time > 0)) return reportZero(context, test.index, "time");
      const provenance = [measureStep(context, work, test, test.measure.time, "s")];
      return { value: test.measure.time, ...testedLoad(context, test), provenance };
    }),
  );
}

/** The best speed of a client, in metres a second. */
export interface BestSpeed extends Capacity {
  /** Metres over which it was timed; undefined where the speed itself was measured. */
  readonly overM: number | undefined;
}

/** Top speed in metres a second, as measured or from a timed distance. */
export function topSpeed(context: DoseContext, work: Work, need: Need): BestSpeed | undefined {
  const [test] = pickMeasures(context, work, "speed", need);
  if (!test) return undefined;
  const { speed, distance, time } = test.measure;
  const value = speed ?? (distance !== undefined && time ? distance / time : 0);
  if (!(value > 0 && Number.isFinite(value))) return reportZero(context, test.index, "speed");
  const how =
    speed === undefined
      ? `${sayMeasure(context, test, work.exercise)}: ${show(distance ?? 0)} m in ${show(time ?? 0)} s.`
      : `${sayMeasure(context, test, work.exercise)}.`;
  const source = context.measurePlace(test.index);
  return {
    value,
    overM: speed === undefined ? distance : undefined,
    provenance: [{ step: "measure", says: how, value: rounded(value), unit: "m/s", source }],
  };
}

/** The share of body mass a card moves, in kilograms; undefined where body mass is not known. */
export function bodyPart(
  context: DoseContext,
  { card }: { readonly card: { readonly load: { readonly body_share?: number | undefined } } },
): number | undefined {
  const share = card.load.body_share ?? 0;
  if (share === 0) return 0;
  const mass = context.program.plan.value.client.body_mass;
  return mass !== undefined && mass > 0 ? share * mass : undefined;
}

/** Says that a load cannot be computed without body mass. */
export function reportBodyMass(context: DoseContext, work: Work, need: Need): void {
  const { source } = context.program.plan;
  context.findings.add(
    {
      code: "measure-missing",
      cause: "body mass",
      level: need.level,
      place: () => source.at(["client", "body_mass"]),
      say: (weeks) =>
        `The client's body mass is not given; ${sayCard(work.exercise.card)} moves a share of it, so ${need.what} cannot be computed (${weeks}).`,
      hint: "Add body_mass under client, such as 72 kg.",
    },
    work.week,
  );
}

function oneRmOf(
  context: DoseContext,
  work: Work,
  test: Picked<RepetitionTest>,
  need: Need,
): Capacity | undefined {
  const { reps, load } = test.measure;
  const formula = FORMULAS[context.program.clinic.dosing.one_rm];
  const body = bodyPart(context, test.card);
  if (body === undefined) {
    reportBodyMass(context, work, need);
    return undefined;
  }
  const system = load + body;
  if (!(system > 0)) return reportZero(context, test.index, "load");
  const factor = oneRmFactor(context.program.clinic.dosing.one_rm, reps);
  const usable = factor !== undefined && factor <= MOST_FACTOR;
  if (reps > formula.most || !usable)
    reportRange(context, test, usable ? "warning" : need.level, usable);
  if (!usable) return undefined;
  const parts = body > 0 ? ` (${context.mass(load)} and ${context.mass(body)} of the body)` : "";
  const how =
    reps === 1
      ? `One repetition with ${context.mass(system)}${parts}: that load is the 1RM.`
      : `1RM by ${formula.name}, ${formula.says}: ${context.mass(system)}${parts} moved ${counted(reps, "time")} is a 1RM of ${context.mass(system * factor)} of load moved.`;
  return {
    value: system * factor,
    provenance: [
      measureStep(context, work, test, reps, "repetitions"),
      {
        step: "formula",
        says: how,
        value: rounded(system * factor),
        unit: "kg",
        source: formula.source,
      },
    ],
  };
}

function reportRange(
  context: DoseContext,
  { measure, index, card }: Picked<RepetitionTest>,
  level: "error" | "warning",
  usable: boolean,
): void {
  const formula = FORMULAS[context.program.clinic.dosing.one_rm];
  context.findings.add({
    code: "measure-range",
    cause: String(index),
    level,
    place: () => context.program.plan.source.at(["measures", index, "reps"]),
    say: () =>
      `A test of ${counted(measure.reps, "repetition")} of ${sayCard(card)} is outside the range of the ${formula.name} formula, up to ${formula.most} (${formula.rangeSource}); ${usable ? "the 1RM is a rough estimate" : "no 1RM is computed from it"}.`,
    hint: "Test again with a load that allows fewer repetitions.",
  });
}

function reportZero(
  context: DoseContext,
  index: number,
  field: "time" | "speed" | "load",
): undefined {
  const what = {
    time: "This hold lasted no time.",
    speed: "This measure gives no speed: it needs a speed, or a distance and a time, above 0.",
    load: "This repetition test moved no load, so no 1RM follows from it.",
  };
  context.findings.add({
    code: field === "load" ? "measure-missing" : "wrong-value",
    cause: `measure ${index} ${field}`,
    level: "error",
    place: () => context.program.plan.source.at(["measures", index, field]),
    say: () => what[field],
    hint: "Correct the measure, or leave it out.",
  });
  return undefined;
}

function testedLoad(context: DoseContext, test: Picked<RepetitionTest | HoldTest>) {
  const body = bodyPart(context, test.card);
  return body === undefined ? {} : { systemKg: test.measure.load + body };
}

function measureStep(
  context: DoseContext,
  work: Work,
  test: Picked<RepetitionTest | HoldTest>,
  value: number,
  unit: string,
): ProvenanceStep {
  const says = `${sayMeasure(context, test, work.exercise)}.`;
  return {
    step: "measure",
    says,
    value: rounded(value),
    unit,
    source: context.measurePlace(test.index),
  };
}

/** The lower of two sides, with a word that it is; undefined where a side cannot be computed. */
function weaker(sides: readonly (Capacity | undefined)[]): Capacity | undefined {
  const [first, second] = sides;
  if (first === undefined || sides.length < 2) return first;
  if (second === undefined) return undefined;
  const lower = atMost(second.value, first.value) ? second : first;
  const says = "Both sides are dosed by the weaker one.";
  return {
    ...lower,
    provenance: [...lower.provenance, { step: "limit", says, value: rounded(lower.value) }],
  };
}

const rounded = (value: number): number => tidy(Math.round(value * 100) / 100);
