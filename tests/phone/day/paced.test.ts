/** What the pace counted of an exercise, as amounts of the diary. */
import { expect, test } from "vitest";
import { emptyEntry, withExercise } from "../../../src/phone/day/entries.ts";
import { withPaced, withPacedSoFar } from "../../../src/phone/day/paced.ts";
import { pacedOf, unsureOf } from "../../../src/phone/pace/amounts.ts";
import type { SetDone } from "../../../src/phone/pace/done.ts";
import { session } from "../support.ts";

const set = (n: number, change: Partial<SetDone> = {}): SetDone => ({
  set: n,
  side: undefined,
  reps: 10,
  seconds: 40,
  whole: true,
  unseen: false,
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

const unseen = { unseen: true };
test.each([
  ["all seen", [set(1), set(2)], undefined],
  ["nothing", [], undefined],
  [
    "the last two unseen",
    [set(1), set(2, unseen), set(3, unseen)],
    [
      { sets: 1, reps: undefined, whole: false },
      { sets: 3, reps: undefined, whole: true },
    ],
  ],
  [
    "one side of the last unseen",
    [set(1), set(2), set(3, { side: "left" }), set(3, { side: "right", ...unseen })],
    [
      { sets: 3, reps: undefined, whole: false },
      { sets: 3, reps: undefined, whole: true },
    ],
  ],
  [
    "all unseen, one of them short",
    [set(1, unseen), set(2, { ...short, ...unseen })],
    [
      { sets: 0, reps: undefined, whole: false },
      { sets: 2, reps: 6, whole: false },
    ],
  ],
])("what is known, and what there is to ask back: %s", (_, done, both) => {
  const unsure = unsureOf(done, 3);
  expect(unsure && [unsure.seen, unsure.all]).toEqual(both);
});

test("what is not known is neither done nor left out, and has no number", () => {
  const empty = emptyEntry(session("2026-11-30"), "b", false, "");
  const told = (sets: number) => {
    const seen = { sets, reps: undefined, whole: false };
    const entry = withPacedSoFar(empty, "rise", seen, "2026-12-01");
    const [rise] = entry.exercises;
    return [rise?.done, rise?.real.sets, entry.doneOn];
  };
  expect(told(0)).toEqual(["part", undefined, "2026-12-01"]);
  expect(told(2)).toEqual(["part", 2, "2026-12-01"]);
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
