/** Growth from week to week, tissue by tissue and quality by quality: one measure for warning, terminal and JSON. */
import { describe, expect, test } from "vitest";
import { makeProgram } from "../../src/booklet.ts";
import { doseProgram } from "../../src/dose/program.ts";
import { planJson } from "../../src/plan-text/json.ts";
import { planTable } from "../../src/plan-text/table.ts";
import { layOut } from "../../src/schedule/lay-out.ts";
import { rampFaults } from "../../src/schedule/ramp.ts";
import { card, library, program } from "../dose/fixtures.ts";
import { change, DEMO, demoClinic, english, shippedText } from "../support/world.ts";

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
  test.each([
    ["as much every second day, four times and three times a week", [8, 8, 8, 8], 0],
    ["more every second day, from a week of four to one of three", [8, 12, 12, 12], 1],
    ["more every second day, from a week of three to one of four", [8, 8, 9, 9], 0],
  ])("%s", (_name, reps, count) => {
    const weeks = Object.fromEntries(reps.map((each, at) => [at + 1, { reps: each }]));
    const says = { dose: { every: "2 days" }, weeks };
    expect(steep({ weeks: reps.length, exercises: [{ card: base, says }] })).toHaveLength(count);
  });
  test.each([
    ["rests are no work", { rest: "30 s" }, { rest: "2 min" }, 0],
    ["a slower tempo is more work", { tempo: "2-0-2-0" }, { tempo: "4-0-4-0" }, 1],
    ["longer holds are more work", { hold: "5 s" }, { hold: "10 s" }, 1],
    ["more sets are more work", { sets: 2 }, { sets: 4 }, 1],
  ])("%s", (_name, first, then, count) => {
    const says = { weeks: { 1: first, 2: then } };
    expect(steep({ weeks: 2, exercises: [{ card: base, says }] })).toHaveLength(count);
  });
  test("effort counts where all state it", () => {
    const says = { weeks: { 1: { effort: 4 }, 2: { effort: 6 } } };
    const [fault] = laid({ weeks: 2, exercises: [{ card: base, says }] }).faults;
    expect(fault?.message).toContain(
      "The work (effort × minutes at work) of the calf, strength, grows by up to 50 %",
    );
    expect(fault?.hint).toContain("does not forecast");
    expect(fault?.place?.file).toBe("protocol.md");
  });
  const two = (fields: Record<string, unknown>) =>
    card({ id: "two", load: { kind: "none" }, recovery: "1 h", ...fields });
  test("minutes count where one does not", () => {
    const says = { weeks: { 1: { effort: 4 }, 2: { effort: 6 } } };
    const plain = two({ dose: { sets: 1, reps: 5, per_week: 3 } });
    const exercises = [{ card: base, says }, { card: plain }];
    expect(steep({ weeks: 2, exercises })).toEqual([]);
    const more = { weeks: { 2: { reps: 40 } } };
    expect(
      steep({
        weeks: 2,
        exercises: [
          { card: base, says },
          { card: plain, says: more },
        ],
      }),
    ).toEqual([
      expect.stringContaining(
        "The minutes at work (not every exercise states an effort) of the calf",
      ),
    ]);
  });
  const reps = (first: number, then: number) => ({
    weeks: { 1: { reps: first }, 2: { reps: then } },
  });
  const grows = { card: base, says: reps(10, 20) };
  test.each([
    ["of another tissue", thigh],
    ["of another quality", two({ trains: "endurance" })],
  ])("a fall %s hides nothing", (_name, other) => {
    const exercises = [grows, { card: other, says: reps(100, 30) }];
    expect(steep({ weeks: 2, exercises })).toEqual([
      expect.stringContaining("of the calf, strength, grows by up to 100 %"),
    ]);
  });
  test("a fall of the same tissue and quality is taken together with it", () => {
    const exercises = [grows, { card: two({}), says: reps(40, 25) }];
    expect(steep({ weeks: 2, exercises })).toEqual([]);
  });
  test("each kind of work that grows is told once, with its tissue and quality", () => {
    const exercises = [grows, { card: thigh, says: reps(10, 14) }];
    expect(steep({ weeks: 2, exercises })).toEqual([
      expect.stringContaining("of the calf, strength, grows by up to 100 %"),
      expect.stringContaining("of the thigh, strength, grows by up to 40 %"),
    ]);
  });
  test("work that begins has nothing to be compared with", () => {
    const phases = [
      { weeks: 2, exercises: [{ card: base }] },
      { firstWeek: 2, weeks: 1, exercises: [{ card: thigh }] },
    ];
    expect(steep({ phases })).toEqual([]);
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
  const text = change(shippedText(file), /dose: \{ per_week: 2 \}/g, "dose: { per_week: 1 }");
  const workspace = demoClinic({ [file]: text });
  const { value: made, faults } = makeProgram(workspace, file);
  if (!made) throw new Error("the demo plan does not compute");
  const table = planTable(made, workspace.cards.library, english());
  const json = planJson(made, faults);

  // Weeks 4 and 5: 4 × 10 at 6 s and effort 8, once: 32. Week 6: 4 × 8, three times: 76.8.
  test("weeks of one session before weeks of three: +140 % in week 6", () => {
    expect(table).toMatch(/soleus, strength +108 +86\.4 +86\.4 +32 +32 +76\.8 \(\+140 %\) +76\.8 /);
    expect(json.weeks[5]?.totals.work).toContainEqual({
      tissue: "calf",
      trains: "strength",
      load: 76.8,
      minutes: 9.6,
      change: 1.4,
      change_of: "load",
      change_since: 5,
    });
    const said = json.warnings.filter(({ code }) => code === "ramp-steep");
    expect(said.map(({ message }) => message)).toEqual(
      ["soleus", "calf"].map((tissue) =>
        expect.stringContaining(
          `of the ${tissue}, strength, grows by up to 140 % from week 5 to week 6 (week 6)`,
        ),
      ),
    );
  });
  test("the sums of the machine form give the change of all work together", () => {
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
  test("a week without any work shows none, and the change after it tells since when", () => {
    const weeks = made.schedule.weeks.map((one) =>
      one.number === 3 ? { ...one, days: one.days.map((day) => ({ ...day, sessions: [] })) } : one,
    );
    const schedule = { ...made.schedule, weeks };
    const [third, fourth] = planJson({ ...made, schedule }, []).weeks.slice(2, 4);
    expect(third?.totals.work.map(({ load, change }) => [load, change])).toEqual([
      [0, null],
      [0, null],
    ]);
    expect(fourth?.totals.work.map(({ change_since }) => change_since)).toEqual([2, 2]);
    expect(planTable({ ...made, schedule }, workspace.cards.library, english())).toMatch(
      /calf, strength +108 +86\.4 +– +32 /,
    );
  });
});
