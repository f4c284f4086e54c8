/** One statement of a dose over another: what stays and what goes, as the table of `mergeDose` says. */
import { describe, expect, test } from "vitest";
import { type DosePart, dosePart } from "../../src/prescription/fields.ts";
import { mergeDose, mergeLayers } from "../../src/prescription/merge.ts";
import { serialiseDose } from "../../src/prescription/serialise.ts";

type Written = Readonly<Record<string, unknown>>;

const read = (dose: Written): DosePart => dosePart.parse(dose);

const COUNTED = { sets: 3, reps: 12, tempo: "3-0-3-0", rest_reps: "5 s" };
const HELD = { sets: 3, reps: 10, hold: "10 s", rest_reps: "10 s" };
const TIMED = { sets: 3, time: "60 s" };
const FAR = { sets: 3, distance: "20 m" };
const RUNS = { sets: 2, reps: 5, distance: "80 m", rest_reps: "30 s" };
const TURNS = { sets: 1, turns: { work: "3 min", easy: "2 min", times: 6 } };

const TABLE: readonly (readonly [string, Written, Written, Written])[] = [
  ["a time over repetitions", COUNTED, { time: "60 s" }, { sets: 3, time: "1 min" }],
  ["a time over holds", HELD, { time: "60 s" }, { sets: 3, time: "1 min" }],
  ["a time over a distance", RUNS, { time: "60 s" }, { sets: 2, time: "1 min" }],
  ["a time over turns", TURNS, { time: "60 s" }, { sets: 1, time: "1 min" }],
  ["turns over repetitions", COUNTED, { turns: TURNS.turns }, { ...TURNS, sets: 3 }],
  ["turns over a time", TIMED, { turns: TURNS.turns }, { ...TURNS, sets: 3 }],
  ["a distance over repetitions", COUNTED, { distance: "20 m" }, FAR],
  ["a distance over holds", HELD, { distance: "20 m" }, FAR],
  ["a distance over a time", TIMED, { distance: "20 m" }, FAR],
  [
    "a distance over another that is gone several times",
    RUNS,
    { distance: "100 m" },
    { ...RUNS, distance: "100 m" },
  ],
  ["a hold over repetitions holds each", COUNTED, { hold: "5 s" }, { ...COUNTED, hold: "5 s" }],
  ["a hold over another", HELD, { hold: "20 s" }, { ...HELD, hold: "20 s" }],
  ["a hold over a time", TIMED, { hold: "20 s" }, { sets: 3, hold: "20 s" }],
  ["a hold over runs", RUNS, { hold: "20 s" }, { sets: 2, hold: "20 s" }],
  ["a hold over turns", TURNS, { hold: "20 s" }, { sets: 1, hold: "20 s" }],
  ["repetitions over repetitions", COUNTED, { reps: "6-8" }, { ...COUNTED, reps: "6-8" }],
  ["repetitions over holds", HELD, { reps: 6 }, { ...HELD, reps: 6 }],
  ["repetitions over runs", RUNS, { reps: 4 }, { ...RUNS, reps: 4 }],
  ["repetitions over one distance", FAR, { reps: 10 }, { sets: 3, reps: 10 }],
  ["repetitions over a time", TIMED, { reps: 10 }, { sets: 3, reps: 10 }],
  ["repetitions over turns", TURNS, { reps: 10 }, { sets: 1, reps: 10 }],
  [
    "one number a set says how many sets",
    COUNTED,
    { reps: [12, 10] },
    { ...COUNTED, sets: 2, reps: [12, 10] },
  ],
  [
    "unless the same statement says it",
    COUNTED,
    { sets: 3, reps: [12, 10] },
    { ...COUNTED, reps: [12, 10] },
  ],
  [
    "a share of the best hold over a time",
    TIMED,
    { target: "70 % of best hold" },
    { sets: 3, target: "70 % of best hold" },
  ],
  [
    "a time over a share of the best hold",
    { sets: 3, target: "70 % of best hold" },
    { time: "60 s" },
    { sets: 3, time: "1 min" },
  ],
  [
    "a time over a share of the most repetitions",
    { sets: 3, target: "70 % of most reps" },
    { time: "60 s" },
    { sets: 3, time: "1 min" },
  ],
  [
    "a time over a load aimed at keeps the load",
    { ...COUNTED, target: "12 RM" },
    { time: "60 s" },
    { sets: 3, time: "1 min", target: "12 RM" },
  ],
  ["how often", { sets: 3, per_week: 3 }, { per_day: 2 }, { sets: 3, per_day: 2 }],
  ["how often, every so many days", { per_day: 2 }, { every: "2 days" }, { every: "2 days" }],
  [
    "what does not say what a set is",
    COUNTED,
    { rest: "1 min", effort: 5 },
    { ...COUNTED, rest: "1 min", effort: 5 },
  ],
];

describe("one part over another", () => {
  test.each(TABLE)("%s", (_name, base, over, expected) => {
    const [below, above] = [read(base), read(over)];
    expect(serialiseDose(mergeDose(below, above))).toEqual(serialiseDose(read(expected)));
    expect(below).toEqual(read(base));
  });

  test.each(TABLE)("as layers, with who stated what: %s", (_name, base, over, expected) => {
    const layers = [
      { by: "card" as const, part: read({ sets: 9, ...base }), placeOf: place("card.md") },
      { by: "plan" as const, part: read(over), placeOf: place("plan.md") },
    ];
    const merged = mergeLayers(layers);
    expect(serialiseDose(merged?.dose ?? {})).toEqual(
      serialiseDose(read({ sets: 9, ...expected })),
    );
    expect(Object.keys(merged?.stated ?? {}).sort()).toEqual(
      Object.keys(merged?.dose ?? {}).sort(),
    );
    for (const field of Object.keys(over) as (keyof DosePart)[]) {
      expect(merged?.stated[field]).toMatchObject({ by: "plan", place: { file: "plan.md" } });
    }
  });
});

test("no sets, no dose", () => {
  expect(
    mergeLayers([{ by: "card", part: read({ reps: 3 }), placeOf: place("card.md") }]),
  ).toBeUndefined();
});

test("three layers: a tempo does not outlive the time that replaced it", () => {
  const part = (dose: Written, by: "card" | "protocol" | "plan") => ({
    by,
    part: read(dose),
    placeOf: place(`${by}.md`),
  });
  const merged = mergeLayers([
    part(COUNTED, "card"),
    part({ time: "60 s" }, "protocol"),
    part({ reps: 8 }, "plan"),
  ]);
  expect(serialiseDose(merged?.dose ?? {})).toEqual({ sets: 3, reps: 8 });
});

function place(file: string) {
  return () => ({ file, line: 1, column: 1 });
}
