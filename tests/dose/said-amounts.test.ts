/** How sets, repetitions and holds came about, as the clinician reads it; worked out by hand. */
import { describe, expect, test } from "vitest";
import type { ProvenanceNumber } from "../../src/dose/types.ts";
import type { ExerciseInput } from "./fixtures.ts";
import { dosed, type Fields, free, held, holdOf, press, repsOf, said, thirty } from "./said.ts";

const best = (target: string, fields: Fields = {}, more: Partial<ExerciseInput> = {}) =>
  dosed(held, { target: `${target} of best hold`, ...fields }, more);
const most = (fields: Fields, more: Partial<ExerciseInput> = {}) =>
  dosed(free, { target: "70 % of most reps", ...fields }, more);
const twentyFive = { measures: [repsOf("free", "left", "0 kg", 25)] };
const ofHold = (...seconds: string[]) => ({
  measures: seconds.map((time, index) => holdOf(index === 0 ? "left" : "right", time)),
});
type Row = readonly [
  name: string,
  number: ProvenanceNumber,
  exercise: ExerciseInput,
  plan: Fields,
  lines: readonly string[],
];

describe("a hold", () => {
  test.each<Row>([
    [
      "of the weaker side",
      "hold_s",
      best("70 %", {}, { side: "each" }),
      ofHold("65 s", "50 s"),
      [
        "measure: 50 s held without added load on the right, measured on 2026-11-20. [50 s] (plan.md:29)",
        "limit: Both sides are dosed by the weaker one. [50]",
        "target: 70 % of best hold is 35 s. [35 s] (protocol.md:10)",
      ],
    ],
    [
      "of the first, where it is the weaker",
      "hold_s",
      best("70 %", {}, { side: "each" }),
      ofHold("50 s", "65 s"),
      [
        "measure: 50 s held without added load on the left, measured on 2026-11-20. [50 s] (plan.md:23)",
        "limit: Both sides are dosed by the weaker one. [50]",
        "target: 70 % of best hold is 35 s. [35 s] (protocol.md:10)",
      ],
    ],
    [
      "stated with the target, and less",
      "hold_s",
      best("70 %", { hold: "40 s" }),
      ofHold("2 min"),
      [
        "measure: 2 min held without added load on the left, measured on 2026-11-20. [120 s] (plan.md:23)",
        "target: 70 % of best hold is 84 s. [84 s] (protocol.md:10)",
        "stated: A hold of 40 s, stated by the protocol. [40 s] (protocol.md:10)",
      ],
    ],
    [
      "stated with the target, and more",
      "hold_s",
      best("70 %", { hold: "40 s" }),
      ofHold("50 s"),
      [
        "stated: A hold of 40 s, stated by the protocol. [40 s] (protocol.md:10)",
        "measure: 50 s held without added load on the left, measured on 2026-11-20. [50 s] (plan.md:23)",
        "target: 70 % of best hold is 35 s. [35 s] (protocol.md:10)",
      ],
    ],
    [
      "stated with the target, and as much",
      "hold_s",
      best("80 %", { hold: "40 s" }),
      ofHold("50 s"),
      [
        "measure: 50 s held without added load on the left, measured on 2026-11-20. [50 s] (plan.md:23)",
        "target: 80 % of best hold is 40 s. [40 s] (protocol.md:10)",
        "stated: A hold of 40 s, stated by the protocol. [40 s] (protocol.md:10)",
      ],
    ],
    [
      "stated by the plan",
      "hold_s",
      best("70 %", {}, { redose: { hold: 60 } }),
      ofHold("50 s"),
      [
        "measure: 50 s held without added load on the left, measured on 2026-11-20. [50 s] (plan.md:23)",
        "target: 70 % of best hold is 35 s. [35 s] (protocol.md:10)",
        "stated: A hold of 60 s, stated by the plan. [60 s] (plan.md:30)",
      ],
    ],
    [
      "less than a second",
      "hold_s",
      best("70 %"),
      ofHold("1 s"),
      [
        "measure: 1 s held without added load on the left, measured on 2026-11-20. [1 s] (plan.md:23)",
        "target: 70 % of best hold is 0.7 s. [0.7 s] (protocol.md:10)",
        "rounding: Rounded down to 0 s. [0 s]",
      ],
    ],
    [
      "without a target",
      "hold_s",
      dosed(held, {}),
      {},
      ["stated: A hold of 30 s, stated by the card. [30 s] (card.md:20)"],
    ],
  ])("%s: %s", (_name, number, exercise, plan, lines) =>
    expect(said(exercise, plan).lines(number)).toEqual(lines),
  );
});

describe("sets and repetitions", () => {
  test.each<Row>([
    [
      "a repetition maximum",
      "reps",
      dosed(press, { target: "8 RM" }),
      thirty,
      [
        "stated: A target of 8 RM means 8 repetitions, stated by the protocol. [8] (protocol.md:10)",
      ],
    ],
    [
      "a repetition maximum held instead",
      "reps",
      dosed(press, { target: "8 RM", reps: undefined, time: "30 s" }),
      thirty,
      [],
    ],
    [
      "the load of a repetition maximum for other repetitions",
      "reps",
      dosed(press, { target: "8 RM", reps: 6 }),
      thirty,
      ["stated: 6 repetitions, stated by the protocol. [6] (protocol.md:10)"],
    ],
    [
      "a share of most repetitions",
      "reps",
      most({}),
      twentyFive,
      [
        "measure: 25 repetitions without added load on the left, measured on 2026-11-20. [25 repetitions] (plan.md:23)",
        "target: 70 % of most reps is 17.5 repetitions. [17.5 repetitions] (protocol.md:10)",
        "rounding: Rounded down to 17 repetitions. [17 repetitions]",
      ],
    ],
    [
      "the lower of share and list",
      "reps",
      most({ reps: [20, 12, 9] }),
      twentyFive,
      [
        "stated: 20, 12, 9 repetitions, stated by the protocol. [20] (protocol.md:10)",
        "measure: 25 repetitions without added load on the left, measured on 2026-11-20. [25 repetitions] (plan.md:23)",
        "target: 70 % of most reps is 17.5 repetitions. [17.5 repetitions] (protocol.md:10)",
        "rounding: Rounded down to 17 repetitions. [17 repetitions]",
      ],
    ],
    [
      "of the plan",
      "reps",
      most({}, { redose: { reps: [{ low: 20, high: 20 }] } }),
      twentyFive,
      [
        "measure: 25 repetitions without added load on the left, measured on 2026-11-20. [25 repetitions] (plan.md:23)",
        "target: 70 % of most reps is 17.5 repetitions. [17.5 repetitions] (protocol.md:10)",
        "rounding: Rounded down to 17 repetitions. [17 repetitions]",
        "stated: 20 repetitions, stated by the plan. [20] (plan.md:30)",
      ],
    ],
    [
      "none left",
      "reps",
      most({}),
      { measures: [repsOf("free", "left", "0 kg", 1)] },
      [
        "measure: 1 repetition without added load on the left, measured on 2026-11-20. [1 repetitions] (plan.md:23)",
        "target: 70 % of most reps is 0.7 repetitions. [0.7 repetitions] (protocol.md:10)",
        "rounding: Rounded down to 0 repetitions. [0 repetitions]",
      ],
    ],
    [
      "sets as stated",
      "sets",
      dosed(free, {}),
      {},
      ["stated: 3 sets, stated by the protocol. [3] (protocol.md:10)"],
    ],
    [
      "as many sets as numbers",
      "sets",
      dosed(free, { sets: undefined, reps: [5, 4] }),
      {},
      [
        "stated: 2 sets, one for each number of repetitions, stated by the protocol. [2] (protocol.md:10)",
      ],
    ],
    [
      "one set",
      "sets",
      dosed(free, { sets: 1 }),
      {},
      ["stated: 1 set, stated by the protocol. [1] (protocol.md:10)"],
    ],
  ])("%s: %s", (_name, number, exercise, plan, lines) =>
    expect(said(exercise, plan).lines(number)).toEqual(lines),
  );

  test.each([
    [
      "two thirds of three sets",
      { reps: [12, 10, 8] },
      [
        "stated: 3 sets, stated by the protocol. [3] (protocol.md:10)",
        "limit: A first week back after more than a week away: 67 % of 3 sets, rounded down, one at least: 2 sets. [2] (the clinic's week: ease_after_away (common practice))",
      ],
      ["sum: 2 sets of 12, 10 make 22 repetitions. [22]"],
    ],
    [
      "one stays",
      { sets: 1 },
      ["stated: 1 set, stated by the protocol. [1] (protocol.md:10)"],
      ["sum: 1 set of 10 makes 10 repetitions. [10]"],
    ],
  ])("a first week back: %s", (_name, fields, sets, total) => {
    const { lines } = said(dosed(free, fields), {}, {}, [1]);
    expect(lines("sets")).toEqual(sets);
    expect(lines("reps_total")).toEqual(total);
  });
});

describe("the numbers themselves", () => {
  test.each([
    ["the lower of hold and share", best("70 %", { hold: "40 s" }), ofHold("50 s"), 35],
    ["the lower of share and hold", best("70 %", { hold: "40 s" }), ofHold("2 min"), 40],
    ["never less than a second", best("70 %", { hold: "40 s" }), ofHold("1 s"), 1],
  ])("a hold: %s", (_name, exercise, plan, holdS) => {
    expect(said(exercise, plan).bout.holdS).toBe(holdS);
  });

  test.each([
    ["the lower end stays under the share", most({ reps: "6-20" }), twentyFive, 6, 17],
    ["both ends under the share", most({ reps: "6-8" }), twentyFive, 6, 8],
    ["both ends above it", most({ reps: "18-20" }), twentyFive, 17, 17],
  ])("repetitions: %s", (_name, exercise, plan, low, high) => {
    expect(said(exercise, plan).bout.reps).toEqual(Array(3).fill({ low, high }));
  });

  test.each([
    [3, "67 %", 2, 3],
    [4, "50 %", 2, 4],
    [2, "50 %", 1, 2],
    [1, "50 %", 1, undefined],
  ])("%d sets, in a first week back %s of them", (stated, share, sets, usualSets) => {
    const clinic = { week: { ease_after_away: share } };
    const { bout } = said(dosed(free, { sets: stated }), {}, clinic, [1]);
    expect([bout.sets, bout.usualSets]).toEqual([sets, usualSets]);
    const usual = said(dosed(free, { sets: stated }), {}, clinic).bout;
    expect([usual.sets, usual.usualSets]).toEqual([stated, undefined]);
  });
});
