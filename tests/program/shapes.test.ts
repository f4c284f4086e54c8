/** Doses of card, protocol and plan together: what is no shape of a set is an error at its place. */
import { describe, expect, test } from "vitest";
import { planTable } from "../../src/plan-text/table.ts";
import {
  CARD,
  madeSmall,
  PLAN,
  PROTOCOL,
  type SmallCourse,
  smallCourse,
} from "../support/small-course.ts";
import { english } from "../support/world.ts";

describe("in a card", () => {
  test.each([
    ["time and repetitions", "{ sets: 3, reps: 10, time: 60 s, per_week: 3 }", /^10, time/],
    ["distance and time", "{ sets: 3, distance: 20 m, time: 60 s, per_week: 3 }", /^20 m, time/],
    ["hold and time", "{ sets: 3, hold: 5 s, time: 60 s, per_week: 3 }", /^5 s, time/],
    ["a time at a tempo", "{ sets: 3, time: 60 s, tempo: 3-0-3-0, per_week: 3 }", /^3-0-3-0/],
    ["sets that do not fit", "{ sets: 2, reps: [12, 10, 8], per_week: 3 }", /^2, reps/],
  ])("%s", (_name, card, at) => {
    const { made, faults } = smallCourse({ card });
    expect(made).toBeUndefined();
    expect(faults[0]).toMatchObject({ code: "wrong-value", place: { file: CARD } });
    expect(faults[0]?.at).toMatch(at);
  });
});

describe("in a protocol, over its card", () => {
  const held = "{ sets: 3, reps: 5, hold: 10 s, per_week: 3 }";
  test.each([
    ["time and repetitions", {}, "dose: { time: 60 s, reps: 12 }", /^12 \}/],
    [
      "a row with what the dose does not go with",
      {},
      "dose: { reps: 12, tempo: 3-0-3-0 }\nweeks:\n  1: { hold: 5 s, tempo: 3-0-3-2 }",
      /^5 s, tempo/,
    ],
    [
      "a tempo over a card's time",
      { card: "{ sets: 3, time: 60 s, per_week: 3 }" },
      "dose: { tempo: 3-0-3-0 }",
      /^3-0-3-0 \}/,
    ],
    [
      "a tempo with a pause over a card's holds",
      { card: held },
      "dose: { tempo: 3-0-3-2 }",
      /^3-0-3-2 \}/,
    ],
    [
      "a number of sets over the dose's list",
      {},
      "dose: { sets: 3, reps: [12, 10, 8] }\nweeks:\n  1: { sets: 2 }",
      /^2 \}/,
    ],
  ] as readonly (readonly [string, SmallCourse, string, RegExp])[])(
    "%s",
    (_name, course, says, at) => {
      const { made, faults } = smallCourse({ ...course, says });
      expect(made).toBeUndefined();
      expect(faults[0]).toMatchObject({ code: "wrong-value", place: { file: PROTOCOL } });
      expect(faults[0]?.at).toMatch(at);
    },
  );
});

describe("in a plan, over card and protocol", () => {
  const redose = (dose: string) => `redose: [{ card: small-card, why: Knee, dose: ${dose} }]`;
  test.each([
    [
      "fewer sets than numbers of repetitions",
      "dose: { sets: 3, reps: [12, 10, 8] }",
      "{ sets: 2 }",
      /^2 \}/,
    ],
    [
      "more sets than numbers of repetitions",
      "dose: { sets: 3, reps: [12, 10, 8] }",
      "{ sets: 4 }",
      /^4 \}/,
    ],
    ["time and repetitions", "dose: {}", "{ time: 60 s, reps: 12 }", /^12 \}/],
    ["a hold over repetitions: one, or each", "dose: { reps: 10 }", "{ hold: 5 s }", /^5 s \}/],
    ["a tempo over a time", "dose: { time: 60 s }", "{ tempo: 2-0-2-0 }", /^2-0-2-0 \}/],
  ])("%s", (_name, says, dose, at) => {
    const { made, faults } = smallCourse({ says, plan: redose(dose) });
    expect(made).toBeUndefined();
    expect(faults[0]).toMatchObject({ code: "wrong-value", place: { file: PLAN } });
    expect(faults[0]?.at).toMatch(at);
  });

  test.each([
    [
      "a time in place of repetitions at a tempo leaves no tempo",
      { card: "{ sets: 3, reps: 12, tempo: 3-0-3-0, per_week: 3 }" },
      "{ time: 60 s }",
      "3 times 1 minute",
    ],
    [
      "a hold and how many of them, over repetitions",
      {},
      "{ hold: 5 s, reps: 1 }",
      "3 holds of 5 seconds",
    ],
    [
      "a longer hold over holds",
      { card: "{ sets: 3, reps: 4, hold: 5 s, per_week: 3 }" },
      "{ hold: 7 s }",
      "3 sets of 4 holds, 7 seconds each",
    ],
    [
      "a list in place of one number brings its own number of sets",
      {},
      "{ reps: [8, 6] }",
      "2 sets: 8, 6",
    ],
  ])("%s", (_name, course, dose, work) => {
    const { made, workspace } = madeSmall({ ...course, plan: redose(dose) });
    const table = planTable(made, workspace.cards.library, english());
    expect(table).toContain(work);
    expect(table).not.toContain("seconds up");
  });
});
