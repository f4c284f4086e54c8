/** The shapes that a set can have, and doses that are none of them. */
import { describe, expect, test } from "vitest";
import { dosePart } from "../../src/prescription/fields.ts";
import { shapeOf } from "../../src/prescription/shape.ts";
import { saysWork, shapeProblem } from "../../src/prescription/shape-problem.ts";

const TURNS = { work: "3 min", easy: "2 min", times: 6 };

describe("a set is", () => {
  test.each([
    ["repetitions", { sets: 3, reps: 12, tempo: "3-0-3-1", rest_reps: "5 s" }],
    ["a range", { sets: 3, reps: "6-8" }],
    ["one number a set", { sets: 3, reps: [12, 10, 8] }],
    ["a hold", { sets: 3, hold: "45 s" }],
    ["holds", { sets: 3, reps: 10, hold: "10 s", rest_reps: "10 s" }],
    ["holds moved into and out of", { sets: 3, reps: 10, hold: "10 s", tempo: "3-0-3-0" }],
    ["other numbers of holds", { sets: 3, reps: [5, 3, 2], hold: "10 s" }],
    ["a time", { sets: 3, time: "60 s", rest: "1 min" }],
    ["a distance", { sets: 3, distance: "20 m" }],
    ["a distance several times", { sets: 3, reps: 5, distance: "80 m", rest_reps: "30 s" }],
    ["turns", { sets: 1, turns: TURNS }],
    ["what a target gives: repetitions", { sets: 3, target: "12 RM", tempo: "3-0-3-0" }],
    ["what a target gives: a hold", { sets: 3, target: "70 % of best hold" }],
    ["a time with a load", { sets: 3, time: "60 s", target: "12 RM" }],
  ])("%s", (_name, dose) => {
    const parsed = dosePart.parse(dose);
    expect(shapeProblem(parsed)).toBeUndefined();
    expect(saysWork(parsed)).toBe(true);
  });
});

describe("no set is", () => {
  test.each([
    ["time and repetitions", { time: "60 s", reps: 12 }, "reps", ["time: 1 min", "reps: 12"]],
    ["distance and time", { distance: "20 m", time: "60 s" }, "distance", ["20 m", "1 min"]],
    ["hold and time", { hold: "5 s", time: "60 s" }, "hold", ["hold: 5 s", "time: 1 min"]],
    ["time at a tempo", { time: "60 s", tempo: "3-0-3-0" }, "tempo", ["tempo: 3-0-3-0"]],
    ["a distance at a tempo", { distance: "20 m", tempo: "3-0-3-0" }, "tempo", ["20 m"]],
    ["distance and hold", { distance: "20 m", hold: "5 s" }, "hold", ["20 m", "5 s"]],
    ["turns and time", { turns: TURNS, time: "60 s" }, "time", ["work: 3 min", "times: 6"]],
    ["turns and repetitions", { turns: TURNS, reps: 3 }, "reps", ["reps: 3"]],
    ["time with rests inside", { time: "60 s", rest_reps: "5 s" }, "rest_reps", ["5 s"]],
    ["one hold at a tempo", { hold: "45 s", tempo: "3-0-3-0" }, "tempo", ["no repetitions"]],
    ["one hold with rests inside", { hold: "45 s", rest_reps: "5 s" }, "rest_reps", ["5 s"]],
    ["a hold beside a pause", { reps: 5, hold: "5 s", tempo: "3-0-3-2" }, "hold", ["3-0-3-2"]],
    ["fewer sets than numbers", { sets: 2, reps: [12, 10, 8] }, "sets", ["sets: 2", "3 numbers"]],
    ["more sets than numbers", { sets: 4, reps: [12, 10, 8] }, "sets", ["sets: 4", "3 numbers"]],
    [
      "a time and a share of the best hold",
      { time: "60 s", target: "70 % of best hold" },
      "target",
      ["70 % of best hold"],
    ],
  ])("%s", (_name, dose, field, words) => {
    const problem = shapeProblem(dosePart.parse({ sets: 3, ...dose }));
    expect(problem?.fields[0]).toBe(field);
    for (const word of words) expect(problem?.says).toContain(word);
    expect(problem?.hint).not.toBe("");
  });
});

test.each([
  ["hold", "0 s"],
  ["time", "0 min"],
  ["distance", "0 m"],
  ["turns", { work: "0 s", easy: "1 min", times: 2 }],
  ["turns", { work: "1 min", easy: "0 s", times: 2 }],
  ["turns", { work: "1 min", easy: "1 min", times: 0 }],
  ["turns", { work: "1 min", easy: "1 min" }],
])("%s: %j says nothing and is refused", (field, value) => {
  expect(dosePart.safeParse({ [field]: value }).success).toBe(false);
});

test("nothing that a set is has no shape", () => {
  expect(shapeOf({})).toBeUndefined();
  expect(saysWork({ sets: 3, target: { kind: "load", kg: 5 } })).toBe(false);
});
