/** The step of a load from week to week: what it is measured from, what is said, and which piece makes it. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { doseProgram } from "../../src/dose/program.ts";
import { card, library, program } from "./fixtures.ts";

const press = card({
  id: "press",
  side: "both",
  load: { kind: "weight", with: ["backpack", "dumbbell", "barbell"] },
});
const all = library(press);
type Row = { readonly target?: string; readonly reps?: number | readonly number[] };

const kilos = { have: "backpack", from: "1 kg", up_to: "90 kg", steps: "1 kg" };
const bar = { have: "barbell", bar: "10 kg", plates: ["1.25 kg", "2.5 kg", "5 kg", "10 kg"] };

/** Doses week by week; a week of null has no exercise. The client has 1RM 100 kg, or the test given. */
function dosed(
  rows: readonly (Row | string | null)[],
  equipment: readonly unknown[] = [kilos],
  test = { load: "100 kg", reps: 1 },
) {
  const weeks = Object.fromEntries(
    rows.flatMap((row, index) =>
      row === null ? [] : [[index + 1, typeof row === "string" ? { target: row, reps: 8 } : row]],
    ),
  );
  const { value, faults } = doseProgram(
    program({
      weeks: rows.length,
      exercises: [{ card: press, side: "both", says: { weeks } as never }],
      plan: {
        measures: [{ test: "repetitions", card: "press", side: "both", on: "2026-11-20", ...test }],
        equipment,
      },
    }),
    all,
  );
  const bouts = value.weeks.map(({ bouts: [bout] }) => bout);
  return {
    kg: bouts.map((bout) => bout?.load.kg),
    have: bouts.map((bout) => bout?.load.equipment),
    says: bouts.map((bout) => (bout?.provenance.load_kg ?? []).map(({ says }) => says).join(" ")),
    held: faults.filter(({ code }) => code === "load-held"),
    faults,
  };
}

const of1rm = (...percents: readonly (number | null)[]) =>
  percents.map((percent) => (percent === null ? null : `${percent} % of 1RM`));

describe("what a step is measured from", () => {
  test.each([
    ["the week before", of1rm(40, 60), [40, 44]],
    ["every week anew", of1rm(40, 60, 60), [40, 44, 48]],
    ["a week that is light on purpose is no new start", of1rm(50, 30, 54), [50, 30, 54]],
    ["nor are three of them", of1rm(50, 30, 30, 30, 54), [50, 30, 30, 30, 54]],
    [
      "the last week with the exercise, over weeks without it",
      of1rm(40, null, null, 60),
      [40, undefined, undefined, 44],
    ],
    [
      "over a long gap too",
      of1rm(40, null, null, null, null, null, 60),
      [40, ...Array(5).fill(undefined), 44],
    ],
    [
      "over a long gap the last week alone",
      of1rm(50, 30, null, null, null, null, null, 60),
      [50, 30, ...Array(5).fill(undefined), 33],
    ],
    [
      "five weeks back no longer counts beside lighter ones",
      of1rm(50, 30, 30, 30, 30, 54),
      [50, 30, 30, 30, 30, 33],
    ],
  ])("%s", (_name, rows, kg) => expect(dosed(rows).kg).toEqual(kg));

  // By Epley 40 kg for 15 is as hard as 40 × (1 + 15/30) / (1 + 12/30) = 42.86 kg for 12.
  test.each([
    [
      "fewer repetitions with more load are no step",
      [
        { target: "40 % of 1RM", reps: 15 },
        { target: "46 % of 1RM", reps: 12 },
      ],
      [40, 46],
    ],
    [
      "as far as that and the limit go, 40 × 1.5/1.4 × 1.1",
      [
        { target: "40 % of 1RM", reps: 15 },
        { target: "60 % of 1RM", reps: 12 },
      ],
      [40, 47],
    ],
    [
      "of sets that differ the most repetitions, 15 and then 12",
      [
        { target: "40 % of 1RM", reps: [15, 8, 8] },
        { target: "60 % of 1RM", reps: [12, 8, 8] },
      ],
      [40, 47],
    ],
    ["a week left to feel is no week of 0 kg", [{ reps: 8 }, ...of1rm(60)], [undefined, 60]],
    [
      "more repetitions lower nothing",
      [
        { target: "40 % of 1RM", reps: 8 },
        { target: "60 % of 1RM", reps: 15 },
      ],
      [40, 44],
    ],
    ["a repetition maximum, 15 and then 12", [{ target: "15 RM" }, { target: "12 RM" }], [66, 71]],
  ])("%s", (_name, rows, kg) => expect(dosed(rows).kg).toEqual(kg));

  test("a week whose target nothing made counts as 0 kg: the next step is the lightest load", () => {
    const from = { ...kilos, from: "20 kg" };
    expect(dosed(of1rm(10, 60), [from]).kg).toEqual([undefined, 20]);
  });

  // 0.9 × 75 kg of the body and 100 kg lifted once: 1RM 167.5 kg of load moved.
  describe("with a share of the body, the limit is of the load moved", () => {
    const raise = card({
      id: "raise",
      load: { kind: "body", body_share: 0.9, add: "weight", with: ["backpack"] },
    });
    const raised = (rows: readonly Row[], equipment: unknown) => {
      const weeks = Object.fromEntries(rows.map((row, index) => [index + 1, row]));
      const { value, faults } = doseProgram(
        program({
          weeks: rows.length,
          exercises: [{ card: raise, says: { weeks } as never }],
          plan: {
            measures: [
              {
                test: "repetitions",
                card: "raise",
                side: "left",
                load: "100 kg",
                reps: 1,
                on: "2026-11-20",
              },
            ],
            equipment: [equipment],
          },
        }),
        library(raise),
      );
      const loads = value.weeks.map(({ bouts: [bout] }) => bout?.load.kg);
      const says = value.weeks.at(-1)?.bouts[0]?.provenance.load_kg?.map((step) => step.says);
      return { loads, says: says?.join(" "), told: faults.map(({ message }) => message).join() };
    };
    test("(16 + 67.5) × 1.1 − 67.5 = 24.35 kg", () => {
      const rows = [
        { target: "50 % of 1RM", reps: 8 },
        { target: "70 % of 1RM", reps: 8 },
      ];
      expect(raised(rows, kilos).loads).toEqual([16, 24]);
    });
    test("at like repetitions (16 + 67.5) × 1.5/1.4 − 67.5 = 21.96 kg, and 10 % more of that moved", () => {
      const rows = [
        { target: "50 % of 1RM", reps: 15 },
        { target: "70 % of 1RM", reps: 12 },
      ];
      const { loads, says } = raised(rows, kilos);
      expect(loads).toEqual([16, 30]);
      expect(says).toContain("Week 1 had 16 kg, as hard for 15 repetitions as 21.96 kg for 12;");
    });
    test("a coarse step is 107.5 by 83.5 kg", () => {
      const rows = [
        { target: "50 % of 1RM", reps: 8 },
        { target: "70 % of 1RM", reps: 8 },
      ];
      const { loads, told } = raised(rows, { have: "backpack", loads: ["16 kg", "40 kg"] });
      expect(loads).toEqual([16, 40]);
      expect(told).toContain("the load rises from 16 kg to 40 kg, a step of 28.7 %");
    });
  });

  test("the provenance names the week that was used, and what it is like", () => {
    const { says } = dosed(of1rm(50, 30, 30, 70));
    expect(says[3]).toContain(
      "Week 1 had 50 kg; the clinic lets the load moved grow by at most 10 %",
    );
    const like = dosed([
      { target: "40 % of 1RM", reps: 15 },
      { target: "60 % of 1RM", reps: 12 },
    ]);
    expect(like.says[1]).toContain(
      "Week 1 had 40 kg, as hard for 15 repetitions as 42.86 kg for 12;",
    );
  });

  test("the same card in an overlapping phase counts, whichever phase stands first", () => {
    const says = (weeks: Record<string, Row>) => ({ weeks }) as never;
    const { value } = doseProgram(
      program({
        phases: [
          {
            weeks: 3,
            exercises: [
              { card: press, side: "both", says: says({ 3: { target: "60 % of 1RM", reps: 8 } }) },
            ],
          },
          {
            firstWeek: 2,
            weeks: 1,
            exercises: [
              { card: press, side: "both", says: says({ 1: { target: "40 % of 1RM", reps: 8 } }) },
            ],
          },
        ],
        plan: {
          measures: [
            {
              test: "repetitions",
              card: "press",
              side: "both",
              load: "100 kg",
              reps: 1,
              on: "2026-11-20",
            },
          ],
          equipment: [kilos],
        },
      }),
      all,
    );
    expect(value.weeks.map(({ bouts }) => bouts.map(({ load }) => load.kg))).toEqual([
      [],
      [40],
      [44],
    ]);
  });
});

describe("a load held below its target is said, with both numbers", () => {
  const tested = { load: "40 kg", reps: 10 };
  test("an early light week before 10 RM of 40 kg", () => {
    const rows: Row[] = [
      { target: "30 % of 1RM", reps: 10 },
      ...Array(3).fill({ target: "10 RM" }),
    ];
    const { kg, held } = dosed(rows, [kilos], tested);
    expect(kg).toEqual([16, 17, 18, 19]);
    expect(held).toHaveLength(1);
    expect(held[0]).toMatchObject({ level: "warning", place: { file: "protocol.md" } });
    expect(held[0]?.message).toContain(
      "(weeks 2 to 4): in week 2 it is 17 kg, where the target is 40 kg and the equipment makes 40 kg.",
    );
    expect(held[0]?.message).toContain(
      "at most 10 % at like repetitions, here from 16 kg in week 1.",
    );
    expect(held[0]?.hint).toContain("state the load in kilograms");
  });
  test.each([
    ["one makeable step apart is in the provenance alone", of1rm(40, 45), [40, 44], 0],
    ["two are told", of1rm(40, 46), [40, 44], 1],
    ["a load stated in kilograms is not held", ["20 kg", "40 kg"], [20, 40], 0],
  ])("%s", (_name, rows, kg, count) => {
    const result = dosed(rows);
    expect([result.kg, result.held.length]).toEqual([kg, count]);
    expect(result.says[1]?.includes("Week 1 had")).toBe(kg[1] === 44);
  });
});

describe("one piece of equipment", () => {
  const both = [kilos, bar];
  const dumbbells = (...loads: number[]) => ({
    have: "dumbbell",
    loads: loads.map((kg) => `${kg} kg`),
  });
  test.each([
    // 12.5 kg is the bar's, 13 and 14 kg the backpack's: one step apart.
    [
      "does not swing from backpack to bar and back",
      ["12 kg", "12.6 % of 1RM", "13 % of 1RM"],
      both,
      ["backpack", "backpack", "backpack"],
      [12, 12, 13],
    ],
    [
      "stays with the bar as well",
      ["12.5 % of 1RM", "13.3 % of 1RM", "12.5 % of 1RM"],
      [bar, kilos],
      ["barbell", "barbell", "barbell"],
      [12.5, 12.5, 12.5],
    ],
    [
      "changes where it would cost two steps",
      of1rm(50, 54),
      [dumbbells(50), { ...kilos, from: "51 kg" }],
      ["dumbbell", "backpack"],
      [50, 54],
    ],
    [
      "stays where the piece ends one step short",
      of1rm(20, 22),
      [{ ...kilos, up_to: "20 kg" }, bar],
      ["backpack", "backpack"],
      [20, 20],
    ],
    [
      "changes where the piece makes nothing so light",
      of1rm(50, 20),
      [dumbbells(50), { ...kilos, up_to: "40 kg" }],
      ["dumbbell", "backpack"],
      [50, 20],
    ],
    [
      "never waits for ever on a piece that ends",
      of1rm(20, 30, 30, 30),
      [{ ...kilos, up_to: "20 kg" }, dumbbells(22, 24, 26)],
      ["backpack", "dumbbell", "dumbbell", "dumbbell"],
      [20, 22, 24, 26],
    ],
    [
      "a load stated in kilograms takes the piece that makes it",
      ["12 kg", "12.5 kg"],
      both,
      ["backpack", "barbell"],
      [12, 12.5],
    ],
  ])("%s", (_name, rows, equipment, have, kg) => {
    const result = dosed(rows, equipment);
    expect([result.have, result.kg]).toEqual([have, kg]);
  });

  test("the provenance says why a piece is kept or changed", () => {
    const { says } = dosed(["12 kg", "12.6 % of 1RM", "12 kg"], both);
    expect(says[1]).toContain(
      "stays with the backpack, which makes 12 kg, at most one step under the 12.5 kg of the barbell.",
    );
    const changed = dosed(of1rm(50, 20), [dumbbells(50), { ...kilos, up_to: "40 kg" }]);
    expect(changed.says[1]).toContain(
      "changes from the dumbbell to the backpack for 20 kg: the dumbbell makes nothing so light.",
    );
  });

  test("never more than without it, and at most one makeable step less than the target or the limit", () => {
    const percents = fc.array(fc.integer({ min: 5, max: 100 }), { minLength: 2, maxLength: 8 });
    const tenths = fc.uniqueArray(fc.integer({ min: 20, max: 900 }), {
      minLength: 1,
      maxLength: 8,
    });
    fc.assert(
      fc.property(percents, tenths, tenths, (shares, one, other) => {
        const loads = (list: readonly number[]) => list.map((ten) => `${ten / 10} kg`);
        const pieces = [
          { have: "dumbbell", loads: loads(one) },
          { have: "backpack", loads: loads(other) },
        ];
        const { kg, have } = dosed(of1rm(...shares), pieces);
        const makes = [...one, ...other].map((ten) => ten / 10).sort((a, b) => a - b);
        kg.forEach((load, index) => {
          const share = shares[index] ?? 0;
          if (load === undefined) return;
          expect(load).toBeLessThanOrEqual(share + 1e-6);
          // a week no heavier than an earlier recent one is under no limit: there only the piece costs
          const recent = kg.slice(Math.max(0, index - 4), index).map((one) => one ?? 0);
          const free = makes.filter((made) => made <= share + 1e-6).at(-1) ?? 0;
          if (free > Math.max(0, ...recent)) return;
          const between = new Set(makes.filter((made) => made > load && made < free));
          expect(between.size, `${shares} ${one} ${other} ${have}`).toBe(0);
        });
      }),
      { seed: 11, numRuns: 60 },
    );
  });
});
