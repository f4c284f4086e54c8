/** What the pace counted of an exercise, as amounts of the diary. */
import { expect, test } from "vitest";
import { emptyEntry, withExercise } from "../../../src/phone/day/entries.ts";
import { withPaced } from "../../../src/phone/day/paced.ts";
import { pacedOf } from "../../../src/phone/pace/amounts.ts";
import type { SetDone } from "../../../src/phone/pace/done.ts";
import { session } from "../support.ts";

const set = (n: number, change: Partial<SetDone> = {}): SetDone => ({
  set: n,
  side: undefined,
  reps: 10,
  seconds: 40,
  whole: true,
  ...change,
});
const short = { reps: 6, whole: false };
const none = { reps: 0, seconds: 0, whole: false };

test.each([
  ["all", [set(1), set(2), set(3)], { sets: 3, reps: undefined, whole: true }],
  ["two of three", [set(1), set(2)], { sets: 2, reps: undefined, whole: false }],
  ["one set short", [set(1), set(2, short), set(3)], { sets: 3, reps: 6, whole: false }],
  [
    "two sides of a set",
    [set(1, { side: "left" }), set(1, { side: "right" })],
    { sets: 1, reps: undefined, whole: false },
  ],
  [
    "a set that was skipped",
    [set(1), set(2, none), set(3)],
    { sets: 2, reps: undefined, whole: false },
  ],
  ["nothing", [], { sets: 0, reps: undefined, whole: false }],
])("%s", (_, done, paced) => {
  expect(pacedOf(done, 3)).toEqual(paced);
});

test("an exercise is done, tried or not, and keeps the load that was told", () => {
  const empty = emptyEntry(session("2026-11-30"), "b", false, "");
  const lighter = withExercise(
    empty,
    "rise",
    { done: "part", real: { sets: undefined, reps: undefined, kg: 5 } },
    "2026-11-30",
  );
  const told = (sets: number, whole: boolean, pain?: number) => {
    const known = pain === undefined ? lighter : withExercise(lighter, "rise", { pain }, "");
    const entry = withPaced(known, "rise", { sets, reps: undefined, whole }, "2026-12-01");
    const [rise] = entry.exercises;
    return [rise?.done, rise?.real.sets, rise?.real.kg, entry.doneOn];
  };
  expect(told(3, true)).toEqual(["yes", undefined, 5, "2026-11-30"]);
  expect(told(1, false)).toEqual(["part", 1, 5, "2026-11-30"]);
  expect(told(0, false)).toEqual(["no", 0, 5, undefined]);
  expect(told(0, false, 4)).toEqual(["part", 0, 5, "2026-11-30"]);
});
