/** How far a load may rise above what the client has lifted lately. */

import { counted } from "../units/counted.ts";
import { atMost, showPercent } from "../units/rounding.ts";
import type { DoseContext, Work } from "./context.ts";
import { atOrUnder, type Made, type Makes, nextAbove } from "./equipment.ts";
import { rmShare } from "./rm-tables.ts";
import type { Bout, ProvenanceStep } from "./types.ts";

/**
 * A load of so many weeks back still counts: strength is kept for about four weeks without training
 * (Mujika 2000, Sports Med 30:79, from memory), so a week that is light on purpose is no new start.
 */
const WEEKS_KEPT = 4;

/** The load of an earlier week that a rise is measured from. */
export interface StepBase {
  /** Week of the course. */
  readonly week: number;
  readonly kg: number;
  /** The most repetitions of its sets, and of those now, where that makes a difference. */
  readonly reps: { readonly then: number; readonly now: number } | undefined;
  /** The load moved that is as hard as it at this week's repetitions; the body's share in it. */
  readonly movedKg: number;
  readonly bodyKg: number;
}

/**
 * The heaviest load of the card in the last four weeks, or where it was not done in them in the last
 * week that has it. Heaviest at like repetitions: 40 kg for 15 is as hard as 43 kg for 12, by the
 * clinic's formula. More repetitions than then do not lower it. Undefined for a card that is new.
 */
export function stepBase(
  context: DoseContext,
  { history, week }: Work,
  reps: number | undefined,
): StepBase | undefined {
  const bases = history.flatMap((bout) => baseOf(context, bout, reps) ?? []);
  const recent = bases.filter((base) => week - base.week <= WEEKS_KEPT);
  const last = bases.filter((base) => base.week === bases.at(-1)?.week);
  return (recent.length > 0 ? recent : last).reduce<StepBase | undefined>(
    (best, one) => (best && atMost(one.movedKg, best.movedKg) ? best : one),
    undefined,
  );
}

/**
 * As far as the clinic's limit lets a computed load rise above the base, or where the equipment is
 * too coarse for that by one step. The limit is for progress at like repetitions (2 to 10 %:
 * Ratamess 2009, Med Sci Sports Exerc 41:687). A load stated in kilograms is taken as stated.
 */
export function withinStep(
  context: DoseContext,
  { stated }: Work,
  makes: readonly Makes[],
  made: Made,
  base: StepBase | undefined,
): Made {
  if (!base || stated.dose.target?.kind === "load") return made;
  const most = base.movedKg * (1 + context.program.clinic.limits.load_step) - base.bodyKg;
  if (atMost(made.kg, most)) return made;
  const within = atOrUnder(makes, most);
  if (within && !atMost(within.kg, base.kg)) return within;
  return nextAbove(makes, base.kg) ?? made;
}

/** How much more a load is than the base at like repetitions, as a share. */
export function riseAbove(base: StepBase, kg: number): number {
  return (kg + base.bodyKg) / base.movedKg - 1;
}

/** The step of a provenance that says what held a load back, and from which week. */
export function limitStep(context: DoseContext, base: StepBase, kg: number): ProvenanceStep {
  const limit = showPercent(context.program.clinic.limits.load_step);
  const mass = (value: number) => context.mass(value);
  const like = base.reps
    ? `, as hard for ${counted(base.reps.then, "repetition")} as ${mass(base.movedKg - base.bodyKg)} for ${base.reps.now}`
    : "";
  return {
    step: "limit",
    says: `Week ${base.week} had ${mass(base.kg)}${like}; the clinic lets the load moved grow by at most ${limit} from that, or by one step of the equipment: ${mass(kg)}.`,
    value: kg,
    unit: "kg",
    source: "the clinic's limits: load_step",
  };
}

function baseOf(context: DoseContext, bout: Bout, now: number | undefined): StepBase | undefined {
  const { kg: known, targetKg, systemKg } = bout.load;
  // A week whose target could not be made counts as 0; one without a target says nothing.
  const kg = known ?? (targetKg === undefined ? undefined : 0);
  if (kg === undefined) return undefined;
  const moved = systemKg ?? kg;
  const then = bout.reps && Math.max(...bout.reps.map(({ high }) => high));
  const factor = likeFactor(context, then, now);
  const changed = factor > 1 && then !== undefined && now !== undefined;
  return {
    week: bout.week,
    kg,
    reps: changed ? { then, now } : undefined,
    movedKg: moved * factor,
    bodyKg: moved - kg,
  };
}

/** How much more can be moved for the repetitions now than for those then; never less than 1. */
function likeFactor(
  context: DoseContext,
  then: number | undefined,
  now: number | undefined,
): number {
  if (then === undefined || now === undefined) return 1;
  const { rm_to_load: method, one_rm: formula } = context.program.clinic.dosing;
  const [before, after] = [rmShare(method, formula, then), rmShare(method, formula, now)];
  return before && after ? Math.max(1, after.share / before.share) : 1;
}
