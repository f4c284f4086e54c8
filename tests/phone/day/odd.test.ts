/** Which amounts are asked back, and that a step from what was asked about is not. */
import { expect, test } from "vitest";
import type { Amount, Done } from "../../../src/diary/entry.ts";
import { oddOf } from "../../../src/phone/day/odd.ts";

const PLAN: Amount = { sets: 3, reps: 15, kg: 40 };
const NONE: Amount = { sets: undefined, reps: undefined, kg: undefined };
const real = (change: Partial<Amount>): Amount => ({ ...NONE, ...change });

type Row = [
  string,
  { done: Done; real: Amount },
  { done?: Done; real?: Amount },
  [string, string, number] | undefined,
];

const ROWS: Row[] = [
  [
    "a nought too many",
    { done: "yes", real: NONE },
    { real: real({ kg: 400 }) },
    ["kg", "more", 400],
  ],
  ["twice the plan", { done: "yes", real: NONE }, { real: real({ kg: 80 }) }, undefined],
  [
    "more than that",
    { done: "yes", real: NONE },
    { real: real({ kg: 80.5 }) },
    ["kg", "more", 80.5],
  ],
  ["less", { done: "yes", real: NONE }, { real: real({ kg: 4 }) }, undefined],
  ["no load", { done: "yes", real: NONE }, { real: real({ kg: 0 }) }, undefined],
  [
    "repetitions far over the plan",
    { done: "part", real: NONE },
    { real: real({ reps: 150 }) },
    ["reps", "more", 150],
  ],
  ["a few more", { done: "yes", real: NONE }, { real: real({ reps: 20 }) }, undefined],
  ["thirty sets", { done: "yes", real: NONE }, { real: real({ sets: 30 }) }, ["sets", "more", 30]],
  [
    "0 sets of what is done",
    { done: "yes", real: NONE },
    { real: real({ sets: 0 }) },
    ["sets", "none", 0],
  ],
  [
    "done, with 0 sets",
    { done: "no", real: real({ sets: 0 }) },
    { done: "yes" },
    ["sets", "none", 0],
  ],
  [
    "part of it, with 0 repetitions",
    { done: "no", real: real({ reps: 0 }) },
    { done: "part" },
    ["reps", "none", 0],
  ],
  ["not done, with 0 sets", { done: "yes", real: real({ sets: 0 }) }, { done: "no" }, undefined],
  [
    "a step from what was asked about",
    { done: "yes", real: real({ kg: 400 }) },
    { real: real({ kg: 400.5 }) },
    undefined,
  ],
  [
    "another nought from there",
    { done: "yes", real: real({ reps: 40 }) },
    { real: real({ reps: 400 }) },
    ["reps", "more", 400],
  ],
  [
    "something else than what was asked about",
    { done: "yes", real: real({ kg: 400, sets: 0 }) },
    { done: "part" },
    undefined,
  ],
];

test.each(ROWS)("%s", (_, before, change, found) => {
  const odd = oddOf(before, change, PLAN);
  expect(odd && [odd.amount, odd.kind, odd.wrote]).toEqual(found);
  if (odd) expect(odd.planned).toBe(PLAN[odd.amount]);
});

test("what has no planned amount is not asked about", () => {
  expect(oddOf({ done: "yes", real: NONE }, { real: real({ reps: 400 }) }, NONE)).toBeUndefined();
});
