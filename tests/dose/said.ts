/** One exercise in one week, dosed, with how each of its numbers came about and what is told, line by line. */
import { doseProgram } from "../../src/dose/program.ts";
import type { ProvenanceNumber } from "../../src/dose/types.ts";
import { card, type ExerciseInput, library, program } from "./fixtures.ts";

export type Fields = Record<string, unknown>;

const easier = card({ id: "easier", demand: 1, load: { kind: "none" } });
export const press = card({
  id: "press",
  side: "both",
  load: { kind: "weight", with: ["backpack", "dumbbell"] },
  easier: [{ to: "easier" }],
});
export const raise = card({
  id: "raise",
  load: { kind: "body", body_share: 0.9, add: "weight", with: ["backpack"] },
  capacity_from: ["two-legs", "press"],
});
const twoLegs = card({
  id: "two-legs",
  side: "both",
  load: { kind: "body", body_share: 0.5, add: "weight", with: ["backpack"] },
});
export const bodyOnly = card({ id: "body-only", load: { kind: "body", body_share: 0.9 } });
export const pull = card({ id: "pull", side: "both", load: { kind: "band", with: ["band"] } });
export const stretchy = card({
  id: "stretchy",
  load: { kind: "body", body_share: 0.2, add: "band", with: ["band"] },
});
export const held = card({
  id: "held",
  load: { kind: "hold", body_share: 0.5, add: "weight", with: ["backpack"] },
  dose: { sets: 4, hold: "30 s", per_week: 3 },
});
export const run = card({
  id: "run",
  side: "none",
  load: { kind: "speed" },
  dose: { sets: 4, distance: "50 m", per_week: 2 },
});
export const free = card({
  id: "free",
  load: { kind: "none" },
  dose: { sets: 3, reps: 10, per_week: 3 },
});
/** A thing to be lifted on top of a body of which no share is moved. */
export const carried = card({
  id: "carried",
  load: { kind: "none", add: "weight", with: ["backpack"] },
});
const all = library(
  ...[easier, press, raise, twoLegs, bodyOnly, pull, stretchy, held, run, free, carried],
);

export const kilos = { have: "backpack", from: "1 kg", up_to: "60 kg", steps: "1 kg" };
export const bands = (...levels: number[]) => ({ equipment: [{ have: "band", levels }] });
export const repsOf = (of: string, side: string, load: string, reps: number) => ({
  test: "repetitions",
  card: of,
  side,
  load,
  reps,
  on: "2026-11-20",
});
export const holdOf = (side: string, time: string, load = "0 kg") => ({
  test: "hold",
  card: "held",
  side,
  time,
  load,
  on: "2026-11-20",
});
/** 30 kg ten times, which is a 1RM of 40 kg by Epley, and a backpack kilogram by kilogram. */
export const thirty = { measures: [repsOf("press", "both", "30 kg", 10)], equipment: [kilos] };

/** An exercise as the protocol doses it, on the left or on both sides together as its card is done. */
export function dosed(of: typeof press, fields: Fields, more: Partial<ExerciseInput> = {}) {
  const side = of.card.side === "each" ? "left" : of.card.side;
  const says = { dose: { sets: 3, per_week: 3, ...fields } };
  return { card: of, side, says, ...more } as ExerciseInput;
}

/** `easedWeeks`: weeks that are first ones back after a break. */
export function said(
  exercise: ExerciseInput,
  plan: Fields = {},
  clinic: Fields = {},
  easedWeeks: readonly number[] = [],
) {
  const input = { ...program({ exercises: [exercise], plan, clinic }), easedWeeks };
  const { value, faults } = doseProgram(input, all);
  const bout = value.weeks[0]?.bouts[0];
  if (!bout) throw new Error("no bout");
  return {
    bout,
    load: bout.load,
    lines: (number: ProvenanceNumber) =>
      (bout.provenance[number] ?? []).map(({ step, says, value: now, unit, source }) => {
        const result = now === undefined ? "" : ` [${now}${unit ? ` ${unit}` : ""}]`;
        return `${step}: ${says}${result}${source ? ` (${source})` : ""}`;
      }),
    told: faults.map(
      ({ level, code, place, message, hint }) =>
        `${level} ${code} ${place?.file}:${place?.line} ${message} → ${hint}`,
    ),
  };
}
