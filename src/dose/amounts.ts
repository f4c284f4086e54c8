/** Sets, repetitions and holds of a bout: what was stated, or what follows from a target, never more. */

import type { Repetitions } from "../prescription/fields.ts";
import { rankOf } from "../prescription/stated.ts";
import { counted } from "../units/counted.ts";
import { show, showPercent } from "../units/rounding.ts";
import { type DoseContext, sayCard, statedStep, type Work } from "./context.ts";
import { type AmountTarget, holdTarget, repsTarget, sayTarget } from "./target.ts";
import type { ProvenanceStep } from "./types.ts";

export interface Amounts {
  readonly sets: number;
  /** The sets there would be, where the week is a first one back and has fewer. */
  readonly usualSets: number | undefined;
  /** One entry a set. */
  readonly reps: Repetitions | undefined;
  /** The most of any set, those that an easier week leaves out included: fewer sets raise no load. */
  readonly mostReps: number | undefined;
  readonly holdS: number | undefined;
  readonly provenance: {
    readonly sets: readonly ProvenanceStep[];
    readonly reps?: readonly ProvenanceStep[];
    readonly hold_s?: readonly ProvenanceStep[];
  };
}

/**
 * Sets, repetitions of each set and hold.
 *
 * A target stated later than repetitions (or hold) gives them: 12 RM means 12 repetitions, 70 % of
 * most reps what that is. Stated at the same time, the lower of the two holds; a later statement
 * wins over an earlier target. A first week back after a break has the first of the sets. Faults: wrong-value, load-not-makeable where less than one repetition is left.
 */
export function amountsOf(context: DoseContext, work: Work): Amounts {
  const { dose, stated } = work.stated;
  const hold = holdOf(context, work);
  const stating = repsOf(context, work);
  const allReps = stating.reps && fitToSets(stating.reps, dose.sets);
  reportAboveMaximum(context, work, allReps);
  const eased = easedSets(context, work);
  const sets = eased?.sets ?? dose.sets;
  const reps = allReps?.slice(0, sets);
  const follows = stated.sets !== undefined && stated.sets === stated.reps;
  return {
    sets,
    usualSets: eased && dose.sets,
    reps,
    mostReps: allReps && Math.max(...allReps.map(({ high }) => high)),
    holdS: hold.holdS,
    provenance: {
      sets: [
        follows
          ? statedStep(
              stated.reps,
              `${dose.sets} sets, one for each number of repetitions`,
              dose.sets,
            )
          : statedStep(stated.sets, saySets(dose.sets), dose.sets),
        ...(eased ? [eased.step] : []),
      ],
      ...(reps && { reps: stating.provenance }),
      ...(hold.holdS !== undefined && { hold_s: hold.provenance }),
    },
  };
}

const saySets = (sets: number): string => counted(sets, "set");

/** The clinic's share of the sets in a first week back, and why; undefined where they stay as they are. */
function easedSets(
  { program }: DoseContext,
  { week, stated }: Work,
): { readonly sets: number; readonly step: ProvenanceStep } | undefined {
  if (!program.easedWeeks.includes(week)) return undefined;
  const share = program.clinic.week.ease_after_away;
  const usual = stated.dose.sets;
  const sets = Math.max(1, Math.floor(usual * share + 1e-9));
  if (sets >= usual) return undefined;
  const says = `A first week back after more than a week away: ${showPercent(share)} of ${saySets(usual)}, rounded down, one at least: ${saySets(sets)}.`;
  const source = "the clinic's week: ease_after_away (common practice)";
  return { sets, step: { step: "limit", says, value: sets, source } };
}

function holdOf(context: DoseContext, work: Work) {
  const { dose, stated } = work.stated;
  const says = statedStep(stated.hold, `A hold of ${show(dose.hold ?? 0)} s`, dose.hold, "s");
  const aimed = holdTarget(context, work);
  if (aimed === undefined) return { holdS: dose.hold, provenance: [says] };
  if (aimed.value < 1) reportNothingLeft(context, work, "a hold of one second");
  const after = compareTarget(work, "hold");
  if (dose.hold === undefined || after === "target")
    return { holdS: Math.max(1, aimed.value), provenance: aimed.provenance };
  if (after === "stated" || dose.hold <= aimed.value) {
    return { holdS: dose.hold, provenance: [...aimed.provenance, says] };
  }
  return { holdS: Math.max(1, aimed.value), provenance: [says, ...aimed.provenance] };
}

function repsOf(
  context: DoseContext,
  work: Work,
): { reps: Repetitions | undefined; provenance: ProvenanceStep[] } {
  const { dose, stated } = work.stated;
  const says = statedStep(
    stated.reps,
    counted(sayReps(dose.reps ?? []), "repetition"),
    dose.reps?.[0]?.high,
  );
  if (
    dose.target?.kind === "rm" &&
    (dose.reps === undefined || rankOf(work.stated, "reps") < rankOf(work.stated, "target"))
  ) {
    const { time, distance, hold, turns } = dose;
    if (dose.reps === undefined && (time ?? distance ?? hold ?? turns) !== undefined) {
      return { reps: undefined, provenance: [] };
    }
    const { reps } = dose.target;
    const step = statedStep(
      stated.target,
      `A target of ${reps} RM means ${counted(reps, "repetition")}`,
      reps,
    );
    return { reps: [{ low: reps, high: reps }], provenance: [step] };
  }
  const aimed = repsTarget(context, work);
  if (aimed === undefined) return { reps: dose.reps, provenance: [says] };
  return capReps(context, work, aimed, says);
}

function capReps(context: DoseContext, work: Work, aimed: AmountTarget, says: ProvenanceStep) {
  const { reps } = work.stated.dose;
  if (aimed.value < 1) reportNothingLeft(context, work, "one repetition");
  const most = Math.max(1, aimed.value);
  const after = compareTarget(work, "reps");
  if (reps === undefined || after === "target") {
    return { reps: [{ low: most, high: most }], provenance: [...aimed.provenance] };
  }
  if (after === "stated") return { reps, provenance: [...aimed.provenance, says] };
  const capped = reps.map(({ low, high }) => ({
    low: Math.min(low, most),
    high: Math.min(high, most),
  }));
  return { reps: capped, provenance: [says, ...aimed.provenance] };
}

/** Which of the two was stated later; on a par, neither. */
function compareTarget(work: Work, field: "reps" | "hold"): "target" | "stated" | "par" {
  const difference = rankOf(work.stated, "target") - rankOf(work.stated, field);
  return difference > 0 ? "target" : difference < 0 ? "stated" : "par";
}

/** One entry a set: the only one in each, or the stated list, whose length is the number of sets. */
function fitToSets(reps: Repetitions, sets: number): Repetitions {
  const last = reps.at(-1) ?? { low: 1, high: 1 };
  return Array.from({ length: sets }, (_, index) => reps[index] ?? last);
}

/** Repetitions in words: "12", "6–8", "12, 10, 8". */
export function sayReps(reps: Repetitions): string {
  const parts = reps.map(({ low, high }) => (low === high ? `${low}` : `${low}–${high}`));
  return new Set(parts).size === 1 ? (parts[0] ?? "") : parts.join(", ");
}

function reportAboveMaximum(context: DoseContext, work: Work, reps: Repetitions | undefined): void {
  const { target } = work.stated.dose;
  const most = Math.max(0, ...(reps ?? []).map(({ high }) => high));
  if (target?.kind !== "rm" || most <= target.reps) return;
  context.findings.add(
    {
      code: "wrong-value",
      cause: `${work.exercise.card.card.id} above maximum`,
      level: "warning",
      place: () => work.stated.stated.target?.place ?? work.exercise.place,
      say: (weeks) =>
        `${sayCard(work.exercise.card)} asks for ${counted(most, "repetition")} with a load that allows ${sayTarget(target, context)} (${weeks}).`,
      hint: "Lower the repetitions, or aim at a lighter load.",
    },
    work.week,
  );
}

function reportNothingLeft(context: DoseContext, work: Work, what: string): void {
  const { target } = work.stated.dose;
  const easier = context.easierThan(work.exercise.card);
  context.findings.add(
    {
      code: "load-not-makeable",
      cause: `${work.exercise.card.card.id} amount`,
      level: "error",
      place: () => work.stated.stated.target?.place ?? work.exercise.place,
      say: (weeks) =>
        `${target ? sayTarget(target, context) : "The target"} of ${sayCard(work.exercise.card)} is less than ${what} (${weeks}).`,
      hint: easier
        ? `Swap it for the easier ${sayCard(easier)}.`
        : "Swap it for an easier exercise; its card names none.",
    },
    work.week,
  );
}
