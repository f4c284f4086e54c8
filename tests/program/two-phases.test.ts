/** Weeks in which two phases hold: a card that the plan adds is done with one dose, or somebody is told. */
import { describe, expect, test } from "vitest";
import { makeProgram } from "../../src/booklet.ts";
import { planJson } from "../../src/plan-text/json.ts";
import { change, DEMO, demoClinic, shippedText } from "../support/world.ts";

const PLAN = `${DEMO}/four-phases.md`;

/** The demo's client with the course whose phases overlap: step (weeks 2-5), heavy-and-fast (3-12). */
function made(changes: string) {
  const demo = change(
    shippedText(`${DEMO}/achilles.md`),
    /^(swap|leave_out|redose):\n(?: .*\n)+/gm,
    "",
  );
  const text = change(
    change(demo, /^protocol: .*$/m, "protocol: achilles-four-phases"),
    /^goals:/m,
    `weeks: 5\n${changes}\ngoals:`,
  );
  const free = "mon,tue,wed,thu,fri,sat,sun"
    .split(",")
    .map((day) => `    ${day}: { morning: 60 min, evening: 90 min }\n`)
    .join("");
  const calm = change(text, / {2}events:\n(?: {4}.*\n)+/, "");
  const easy = change(calm, / {2}free:\n(?: {4}.*\n)+/, `  free:\n${free}`);
  return makeProgram(demoClinic({ [PLAN]: easy }), PLAN);
}

const ADD = "{ card: calf-stretch, dose: { per_day: 1 }, why: It is stiff.";

/** Bouts of the card on each day of a week. */
function perDay(program: NonNullable<ReturnType<typeof made>["value"]>, week: number) {
  const days = new Map<string, number>();
  for (const { date, bouts } of planJson(program, []).weeks[week - 1]?.sessions ?? []) {
    const here = bouts.filter(({ card }) => card === "calf-stretch").length;
    days.set(date, (days.get(date) ?? 0) + here);
  }
  return [...days.values()];
}

test("added to the whole course it is done once, in the phase that began last", () => {
  const { value, faults } = made(`add:\n  - ${ADD} }`);
  expect(faults.filter(({ level }) => level === "error").map(({ message }) => message)).toEqual([]);
  if (!value) throw new Error("not made");
  for (const week of [1, 2, 3, 4, 5]) expect(new Set(perDay(value, week))).toEqual(new Set([1]));
  const holder = (week: number) =>
    Object.keys(planJson(value, []).weeks[week - 1]?.frequency ?? {}).filter((key) =>
      key.endsWith("/calf-stretch"),
    );
  expect(holder(2)).toEqual(["step/calf-stretch"]);
  expect(holder(4)).toEqual(["heavy-and-fast/calf-stretch"]);
});

describe("two doses in a week", () => {
  test("are not laid without a word", () => {
    const { value, faults } = made(
      `add:\n  - ${ADD}, phase: step }\n  - ${ADD}, phase: heavy-and-fast }`,
    );
    expect(value).toBeUndefined();
    const fault = faults.find(({ code }) => code === "card-twice");
    expect(fault?.place?.file).toBe(PLAN);
    expect(fault?.message).toMatch(
      /would both have calf-stretch, with a dose each, in weeks 3-5\./,
    );
  });

  test("may stand in weeks of their own", () => {
    const { faults } = made(
      `add:\n  - ${ADD}, phase: step, weeks: 1 }\n  - ${ADD}, phase: heavy-and-fast }`,
    );
    expect(faults.filter(({ code }) => code === "card-twice")).toEqual([]);
  });
});
