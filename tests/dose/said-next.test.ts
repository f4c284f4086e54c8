/** How the load to come is found, should the target be beaten; worked out by hand. */
import { describe, expect, test } from "vitest";
import type { ExerciseInput } from "./fixtures.ts";
import { dosed, type Fields, kilos, press, raise, repsOf, said, thirty } from "./said.ts";

const forty = { ...thirty, measures: [repsOf("press", "both", "40 kg", 1)] };
const raised = { measures: [repsOf("raise", "left", "20 kg", 10)] };
type Row = readonly [
  name: string,
  exercise: ExerciseInput,
  plan: Fields,
  clinic: Fields,
  lines: readonly string[],
];

describe("the load to come where the target is beaten (2 to 10 %: Ratamess 2009)", () => {
  test.each<Row>([
    [
      "31 × 1.1",
      dosed(press, { target: "8 RM" }),
      thirty,
      {},
      [
        "target: Where each set is beaten by a repetition or more in 2 sessions running, up to 10 % more load moved: 34.1 kg to take instead of 31 kg. [34.1 kg] (Ratamess 2009, Med Sci Sports Exerc 41:687)",
        "equipment: The client's backpack makes 34 kg at or under that: next load 34 kg. [34 kg]",
      ],
    ],
    [
      "a clinic's step of 5 %: 40 × 1.05",
      dosed(press, { target: "40 kg", reps: 8 }),
      forty,
      { limits: { load_step: "5 %" } },
      [
        "target: Where each set is beaten by a repetition or more in 2 sessions running, up to 5 % more load moved: 42 kg to take instead of 40 kg. [42 kg] (Ratamess 2009, Med Sci Sports Exerc 41:687)",
        "equipment: The client's backpack makes 42 kg at or under that: next load 42 kg. [42 kg]",
      ],
    ],
    [
      "with the body's share: 10 + 0.1 × 77.5",
      dosed(raise, { target: "10.5 kg", reps: 8 }),
      { equipment: [kilos] },
      {},
      [
        "target: Where each set is beaten by a repetition or more in 2 sessions running, up to 10 % more load moved: 17.75 kg to take instead of 10 kg. [17.75 kg] (Ratamess 2009, Med Sci Sports Exerc 41:687)",
        "equipment: The client's backpack makes 17 kg at or under that: next load 17 kg. [17 kg]",
      ],
    ],
    [
      "from the body alone: 0.1 × 67.5",
      dosed(raise, { target: "3 kg", reps: 8 }),
      { equipment: [{ ...kilos, from: "5 kg" }] },
      {},
      [
        "target: Where each set is beaten by a repetition or more in 2 sessions running, up to 10 % more load moved: 6.75 kg to take instead of 0 kg. [6.75 kg] (Ratamess 2009, Med Sci Sports Exerc 41:687)",
        "equipment: The client's backpack makes 6 kg at or under that: next load 6 kg. [6 kg]",
      ],
    ],
    [
      "the next is too far",
      dosed(press, { target: "30 kg", reps: 8 }),
      { equipment: [{ have: "dumbbell", loads: ["20 kg", "40 kg"] }] },
      {},
      [
        "target: Where each set is beaten by a repetition or more in 2 sessions running, up to 10 % more load moved: 22 kg to take instead of 20 kg. [22 kg] (Ratamess 2009, Med Sci Sports Exerc 41:687)",
        "equipment: The next load there is, 40 kg, is further away: repetitions grow first, with 20 kg. [20 kg]",
      ],
    ],
    [
      "there is no more",
      dosed(press, { target: "30 kg", reps: 8 }),
      { equipment: [{ have: "dumbbell", loads: ["20 kg"] }] },
      {},
      [
        "target: Where each set is beaten by a repetition or more in 2 sessions running, up to 10 % more load moved: 22 kg to take instead of 20 kg. [22 kg] (Ratamess 2009, Med Sci Sports Exerc 41:687)",
        "equipment: The equipment makes no more: repetitions grow instead, with 20 kg. [20 kg]",
      ],
    ],
    [
      "with the piece in use before another",
      dosed(press, { target: "20 kg", reps: 8 }),
      {
        equipment: [
          { have: "dumbbell", loads: ["20 kg", "21 kg"] },
          { have: "backpack", loads: ["22 kg"] },
        ],
      },
      {},
      [
        "target: Where each set is beaten by a repetition or more in 2 sessions running, up to 10 % more load moved: 22 kg to take instead of 20 kg. [22 kg] (Ratamess 2009, Med Sci Sports Exerc 41:687)",
        "equipment: The client's dumbbell makes 21 kg at or under that: next load 21 kg. [21 kg]",
      ],
    ],
    [
      "with another where the piece in use ends",
      dosed(press, { target: "20 kg", reps: 8 }),
      {
        equipment: [
          { have: "dumbbell", loads: ["20 kg"] },
          { have: "backpack", loads: ["22 kg"] },
        ],
      },
      {},
      [
        "target: Where each set is beaten by a repetition or more in 2 sessions running, up to 10 % more load moved: 22 kg to take instead of 20 kg. [22 kg] (Ratamess 2009, Med Sci Sports Exerc 41:687)",
        "equipment: The client's backpack makes 22 kg at or under that: next load 22 kg. [22 kg]",
      ],
    ],
    ["none of a load left to feel", dosed(press, { reps: 8 }), {}, {}, []],
    [
      "none of the body alone with nothing to add",
      dosed(raise, { target: "8 RM" }),
      raised,
      {},
      [],
    ],
  ])("%s", (_name, exercise, plan, clinic, lines) => {
    expect(said(exercise, plan, clinic).lines("next_load_kg")).toEqual(lines);
  });
});
