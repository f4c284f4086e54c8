/** The small parts: dates, slots, evenness, every n days, clear hours and mistakes. */
import { describe, expect, test } from "vitest";
import { everyNDays } from "../../../src/week/program/every-n-days.ts";
import { sessionOrder } from "../../../src/week/program/session-order.ts";
import { problemMistakes } from "../../../src/week/search/check-problem.ts";
import { dayNumber, isoDate, placeOf, weekdayName } from "../../../src/week/search/dates.ts";
import { daySets, evenness } from "../../../src/week/search/day-sets.ts";
import { hardDaysAllowed } from "../../../src/week/search/hard-days.ts";
import { dayOf, minutesBetween, partOf } from "../../../src/week/search/problem.ts";
import { solveWeek } from "../../../src/week/search/solve.ts";
import { verifyPlacement } from "../../../src/week/search/verify.ts";
import { CLOCK, exercise, free, week } from "./support.ts";

describe("dates", () => {
  test.each([
    ["1970-01-01", 0, "Thursday"],
    ["2024-02-29", 19782, "Thursday"],
    ["2027-01-04", 20822, "Monday"],
    ["2027-03-28", 20905, "Sunday"],
  ])("%s is day %i, a %s", (date, day, name) => {
    expect(dayNumber(date)).toBe(day);
    expect(isoDate(day)).toBe(date);
    expect(weekdayName(day)).toBe(name);
  });

  test.each(["2027-02-29", "2027-13-01", "27-01-01", "tomorrow", ""])("“%s” is no date", (text) => {
    expect(dayNumber(text)).toBeUndefined();
  });

  test("slots are counted from the weekday on which the program's week begins", () => {
    const thursday = dayNumber("2027-01-07") ?? 0;
    expect(placeOf(14, thursday)).toEqual({ date: "2027-01-11", part: "evening" });
  });
});

describe("slots", () => {
  test.each([
    [2, 3, false, 12],
    [0, 2, false, 12],
    [-1, 0, false, 12],
    [2, 20, false, 144],
    [2, 20, true, 24],
  ])("%i and %i (around the week: %s) are %i h apart", (a, b, wraps, hours) => {
    expect(minutesBetween(a, b, CLOCK, wraps)).toBe(60 * hours);
  });

  test.each([
    ["an evening and the morning after it", 2, 3, false, 16 * 60],
    ["an evening after midnight and the midday before", 2, 1, false, 4 * 60],
    ["the last evening and the first morning around the week", 20, 0, true, 16 * 60],
  ])("by a clock that passes midnight: %s", (_, a, b, wraps, minutes) => {
    const night = { morning: 1320, midday: 1560, evening: 1800 };
    expect(minutesBetween(a, b, night, wraps)).toBe(minutes);
  });

  test("below 0 lie in the week before", () => {
    expect([dayOf(-1), partOf(-1), dayOf(21), partOf(22)]).toEqual([-1, "evening", 7, "midday"]);
  });
});

describe("evenness", () => {
  test.each([
    ["Monday, Wednesday, Friday", 0b0010101, 0],
    ["Monday, Tuesday, Wednesday", 0b0000111, 5],
    ["Monday and Tuesday", 0b0000011, 6],
    ["Monday and Thursday", 0b0001001, 0],
    ["every day", 0b1111111, 0],
  ])("of %s", (_, days, cost) => {
    expect(evenness(days)).toBe(cost);
  });

  test("some set of every size is as even as can be", () => {
    for (let size = 1; size <= 7; size++) {
      expect(Math.min(...daySets(size).map(evenness))).toBe(0);
    }
  });
});

describe("every n days", () => {
  const open = (count: number) => new Array<"open">(count).fill("open");

  test.each([
    [2, 0, [0, 2, 4, 6]],
    [2, 1, [1, 3, 5, 7]],
    [3, 0, [0, 3, 6]],
  ])("every %i days from day %i", (n, offset, days) => {
    expect(everyNDays(open(8), n, offset).days).toEqual(days);
  });

  test("a day that is never open is no reason to wait: what falls due stays there", () => {
    const states = [...open(6), "never-open" as const, ...open(7)];
    expect(everyNDays(states, 2, 0).days).toEqual([0, 2, 4, 6, 8, 10, 12]);
  });

  test("what waits, waits for a day that is open", () => {
    const states = [...open(6), "taken" as const, "never-open" as const, ...open(3)];
    expect(everyNDays(states, 2, 0)).toEqual({
      days: [0, 2, 4, 8, 10],
      slipped: [{ day: 6, to: 8 }],
    });
  });

  test("where every day is taken nothing waits", () => {
    const states = new Array<"taken">(5).fill("taken");
    expect(everyNDays(states, 2, 0).days).toEqual([0, 2, 4]);
  });

  test("a day that is taken is waited out", () => {
    const course = everyNDays(["open", "open", "taken", "taken", "open", "open", "open"], 2, 0);
    expect(course).toEqual({ days: [0, 4, 6], slipped: [{ day: 2, to: 4 }] });
  });
});

describe("hard days in a row", () => {
  const hard = exercise("a", { hard: true });
  test.each([
    ["two of three with at most two", 0b011, 2, true, 1],
    ["three with at most two", 0b111, 2, true, 0],
    ["Sunday and Monday with at most one, repeating", 0b1000001, 1, true, 0],
    ["Sunday and Monday with at most one, standing alone", 0b1000001, 1, false, 1],
    ["all with at most six, repeating", 0b1111111, 6, true, 0],
  ])("%s", (_, days, most, wraps, allowed) => {
    const problem = week([hard], { maxHardDaysInRow: most, wraps });
    expect(hardDaysAllowed(problem)[days]).toBe(allowed);
  });
});

test("a session is in the order of the plan except where one comes after another", () => {
  const order = sessionOrder([{ id: "a", after: ["c"] }, { id: "b" }, { id: "c" }]);
  expect(order.map((one) => one.id)).toEqual(["b", "c", "a"]);
});

describe("a statement that contradicts itself is malformed", () => {
  const a = exercise("a");
  test.each([
    ["an id twice", week([a, a]), "duplicate-id"],
    ["no minutes", week([exercise("a", { minutes: 0 })]), "wrong-number"],
    ["eight times a week", week([exercise("a", { times: { perWeek: 8 } })]), "wrong-number"],
    ["too few slots", week([a], { freeMinutes: [1] }), "wrong-number"],
    ["an unknown exercise", week([exercise("a", { after: ["z"] })]), "unknown-exercise"],
    [
      "an unknown event",
      week([exercise("a", { clearBefore: [{ hours: 1, events: ["z"] }] })]),
      "unknown-event",
    ],
    [
      "a circle",
      week([exercise("a", { after: ["b"] }), exercise("b", { after: ["a"] })]),
      "order-circle",
    ],
  ])("%s", (_, problem, kind) => {
    expect(problemMistakes(problem).map((one) => one.kind)).toContain(kind);
    expect(solveWeek(problem).status).toBe("malformed");
  });
});

describe("the verifier finds", () => {
  const hard = exercise("a", { hard: true, groups: ["calf"], recoveryHours: 48 });
  const match = { id: "m", name: "match", day: 5, part: "midday", hard: true, groups: [] } as const;
  test.each([
    ["a bout missing", week([hard]), { a: [2, 8] }, "times"],
    [
      "two on one day",
      week([hard], { freeMinutes: free({ part: "morning", minutes: 9 }) }),
      { a: [2, 0, 8] },
      "times",
    ],
    ["a closed slot", week([hard]), { a: [1, 8, 14] }, "minutes"],
    ["too little recovery", week([hard]), { a: [2, 5, 14] }, "recovery"],
    ["too little recovery around the week", week([hard]), { a: [2, 8, 20] }, "recovery"],
    [
      "hard bouts of one group too near",
      week([hard, { ...hard, id: "b" }], { groupHours: { calf: 30 } }),
      { a: [2, 8, 14], b: [5, 11, 17] },
      "group-hours",
    ],
    [
      "a slot that is not clear",
      week([{ ...hard, clearBefore: [{ hours: 24, events: "any" }] }], { events: [match] }),
      { a: [2, 8, 14] },
      "clear",
    ],
    [
      "a session not shared",
      week([hard, exercise("b", { sameSessionAs: "a" })]),
      { a: [2, 8, 14], b: [2, 8, 17] },
      "same-session",
    ],
    [
      "the wrong order in a day",
      week([hard, exercise("b", { after: ["a"] })], {
        freeMinutes: free({ part: "morning", minutes: 30 }, { part: "evening", minutes: 30 }),
      }),
      { a: [2, 8, 14], b: [0, 8, 14] },
      "order",
    ],
    [
      "too many hard days in a row",
      week([hard], { events: [match], maxHardDaysInRow: 1 }),
      { a: [2, 8, 14] },
      "hard-days",
    ],
  ])("%s", (_, problem, placement, rule) => {
    const broken = verifyPlacement(problem, new Map(Object.entries(placement)));
    expect(broken.map((one) => one.rule)).toContain(rule);
  });
});
