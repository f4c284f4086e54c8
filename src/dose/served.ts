/** Whether a load left to feel, or the body alone, can serve a dose: what the client's measures say of what they have. */
import { counted } from "../units/counted.ts";
import { atMost, floorTo, showTime } from "../units/rounding.ts";
import { unlessAccepted } from "./accepted.ts";
import { bestHold, bodyPart, oneRm } from "./capacity.ts";
import { type DoseContext, sayCard, type Work } from "./context.ts";
import { doseRemedies } from "./dose-remedies.ts";
import { nextAbove } from "./equipment.ts";
import { isMeasured } from "./measures.ts";
import { FORMULAS, oneRmFactor } from "./one-rm.ts";
import type { BoutLoad } from "./types.ts";

/** What a set asks for. */
interface Asked {
  /** The most repetitions that a set asks for at least: of 8 to 12 it is 8. */
  readonly leastReps: number | undefined;
  readonly holdS: number | undefined;
}

/**
 * dose-beyond-measure: the lightest that the client can take is, by their own test, too heavy for the
 * repetitions or the hold of a set. An error where a weight has to be taken, unless the plan accepts
 * it; a warning where the body alone is the load, since a set can stop sooner.
 */
export function checkServed(context: DoseContext, work: Work, load: BoutLoad, asked: Asked): void {
  const lightest = lightestOf(context, work, load);
  if (lightest === undefined) return;
  const { kg, felt } = lightest;
  const body = bodyPart(context, work.exercise.card);
  if (body === undefined) return;
  const { leastReps, holdS } = asked;
  if (holdS !== undefined) {
    const held = holdWith(context, work, kg + body);
    if (held !== undefined && !atMost(holdS, held.seconds)) {
      report(context, work, { kg, felt, can: showTime(held.seconds), wants: showTime(holdS) });
    }
    return;
  }
  if (leastReps === undefined) return;
  const most = repetitionsWith(context, work, kg + body);
  if (most === undefined || most.reps >= leastReps) return;
  const fitting = floorTo(
    most.oneRm / (oneRmFactor(formulaOf(context), leastReps) ?? 1) - body,
    0.1,
  );
  report(context, work, {
    kg,
    felt,
    can: most.reps === 0 ? "not even once" : `${most.reps} ${most.reps === 1 ? "time" : "times"}`,
    wants: counted(leastReps, "time"),
    ...(most.reps > 0 && { reps: most.reps }),
    ...(fitting > 0 && { fittingKg: fitting }),
  });
}

/** The lightest load there is where the load is left to feel, or none where the body alone is it. */
function lightestOf(context: DoseContext, work: Work, load: BoutLoad) {
  if (work.stated.dose.target !== undefined) return undefined;
  if (load.kind === "weight" && load.kg === undefined && load.addedTo === undefined) {
    const least = nextAbove(context.makesFor(work.exercise.card), 0);
    return least && { kg: least.kg, felt: true };
  }
  return load.kind === "body" && load.kg === undefined ? { kg: 0, felt: false } : undefined;
}

const formulaOf = ({ program }: DoseContext) => program.clinic.dosing.one_rm;

/** How often a load can be moved, by the measured 1RM and the clinic's formula, up to its range. */
export function repetitionsWith(
  context: DoseContext,
  work: Work,
  systemKg: number,
): { readonly reps: number; readonly oneRm: number } | undefined {
  if (!isMeasured(context, work.exercise, "repetitions") || !(systemKg > 0)) return undefined;
  const max = oneRm(context, work, { what: "what the client can do", level: "warning" });
  if (max === undefined) return undefined;
  const formula = formulaOf(context);
  let reps = 0;
  while (reps < MOST_REPS) {
    const factor = oneRmFactor(formula, reps + 1);
    if (factor === undefined || !atMost(systemKg, max.value / factor)) break;
    reps += 1;
  }
  // beyond the formula's range it is not known how many more, and nothing is said
  return reps > FORMULAS[formula].most ? undefined : { reps, oneRm: max.value };
}

/** No formula has a value for more, and no dose asks for it. */
const MOST_REPS = 100;

/** The best hold, where it was taken with no more than this load. */
function holdWith(context: DoseContext, work: Work, systemKg: number) {
  if (!isMeasured(context, work.exercise, "hold")) return undefined;
  const best = bestHold(context, work, { what: "what the client can do", level: "warning" });
  const tested = best?.systemKg;
  return best && tested !== undefined && atMost(tested, systemKg)
    ? { seconds: best.value }
    : undefined;
}

interface Beyond {
  readonly kg: number;
  readonly felt: boolean;
  readonly can: string;
  readonly wants: string;
  /** Repetitions that would do, and the weight with which the dose would. */
  readonly reps?: number;
  readonly fittingKg?: number;
}

function report(
  context: DoseContext,
  work: Work,
  { kg, felt, can, wants, reps, fittingKg }: Beyond,
): void {
  const { card } = work.exercise;
  const { level, because } = unlessAccepted(context, "dose-beyond-measure", card.card.id);
  const what = felt
    ? `the lightest weight the client has, ${context.mass(kg)},`
    : "the body's own weight";
  const hint =
    felt && fittingKg !== undefined
      ? `Have a weight of about ${context.mass(fittingKg)} at hand, or change the dose or the exercise.`
      : "Change the dose or the exercise.";
  context.findings.add(
    {
      code: "dose-beyond-measure",
      cause: card.card.id,
      level: felt ? level : "warning",
      place: () => (felt ? context.program.plan.source.at(["equipment"]) : work.exercise.place),
      say: (weeks) =>
        `A set of ${sayCard(card)} asks for ${wants}, but by the client's own test ${what} can be done ${can} (${weeks}).${because}`,
      hint,
      remedies: doseRemedies(context, work, {
        reps,
        instead: context.easierThan(card),
        accept: felt && level === "error" ? "dose-beyond-measure" : undefined,
      }),
    },
    work.week,
  );
}
