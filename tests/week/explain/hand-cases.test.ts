/** What is said and offered for weeks that can be checked by hand. */
import { describe, expect, test } from "vitest";
import { explainProgram } from "../../../src/week/explain/explain.ts";
import type { Explanation } from "../../../src/week/explain/explain-types.ts";
import { layOutProgram } from "../../../src/week/program/program.ts";
import type { ProgramWeeks } from "../../../src/week/program/program-types.ts";
import { HAND_CASES } from "../search/cases.ts";
import { weekProgram } from "./week-program.ts";

describe("three sessions, 48 h apart, on Monday to Wednesday", () => {
  const { collision, least, larger } = explained(programOf(5));

  test("names exactly the three wishes that collide", () => {
    expect(collision.map((one) => one.sentence)).toEqual([
      "heavy is done three times a week, at most once a day.",
      "heavy needs 48 hours from one bout to the next.",
      "Only Monday, Tuesday and Wednesday evening are open.",
    ]);
  });

  test("offers every evening that helps by itself, for no longer than the bout", () => {
    expect(least.map((one) => one.sentence)).toEqual([
      "Open Friday evening for 15 minutes.",
      "Open Saturday evening for 15 minutes.",
      "Open Sunday evening for 15 minutes.",
    ]);
    expect(least[0]?.changes).toEqual([
      { kind: "open-slot", weekday: 4, part: "evening", minutes: 15 },
    ]);
  });

  test("offers less work besides, for a client who has no other evening", () => {
    expect(larger.map((one) => one.sentence)).toEqual(["Do heavy twice a week."]);
  });
});

test("an evening is not opened past the end of the client's day", () => {
  const late = { ...programOf(5), clock: { morning: 420, midday: 780, evening: 1430 } };
  const { least, larger } = explained(late);
  const opened = [...least, ...larger].flatMap(({ changes }) => changes);
  for (const change of opened) {
    if (change.kind !== "open-slot" || change.part !== "evening") continue;
    expect(change.minutes).toBeLessThanOrEqual(10);
  }
  expect(least.map((one) => one.sentence).join()).not.toMatch(/evening for 15 minutes/);
});

describe("one hard day in a row beside a match", () => {
  const { collision, least } = explained(programOf(6));

  test("offers five minutes more on one evening first", () => {
    expect(least[0]?.sentence).toMatch(/^Allow 5 minutes more on \w+ evening\.$/);
  });

  test("names both exercises, the minutes, the rule of hard days and the open slots", () => {
    expect(collision.map((one) => one.kind)).toEqual([
      "times",
      "times",
      "session-minutes",
      "hard-days",
      "open-slots",
    ]);
  });
});

function programOf(index: number): ProgramWeeks {
  const found = HAND_CASES[index];
  if (found === undefined) throw new Error(`no case ${index}`);
  return weekProgram(found.problem);
}

function explained(program: ProgramWeeks): Explanation {
  const result = layOutProgram(program);
  if (result.status === "laid-out" || result.status === "malformed") throw new Error(result.status);
  return explainProgram(program, result);
}
