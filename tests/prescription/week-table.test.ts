/** Week tables and rules: which dose holds in which week, and what is wrong with a table. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { DosePart } from "../../src/prescription/fields.ts";
import { expandWeeks } from "../../src/prescription/week-table.ts";
import { protocolExercise } from "../../src/protocols/schema.ts";

const expand = (weeks: number, says: Record<string, unknown>) =>
  expandWeeks(protocolExercise.parse({ card: "exercise", ...says }), weeks);

const show = (dose: DosePart | undefined) =>
  dose && `${dose.sets}×${dose.reps?.map((reps) => reps.high).join(",")}`;

const showAll = (weeks: number, rule: Record<string, unknown>) =>
  expand(weeks, { rule }).doses.map(show);

describe("week tables", () => {
  test("nothing but a dose holds in every week", () => {
    const { doses, problems } = expand(3, { dose: { sets: 3, reps: 10 } });
    expect(doses.map(show)).toEqual(["3×10", "3×10", "3×10"]);
    expect(problems).toEqual([]);
  });
  test("a row holds over the dose, field by field", () => {
    const { doses } = expand(3, {
      dose: { sets: 3, reps: 10, rest: "1 min" },
      weeks: { 1: {}, "2-3": { reps: 12 } },
    });
    expect(doses.map(show)).toEqual(["3×10", "3×12", "3×12"]);
    expect(doses.every((dose) => dose?.rest === 60)).toBe(true);
  });
  test("a row that says how often replaces what the dose says of it", () => {
    const { doses } = expand(2, {
      dose: { sets: 3, reps: 10, per_week: 3 },
      weeks: { 1: { per_day: 2 }, 2: {} },
    });
    expect(doses[0]).toMatchObject({ per_day: 2 });
    expect(doses[0]).not.toHaveProperty("per_week");
    expect(doses[1]).toMatchObject({ per_week: 3 });
  });
  test.each([
    [
      "a gap",
      { 1: {}, "4": {} },
      4,
      [{ kind: "gap", key: undefined, weeks: { first: 2, last: 3 } }],
    ],
    [
      "a gap at the end",
      { "1-2": {} },
      4,
      [{ kind: "gap", key: undefined, weeks: { first: 3, last: 4 } }],
    ],
    [
      "an overlap",
      { "1-3": {}, "3-4": {} },
      4,
      [{ kind: "overlap", key: "3-4", weeks: { first: 3, last: 3 } }],
    ],
    ["outside", { "1-6": {} }, 4, [{ kind: "outside", key: "1-6", weeks: { first: 5, last: 6 } }]],
    [
      "wholly outside",
      { "1-4": {}, 9: {} },
      4,
      [{ kind: "outside", key: "9", weeks: { first: 9, last: 9 } }],
    ],
    ["none leaves no gap", { "1-2": "none", 3: {}, 4: "none" }, 4, []],
    [
      "no week at all",
      { "1-4": "none" },
      4,
      [{ kind: "never", key: undefined, weeks: { first: 1, last: 4 } }],
    ],
    ["empty", {}, 2, [{ kind: "gap", key: undefined, weeks: { first: 1, last: 2 } }]],
  ] as const)("%s", (_name, table, weeks, expected) => {
    const { problems, doses } = expand(weeks, { dose: { sets: 1, reps: 1 }, weeks: table });
    expect(problems).toMatchObject(expected);
    expect(problems).toHaveLength(expected.length);
    expect(doses).toHaveLength(weeks);
  });
  test.each([
    [
      "a dose that is complete alone holds in every week without a row",
      "1",
      ["2×8", "3×10", "3×10"],
    ],
    ["also before the first row", "3", ["3×10", "3×10", "2×8"]],
    ["but not where the table says none", "1-2", ["2×8", "2×8", undefined], { 3: "none" }],
  ] as const)("%s", (_name, key, expected, more?: Record<string, "none">) => {
    const { doses, problems } = expand(3, {
      dose: { sets: 3, reps: 10, per_week: 3 },
      weeks: { [key]: { sets: 2, reps: 8 }, ...more },
    });
    expect(doses.map(show)).toEqual(expected);
    expect(problems).toEqual([]);
  });
  test.each([
    ["no sets", { reps: 10, per_week: 3 }],
    ["nothing that a set is", { sets: 3, per_week: 3 }],
    ["not how often", { sets: 3, reps: 10 }],
  ])("a dose with %s leaves a gap", (_name, dose) => {
    const { problems } = expand(3, { dose, weeks: { "1-2": {} } });
    expect(problems).toMatchObject([{ kind: "gap", weeks: { first: 3, last: 3 } }]);
  });
  test("of two rows for a week the first in order of weeks holds", () => {
    const weeks = { "3-4": { reps: 9 }, "1-3": { reps: 5 } };
    expect(expand(4, { dose: { sets: 1 }, weeks }).doses.map(show)).toEqual([
      "1×5",
      "1×5",
      "1×5",
      "1×9",
    ]);
  });
  test("a table and a rule: the table holds", () => {
    const rule = { from: { sets: 2, reps: 8 }, to: { sets: 3, reps: 15 } };
    const { doses, problems } = expand(1, { weeks: { 1: { sets: 1, reps: 4 } }, rule });
    expect(doses.map(show)).toEqual(["1×4"]);
    expect(problems).toMatchObject([{ kind: "both" }]);
  });
});

describe("rules", () => {
  test.each([
    [
      "repetitions first, then a set that starts with less",
      8,
      { from: { sets: 2, reps: 8 }, to: { sets: 3, reps: 15 } },
      ["2×8", "2×9", "2×11", "2×13", "2×15", "3×11", "3×13", "3×15"],
    ],
    [
      "one week is the goal",
      1,
      { from: { sets: 2, reps: 8 }, to: { sets: 3, reps: 15 } },
      ["3×15"],
    ],
    [
      "two weeks are start and goal",
      2,
      { from: { sets: 2, reps: 8 }, to: { sets: 3, reps: 15 } },
      ["2×8", "3×15"],
    ],
    [
      "more weeks than steps",
      5,
      { from: { sets: 2, reps: 8 }, to: { sets: 2, reps: 10 } },
      ["2×8", "2×8", "2×9", "2×9", "2×10"],
    ],
    [
      "no change",
      3,
      { from: { sets: 2, reps: 8 }, to: { sets: 2, reps: 8 } },
      ["2×8", "2×8", "2×8"],
    ],
    [
      "sets alone",
      3,
      { from: { sets: 1, reps: 8 }, to: { sets: 3, reps: 8 } },
      ["1×8", "2×8", "3×8"],
    ],
    [
      "an easier week has one set less",
      7,
      { from: { sets: 3, reps: 8 }, to: { sets: 3, reps: 12 }, easier_every: 4 },
      ["3×8", "3×8", "3×9", "2×9", "3×10", "3×11", "3×12"],
    ],
    [
      "the last week is never an easier one",
      4,
      { from: { sets: 2, reps: 8 }, to: { sets: 2, reps: 10 }, easier_every: 2 },
      ["2×8", "1×8", "2×9", "2×10"],
    ],
    [
      "an easier week of one set has two thirds of its repetitions",
      4,
      { from: { sets: 1, reps: 9 }, to: { sets: 1, reps: 12 }, easier_every: 3 },
      ["1×9", "1×10", "1×6", "1×12"],
    ],
    [
      "a pyramid grows set by set",
      3,
      { from: { sets: 3, reps: [8, 6, 4] }, to: { sets: 3, reps: [12, 10, 8] } },
      ["3×8,6,4", "3×10,8,6", "3×12,10,8"],
    ],
  ] as const)("%s", (_name, weeks, rule, expected) => {
    expect(showAll(weeks, rule)).toEqual(expected);
  });

  test("load comes after repetitions and sets", () => {
    const rule = {
      from: { sets: 3, reps: 8, target: "60 % of 1RM" },
      to: { sets: 3, reps: 10, target: "70 % of 1RM" },
    };
    const { doses } = expand(6, { rule });
    expect(doses.map(show)).toEqual(["3×8", "3×9", "3×10", "3×10", "3×10", "3×10"]);
    const shares = doses.map((dose) =>
      dose?.target && "share" in dose.target ? dose.target.share : 0,
    );
    expect(shares).toEqual([0.6, 0.6, 0.6, 0.62, 0.65, 0.7]);
  });
  test("a falling repetition maximum takes its repetitions along, and never asks for more than it", () => {
    const rule = {
      from: { sets: 3, reps: 15, target: "15 RM" },
      to: { sets: 4, reps: 6, target: "6 RM" },
    };
    const { doses } = expand(12, { rule });
    for (const dose of doses) {
      const most = dose?.target?.kind === "rm" ? dose.target.reps : 0;
      expect(dose?.reps?.[0]?.high).toBeLessThanOrEqual(most);
    }
    expect(show(doses[0])).toBe("3×15");
    expect(show(doses.at(-1))).toBe("4×6");
  });
  test("holds and times grow in whole steps of five", () => {
    const rule = { from: { sets: 3, hold: "20 s" }, to: { sets: 3, hold: "45 s" } };
    const holds = expand(5, { rule }).doses.map((dose) => dose?.hold);
    expect(holds).toEqual([20, 25, 30, 35, 45]);
  });
  test("turns go from walking to running in small steps", () => {
    const rule = {
      from: { sets: 1, turns: { work: "1 min", easy: "2 min", times: 6 } },
      to: { turns: { work: "3 min", easy: "1 min", times: 8 } },
    };
    const seen = expand(5, { rule }).doses.map((dose) => dose?.turns);
    expect(seen.map((turns) => [turns?.work, turns?.easy, turns?.times])).toEqual([
      [60, 120, 6],
      [90, 105, 6],
      [120, 90, 7],
      [150, 75, 7],
      [180, 60, 8],
    ]);
    const easier = expand(3, { rule: { ...rule, easier_every: 2 } }).doses[1]?.turns;
    expect(easier).toEqual({ work: 60, easy: 120, times: 4 });
  });
  test("what cannot be cut into steps changes in the last week", () => {
    const rule = { from: { sets: 3, reps: 8, tempo: "3-0-3-0" }, to: { tempo: "1-0-X-0" } };
    const lowering = expand(3, { rule }).doses.map((dose) => dose?.tempo?.lower);
    expect(lowering).toEqual([3, 3, 1]);
  });
});

describe("properties of rules", () => {
  const ends = fc.record({
    sets: fc.tuple(fc.integer({ min: 1, max: 6 }), fc.integer({ min: 1, max: 6 })),
    reps: fc.tuple(fc.integer({ min: 1, max: 30 }), fc.integer({ min: 1, max: 30 })),
    weeks: fc.integer({ min: 1, max: 30 }),
    easier_every: fc.option(fc.integer({ min: 2, max: 8 }), { nil: undefined }),
  });

  test("bounded by start and goal, the goal in the last week, the same twice", () => {
    fc.assert(
      fc.property(ends, ({ sets, reps, weeks, easier_every }) => {
        const rule = {
          from: { sets: sets[0], reps: reps[0] },
          to: { sets: sets[1], reps: reps[1] },
          ...(easier_every && { easier_every }),
        };
        const { doses } = expand(weeks, { rule });
        expect(doses).toEqual(expand(weeks, { rule }).doses);
        expect(show(doses.at(-1))).toBe(`${sets[1]}×${reps[1]}`);
        for (const dose of doses) {
          const each = dose?.reps?.[0]?.high ?? 0;
          expect(each).toBeLessThanOrEqual(Math.max(...reps));
          expect(each).toBeGreaterThanOrEqual(1);
          expect(dose?.sets).toBeLessThanOrEqual(Math.max(...sets));
          expect(dose?.sets).toBeGreaterThanOrEqual(1);
        }
      }),
    );
  });

  test("where start and goal rise, the sum of repetitions never falls without easier weeks", () => {
    fc.assert(
      fc.property(ends, ({ sets, reps, weeks }) => {
        const [from, to] = [
          { sets: Math.min(...sets), reps: Math.min(...reps) },
          { sets: Math.max(...sets), reps: Math.max(...reps) },
        ];
        const sums = expand(weeks, { rule: { from, to } }).doses.map(
          (dose) => (dose?.sets ?? 0) * (dose?.reps?.[0]?.high ?? 0),
        );
        expect(sums).toEqual([...sums].sort((a, b) => a - b));
      }),
    );
  });
});

describe("properties of tables", () => {
  const spans = fc.array(
    fc.tuple(fc.integer({ min: 1, max: 14 }), fc.integer({ min: 0, max: 5 })),
    {
      maxLength: 8,
    },
  );
  test("each week has one dose or is reported as a gap; no problem, no hole", () => {
    fc.assert(
      fc.property(spans, fc.integer({ min: 1, max: 12 }), (rows, weeks) => {
        const table = Object.fromEntries(
          rows.map(([first, more], index) => [
            more === 0 ? `${first}` : `${first}-${first + more}`,
            { reps: index + 1 },
          ]),
        );
        const { doses, problems } = expand(weeks, { dose: { sets: 1 }, weeks: table });
        const gaps = problems.filter(({ kind }) => kind === "gap");
        const missing = gaps.reduce((sum, { weeks: span }) => sum + span.last - span.first + 1, 0);
        expect(doses.filter((dose) => dose === undefined)).toHaveLength(missing);
        for (const problem of problems)
          expect(problem.weeks.first).toBeLessThanOrEqual(problem.weeks.last);
      }),
    );
  });
});
