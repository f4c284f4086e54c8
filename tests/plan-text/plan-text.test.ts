/** The program for the terminal, as JSON, and explained. */
import { describe, expect, test } from "vitest";
import { makeProgram } from "../../src/booklet.ts";
import { explainText } from "../../src/plan-text/explain.ts";
import { planJson } from "../../src/plan-text/json.ts";
import { planTable } from "../../src/plan-text/table.ts";
import { columns } from "../../src/terminal/columns.ts";
import { DEMO, demoClinic, english } from "../support/world.ts";

const workspace = demoClinic();
const { value: made, faults } = makeProgram(workspace, `${DEMO}/achilles.md`);
if (!made) throw new Error("the demo plan does not compute");

describe("the table", () => {
  const table = planTable(made, workspace.cards.library, english());
  test.each([
    "Edda Marlowe (BF-0417)",
    "Weeks 9 to 12  4 sets of 6",
    "Mon Wed Fri evening 24 min",
    "Mon Wed evening 28 min · away Fri",
    "No hard work close before: Long walk (Sunday).",
    "monotony",
  ])("says %s", (words) => expect(table).toContain(words));
  test("has no loose ends", () => expect(table).not.toMatch(/undefined|NaN|[ \t]+$/m));
});

describe("the machine form", () => {
  const json = JSON.parse(JSON.stringify(planJson(made, faults)));

  test("totals are the sums of the sessions", () => {
    for (const week of json.weeks) {
      const minutes = week.sessions.reduce(
        (sum: number, one: { minutes: number }) => sum + one.minutes,
        0,
      );
      expect(week.totals.minutes).toBe(minutes);
      expect(week.totals.sessions).toBe(week.sessions.length);
    }
  });

  test("every number of a bout has a provenance that ends in it", () => {
    for (const week of json.weeks) {
      for (const bout of week.sessions[0].bouts) {
        const provenance = week.trails[bout.key];
        expect(provenance.load_kg.at(-1).value).toBe(bout.load_kg);
        expect(provenance.sets.at(-1).value).toBe(bout.sets);
        expect(provenance.clock_s.at(-1).value).toBe(bout.clock_s);
        expect(provenance.tension_s.at(-1).value).toBe(bout.tension_s);
        for (const name of ["reps", "rest_s", "tempo", "effort", "frequency"]) {
          expect(provenance[name].length).toBeGreaterThan(0);
        }
      }
    }
  });

  test("monotony, strain and change hold together", () => {
    json.weeks.forEach((week: { totals: Record<string, number> }, index: number) => {
      const { load = 0, monotony = 0, strain = 0, change } = week.totals;
      expect(Math.abs(strain - load * monotony)).toBeLessThan(load * 0.006);
      const before = json.weeks[index - 1]?.totals.load;
      if (before !== undefined) expect(change).toBeCloseTo(load / before - 1, 2);
    });
  });

  test("a ratio of acute to chronic load is given only once there are 28 days", () => {
    const given = json.weeks.map(
      (week: { totals: { acute_chronic: unknown } }) => week.totals.acute_chronic !== null,
    );
    expect(given).toEqual([false, false, false, ...Array(9).fill(true)]);
  });

  test("nothing is NaN, infinite, negative or unrounded", () => {
    const visit = (node: unknown, path: string): void => {
      if (typeof node === "number") {
        expect(Number.isFinite(node), path).toBe(true);
        if (!/change$/.test(path)) expect(node, path).toBeGreaterThanOrEqual(0);
        expect(Math.abs(node * 1000 - Math.round(node * 1000)), path).toBeLessThan(1e-6);
      } else if (typeof node === "object" && node !== null) {
        for (const [key, inner] of Object.entries(node)) visit(inner, `${path}.${key}`);
      }
    };
    visit(json.weeks, "weeks");
  });
});

describe("explained", () => {
  const text = explainText(made, "heel-raise-one-leg-step-weight") ?? "";
  test("from the measure to the load, in this order, each with its source", () => {
    const steps = ["measure", "formula", "target", "equipment", "rounding"].map((step) =>
      text.indexOf(`${step} `),
    );
    expect([...steps].sort((a, b) => a - b)).toEqual(steps);
    expect(text).toContain("[templates/demo/achilles.md:20]");
    expect(text).toContain("[Epley 1985, Poundage Chart]");
    expect(text).toContain("[templates/protocols/achilles-heavy-slow-resistance.md:");
  });
  test("what every week shares is said once", () => {
    expect(text.match(/9 repetitions with 12 kg on the left/g)).toHaveLength(1);
  });
  test("an exercise that is not there explains nothing", () => {
    expect(explainText(made, "hops-one-leg")).toBeUndefined();
  });
});

test("columns line up, the last one is not padded", () => {
  expect(columns([["a", "bb", "c"], ["aaa", "b", "cc"], ["ü"]])).toEqual([
    "a    bb  c",
    "aaa  b   cc",
    "ü",
  ]);
});
