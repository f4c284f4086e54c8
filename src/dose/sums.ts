/** Sums of a bout and of a course: repetitions, kilograms, seconds under tension, time on the clock. */

import type { Clinic } from "../clinic/schema.ts";
import type { Repetitions } from "../prescription/fields.ts";
import { type SetNumbers, shapeOf } from "../prescription/shape.ts";
import { counted } from "../units/counted.ts";
import { type MassUnit, sayMass } from "../units/mass.ts";
import type { Tempo } from "../units/quantities.ts";
import { floorTo, show, showTime, tidy } from "../units/rounding.ts";
import { sayReps } from "./amounts.ts";
import {
  boutClock,
  PLAIN_REPETITION_S,
  PLAIN_REPETITION_SOURCE,
  repetitionSeconds,
  setSeconds,
  setTension,
  workOfSets,
} from "./time.ts";
import type { BoutSums, ProvenanceStep, Range } from "./types.ts";

/** What the sums of a bout depend on; times in seconds, lengths in metres, speed in metres a second. */
export interface BoutNumbers extends SetNumbers {
  readonly sets: number;
  readonly restS?: number | undefined;
  readonly restRepsS?: number | undefined;
  readonly sides: 1 | 2;
  readonly kg?: number | undefined;
  readonly speed?: number | undefined;
}

type Dosing = Pick<Clinic["dosing"], "fast_part" | "last_rest">;

/** The sums of one bout, each with the step that says how it was added up; masses said in `unit`. */
export function boutSums(bout: BoutNumbers, dosing: Dosing, unit: MassUnit = "kg"): BoutSums {
  const sets = workOfSets(bout, bout.sets, bout.speed);
  const repsTotal = bout.reps && totalOf(bout.reps, bout.sets);
  const kgTotal =
    bout.kg === undefined || !repsTotal ? undefined : floorTo(repsTotal.high * bout.kg, 0.1);
  const tensions = sets.map((set) => setTension(set, dosing.fast_part));
  const tensionS = tensions.includes(undefined)
    ? undefined
    : tidy(tensions.reduce<number>((sum, each) => sum + (each ?? 0), 0));
  const workS = tidy(sets.reduce((sum, set) => sum + setSeconds(set, dosing.fast_part), 0));
  const rests = { restS: bout.restS ?? 0, restRepsS: bout.restRepsS ?? 0 };
  const clockS = boutClock({ sets, sides: bout.sides, ...rests }, dosing);
  const minutes = Math.max(1, Math.ceil(clockS / 60 - 1e-9));
  const side = bout.sides === 2 ? " on each side" : "";
  return {
    repsTotal,
    kgTotal,
    tensionS,
    workS,
    clockS,
    minutes,
    provenance: {
      ...(repsTotal && { reps_total: [sum(sayTotal(bout, repsTotal, side), repsTotal.high)] }),
      ...(kgTotal !== undefined && {
        kg_total: [
          sum(
            `${counted(repsTotal?.high ?? 0, "repetition")} × ${sayMass(bout.kg ?? 0, unit)}${side} make ${sayMass((repsTotal?.high ?? 0) * (bout.kg ?? 0), unit)}, without the body's share.`,
            kgTotal,
            "kg",
          ),
        ],
      }),
      ...(tensionS !== undefined && {
        tension_s: [sum(sayTension(bout, repsTotal, dosing, side), tensionS, "s")],
      }),
      clock_s: clockSteps(bout, clockS, dosing),
      minutes: [
        {
          step: "rounding",
          says: `${showTime(clockS)}, rounded up to whole minutes.`,
          value: minutes,
          unit: "min",
        },
      ],
    },
  };
}

/** Repetitions of all sets on one side; where there are fewer entries than sets the last one counts on. */
export function totalOf(reps: Repetitions, sets: number): Range {
  let low = 0;
  let high = 0;
  for (let set = 0; set < sets; set += 1) {
    const each = reps[set] ?? reps.at(-1);
    low += each?.low ?? 0;
    high += each?.high ?? 0;
  }
  return { low, high };
}

function sayTotal(bout: BoutNumbers, total: Range, side: string): string {
  const range = total.low === total.high ? `${total.high}` : `${total.low} to ${total.high}`;
  return `${counted(bout.sets, "set")} of ${sayReps(bout.reps ?? [])} ${bout.sets === 1 ? "makes" : "make"} ${counted(range, "repetition")}${side}.`;
}

function sayTension(
  bout: BoutNumbers,
  reps: Range | undefined,
  dosing: Dosing,
  side: string,
): string {
  const shape = shapeOf(bout);
  if (!shape) return "";
  switch (shape.kind) {
    case "time":
      return `${counted(bout.sets, "set")} of ${show(shape.timeS)} s${side}.`;
    case "turns": {
      const { work, times } = shape.turns;
      return `${counted(bout.sets, "set")} of ${counted(times, "turn")} with ${show(work)} s of work${side}.`;
    }
    case "distance":
      return "";
    case "holds":
      if (!reps) return `${bout.sets} holds of ${show(shape.holdS)} s${side}.`;
      return sayRepetitions(reps, [...sayTempo(shape.tempo), `${show(shape.holdS)} s of hold`]);
    case "repetitions":
      return sayRepetitions(reps, sayTempo(shape.tempo));
  }

  function sayTempo(tempo: Tempo | undefined): string[] {
    return tempo ? [`${show(repetitionSeconds(tempo, dosing.fast_part))} s of tempo`] : [];
  }

  function sayRepetitions(total: Range | undefined, parts: readonly string[]): string {
    const fast = bout.tempo && Object.values(bout.tempo).includes("X");
    return `${counted(total?.high ?? 0, "repetition")} × ${parts.join(" and ")}${side}${fast ? `, X counting ${show(dosing.fast_part)} s` : ""}.`;
  }
}

function clockSteps(bout: BoutNumbers, clockS: number, dosing: Dosing): ProvenanceStep[] {
  const rest = bout.restS ? `rests of ${showTime(bout.restS)}` : "no rests";
  const last = bout.restS ? `, the last ${dosing.last_rest ? "counted" : "not counted"}` : "";
  const turn = bout.sides === 2 ? ", both sides in turn" : "";
  const plain = shapeOf(bout)?.kind === "repetitions" && !bout.tempo;
  return [
    ...(plain
      ? [
          {
            step: "limit" as const,
            says: `No tempo is stated: a repetition counts ${PLAIN_REPETITION_S} s.`,
            value: PLAIN_REPETITION_S,
            unit: "s",
            source: PLAIN_REPETITION_SOURCE,
          },
        ]
      : []),
    sum(
      `${counted(bout.sets, "set")}${turn}, with ${rest}${last}: ${showTime(clockS)}.`,
      clockS,
      "s",
    ),
  ];
}

function sum(says: string, value: number, unit?: string): ProvenanceStep {
  return { step: "sum", says, value, ...(unit && { unit }) };
}
