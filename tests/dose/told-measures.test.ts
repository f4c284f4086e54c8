/** What is told of measures, in full: level, code, place, message and hint. */
import { describe, expect, test } from "vitest";
import type { ExerciseInput } from "./fixtures.ts";
import {
  bands,
  dosed,
  type Fields,
  free,
  held,
  holdOf,
  kilos,
  press,
  raise,
  repsOf,
  run,
  said,
  stretchy,
  thirty,
} from "./said.ts";

const tested = (load: string, reps: number, more: Fields = {}) => ({
  ...thirty,
  measures: [{ ...repsOf("press", "both", load, reps), ...more }],
});
const raised = (side: string) => ({
  measures: [repsOf("raise", side, "20 kg", 10)],
  equipment: [kilos],
});
const pressed = (target: string) => dosed(press, { target });
const sprint = dosed(run, { target: "70 % of top speed" });
type Row = readonly [name: string, exercise: ExerciseInput, plan: Fields, told: readonly string[]];

describe("measures", () => {
  test.each<Row>([
    [
      "none",
      pressed("12 RM"),
      { equipment: [kilos] },
      [
        "error measure-missing plan.md:2 “Clinical press” (press) has no repetition test on both sides together, so 12 RM cannot be computed (week 1). → Add a measure with test: repetitions and card: press, or state the dose without it.",
      ],
    ],
    [
      "none without a side",
      sprint,
      {},
      [
        "warning measure-missing plan.md:2 “Clinical run” (run) has no measure of speed, so 70 % of top speed cannot be computed (week 1). → Add a measure with test: speed and card: run, or state the dose without it.",
      ],
    ],
    [
      "none for a share of a hold",
      dosed(held, { target: "70 % of best hold" }),
      {},
      [
        "error measure-missing plan.md:2 “Clinical held” (held) has no measure of the best hold on the left, so 70 % of best hold cannot be computed (week 1). → Add a measure with test: hold and card: held, or state the dose without it.",
      ],
    ],
    [
      "none for a share of repetitions",
      dosed(free, { target: "70 % of most reps" }),
      {},
      [
        "error measure-missing plan.md:2 “Clinical free” (free) has no repetition test on the left, so 70 % of most reps cannot be computed (week 1). → Add a measure with test: repetitions and card: free, or state the dose without it.",
      ],
    ],
    [
      "none for a band is a warning",
      dosed(stretchy, { target: "8 RM" }),
      bands(4),
      [
        "warning measure-missing plan.md:2 “Clinical stretchy” (stretchy) has no repetition test on the left, so 8 RM cannot be computed (week 1). → Add a measure with test: repetitions and card: stretchy, or state the dose without it.",
      ],
    ],
    [
      "of the other side",
      dosed(raise, { target: "8 RM" }),
      raised("right"),
      [
        "error measure-side plan.md:25 “Clinical raise” (raise) is done on the left, but its repetition test was taken on the right; 8 RM cannot be computed (week 1). → Measure on the left.",
      ],
    ],
    [
      "of both sides together",
      dosed(raise, { target: "8 RM" }),
      raised("both"),
      [
        "error measure-side plan.md:25 “Clinical raise” (raise) is done on the left, but its repetition test was taken on both sides together; 8 RM cannot be computed (week 1). → Measure on the left.",
      ],
    ],
    [
      "of one of two sides",
      dosed(raise, { target: "8 RM" }, { side: "each" }),
      raised("left"),
      [
        "warning measure-side plan.md:25 “Clinical raise” (raise) is done on both sides in turn, but the right side has no repetition test; both are dosed by the other side. → Measure the right side as well; it may be the weaker one.",
      ],
    ],
    [
      "of the other of two sides",
      dosed(raise, { target: "8 RM" }, { side: "each" }),
      raised("right"),
      [
        "warning measure-side plan.md:25 “Clinical raise” (raise) is done on both sides in turn, but the left side has no repetition test; both are dosed by the other side. → Measure the left side as well; it may be the weaker one.",
      ],
    ],
    [
      "of one side, done together",
      pressed("12 RM"),
      { ...thirty, measures: [repsOf("press", "left", "30 kg", 10)] },
      [
        "error measure-side plan.md:25 “Clinical press” (press) is done on both sides together, but its repetition test was taken on the left; 12 RM cannot be computed (week 1). → Measure on both sides together.",
      ],
    ],
    [
      "old",
      pressed("8 RM"),
      tested("30 kg", 10, { on: "2026-09-01" }),
      [
        "warning measure-old plan.md:28 The repetition test of “Clinical press” (press) is 12 weeks old when the plan starts; the clinic's limit is 6 weeks. → Measure again, and add the new measure.",
      ],
    ],
    [
      "a day older than the limit of six weeks",
      pressed("8 RM"),
      tested("30 kg", 10, { on: "2026-10-18" }),
      [
        "warning measure-old plan.md:28 The repetition test of “Clinical press” (press) is 6 weeks old when the plan starts; the clinic's limit is 6 weeks. → Measure again, and add the new measure.",
      ],
    ],
    [
      "no body mass, by the test of a card that needs none",
      dosed(raise, { target: "8 RM" }),
      {
        measures: [repsOf("press", "left", "20 kg", 10)],
        equipment: [kilos],
        client: { body_mass: undefined },
      },
      [
        "error measure-missing plan.md:4 The client's body mass is not given; “Clinical raise” (raise) moves a share of it, so 8 RM cannot be computed (week 1). → Add body_mass under client, such as 72 kg.",
      ],
    ],
    [
      "no body mass",
      dosed(raise, { target: "8 RM" }),
      { ...raised("left"), client: { body_mass: undefined } },
      [
        "error measure-missing plan.md:4 The client's body mass is not given; “Clinical raise” (raise) moves a share of it, so 8 RM cannot be computed (week 1). → Add body_mass under client, such as 72 kg.",
      ],
    ],
    [
      "outside the formula's range",
      pressed("10 RM"),
      tested("20 kg", 11),
      [
        "warning measure-range plan.md:27 A test of 11 repetitions of “Clinical press” (press) is outside the range of the Epley formula, up to 10 (Reynolds 2006, J Strength Cond Res 20:584: at most 10 repetitions); the 1RM is a rough estimate. → Test again with a load that allows fewer repetitions.",
      ],
    ],
    [
      "so far outside that it is not used",
      pressed("12 RM"),
      tested("10 kg", 31),
      [
        "error measure-range plan.md:27 A test of 31 repetitions of “Clinical press” (press) is outside the range of the Epley formula, up to 10 (Reynolds 2006, J Strength Cond Res 20:584: at most 10 repetitions); no 1RM is computed from it. → Test again with a load that allows fewer repetitions.",
      ],
    ],
    [
      "that moved nothing",
      pressed("12 RM"),
      tested("0 kg", 8),
      [
        "error measure-missing plan.md:26 This repetition test moved no load, so no 1RM follows from it. → Correct the measure, or leave it out.",
      ],
    ],
    [
      "that lasted no time",
      dosed(held, { target: "70 % of best hold" }),
      { measures: [holdOf("left", "0 s")] },
      [
        "error wrong-value plan.md:26 This hold lasted no time. → Correct the measure, or leave it out.",
      ],
    ],
    [
      "without a speed",
      sprint,
      {
        measures: [{ test: "speed", card: "run", distance: "40 m", time: "0 s", on: "2026-11-20" }],
      },
      [
        "error wrong-value plan.md:23 This measure gives no speed: it needs a speed, or a distance and a time, above 0. → Correct the measure, or leave it out.",
      ],
    ],
  ])("%s", (_name, exercise, plan, told) => expect(said(exercise, plan).told).toEqual(told));
});
