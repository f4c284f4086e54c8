/** What is told of a load, in full: level, code, place, message and hint. */
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
  pull,
  raise,
  repsOf,
  said,
  stretchy,
  thirty,
} from "./said.ts";

const bells = (...loads: number[]) => ({
  ...thirty,
  equipment: [{ have: "dumbbell", loads: loads.map((kg) => `${kg} kg`) }],
});
const raised = (side: string) => ({
  measures: [repsOf("raise", side, "20 kg", 10)],
  equipment: [kilos],
});
const pressed = (target: string) => dosed(press, { target });
type Row = readonly [name: string, exercise: ExerciseInput, plan: Fields, told: readonly string[]];

describe("a load that cannot be made", () => {
  test.each<Row>([
    [
      "the lightest is too heavy",
      pressed("10 RM"),
      bells(40),
      [
        "error load-not-makeable plan.md:30 For “Clinical press” (press), the lightest load the client has, 40 kg, is more than 10 RM (30 kg) (week 1). → Swap it for the easier “Clinical easier” (easier).",
      ],
    ],
    [
      "nothing makes one",
      pressed("10 RM"),
      { measures: thirty.measures },
      [
        "error load-not-makeable plan.md:2 The client has nothing that makes a load for “Clinical press” (press); 10 RM (30 kg) is asked for (week 1). → Swap it for the easier “Clinical easier” (easier).",
      ],
    ],
    [
      "no loads are given",
      pressed("10 RM"),
      { ...thirty, equipment: ["backpack", "dumbbell"] },
      [
        "error load-not-makeable plan.md:30 “Clinical press” (press) needs a load of 10 RM (30 kg), but nothing is known of the client's backpack or dumbbell, for which the plan gives no loads (week 1). → Give the loads it makes under equipment. Or: Swap it for the easier “Clinical easier” (easier).",
      ],
    ],
    [
      "the body alone is too heavy",
      dosed(raise, { target: "15 RM" }),
      { measures: [repsOf("raise", "left", "0 kg", 5)], equipment: [kilos] },
      [
        "error load-not-makeable protocol.md:10 For “Clinical raise” (raise), the body's own weight is more than 15 RM (week 1). → Swap it for an easier exercise; its card names none.",
      ],
    ],
    [
      "nothing to add to the body",
      dosed(raise, { target: "8 RM" }),
      { ...raised("left"), equipment: [] },
      [
        "warning load-not-makeable plan.md:29 The plan gives nothing that makes a load for “Clinical raise” (raise); the target adds 24.6 kg, but the body's own weight alone is dosed (week 1). → Give the loads that backpack can make under equipment; until then let repetitions grow first.",
      ],
    ],
    [
      "nothing to add the least there is",
      dosed(raise, { target: "0.1 kg", reps: 8 }),
      {},
      [
        "warning load-not-makeable plan.md:2 The plan gives nothing that makes a load for “Clinical raise” (raise); the target adds 0.1 kg, but the body's own weight alone is dosed (week 1). → Give the loads that backpack can make under equipment; until then let repetitions grow first.",
      ],
    ],
    [
      "nothing to add, and nothing asked for",
      dosed(raise, { target: "10 RM" }),
      { measures: [repsOf("raise", "left", "0 kg", 10)], equipment: [] },
      [],
    ],
    [
      "a band too strong",
      dosed(pull, { target: "band 2", reps: 8 }),
      bands(4),
      [
        "error load-not-makeable protocol.md:10 For “Clinical pull” (pull), the client's lightest band, level 4, is more than band 2 (week 1). → Swap it for an easier exercise; its card names none.",
      ],
    ],
    [
      "a band too strong by its force",
      dosed(pull, { target: "1 kg", reps: 8 }),
      bands(4),
      [
        "error load-not-makeable plan.md:23 For “Clinical pull” (pull), the client's lightest band, level 4, is more than 1 kg (1 kg) (week 1). → Swap it for an easier exercise; its card names none.",
      ],
    ],
    [
      "no band",
      dosed(pull, { target: "band 2", reps: 8 }),
      {},
      [
        "error load-not-makeable protocol.md:10 The client has nothing that makes a load for “Clinical pull” (pull); band 2 is asked for (week 1). → Swap it for an easier exercise; its card names none.",
      ],
    ],
    [
      "no band to add",
      dosed(stretchy, { target: "band 4", reps: 8 }),
      {},
      [
        "warning load-not-makeable plan.md:2 The plan gives nothing that makes a load for “Clinical stretchy” (stretchy); the target adds a band, but the body's own weight alone is dosed (week 1). → Give the loads that band can make under equipment; until then let repetitions grow first.",
      ],
    ],
    ["a band to add, too strong", dosed(stretchy, { target: "band 2", reps: 8 }), bands(4), []],
    [
      "a band to add, and the body too heavy",
      dosed(stretchy, { target: "30 % of 1RM", reps: 8 }),
      { ...bands(4), measures: [repsOf("stretchy", "left", "0 kg", 1)] },
      [
        "error load-not-makeable protocol.md:10 For “Clinical stretchy” (stretchy), the body's own weight is more than 30 % of 1RM (week 1). → Swap it for an easier exercise; its card names none.",
      ],
    ],
    [
      "less than a repetition",
      dosed(free, { target: "50 % of most reps" }),
      { measures: [repsOf("free", "left", "0 kg", 1)] },
      [
        "error load-not-makeable protocol.md:10 50 % of most reps of “Clinical free” (free) is less than one repetition (week 1). → Swap it for an easier exercise; its card names none.",
      ],
    ],
    [
      "exactly one repetition",
      dosed(free, { target: "50 % of most reps" }),
      { measures: [repsOf("free", "left", "0 kg", 2)] },
      [],
    ],
    [
      "less than a second",
      dosed(held, { target: "70 % of best hold" }),
      { measures: [holdOf("left", "1 s")] },
      [
        "error load-not-makeable protocol.md:10 70 % of best hold of “Clinical held” (held) is less than a hold of one second (week 1). → Swap it for an easier exercise; its card names none.",
      ],
    ],
    [
      "exactly a second",
      dosed(held, { target: "50 % of best hold" }),
      { measures: [holdOf("left", "2 s")] },
      [],
    ],
  ])("%s", (_name, exercise, plan, told) => expect(said(exercise, plan).told).toEqual(told));
});

describe("equipment too coarse or too light", () => {
  test.each<Row>([
    [
      "the next load is far above",
      pressed("10 RM"),
      bells(20, 40),
      [
        "warning load-coarse plan.md:30 For “Clinical press” (press) the equipment goes from 20 kg to 40 kg, a step of 100 %; the clinic's limit is 10 % (week 1). → Let repetitions grow first: stay at 20 kg until each set has two repetitions in hand, then take 40 kg. Or add equipment with smaller steps.",
      ],
    ],
    [
      "exactly the clinic's limit, 20 to 22 kg",
      dosed(press, { target: "21 kg", reps: 8 }),
      bells(20, 22),
      [],
    ],
    [
      "the load is exactly the target",
      dosed(press, { target: "20 kg", reps: 8 }),
      bells(20, 40),
      [],
    ],
    [
      "0.1 kg under it",
      dosed(press, { target: "20.1 kg", reps: 8 }),
      bells(20, 40),
      [
        "warning load-coarse plan.md:30 For “Clinical press” (press) the equipment goes from 20 kg to 40 kg, a step of 100 %; the clinic's limit is 10 % (week 1). → Let repetitions grow first: stay at 20 kg until each set has two repetitions in hand, then take 40 kg. Or add equipment with smaller steps.",
      ],
    ],
    [
      "it ends",
      pressed("10 RM"),
      bells(20),
      [
        "error load-short plan.md:30 For “Clinical press” (press) the equipment ends at 20 kg; the target is 30 kg (week 1). → Have a heavier load at hand, or let repetitions grow or the tempo be slower in place of the load (redose).",
      ],
    ],
    [
      "it ends exactly the limit under it, 20 of 22 kg",
      dosed(press, { target: "22 kg", reps: 8 }),
      bells(20),
      [],
    ],
    [
      "it ends a little further under",
      dosed(press, { target: "22.1 kg", reps: 8 }),
      bells(20),
      [
        "error load-short plan.md:30 For “Clinical press” (press) the equipment ends at 20 kg; the target is 22.1 kg (week 1). → Have a heavier load at hand, or let repetitions grow or the tempo be slower in place of the load (redose).",
      ],
    ],
    [
      "with the body moved, 10 of 17.75 kg",
      dosed(raise, { target: "17.7 kg", reps: 8 }),
      { equipment: [{ have: "backpack", loads: ["10 kg"] }] },
      [],
    ],
  ])("%s", (_name, exercise, plan, told) => expect(said(exercise, plan).told).toEqual(told));
});

describe("what does not fit, or is not complete", () => {
  test.each<Row>([
    [
      "more repetitions than the maximum",
      dosed(press, { target: "8 RM", reps: [8, 10, 9] }),
      thirty,
      [
        "warning wrong-value protocol.md:10 “Clinical press” (press) asks for 10 repetitions with a load that allows 8 RM (week 1). → Lower the repetitions, or aim at a lighter load.",
      ],
    ],
    ["as many as the maximum", dosed(press, { target: "8 RM", reps: 8 }), thirty, []],
    [
      "a band for a weight",
      dosed(press, { target: "band 3", reps: 8 }),
      thirty,
      [
        "warning wrong-value protocol.md:10 The target band 3 does not fit “Clinical press” (press): this exercise is loaded with a weight and not with a band (week 1). → State another target, or sets and repetitions alone.",
      ],
    ],
    [
      "a weight for nothing",
      dosed(free, { target: "12 RM" }),
      {},
      [
        "warning wrong-value protocol.md:10 The target 12 RM does not fit “Clinical free” (free): this exercise has no load that can be chosen (week 1). → State another target, or sets and repetitions alone.",
      ],
    ],
    [
      "most repetitions for a band",
      dosed(pull, { target: "70 % of most reps" }),
      { ...bands(4), measures: [repsOf("pull", "both", "0 kg", 20)] },
      [
        "warning wrong-value protocol.md:10 The target 70 % of most reps does not fit “Clinical pull” (pull): the load of a band is not known from a test (week 1). → State another target, or sets and repetitions alone.",
      ],
    ],
    [
      "a tempo of no time",
      dosed(free, { tempo: "0-0-0-0" }),
      {},
      [
        "error wrong-value protocol.md:10 The tempo 0-0-0-0 of “Clinical free” (free) takes no time (week 1). → Give seconds for lowering, pause, lifting and pause, such as 3-0-3-0; X for as fast as is safe.",
      ],
    ],
    ["a tempo as fast as is safe", dosed(free, { tempo: "X-0-0-0" }), {}, []],
  ])("%s", (_name, exercise, plan, told) => expect(said(exercise, plan).told).toEqual(told));
});
