/** The next load of an exercise whose target has been beaten: 2 to 10 % more, as the equipment allows. */

import { sayMass } from "../units/mass.ts";
import { atMost, floorTo, showPercent } from "../units/rounding.ts";
import type { DoseContext, Work } from "./context.ts";
import { atOrUnder, type Makes, nextAbove } from "./equipment.ts";
import type { BoutLoad, ProvenanceStep } from "./types.ts";

/** Ratamess 2009, Med Sci Sports Exerc 41:687; the two sessions are from memory. */
const ACSM_2009 = {
  leastStep: 0.02,
  mostStep: 0.1,
  repsOver: 1,
  sessions: 2,
  source: "Ratamess 2009, Med Sci Sports Exerc 41:687",
} as const;

export interface NextLoad {
  readonly kg: number;
  readonly action: "more-load" | "more-repetitions" | "same";
  readonly provenance: readonly ProvenanceStep[];
}

/**
 * The load for the sessions to come. `kg`: the load added now; `bodyKg`: the body's share that is
 * moved with it; `over`: repetitions over the target, session by session, the latest last.
 * Where the target was beaten by one repetition or more in the last two sessions: the largest load
 * that is at most `mostStep` (2 to 10 %) more load moved. Where the equipment's next load is further
 * away, repetitions grow first and the load stays. Never less than now, never rounded up.
 * `say`: a mass in the clinic's unit.
 */
export function nextLoad(
  now: { readonly kg: number; readonly bodyKg: number },
  over: readonly number[],
  makes: readonly Makes[],
  mostStep: number = ACSM_2009.mostStep,
  say: (kg: number) => string = (kg) => sayMass(kg, "kg"),
): NextLoad {
  const { leastStep, repsOver, sessions, source } = ACSM_2009;
  const last = over.slice(-sessions);
  if (last.length < sessions || last.some((reps) => !(reps >= repsOver))) {
    const says = `The target has not been beaten in ${sessions} sessions running: the load stays.`;
    return { kg: now.kg, action: "same", provenance: [{ step: "limit", says, source }] };
  }
  const step = Math.min(ACSM_2009.mostStep, Math.max(leastStep, mostStep));
  const aim = now.kg + (now.kg + now.bodyKg) * step;
  const aimed: ProvenanceStep = {
    step: "target",
    says: `Where each set is beaten by a repetition or more in ${sessions} sessions running, up to ${showPercent(step)} more load moved: ${say(floorTo(aim, 0.01))} to take instead of ${say(now.kg)}.`,
    value: floorTo(aim, 0.01),
    unit: "kg",
    source,
  };
  const made = atOrUnder(makes, aim);
  if (made && !atMost(made.kg, now.kg)) {
    const says = `The client's ${made.have} makes ${say(made.kg)} at or under that: next load ${say(made.kg)}.`;
    const steps: ProvenanceStep[] = [
      aimed,
      { step: "equipment", says, value: made.kg, unit: "kg" },
    ];
    return { kg: made.kg, action: "more-load", provenance: steps };
  }
  const next = nextAbove(makes, now.kg);
  const says = next
    ? `The next load there is, ${say(next.kg)}, is further away: repetitions grow first, with ${say(now.kg)}.`
    : `The equipment makes no more: repetitions grow instead, with ${say(now.kg)}.`;
  return {
    kg: now.kg,
    action: "more-repetitions",
    provenance: [aimed, { step: "equipment", says, value: now.kg, unit: "kg" }],
  };
}

/**
 * The next load of a dose by the rule above, should its target be beaten: what a clinician changes
 * to at a review. With the piece of equipment in use, where it makes one. Undefined where
 * there is no load to change.
 */
export function nextLoadIfBeaten(
  context: DoseContext,
  work: Work,
  load: BoutLoad,
): readonly ProvenanceStep[] | undefined {
  const { kg, systemKg, equipment } = load;
  if (kg === undefined || (kg === 0 && equipment === undefined && load.nextKg === undefined)) {
    return undefined;
  }
  const all = context.makesFor(work.exercise.card);
  const beaten = Array<number>(ACSM_2009.sessions).fill(ACSM_2009.repsOver);
  const step = context.program.clinic.limits.load_step;
  const now = { kg, bodyKg: systemKg === undefined ? 0 : Math.max(0, systemKg - kg) };
  const by = (makes: readonly Makes[]) =>
    nextLoad(now, beaten, makes, step, (mass) => context.mass(mass));
  const own = by(all.filter(({ have }) => have === equipment));
  return (own.action === "more-load" ? own : by(all)).provenance;
}
