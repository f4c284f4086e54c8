/** One of a thing is said in the singular, also where a plan asks for one set of one repetition. */
import { expect, test } from "vitest";
import { planJson } from "../../src/plan-text/json.ts";
import { counted } from "../../src/units/counted.ts";
import { madeSmall } from "../support/small-course.ts";

test.each([
  [0, "0 sets"],
  [1, "1 set"],
  [2, "2 sets"],
  ["1", "1 set"],
  ["1 to 2", "1 to 2 sets"],
  [1.5, "1.5 sets"],
])("%s", (number, says) => expect(counted(number, "set")).toBe(says));

test.each([
  "{ sets: 1, reps: 1, per_week: 1 }",
  "{ sets: 1, hold: 1 s, reps: 1, per_week: 1 }",
  "{ sets: 1, time: 1 min, per_week: 1 }",
  "{ sets: 1, turns: { work: 1 min, easy: 1 min, times: 1 }, per_week: 1 }",
  "{ sets: 1, reps: 1, distance: 1 m, per_week: 1 }",
])("nothing that comes out of %s says 1 of several", (card) => {
  const { made, all } = madeSmall({ card, trains: "running" });
  const said = [JSON.stringify(planJson(made, [])), ...all.map(({ message }) => message)].join();
  expect(said).not.toMatch(/\b1 (?:repetitions|sets|turns|times|sessions|days|weeks)\b/);
});
