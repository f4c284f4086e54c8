/** What is told of a layout that was found: what is not proven, what waits, what days taken cost. */
import { describe, expect, test } from "vitest";
import { makeProgram } from "../../src/booklet.ts";
import { layoutWarnings } from "../../src/schedule/layout-warnings.ts";
import { layOutProgram } from "../../src/week/program/program.ts";
import type { ProgramWeeks } from "../../src/week/program/program-types.ts";
import { change, DEMO, demoClinic, shippedText } from "../support/world.ts";
import { MONDAY, programExercise } from "../week/program/program-support.ts";
import { CLOCK } from "../week/search/support.ts";

const FILE = `${DEMO}/achilles.md`;
const CARDS = ["heel-raise-seated-weight", "heel-raise-one-leg-step-weight"];
const OPEN = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"];
const everySecondDay = (days: readonly string[], more: string) => {
  const free = days.map((day) => `    ${day}: { evening: 45 min }\n`).join("");
  const redose = CARDS.map((card) => `  - { card: ${card}, why: x, dose: { every: 2 days } }\n`);
  return change(
    change(
      shippedText(FILE),
      /free:\n(?: {4}\w.*\n)+ {2}away[\s\S]*?(?=my_plan:)/,
      `free:\n${free}${more}`,
    ),
    /redose:[\s\S]*?(?=signed:)/,
    `redose:\n${redose.join("")}`,
  );
};

function told(text: string, code: string): string[] {
  const { value, faults } = makeProgram(demoClinic({ [FILE]: text }), FILE);
  expect(faults.filter(({ level }) => level === "error").map(({ message }) => message)).toEqual([]);
  expect(value).toBeDefined();
  return faults.filter((fault) => fault.code === code).map(({ message }) => message);
}

describe("every second day", () => {
  test("with every evening free, nothing waits and nothing is lost", () => {
    expect(told(everySecondDay(OPEN, ""), "days-wait")).toEqual([]);
    expect(told(everySecondDay(OPEN, ""), "sessions-taken")).toEqual([]);
  });

  test("a day that is taken lets the bout wait, which is told", () => {
    // from Monday 30 November on, 16 December is a day on which it falls due
    const taken = "  away: [2026-12-16]\n";
    const waits = told(everySecondDay(OPEN, taken), "days-wait");
    expect(waits).toHaveLength(CARDS.length);
    for (const message of waits) {
      expect(message).toMatch(
        /waits once for a day that is free, first from 2026-12-16 to 2026-12-17/,
      );
    }
  });

  // due on 14 December, it waits for the Sunday: 7 bouts before, 32 from then on
  test("so many days away that sessions are lost are counted", () => {
    const away = "  away: [{ from: 2026-12-14, to: 2026-12-19 }]\n";
    const taken = told(everySecondDay(OPEN, away), "sessions-taken");
    expect(taken).toHaveLength(CARDS.length);
    for (const message of taken) expect(message).toMatch(/42 times .* laid out 39 times/);
  });
});

describe("a search that ends at its limit", () => {
  const { value } = makeProgram(demoClinic(), FILE);
  if (value === undefined) throw new Error("the demo cannot be laid out");
  const { program, dosed } = value;
  // three exercises that no evening holds together, and all week to choose from
  const exercises = ["a", "b", "c"].map((id) => programExercise(id, { minutes: 16 }));
  const course: ProgramWeeks = {
    firstDate: MONDAY,
    clock: CLOCK,
    phases: [{ id: "one", weeks: Array.from({ length: 3 }, () => ({ exercises })) }],
    days: Array.from({ length: 21 }, () => ({ free: { morning: 20, midday: 0, evening: 35 } })),
    events: [],
    groupHours: {},
  };
  const unproven = (nodeLimit?: number) => {
    const result = layOutProgram(nodeLimit === undefined ? course : { ...course, nodeLimit });
    if (result.status !== "laid-out") return undefined;
    return layoutWarnings(result.weeks, program, dosed)
      .filter(({ code }) => code === "week-not-proven")
      .map(({ level, message }) => `${level}: ${message}`);
  };

  test("is told of every week that follows the pattern, and of none where it ends by itself", () => {
    expect(unproven()).toEqual([]);
    const limits = Array.from({ length: 200 }, (_, i) => 10 * (i + 1));
    const all = limits.map((limit) => unproven(limit)).filter((one) => one?.length !== 0);
    const first = all.find((one) => one !== undefined);
    expect(first).toEqual([
      "warning: The layout of weeks 1, 2, 3 keeps every rule, but the search ended at its limit before it was shown to be the best there is.",
    ]);
  });
});
