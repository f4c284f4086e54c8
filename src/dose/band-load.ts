/** The band of a bout: the heaviest level the client has at or under what the target asks for. */

import { atMost, floorTo } from "../units/rounding.ts";
import { BAND_SOURCE, bandKg } from "./bands.ts";
import { bodyPart } from "./capacity.ts";
import { type DoseContext, statedStep, type Work } from "./context.ts";
import { bandsFor } from "./equipment.ts";
import { feltLoad } from "./felt-load.ts";
import { reportBodyAlone, reportMisfit, reportTooHeavy } from "./load-faults.ts";
import { loadTarget } from "./target.ts";
import type { BoutLoad, Loaded, ProvenanceStep } from "./types.ts";

/**
 * A level as stated, or for a load in kilograms the level whose force at 100 % elongation is at or
 * under it. A band is mostly found by feel, so a missing measure is only a warning.
 */
export function bandLoad(context: DoseContext, work: Work, mostReps: number | undefined): Loaded {
  const { card } = work.exercise.card;
  const { dose, stated } = work.stated;
  const { target } = dose;
  const required = card.load.kind === "band";
  const added = required ? {} : { addedTo: "body" as const };
  const levels = bandsFor(card, context.program.plan.value.equipment);
  if (target === undefined || target.kind === "percent-hold") {
    return required ? leftToFeel(work, added) : bodyAlone(context, work);
  }
  if (target.kind === "percent-reps") {
    reportMisfit(context, work, "the load of a band is not known from a test");
    return leftToFeel(work, added);
  }
  if (target.kind === "band") {
    const says = `Band level ${target.level}`;
    const provenance = [statedStep(stated.target, says, target.level)];
    const fits = levels.filter((level) => level <= target.level);
    return pick(context, work, fits, provenance, required);
  }
  const aimed = loadTarget(context, work, mostReps, "warning");
  if (aimed === undefined) return leftToFeel(work, added);
  const fits = levels.filter((level) =>
    atMost(bandKg(level) ?? Number.POSITIVE_INFINITY, aimed.externalKg),
  );
  const picked = pick(context, work, fits, aimed.provenance, required, aimed.externalKg);
  return {
    ...picked,
    load: { ...picked.load, targetKg: Math.max(0, floorTo(aimed.externalKg, 0.1)) },
  };
}

function pick(
  context: DoseContext,
  work: Work,
  fits: readonly number[],
  provenance: readonly ProvenanceStep[],
  required: boolean,
  targetKg?: number,
): Loaded {
  const level = fits.at(-1);
  if (level === undefined) {
    const [least] = bandsFor(work.exercise.card.card, context.program.plan.value.equipment);
    if (!required) {
      if (targetKg !== undefined && !atMost(0, targetKg))
        reportTooHeavy(context, work, "the body's own weight");
      else if (least === undefined) reportBodyAlone(context, work, "a band");
      const says = "The client has no band at or under the target: the body's own weight alone.";
      return {
        ...bodyAlone(context, work),
        provenance: [...provenance, { step: "equipment", says }],
      };
    }
    const what = least === undefined ? "" : `the client's lightest band, level ${least},`;
    reportTooHeavy(context, work, what, targetKg ?? undefined);
    return { load: { kind: "band", words: feltLoad("a band", work) }, provenance };
  }
  const force = bandKg(level) ?? 0;
  const says = `The client's heaviest band at or under it is level ${level}, about ${context.mass(force)} drawn to twice its length.`;
  const step: ProvenanceStep = { step: "equipment", says, value: level, source: BAND_SOURCE };
  const load: BoutLoad = { kind: "band", level, ...(!required && { addedTo: "body" as const }) };
  return { load, provenance: [...provenance, step] };
}

function leftToFeel(work: Work, added: { readonly addedTo?: "body" }): Loaded {
  const words = feltLoad("a band", work);
  return {
    load: { kind: "band", ...added, words },
    provenance: [{ step: "stated", says: `Left to feel: ${words}.` }],
  };
}

function bodyAlone(context: DoseContext, work: Work): Loaded {
  const body = bodyPart(context, work.exercise.card);
  const { load } = work.exercise.card.card;
  const kind = load.kind === "body" || (load.body_share ?? 0) > 0 ? "body" : "none";
  return { load: { kind, ...(body && { systemKg: floorTo(body, 0.1) }) }, provenance: [] };
}
