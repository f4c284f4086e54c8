/** Faults of a load: one that cannot be made, one that does not fit the exercise, one that is too coarse. */

import type { Place } from "../faults/fault.ts";
import { showPercent } from "../units/rounding.ts";
import { unlessAccepted } from "./accepted.ts";
import { type DoseContext, sayCard, type Work } from "./context.ts";
import { doseRemedies } from "./dose-remedies.ts";
import { sayList } from "./findings.ts";
import { riseAbove, type StepBase } from "./load-step.ts";
import { repetitionsWith } from "./served.ts";
import { sayTarget } from "./target.ts";
import type { BoutLoad } from "./types.ts";

/**
 * load-not-makeable: what there is is heavier than the target; the nearest easier card is offered.
 * `what` is empty where the client has nothing that makes a load.
 */
export function reportTooHeavy(
  context: DoseContext,
  work: Work,
  what: string,
  targetKg?: number,
): void {
  const { card } = work.exercise;
  const { target } = work.stated.dose;
  const inMass = targetKg === undefined ? "" : ` (${context.mass(Math.max(0, targetKg))})`;
  const aim = `${target ? sayTarget(target, context) : "the target"}${inMass}`;
  const silent = what.includes("gives no loads");
  const easier = context.easierThan(card);
  const swap = easier
    ? `Swap it for the easier ${sayCard(easier)}.`
    : "Swap it for an easier exercise; its card names none.";
  context.findings.add(
    {
      code: "load-not-makeable",
      cause: `${work.exercise.card.card.id} ${silent || what === "" ? "nothing" : "heavy"}`,
      level: "error",
      place: () => (targetKg === undefined ? work.exercise.place : equipmentPlace(context)),
      say: (weeks) => {
        if (what === "") {
          return `The client has nothing that makes a load for ${sayCard(card)}; ${aim} is asked for (${weeks}).`;
        }
        if (silent)
          return `${sayCard(card)} needs a load of ${aim}, but nothing is known of ${what} (${weeks}).`;
        return `For ${sayCard(card)}, ${what} is more than ${aim} (${weeks}).`;
      },
      hint: silent ? `Give the loads it makes under equipment. Or: ${swap}` : swap,
    },
    work.week,
  );
}

/** load-not-makeable, as a warning: nothing is known that makes what would be added to the body. */
export function reportBodyAlone(context: DoseContext, work: Work, what: string): void {
  const { card } = work.exercise;
  context.findings.add(
    {
      code: "load-not-makeable",
      cause: `${work.exercise.card.card.id} body alone`,
      level: "warning",
      place: () => equipmentPlace(context),
      say: (weeks) =>
        `The plan gives nothing that makes a load for ${sayCard(card)}; the target adds ${what}, but the body's own weight alone is dosed (${weeks}).`,
      hint: `Give the loads that ${sayList(card.card.load.with)} can make under equipment; until then let repetitions grow first.`,
    },
    work.week,
  );
}

/** wrong-value, as a warning: a target of a kind that this exercise cannot have. */
export function reportMisfit(context: DoseContext, work: Work, why: string): void {
  const { target } = work.stated.dose;
  context.findings.add(
    {
      code: "wrong-value",
      cause: `${work.exercise.card.card.id} misfit ${target?.kind ?? ""}`,
      level: "warning",
      place: () => work.stated.stated.target?.place ?? work.exercise.place,
      say: (weeks) =>
        `The target ${target ? sayTarget(target, context) : ""} does not fit ${sayCard(work.exercise.card)}: ${why} (${weeks}).`,
      hint: "State another target, or sets and repetitions alone.",
    },
    work.week,
  );
}

/**
 * load-held: the clinic's limit for a step keeps the load more than one makeable step below the load
 * that the equipment makes for the target.
 */
export function reportHeld(
  context: DoseContext,
  work: Work,
  held: {
    readonly takenKg: number;
    readonly madeKg: number;
    readonly targetKg: number;
    readonly base: StepBase;
  },
): void {
  const { takenKg, madeKg, targetKg, base } = held;
  const limit = showPercent(context.program.clinic.limits.load_step);
  context.findings.add(
    {
      code: "load-held",
      cause: work.exercise.card.card.id,
      level: "warning",
      weight: madeKg - takenKg,
      place: () => work.stated.stated.target?.place ?? work.exercise.place,
      say: (weeks) =>
        `For ${sayCard(work.exercise.card)} the load stays below its target (${weeks}): in week ${work.week} it is ${context.mass(takenKg)}, where the target is ${context.mass(targetKg)} and the equipment makes ${context.mass(madeKg)}. The clinic lets the load moved grow by at most ${limit} at like repetitions, here from ${context.mass(base.kg)} in week ${base.week}.`,
      hint: "Where an early week is light on purpose, plan loads between it and the target, or state the load in kilograms; or set the clinic's limit load_step.",
    },
    work.week,
  );
}

/**
 * load-coarse: the step from the load lifted lately to this week's, or from this week's to the next
 * that the target already reaches towards, is larger than the clinic's limit. Repetitions grow first.
 */
export function reportCoarse(
  context: DoseContext,
  work: Work,
  load: BoutLoad,
  base: StepBase | undefined,
): void {
  const limit = context.program.clinic.limits.load_step;
  const { kg, nextKg, nextStep, targetKg, equipment } = load;
  if (kg === undefined) return;
  const rose = base && base.kg > 0 && kg > base.kg ? riseAbove(base, kg) : undefined;
  const waits = nextKg !== undefined && targetKg !== undefined && targetKg - kg >= 0.1;
  const [from, to, step, says] =
    rose !== undefined && rose > limit + 1e-9
      ? [base?.kg ?? 0, kg, rose, "the load rises from"]
      : waits && nextStep !== undefined && nextStep > limit + 1e-9
        ? [kg, nextKg, nextStep, "the equipment goes from"]
        : [0, 0, undefined, ""];
  if (step === undefined) return;
  const [less, more] = [context.mass(from), context.mass(to)];
  context.findings.add(
    {
      code: "load-coarse",
      cause: work.exercise.card.card.id,
      level: "warning",
      weight: step,
      place: () => equipmentPlace(context, equipment),
      say: (weeks) =>
        `For ${sayCard(work.exercise.card)} ${says} ${less} to ${more}, a step of ${showPercent(step)}; the clinic's limit is ${showPercent(limit)} (${weeks}).`,
      hint: `Let repetitions grow first: stay at ${less} until each set has two repetitions in hand, then take ${more}. Or add equipment with smaller steps.`,
    },
    work.week,
  );
}

/**
 * load-short: the heaviest that the equipment makes is less than the target by more than the clinic's
 * limit for a step. The client can do more than such a dose asks: an error, unless the plan accepts it.
 */
export function reportShort(context: DoseContext, work: Work, load: BoutLoad): void {
  const { kg, nextKg, targetKg, systemKg, equipment } = load;
  if (kg === undefined || targetKg === undefined || nextKg !== undefined || kg === 0) return;
  const lacking = (targetKg - kg) / (systemKg ?? kg);
  const { card } = work.exercise;
  const { id } = card.card;
  if (lacking <= context.program.clinic.limits.load_step + 1e-9) return;
  const { level, because } = unlessAccepted(context, "load-short", id);
  const reps = repetitionsWith(context, work, systemKg ?? kg)?.reps;
  const most = reps === undefined ? "" : `: with ${context.mass(kg)} about ${reps} are a full set`;
  context.findings.add(
    {
      code: "load-short",
      cause: id,
      level,
      weight: lacking,
      place: () => equipmentPlace(context, equipment),
      say: (weeks) =>
        `For ${sayCard(work.exercise.card)} the equipment ends at ${context.mass(kg)}; the target is ${context.mass(targetKg)} (${weeks}).${because}`,
      hint: `Have a heavier load at hand, or let repetitions grow or the tempo be slower in place of the load (redose)${most}.`,
      remedies: doseRemedies(context, work, {
        heaviestKg: kg,
        instead: context.harderThan(card),
        accept: level === "error" ? "load-short" : undefined,
      }),
    },
    work.week,
  );
}

/** Where the plan says what makes a load: the thing that is named, else all equipment. */
function equipmentPlace({ program: { plan } }: DoseContext, thing?: string): Place {
  const at = plan.value.equipment.findIndex(
    (one) => (typeof one === "string" ? one : one.have) === thing,
  );
  return plan.source.at(at < 0 ? ["equipment"] : ["equipment", at]);
}
