/** Growth from week to week: one measure for the warning, the terminal and the machine form. */
import { describe, expect, test } from "vitest";
import { makeProgram } from "../../src/booklet.ts";
import { doseProgram } from "../../src/dose/program.ts";
import { planJson } from "../../src/plan-text/json.ts";
import { planTable } from "../../src/plan-text/table.ts";
import { layOut } from "../../src/schedule/lay-out.ts";
import { rampFaults } from "../../src/schedule/ramp.ts";
import { changesOf } from "../../src/schedule/week-loads.ts";
import { card, library, program } from "../dose/fixtures.ts";
import { DEMO, demoClinic, english } from "../support/world.ts";

const base = card({ id: "base", load: { kind: "none" }, recovery: "1 h" });
const thigh = card({ id: "thigh", tissues: ["thigh"], load: { kind: "none" }, recovery: "1 h" });
const all = library(base, thigh);
const week = {
  free: Object.fromEntries(
    ["mon", "tue", "wed", "thu", "fri", "sat", "sun"].map((day) => [day, { evening: "90 min" }]),
  ),
};

type Input = Parameters<typeof program>[0];
function laid(input: Input) {
  const built = program({ ...input, plan: { week, ...input.plan } });
  const { value: schedule, faults } = layOut(built, doseProgram(built, all).value);
  if (!schedule) throw new Error(faults[0]?.message);
  return { schedule, faults: rampFaults(built, schedule) };
}
const steep = (input: Input) => laid(input).faults.map(({ message }) => message);

/** Weeks of so many repetitions at 3 s, three times a week; 0 is a week without the exercise. */
const weekly = (...reps: number[]): Input => ({
  weeks: reps.length,
  exercises: [
    {
      card: base,
      says: {
        weeks: Object.fromEntries(
          reps.flatMap((count, index) => (count === 0 ? [] : [[index + 1, { reps: count }]])),
        ),
      },
    },
  ],
});

describe("ramp-steep", () => {
  test.each([
    ["30 % is allowed", [10, 13], []],
    ["more is not", [10, 14], ["up to 40 % from week 1 to week 2 (week 2)"]],
    [
      "the steepest is told, once",
      [10, 14, 28],
      ["up to 100 % from week 2 to week 3 (weeks 2 and 3)"],
    ],
    ["falling is no ramp", [20, 10], []],
    ["weeks are merged", [10, 14, 20, 30, 30, 60], ["(weeks 2 to 4 and 6)"]],
    [
      "an empty week hides nothing",
      [10, 0, 14],
      ["up to 40 % from week 1 to week 3, over a week without it (week 3)"],
    ],
    [
      "nor do three",
      [10, 0, 0, 0, 20],
      ["up to 100 % from week 1 to week 5, over 3 weeks without it (week 5)"],
    ],
    ["coming back to as much as before is no ramp", [10, 0, 10], []],
  ] as const)("%s", (_name, reps, says) => {
    const messages = steep(weekly(...reps));
    expect(messages).toHaveLength(says.length);
    for (const [index, words] of says.entries()) expect(messages[index]).toContain(words);
  });
  test("more days a week count", () => {
    const says = { weeks: { 1: { per_week: 2 }, 2: { per_week: 3 } } };
    expect(steep({ weeks: 2, exercises: [{ card: base, says }] })).toHaveLength(1);
  });
  test("rests count", () => {
    const says = { weeks: { 1: { rest: "30 s" }, 2: { rest: "2 min" } } };
    expect(steep({ weeks: 2, exercises: [{ card: base, says }] })).toHaveLength(1);
  });
  test("effort counts where all state it", () => {
    const says = { weeks: { 1: { effort: 4 }, 2: { effort: 6 } } };
    const [fault] = laid({ weeks: 2, exercises: [{ card: base, says }] }).faults;
    expect(fault?.message).toContain(
      "planned load (effort × minutes, rests included) of the calf grows by up to 50 %",
    );
    expect(fault?.hint).toContain("does not forecast");
    expect(fault?.place?.file).toBe("protocol.md");
  });
  test("minutes count where one does not", () => {
    const says = { weeks: { 1: { effort: 4 }, 2: { effort: 6 } } };
    const exercises = [
      { card: base, says },
      {
        card: card({
          ...base.card,
          id: "two",
          load: { kind: "none" },
          recovery: "1 h",
          dose: { sets: 1, reps: 5, per_week: 3 },
        } as never),
      },
    ];
    expect(steep({ weeks: 2, exercises })).toEqual([]);
  });
  test("one tissue that grows is told though the whole week does not", () => {
    const grows = { weeks: { 1: { reps: 10 }, 2: { reps: 20 } } };
    const falls = { weeks: { 1: { reps: 40 }, 2: { reps: 30 } } };
    const exercises = [
      { card: base, says: grows },
      { card: thigh, says: falls },
    ];
    expect(steep({ weeks: 2, exercises })).toEqual([expect.stringContaining("of the calf grows")]);
  });
  test("where all grow alike it is told once; a tissue that grows far more is told as well", () => {
    const reps = (first: number, then: number) => ({
      weeks: { 1: { reps: first }, 2: { reps: then } },
    });
    const alike = [
      { card: base, says: reps(10, 14) },
      { card: thigh, says: reps(20, 29) },
    ];
    expect(steep({ weeks: 2, exercises: alike })).toEqual([
      expect.stringContaining("of all exercises together grows by up to 43.3 %"),
    ]);
    const one = [
      { card: base, says: reps(10, 24) },
      { card: thigh, says: reps(20, 20) },
    ];
    expect(steep({ weeks: 2, exercises: one })).toEqual([
      expect.stringContaining("of all exercises together grows by up to 46.7 %"),
      expect.stringContaining("of the calf grows by up to 140 %"),
    ]);
  });
  test("a second tissue is no ramp of its own, but of the week", () => {
    const phases = [
      { weeks: 2, exercises: [{ card: base }] },
      { firstWeek: 2, weeks: 1, exercises: [{ card: thigh }] },
    ];
    expect(steep({ phases })).toEqual([
      expect.stringContaining(
        "of all exercises together grows by up to 100 % from week 1 to week 2",
      ),
    ]);
  });
  test("the ten-week Nordic course is as steep as it is printed (Mjølsnes 2004)", () => {
    const row = (sets: number, reps: unknown, per_week: number) => ({ sets, reps, per_week });
    const weeks = {
      1: row(2, 5, 1),
      2: row(2, 6, 2),
      3: row(3, "6-8", 3),
      4: row(3, "8-10", 3),
      "5-10": row(3, [12, 10, 8], 3),
    } as never;
    expect(steep({ weeks: 10, exercises: [{ card: base, says: { weeks } }] })).toEqual([
      expect.stringContaining("(weeks 2 and 3)"),
    ]);
  });
  test("rounding is no growth: exactly 30 % of loads with many decimals", () => {
    const says = { weeks: { 1: { effort: 7, reps: 10 }, 2: { effort: 7, reps: 13 } } };
    expect(steep({ weeks: 2, exercises: [{ card: base, says }] })).toEqual([]);
  });
});

describe("the demo: what the terminal prints is what is warned of", () => {
  const file = `${DEMO}/achilles.md`;
  const workspace = demoClinic();
  const { value: made, faults } = makeProgram(workspace, file);
  if (!made) throw new Error("the demo plan does not compute");
  const table = planTable(made, workspace.cards.library, english());
  const json = planJson(made, faults);
  test("+40 % in week 6, in the terminal, the machine form and the warning", () => {
    expect(table).toMatch(/Week 6 .*load \d+, \+40 %, monotony/);
    expect(json.weeks[5]?.totals).toMatchObject({
      change: 0.396,
      change_of: "load",
      change_since: 5,
    });
    const said = json.warnings.filter(({ code }) => code === "ramp-steep");
    expect(said).toHaveLength(1);
    expect(said[0]?.message).toContain("grows by up to 39.6 % from week 5 to week 6 (week 6)");
  });
  test("the sums of the machine form give the same change", () => {
    json.weeks.forEach(({ totals, sessions }, index) => {
      const load = (one: typeof sessions) =>
        one.reduce(
          (sum, { bouts }) =>
            sum + bouts.reduce((all, bout) => all + ((bout.effort ?? 0) * bout.clock_s) / 60, 0),
          0,
        );
      expect(load(sessions)).toBeCloseTo(totals.load ?? 0, 0);
      const before = json.weeks[index - 1];
      if (before) expect(totals.change).toBeCloseTo(load(sessions) / load(before.sessions) - 1, 3);
    });
  });
  test("over a week without any work the change is told with its week", () => {
    const weeks = made.schedule.weeks.map((one) =>
      one.number === 3 ? { ...one, days: one.days.map((day) => ({ ...day, sessions: [] })) } : one,
    );
    const schedule = { ...made.schedule, weeks };
    expect(changesOf(schedule, () => true).slice(2, 4)).toEqual([
      undefined,
      expect.objectContaining({ since: 2, of: "load" }),
    ]);
    expect(planTable({ ...made, schedule }, workspace.cards.library, english())).toMatch(
      /Week 4 .*% since week 2, monotony/,
    );
  });
});
