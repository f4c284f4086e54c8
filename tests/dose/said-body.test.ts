/** How a load on top of the body, a band or a speed came about, step by step; each number worked out by hand. */
import { describe, expect, test } from "vitest";
import type { ExerciseInput } from "./fixtures.ts";
import {
  bands,
  bodyOnly,
  dosed,
  type Fields,
  free,
  held,
  holdOf,
  kilos,
  pull,
  raise,
  repsOf,
  run,
  said,
  stretchy,
} from "./said.ts";

const raised = { measures: [repsOf("raise", "left", "20 kg", 10)] };
const pulled = (target: string) => dosed(pull, { target, reps: 8 });
const stretched = (target: string) => dosed(stretchy, { target, reps: 8 });
const speed = (fields: Fields) => ({
  measures: [{ test: "speed", card: "run", on: "2026-11-20", ...fields }],
});
const sprint = dosed(run, { sets: undefined, per_week: undefined, target: "70 % of top speed" });
type Row = readonly [
  name: string,
  exercise: ExerciseInput,
  plan: Fields,
  clinic: Fields,
  lines: readonly string[],
];

describe("a weight on top of the body, 0.9 × 75 kg", () => {
  test.each<Row>([
    [
      "the weaker of two sides: (16 + 67.5) × 4/3 / (1 + 8/30) − 67.5",
      dosed(raise, { target: "8 RM" }, { side: "each" }),
      {
        measures: [repsOf("raise", "left", "20 kg", 10), repsOf("raise", "right", "16 kg", 10)],
        equipment: [kilos],
      },
      {},
      [
        "measure: 10 repetitions with 16 kg on the right, measured on 2026-11-20. [10 repetitions] (plan.md:29)",
        "formula: 1RM by Epley, w × (1 + r/30): 83.5 kg (16 kg and 67.5 kg of the body) moved 10 times is a 1RM of 111.33 kg of load moved. [111.33 kg] (Epley 1985, Poundage Chart)",
        "limit: Both sides are dosed by the weaker one. [111.33]",
        "target: 8 RM is 78.9 % of 1RM, by the Epley formula, w × (1 + r/30), read backwards: 87.89 kg of load moved. [87.89 kg] (Epley 1985, Poundage Chart)",
        "target: The body's own share is 67.5 kg; 20.39 kg is left to add. [20.39 kg]",
        "equipment: The client's backpack makes 20 kg at or under the target; the next there is is 21 kg. [20 kg]",
        "rounding: Rounded down from 20.39 kg to 20 kg. [20 kg]",
      ],
    ],
    [
      "by another card, with the body's share of that: (60 + 37.5) × 7/6 × 0.75 − 67.5",
      dosed(raise, { target: "75 % of 1RM", reps: 8 }),
      { measures: [repsOf("two-legs", "left", "60 kg", 5)], equipment: [kilos] },
      {},
      [
        "measure: 5 repetitions of “Clinical two-legs” (two-legs) with 60 kg on the left, measured on 2026-11-20. [5 repetitions] (plan.md:23)",
        "formula: 1RM by Epley, w × (1 + r/30): 97.5 kg (60 kg and 37.5 kg of the body) moved 5 times is a 1RM of 113.75 kg of load moved. [113.75 kg] (Epley 1985, Poundage Chart)",
        "target: 75 % of 1RM is 75 % of 1RM, as stated: 85.31 kg of load moved. [85.31 kg] (protocol.md:10)",
        "target: The body's own share is 67.5 kg; 17.81 kg is left to add. [17.81 kg]",
        "equipment: The client's backpack makes 17 kg at or under the target; the next there is is 18 kg. [17 kg]",
        "rounding: Rounded down from 17.81 kg to 17 kg. [17 kg]",
      ],
    ],
    [
      "the body alone is too heavy: 67.5 × 7/6 / 1.5 is less",
      dosed(raise, { target: "15 RM" }),
      { measures: [repsOf("raise", "left", "0 kg", 5)], equipment: [kilos] },
      {},
      [
        "measure: 5 repetitions without added load on the left, measured on 2026-11-20. [5 repetitions] (plan.md:23)",
        "formula: 1RM by Epley, w × (1 + r/30): 67.5 kg (0 kg and 67.5 kg of the body) moved 5 times is a 1RM of 78.75 kg of load moved. [78.75 kg] (Epley 1985, Poundage Chart)",
        "target: 15 RM is 66.7 % of 1RM, by the Epley formula, w × (1 + r/30), read backwards: 52.5 kg of load moved. [52.5 kg] (Epley 1985, Poundage Chart)",
        "target: The body's own share is 67.5 kg; that alone is more than the target. [0 kg]",
      ],
    ],
    [
      "under the lightest load",
      dosed(raise, { target: "3 kg", reps: 8 }),
      { equipment: [{ ...kilos, from: "5 kg" }] },
      {},
      [
        "target: A load of 3 kg is asked for. [3 kg] (protocol.md:10)",
        "equipment: Nothing the client has makes a load at or under the target (the lightest is 5 kg): the body's own weight alone. [0 kg]",
      ],
    ],
    [
      "nothing to add",
      dosed(raise, { target: "8 RM" }),
      raised,
      {},
      [
        "measure: 10 repetitions with 20 kg on the left, measured on 2026-11-20. [10 repetitions] (plan.md:23)",
        "formula: 1RM by Epley, w × (1 + r/30): 87.5 kg (20 kg and 67.5 kg of the body) moved 10 times is a 1RM of 116.67 kg of load moved. [116.67 kg] (Epley 1985, Poundage Chart)",
        "target: 8 RM is 78.9 % of 1RM, by the Epley formula, w × (1 + r/30), read backwards: 92.11 kg of load moved. [92.1 kg] (Epley 1985, Poundage Chart)",
        "target: The body's own share is 67.5 kg; 24.61 kg is left to add. [24.6 kg]",
        "equipment: Nothing the client has makes a load at or under the target: the body's own weight alone. [0 kg]",
      ],
    ],
    [
      "exactly the body: nothing is left to add",
      dosed(raise, { target: "10 RM" }),
      { measures: [repsOf("raise", "left", "0 kg", 10)], equipment: [kilos] },
      {},
      [
        "measure: 10 repetitions without added load on the left, measured on 2026-11-20. [10 repetitions] (plan.md:23)",
        "formula: 1RM by Epley, w × (1 + r/30): 67.5 kg (0 kg and 67.5 kg of the body) moved 10 times is a 1RM of 90 kg of load moved. [90 kg] (Epley 1985, Poundage Chart)",
        "target: 10 RM is 75 % of 1RM, by the Epley formula, w × (1 + r/30), read backwards: 67.5 kg of load moved. [67.5 kg] (Epley 1985, Poundage Chart)",
        "target: The body's own share is 67.5 kg; 0 kg is left to add. [0 kg]",
        "equipment: Nothing the client has makes a load at or under the target (the lightest is 1 kg): the body's own weight alone. [0 kg]",
      ],
    ],
    [
      "no body mass",
      dosed(raise, { target: "8 RM" }),
      { ...raised, client: { body_mass: undefined } },
      {},
      ["stated: Left to feel: a weight with which 8 repetitions are the most you can do well."],
    ],
    [
      "the body alone, tested 20 times",
      dosed(bodyOnly, { target: "12 RM" }),
      { measures: [repsOf("body-only", "left", "0 kg", 20)] },
      {},
      [
        "measure: 20 repetitions without added load on the left, measured on 2026-11-20. [20 repetitions] (plan.md:23)",
        "formula: 1RM by Epley, w × (1 + r/30): 67.5 kg (0 kg and 67.5 kg of the body) moved 20 times is a 1RM of 112.5 kg of load moved. [112.5 kg] (Epley 1985, Poundage Chart)",
        "target: 12 RM is 71.4 % of 1RM, by the Epley formula, w × (1 + r/30), read backwards: 80.36 kg of load moved. [80.35 kg] (Epley 1985, Poundage Chart)",
        "target: The body's own share is 67.5 kg; 12.86 kg is left to add. [12.85 kg]",
        "equipment: The body's own weight is the load; this exercise has nothing to add.",
      ],
    ],
    [
      "the body alone in the test of most repetitions",
      dosed(raise, { target: "50 % of most reps" }),
      { measures: [repsOf("raise", "left", "0 kg", 11)], equipment: [kilos] },
      {},
      ["target: The load is that of the test, 0 kg besides the body. [0 kg] (protocol.md:10)"],
    ],
    [
      "the load of the test, for a share of the best hold",
      dosed(held, { target: "70 % of best hold" }),
      { measures: [holdOf("left", "65 s", "12 kg")], equipment: [kilos] },
      {},
      [
        "target: The load is that of the test, 12 kg besides the body. [12 kg] (protocol.md:10)",
        "equipment: The client's backpack makes 12 kg at or under the target; the next there is is 13 kg. [12 kg]",
      ],
    ],
    ["nothing that can be chosen", dosed(free, { target: "12 RM" }), {}, {}, []],
  ])("%s", (_name, exercise, plan, clinic, lines) => {
    expect(said(exercise, plan, clinic).lines("load_kg")).toEqual(lines);
  });
});

describe("a band, a speed", () => {
  test.each<Row>([
    [
      "a level",
      pulled("band 4"),
      bands(1, 3, 5),
      {},
      [
        "stated: Band level 4, stated by the protocol. [4] (protocol.md:10)",
        "equipment: The client's heaviest band at or under it is level 3, about 1.68 kg drawn to twice its length. [3] (printed chart of elastic bands (doubtful: Uchida 2016, J Phys Ther Sci 28:1266, measured lower forces))",
      ],
    ],
    [
      "a level by its force: 4.6 lb",
      pulled("2.5 kg"),
      bands(3, 4, 5),
      {},
      [
        "target: A load of 2.5 kg is asked for. [2.5 kg] (protocol.md:10)",
        "equipment: The client's heaviest band at or under it is level 4, about 2.09 kg drawn to twice its length. [4] (printed chart of elastic bands (doubtful: Uchida 2016, J Phys Ther Sci 28:1266, measured lower forces))",
      ],
    ],
    [
      "a lighter one than there is",
      pulled("band 2"),
      bands(4),
      {},
      ["stated: Band level 2, stated by the protocol. [2] (protocol.md:10)"],
    ],
    [
      "left to feel",
      dosed(pull, { reps: 8, effort: 5 }),
      bands(4),
      {},
      ["stated: Left to feel: a band that feels 5 out of 10."],
    ],
    [
      "a share of most repetitions",
      dosed(pull, { target: "70 % of most reps" }),
      { ...bands(4), measures: [repsOf("pull", "both", "0 kg", 20)] },
      {},
      ["stated: Left to feel: a band with which you do every repetition well."],
    ],
    [
      "added to the body",
      stretched("band 4"),
      bands(2),
      {},
      [
        "stated: Band level 4, stated by the protocol. [4] (protocol.md:10)",
        "equipment: The client's heaviest band at or under it is level 2, about 1.36 kg drawn to twice its length. [2] (printed chart of elastic bands (doubtful: Uchida 2016, J Phys Ther Sci 28:1266, measured lower forces))",
      ],
    ],
    [
      "added, and there is none",
      stretched("band 4"),
      {},
      {},
      [
        "stated: Band level 4, stated by the protocol. [4] (protocol.md:10)",
        "equipment: The client has no band at or under the target: the body's own weight alone.",
      ],
    ],
    [
      "added, and the body is too heavy: 0.3 × 15 kg",
      stretched("30 % of 1RM"),
      { ...bands(4), measures: [repsOf("stretchy", "left", "0 kg", 1)] },
      {},
      [
        "measure: 1 repetition without added load on the left, measured on 2026-11-20. [1 repetitions] (plan.md:27)",
        "formula: One repetition with 15 kg (0 kg and 15 kg of the body): that load is the 1RM. [15 kg] (Epley 1985, Poundage Chart)",
        "target: 30 % of 1RM is 30 % of 1RM, as stated: 4.5 kg of load moved. [4.5 kg] (protocol.md:10)",
        "target: The body's own share is 15 kg; that alone is more than the target. [0 kg]",
        "equipment: The client has no band at or under the target: the body's own weight alone.",
      ],
    ],
    [
      "added, not measured",
      stretched("8 RM"),
      bands(4),
      {},
      ["stated: Left to feel: a band with which 8 repetitions are the most you can do well."],
    ],
    [
      "a speed: 0.7 × 19.9",
      sprint,
      speed({ speed: "19.9 km/h" }),
      {},
      [
        "measure: Speed measured on 2026-11-20. [5.53 m/s] (plan.md:23)",
        "target: 70 % of top speed is 13.93 km/h. [13.93 km/h] (protocol.md:10)",
        "rounding: Rounded down to 13.9 km/h. [13.9 km/h]",
        "rounding: 50 m in 13 to 14 s, rounded up. [13 s]",
      ],
    ],
    [
      "a timed distance: 0.7 × 40 / 6 × 3.6",
      sprint,
      speed({ distance: "40 m", time: "6 s" }),
      {},
      [
        "measure: Speed measured on 2026-11-20: 40 m in 6 s. [6.67 m/s] (plan.md:23)",
        "target: 70 % of top speed is 16.8 km/h. [16.8 km/h] (protocol.md:10)",
        "rounding: 50 m in 11 to 11.5 s, rounded up. [11 s]",
      ],
    ],
    [
      "a time of nothing",
      sprint,
      speed({ distance: "40 m", time: "0 s" }),
      {},
      ["target: 70 % of top speed is asked for, in words. [0.7] (protocol.md:10)"],
    ],
  ])("%s", (_name, exercise, plan, clinic, lines) => {
    expect(said(exercise, plan, clinic).lines("load_kg")).toEqual(lines);
  });
});
