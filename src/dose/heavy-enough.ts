/** Whether a weight left to feel can feel as hard as asked: what the client's measures say of the heaviest they have. */
import { counted } from "../units/counted.ts";
import { atMost, floorTo, show } from "../units/rounding.ts";
import { unlessAccepted } from "./accepted.ts";
import { bodyPart, oneRm } from "./capacity.ts";
import { type DoseContext, sayCard, type Work } from "./context.ts";
import { doseRemedies } from "./dose-remedies.ts";
import { atOrUnder } from "./equipment.ts";
import { isMeasured } from "./measures.ts";
import { oneRmFactor } from "./one-rm.ts";
import type { BoutLoad } from "./types.ts";

/**
 * From this multiple of the heaviest load on, the one that is asked for is far away. Common practice: as
 * much as formulas for many repetitions, and feeling far from the last one, differ by.
 */
const FAR = 1.5;

/**
 * load-light: by the client's own test the heaviest that they have is far too light for the effort that
 * is asked. An error, unless the plan accepts it. Effort is 10 less the repetitions in reserve (Zourdos
 * et al. 2016, J Strength Cond Res 30:267). `mostReps`: the most repetitions of a set.
 */
export function checkHeavyEnough(
  context: DoseContext,
  work: Work,
  { kind, kg }: BoutLoad,
  mostReps: number | undefined,
): void {
  const { effort, target } = work.stated.dose;
  const { card } = work.exercise;
  if (kind !== "weight" || kg !== undefined || target !== undefined) return;
  if (effort === undefined || mostReps === undefined) return;
  const heaviest = atOrUnder(context.makesFor(card), Number.MAX_SAFE_INTEGER);
  const body = bodyPart(context, card);
  if (!heaviest || body === undefined) return;
  if (!isMeasured(context, work.exercise, "repetitions")) return;
  const max = oneRm(context, work, { what: "what the client can do", level: "warning" });
  const factor = oneRmFactor(context.program.clinic.dosing.one_rm, mostReps + 10 - effort);
  if (max === undefined || factor === undefined) return;
  const wanted = max.value / factor;
  if (!atMost((heaviest.kg + body) * FAR, wanted)) return;
  const wantedKg = floorTo(wanted - body, 0.1);
  report(context, work, {
    says: `At an effort of ${show(effort)} a set of ${sayCard(card)} asks for ${counted(mostReps, "time")} with about ${context.mass(wantedKg)} by the client's own test; the heaviest weight the client has is ${context.mass(heaviest.kg)}`,
    heaviestKg: heaviest.kg,
    weight: wanted / (heaviest.kg + body),
  });
}

interface Light {
  readonly says: string;
  readonly heaviestKg: number;
  readonly weight: number;
}

function report(context: DoseContext, work: Work, { says, heaviestKg, weight }: Light): void {
  const { card } = work.exercise;
  const { level, because } = unlessAccepted(context, "load-light", card.card.id);
  context.findings.add(
    {
      code: "load-light",
      cause: card.card.id,
      level,
      weight,
      place: () => context.program.plan.source.at(["equipment"]),
      say: (weeks) => `${says} (${weeks}).${because}`,
      hint: "Have a heavier weight at hand, let repetitions grow or the tempo be slower in its place (redose), or choose a harder exercise.",
      remedies: doseRemedies(context, work, {
        heaviestKg,
        instead: context.harderThan(card),
        accept: level === "error" ? "load-light" : undefined,
      }),
    },
    work.week,
  );
}
