/** Growth of the distance of a week: judged on the weeks as laid out, by the limit of plan, protocol or card. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { withReason } from "../../src/edits/edit.ts";
import { planJson } from "../../src/plan-text/json.ts";
import { planTable } from "../../src/plan-text/table.ts";
import { spliceFrontMatter } from "../../src/read/splice.ts";
import { madeSmall, type SmallCourse, smallCourse } from "../support/small-course.ts";
import { english } from "../support/world.ts";

/** Weeks of three runs of so many metres. */
const weekly = (metres: readonly number[], more: SmallCourse = {}): SmallCourse => ({
  trains: "running",
  card: "{ sets: 1, distance: 100 m, per_week: 3 }",
  weeks: metres.length,
  says: `weeks: { ${metres.map((far, at) => `${at + 1}: { distance: ${far} m }`).join(", ")} }`,
  ...more,
});
const told = (course: SmallCourse) =>
  smallCourse(course).all.filter(({ code }) => code.startsWith("distance-"));

describe("distance-steep", () => {
  test.each([
    ["20 % is allowed, where nobody states a limit", [100, 120], {}, []],
    ["more is a warning", [100, 125], {}, ["warning"]],
    ["the plan's limit stops it", [100, 115], { plan: "distance_growth: 10 %" }, ["error"]],
    ["the protocol's, too", [100, 115], { protocol: "distance_growth: 10 %\n" }, ["error"]],
    [
      "the plan's own stands over the protocol's",
      [100, 115],
      { plan: "distance_growth: 15 %", protocol: "distance_growth: 10 %\n" },
      [],
    ],
    [
      "accepted it is a warning",
      [100, 115],
      {
        plan: "distance_growth: 10 %\naccept: [{ code: distance-steep, card: small-card, why: Ran more before }]",
      },
      ["warning"],
    ],
    ["falling is no growth", [200, 100, 110], {}, []],
    ["carrying a thing is no run", [100, 200], { trains: "strength" }, []],
    [
      "but has the plan's limit",
      [100, 200],
      { trains: "strength", plan: "distance_growth: 20 %" },
      ["error"],
    ],
  ] as const)("%s", (_name, metres, more, levels) => {
    expect(told(weekly(metres, more)).map(({ level }) => level)).toEqual(levels);
  });

  test("a week with a run less counts as it is laid out", () => {
    const plan =
      'redose: [{ card: small-card, phase: phase-1, weeks: "1", dose: { per_week: 2 }, why: x }]';
    const [fault] = told(weekly([100, 100], { plan }));
    expect(fault?.message).toMatch(/goes from 200 m in week 1 to 300 m in week 2, 50 % more/);
  });

  test("a time with a speed has a length; one without has none, and that is told", () => {
    const timed = (target: string) => ({
      ...weekly([1, 1], { plan: "distance_growth: 10 %" }),
      card: `{ sets: 1, time: 5 min, ${target} per_week: 3 }`,
      says: "weeks: { 1: { time: 5 min }, 2: { time: 6 min } }",
    });
    expect(told(timed("target: 9 km/h,")).map(({ code }) => code)).toEqual(["distance-steep"]);
    expect(told(timed("")).map(({ code }) => code)).toEqual(["distance-unknown"]);
  });

  test("what nobody needs to accept is told", () => {
    const plan = "accept: [{ code: distance-steep, card: small-card, why: x }]";
    const { warnings } = smallCourse(weekly([100, 110], { plan }));
    expect(warnings.map(({ code }) => code)).toContain("change-unused");
  });
});

test.each(["21 %", "0 %"])("a limit of %s cannot be stated", (limit) => {
  const { faults } = smallCourse(weekly([100], { plan: `distance_growth: ${limit}` }));
  expect(faults.map(({ message }) => message).join()).toMatch(/20 %/);
});

test("every remedy does away with it", () => {
  const limit = "distance_growth: 10 %";
  const [fault] = told(weekly([100, 120, 120], { plan: limit }));
  expect(fault?.remedies).toHaveLength(2);
  for (const { edits } of fault?.remedies ?? []) {
    const text = `---\n${limit}\n---\n`;
    const spliced = spliceFrontMatter(text, withReason(edits, "Because"));
    const plan = (spliced?.text ?? "").replaceAll("---\n", "");
    const left = told(weekly([100, 120, 120], { plan }));
    expect(left.filter(({ level }) => level === "error" && plan.includes("accept"))).toEqual([]);
    expect(left.filter(({ message }) => message.includes("to 360 m in week 2"))).toHaveLength(
      plan.includes("accept") ? 1 : 0,
    );
  }
});

test("the terminal and the machine form give the metres of each week", () => {
  const { made, workspace } = madeSmall(weekly([100, 110]));
  const json = planJson(made, []);
  expect(json.weeks.map(({ totals }) => totals.distance_m)).toEqual([300, 330]);
  expect(planTable(made, workspace.cards.library, english())).toMatch(/Week 2 .*330 m/);
});

test("whatever the weeks, what passes grows by no more than the limit", () => {
  const far = fc.array(fc.integer({ min: 20, max: 200 }), { minLength: 2, maxLength: 5 });
  fc.assert(
    fc.property(far, fc.integer({ min: 1, max: 20 }), (metres, limit) => {
      const course = weekly(metres, { plan: `distance_growth: ${limit} %` });
      const grows = metres.some(
        (now, at) => at > 0 && now / (metres[at - 1] ?? now) > 1 + limit / 100 + 1e-9,
      );
      expect(told(course).some(({ level }) => level === "error")).toBe(grows);
    }),
    { seed: 8, numRuns: 40 },
  );
});
