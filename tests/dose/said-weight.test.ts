/** How a weight came about, step by step as the clinician reads it; each number worked out by hand. */
import { describe, expect, test } from "vitest";
import type { ExerciseInput } from "./fixtures.ts";
import { dosed, type Fields, press, repsOf, said, thirty } from "./said.ts";

const chart = { dosing: { rm_to_load: "nsca-chart" } };
const forty = { ...thirty, measures: [repsOf("press", "both", "40 kg", 1)] };
type Row = readonly [
  name: string,
  exercise: ExerciseInput,
  plan: Fields,
  clinic: Fields,
  lines: readonly string[],
];
/** 30 kg ten times: 30 × (1 + 10/30) = 40 kg. */
const THIRTY = [
  "measure: 10 repetitions with 30 kg on both sides together, measured on 2026-11-20. [10 repetitions] (plan.md:23)",
  "formula: 1RM by Epley, w × (1 + r/30): 30 kg moved 10 times is a 1RM of 40 kg of load moved. [40 kg] (Epley 1985, Poundage Chart)",
];

describe("a weight", () => {
  test.each<Row>([
    [
      "a repetition maximum: 40 / (1 + 8/30)",
      dosed(press, { target: "8 RM" }),
      thirty,
      {},
      [
        ...THIRTY,
        "target: 8 RM is 78.9 % of 1RM, by the Epley formula, w × (1 + r/30), read backwards: 31.58 kg of load moved. [31.57 kg] (Epley 1985, Poundage Chart)",
        "equipment: The client's backpack makes 31 kg at or under the target; the next there is is 32 kg. [31 kg]",
        "rounding: Rounded down from 31.58 kg to 31 kg. [31 kg]",
      ],
    ],
    [
      "a share of 1RM, after a test of one repetition",
      dosed(press, { target: "70 % of 1RM", reps: 8 }),
      forty,
      {},
      [
        "measure: 1 repetition with 40 kg on both sides together, measured on 2026-11-20. [1 repetitions] (plan.md:23)",
        "formula: One repetition with 40 kg: that load is the 1RM. [40 kg] (Epley 1985, Poundage Chart)",
        "target: 70 % of 1RM is 70 % of 1RM, as stated: 28 kg of load moved. [28 kg] (protocol.md:10)",
        "equipment: The client's backpack makes 28 kg at or under the target; the next there is is 29 kg. [28 kg]",
      ],
    ],
    [
      "repetitions in reserve count to the maximum: 8 and 2 are 10 RM",
      dosed(press, { target: "2 in reserve", reps: 8 }),
      thirty,
      {},
      [
        ...THIRTY,
        "target: 2 in reserve is 75 % of 1RM, 8 repetitions with 2 in reserve are a 10 RM, by the Epley formula, w × (1 + r/30), read backwards: 30 kg of load moved. [30 kg] (Epley 1985, Poundage Chart)",
        "equipment: The client's backpack makes 30 kg at or under the target; the next there is is 31 kg. [30 kg]",
      ],
    ],
    [
      "repetitions in reserve of no repetitions are left to feel",
      dosed(press, { target: "2 in reserve", reps: undefined, time: "30 s" }),
      thirty,
      {},
      ["stated: Left to feel: a weight with which you could do 2 more repetitions."],
    ],
    [
      "kilograms as stated",
      dosed(press, { target: "12.5 kg", reps: 8 }),
      thirty,
      {},
      [
        "target: A load of 12.5 kg is asked for. [12.5 kg] (protocol.md:10)",
        "equipment: The client's backpack makes 12 kg at or under the target; the next there is is 13 kg. [12 kg]",
        "rounding: Rounded down from 12.5 kg to 12 kg. [12 kg]",
      ],
    ],
    [
      "a row of a printed chart",
      dosed(press, { target: "12 RM" }),
      thirty,
      chart,
      [
        ...THIRTY,
        "target: 12 RM is 70 % of 1RM, printed in the NSCA training load chart: 28 kg of load moved. [28 kg] (NSCA training load chart, as printed)",
        "equipment: The client's backpack makes 28 kg at or under the target; the next there is is 29 kg. [28 kg]",
      ],
    ],
    [
      "between two rows of it: (75 + 70) / 2",
      dosed(press, { target: "11 RM" }),
      thirty,
      chart,
      [
        ...THIRTY,
        "target: 11 RM is 72.5 % of 1RM, between the rows 10 and 12 of the NSCA training load chart, on a straight line: 29 kg of load moved. [29 kg] (NSCA training load chart, as printed)",
        "equipment: The client's backpack makes 29 kg at or under the target; the next there is is 30 kg. [29 kg]",
      ],
    ],
    [
      "beyond its last row: 1 / (1 + 15/30), less than 70 %",
      dosed(press, { target: "15 RM" }),
      thirty,
      chart,
      [
        ...THIRTY,
        "target: 15 RM is 66.7 % of 1RM, the NSCA training load chart ends at 12 repetitions; beyond it by the Epley formula, never more than its last row: 26.67 kg of load moved. [26.66 kg] (NSCA training load chart, as printed; Epley 1985, Poundage Chart)",
        "equipment: The client's backpack makes 26 kg at or under the target; the next there is is 27 kg. [26 kg]",
        "rounding: Rounded down from 26.67 kg to 26 kg. [26 kg]",
      ],
    ],
    [
      "the lightest is too heavy",
      dosed(press, { target: "10 RM" }),
      { ...thirty, equipment: [{ have: "dumbbell", loads: ["40 kg"] }] },
      {},
      [
        ...THIRTY,
        "target: 10 RM is 75 % of 1RM, by the Epley formula, w × (1 + r/30), read backwards: 30 kg of load moved. [30 kg] (Epley 1985, Poundage Chart)",
        "equipment: Nothing the client has makes a load at or under the target (the lightest is 40 kg).",
      ],
    ],
    [
      "nothing makes a load",
      dosed(press, { target: "10 RM" }),
      { measures: thirty.measures },
      {},
      [
        ...THIRTY,
        "target: 10 RM is 75 % of 1RM, by the Epley formula, w × (1 + r/30), read backwards: 30 kg of load moved. [30 kg] (Epley 1985, Poundage Chart)",
        "equipment: Nothing the client has makes a load at or under the target.",
      ],
    ],
    [
      "the equipment ends",
      dosed(press, { target: "10 RM" }),
      { ...thirty, equipment: [{ have: "dumbbell", loads: ["20 kg"] }] },
      {},
      [
        ...THIRTY,
        "target: 10 RM is 75 % of 1RM, by the Epley formula, w × (1 + r/30), read backwards: 30 kg of load moved. [30 kg] (Epley 1985, Poundage Chart)",
        "equipment: The client's dumbbell makes 20 kg at or under the target; there is no more. [20 kg]",
        "rounding: Rounded down from 30 kg to 20 kg. [20 kg]",
      ],
    ],
    [
      "the load of the test, for a share of most repetitions",
      dosed(press, { target: "50 % of most reps" }),
      thirty,
      {},
      [
        "target: The load is that of the test, 30 kg besides the body. [30 kg] (protocol.md:10)",
        "equipment: The client's backpack makes 30 kg at or under the target; the next there is is 31 kg. [30 kg]",
      ],
    ],
    [
      "no target, no effort",
      dosed(press, { reps: 8 }),
      {},
      {},
      ["stated: Left to feel: a weight with which you do every repetition well."],
    ],
    [
      "a band for a weight",
      dosed(press, { target: "band 3", reps: 8 }),
      thirty,
      {},
      ["stated: Left to feel: a weight with which you do every repetition well."],
    ],
    [
      "far outside the formula's range",
      dosed(press, { target: "12 RM" }),
      { ...thirty, measures: [repsOf("press", "both", "10 kg", 31)] },
      {},
      ["stated: Left to feel: a weight with which 12 repetitions are the most you can do well."],
    ],
  ])("%s", (_name, exercise, plan, clinic, lines) => {
    expect(said(exercise, plan, clinic).lines("load_kg")).toEqual(lines);
  });
});
