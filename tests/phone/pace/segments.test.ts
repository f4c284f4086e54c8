/** What an exercise is made of, and that it lasts as long as the dose says. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { SessionBout } from "../../../src/compose/session-model.ts";
import { boutClock, type SetOfWork, setSeconds } from "../../../src/dose/time.ts";
import { segmentsOf } from "../../../src/phone/pace/segments.ts";
import { anyBout, bout, reps, row } from "./support.ts";

const tempo = { lower: 3, bottom: 0, lift: 2, top: 1 } as const;

const ROWS: [string, Partial<SessionBout>, string[]][] = [
  [
    "a tempo, the lift first, the rest ending in the count",
    { sets: 2, reps: reps(2, 2), tempo, restS: 90 },
    [
      ...["ready 5", "lift #1 2", "top #1 1", "lower #1 3", "lift #2 2", "top #2 1", "lower #2 3"],
      ...["rest 85", "ready 5"],
      ...["lift #1 2", "top #1 1", "lower #1 3", "lift #2 2", "top #2 1", "lower #2 3"],
    ],
  ],
  [
    "a tempo, the lowering left",
    { reps: reps(1, 1), tempo: { ...tempo, bottom: 2 }, first: "lower" },
    ["ready 5", "lower #1 3", "bottom #1 2", "lift #1 2", "top #1 1"],
  ],
  [
    "a part as fast as is safe",
    { reps: reps(1, 1), tempo: { ...tempo, lift: "X" }, fastS: 0.5 },
    ["ready 5", "lift #1 0.5", "top #1 1", "lower #1 3"],
  ],
  [
    "repetitions held, with rests between them",
    { reps: reps(1, 3), holdS: 10, restRepsS: 5 },
    ["ready 5", "hold #1 10", "rest-reps #1 5", "hold #2 10", "rest-reps #2 5", "hold #3 10"],
  ],
  [
    "a hold at the top of a lift",
    { reps: reps(1, 1), tempo, holdS: 5 },
    ["ready 5", "lift #1 2", "top #1 1", "hold #1 5", "lower #1 3"],
  ],
  [
    "a hold at the bottom where the lowering is left",
    { reps: reps(1, 1), tempo, holdS: 5, first: "lower" },
    ["ready 5", "lower #1 3", "hold #1 5", "lift #1 2", "top #1 1"],
  ],
  ["a set held once", { sets: 1, holdS: 45 }, ["ready 5", "hold 45"]],
  [
    "both sides in turn, and then the rest",
    { sets: 2, side: "each", holdS: 30, restS: 60 },
    [
      ...["ready 5", "hold 30", "other-side 5", "ready 5", "hold 30", "rest 55"],
      ...["ready 5", "hold 30", "other-side 5", "ready 5", "hold 30"],
    ],
  ],
  [
    "no rest: still time to get ready",
    { sets: 2, timeS: 30 },
    ["ready 5", "work 30", "ready 5", "work 30"],
  ],
  ["repetitions without a tempo", { sets: 1, reps: reps(1, 12, 8) }, ["ready 5", "reps ?"]],
  [
    "repetitions without a tempo, with rests between them",
    { reps: reps(1, 2), restRepsS: 20 },
    ["ready 5", "reps #1 ?", "rest-reps #1 20", "reps #2 ?"],
  ],
  ["a distance", { distanceM: 20 }, ["ready 5", "work ?"]],
  [
    "a distance, several times",
    { distanceM: 20, reps: reps(1, 2) },
    ["ready 5", "work #1 ?", "work #2 ?"],
  ],
  [
    "runs with walks between them",
    { sets: 3, running: true, timeS: 60, restS: 90 },
    ["ready 5", "run 60", "walk 90", "run 60", "walk 90", "run 60"],
  ],
  [
    "runs and walks in turn, the last walk too",
    { running: true, turns: { work: 180, easy: 120, times: 2 } },
    ["ready 5", "run #1 180", "walk #1 120", "run #2 180", "walk #2 120"],
  ],
  [
    "two sets of turns of another kind",
    { sets: 2, restS: 60, turns: { work: 20, easy: 10, times: 2 } },
    [
      ...["ready 5", "work #1 20", "easy #1 10", "work #2 20", "easy #2 10", "rest 55"],
      ...["ready 5", "work #1 20", "easy #1 10", "work #2 20", "easy #2 10"],
    ],
  ],
  [
    "nothing but a number of sets",
    { sets: 2, restS: 3 },
    ["ready 5", "reps ?", "ready 5", "reps ?"],
  ],
  [
    "a tempo of nothing",
    { reps: reps(1, 4), tempo: { lower: 0, bottom: 0, lift: 0, top: 0 } },
    ["ready 5", "reps ?"],
  ],
];

describe("the parts of an exercise", () => {
  test.each(ROWS)("%s", (_, changes, expected) => {
    expect(row(segmentsOf(bout(changes)))).toEqual(expected);
  });

  test("only the first sets, each with its own repetitions", () => {
    const three = bout({ sets: 3, reps: [12, 10, 8].map((high) => ({ low: high - 2, high })) });
    const segments = segmentsOf(three, 2, { readyS: 0 });
    expect(segments).toMatchObject([
      { kind: "reps", set: 1, sets: 2, reps: 12, enough: 10, side: undefined },
      { kind: "reps", set: 2, sets: 2, reps: 10, enough: 8 },
    ]);
  });

  test("sides, and the set that a rest follows", () => {
    const each = bout({ sets: 2, side: "each", holdS: 9, restS: 60 });
    const seen = segmentsOf(each).map(({ kind, set, side }) => `${kind} ${set} ${side ?? "-"}`);
    expect(seen).toEqual([
      ...["ready 1 left", "hold 1 left", "other-side 1 right", "ready 1 right", "hold 1 right"],
      ...["rest 1 -", "ready 2 left", "hold 2 left"],
      ...["other-side 2 right", "ready 2 right", "hold 2 right"],
    ]);
  });
});

/** The work of each set, as `workOfSets` has it. */
function work({ sets, reps: stated, ...rest }: SessionBout): SetOfWork[] {
  return Array.from({ length: sets }, (_, index) => ({ ...rest, reps: stated?.[index]?.high }));
}

/** Whether the clock counts what a set takes just as the client is led through it. */
function isCounted({ timeS, holdS, distanceM, reps: stated }: SessionBout): boolean {
  if (timeS !== undefined) return timeS > 0 && stated === undefined;
  return distanceM === undefined && (stated !== undefined || holdS !== undefined);
}

const secondsOf = (segments: readonly { readonly seconds: number | undefined }[]) =>
  segments.reduce((sum, { seconds = 0 }) => sum + seconds, 0);

describe("for every exercise", () => {
  test("no part is without length, and sets, sides and repetitions come in order", () => {
    fc.assert(
      fc.property(anyBout, (each) => {
        const segments = segmentsOf(each);
        expect(segments.every(({ seconds }) => seconds === undefined || seconds > 0)).toBe(true);
        const order = segments.map(
          ({ set, side, rep, kind }) =>
            set * 1e6 +
            (kind === "rest" || (kind === "walk" && rep === undefined) ? 9e5 : 0) +
            (side === "right" ? 1e5 : 0) +
            (rep ?? 0) * 10,
        );
        expect(order).toEqual(order.toSorted((a, b) => a - b));
      }),
    );
  });

  test("timed work lasts as long as `setSeconds` says", () => {
    fc.assert(
      fc.property(anyBout, (each) => {
        fc.pre(isCounted(each));
        const moves = segmentsOf(each).filter(
          ({ kind }) => !["ready", "rest", "rest-reps", "walk", "other-side"].includes(kind),
        );
        if (moves.some(({ seconds }) => seconds === undefined)) return;
        const sides = each.side === "each" ? 2 : 1;
        const planned = work(each).reduce((sum, set) => sum + setSeconds(set, each.fastS), 0);
        expect(secondsOf(moves)).toBeCloseTo(sides * planned, 6);
      }),
      { numRuns: 500 },
    );
  });

  test("all of it lasts as long as `boutClock` says, but for what is said to be extra", () => {
    fc.assert(
      fc.property(anyBout, (each) => {
        fc.pre(isCounted(each));
        const segments = segmentsOf(each);
        if (segments.some(({ seconds }) => seconds === undefined)) return;
        const sides = each.side === "each" ? 2 : 1;
        const { restS = 0, restRepsS = 0, sets, running } = each;
        const clock = boutClock(
          { sets: work(each), sides, restS, restRepsS },
          { fast_part: each.fastS, last_rest: false },
        );
        const extra =
          5 + (sides - 1) * sets * 10 + (running ? 0 : (sets - 1) * Math.max(0, 5 - restS));
        expect(secondsOf(segments)).toBeCloseTo(clock + extra, 6);
      }),
      { numRuns: 500 },
    );
  });
});
