/** Seven weeks with known answers, and what is said and offered where there is none. */
import { describe, expect, test } from "vitest";
import { explainWeek } from "../../../src/week/explain/explain.ts";
import { solveWeek } from "../../../src/week/search/solve.ts";
import { verifyPlacement } from "../../../src/week/search/verify.ts";
import { HAND_CASES } from "./cases.ts";

describe("weeks that can be checked by hand", () => {
  test.each(HAND_CASES.map((one) => [one.name, one] as const))("%s", (_, { problem, best }) => {
    const answer = solveWeek(problem);
    if (best === undefined) {
      expect(answer.status).toBe("impossible");
      return;
    }
    if (answer.status !== "solved") throw new Error(answer.status);
    const { sessions, evenness, fullestDay, preference } = answer.objective;
    expect([sessions, evenness, fullestDay, preference]).toEqual(best);
    expect(verifyPlacement(problem, answer.placement)).toEqual([]);
  });
});

describe("three sessions, 48 h apart, on Monday to Wednesday", () => {
  const { collision, remedies } = explainWeek(problemOf(5));

  test("names exactly the three wishes that collide", () => {
    expect(collision.map((one) => one.sentence)).toEqual([
      "heavy is done three times a week, at most once a day.",
      "heavy needs 48 hours from one bout to the next.",
      "Only Monday, Tuesday and Wednesday evening are open.",
    ]);
  });

  test("offers Friday or Saturday evening first", () => {
    expect(remedies.slice(0, 2).map((one) => one.sentence)).toEqual([
      "Open Friday evening for 15 minutes.",
      "Open Saturday evening for 15 minutes.",
    ]);
  });
});

describe("one hard day in a row beside a match", () => {
  const { collision, remedies } = explainWeek(problemOf(6));

  test("offers five minutes more on one evening first", () => {
    expect(remedies[0]?.changes).toMatchObject([
      { kind: "more-minutes", part: "evening", minutes: 5 },
    ]);
    expect(remedies[0]?.sentence).toMatch(/^Allow 5 minutes more on \w+ evening\.$/);
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

function problemOf(index: number) {
  const found = HAND_CASES[index];
  if (found === undefined) throw new Error(`no case ${index}`);
  return found.problem;
}
