/** Whole programs on real dates: patterns, weeks that differ, and the first week that cannot be. */
import { describe, expect, test } from "vitest";
import { explainProgram } from "../../../src/week/explain/explain.ts";
import { layOutProgram } from "../../../src/week/program/program.ts";
import {
  CLOSED,
  course,
  datesOf,
  EVENING,
  gaps,
  laidOut,
  MONDAY,
  programExercise,
} from "./program-support.ts";

const heavy = programExercise("heavy", {
  name: "Heavy heel raise",
  minutes: 15,
  recoveryHours: 48,
  hard: true,
  groups: ["calf"],
});
const balance = programExercise("balance", { name: "Balance" });

describe("a phase", () => {
  test("keeps one pattern through all its weeks", () => {
    const weeks = laidOut(layOutProgram(course(12, [heavy, balance])));
    const patterns = weeks.map((week) => week.sessions.map((s) => new Date(s.date).getUTCDay()));
    expect(new Set(patterns.map(String)).size).toBe(1);
    expect(weeks.every((week) => week.moved.length === 0)).toBe(true);
  });

  test.each(["2027-01-04", "2027-01-07", "2027-03-27", "2027-10-30"])(
    "may begin on any weekday and across a change of the clock: %s",
    (firstDate) => {
      const weeks = laidOut(layOutProgram(course(4, [heavy], { firstDate })));
      const dates = datesOf(weeks, "heavy");
      expect(dates).toHaveLength(12);
      expect(dates[0]?.localeCompare(firstDate)).toBeGreaterThanOrEqual(0);
      expect(Math.min(...gaps(dates))).toBe(2);
    },
  );

  test("keeps the pattern while the minutes grow from week to week", () => {
    const phases = [
      {
        id: "one",
        weeks: [10, 12, 14, 16].map((minutes) => ({ exercises: [{ ...heavy, minutes }, balance] })),
      },
    ];
    const weeks = laidOut(layOutProgram(course(4, [], { phases })));
    expect(weeks.flatMap((week) => week.moved)).toEqual([]);
    expect(weeks.map((week) => week.sessions[0]?.minutes)).toEqual([20, 22, 24, 26]);
  });

  test("keeps the days that remain when a week has a bout fewer", () => {
    const fewer = { ...heavy, times: { perWeek: 2 } };
    const phases = [
      { id: "one", weeks: [heavy, heavy, fewer, heavy].map((e) => ({ exercises: [e] })) },
    ];
    const weeks = laidOut(layOutProgram(course(4, [], { phases })));
    expect(weeks.flatMap((week) => week.moved)).toEqual([]);
    expect(weeks.map((week) => week.sessions.length)).toEqual([3, 3, 2, 3]);
  });
});

describe("a week that differs", () => {
  test("moves one bout for one holiday and says from where to where", () => {
    const usual = laidOut(layOutProgram(course(4, [heavy])));
    const holiday = datesOf(usual, "heavy")[5] ?? "";
    const index = gaps([MONDAY, holiday])[0] ?? 0;
    const days = new Array(28).fill(EVENING);
    days[index] = { ...CLOSED, why: "Holiday" };
    const weeks = laidOut(layOutProgram(course(4, [heavy], { days })));
    expect(weeks.map((week) => week.moved.length)).toEqual([0, 1, 0, 0]);
    expect(weeks[1]?.moved[0]?.from?.date).toBe(holiday);
    expect(weeks[1]?.avoided).toContainEqual({
      date: holiday,
      exercises: ["heavy"],
      reason: { kind: "closed", why: "Holiday" },
      sentence: "Holiday",
    });
    expect(Math.min(...gaps(datesOf(weeks, "heavy")))).toBeGreaterThanOrEqual(2);
  });

  test("keeps clear of a match and says so", () => {
    const events = [
      {
        id: "match",
        name: "match",
        date: "2027-01-16",
        part: "midday" as const,
        hard: true,
        groups: ["calf"],
        clearBeforeHours: 36,
      },
    ];
    const weeks = laidOut(layOutProgram(course(3, [heavy], { events })));
    expect(datesOf(weeks, "heavy")).not.toContain("2027-01-15");
    const avoided = weeks[1]?.avoided.find((day) => day.date === "2027-01-15");
    expect(avoided?.sentence).toBe("clear of Saturday’s match");
  });

  test("moves whole evenings to mornings through a bank of night shifts", () => {
    const night = { free: { morning: 30, midday: 0, evening: 0 }, why: "night shift" };
    const days = Array.from({ length: 28 }, (_, day) => (day >= 7 && day < 14 ? night : EVENING));
    const weeks = laidOut(layOutProgram(course(4, [heavy, balance], { days })));
    const parts = weeks.map((week) => [...new Set(week.sessions.map((session) => session.part))]);
    expect(parts).toEqual([["evening"], ["morning"], ["evening"], ["evening"]]);
  });
});

describe("phases", () => {
  test("keep recovery across the change", () => {
    const stiff = { ...heavy, times: { perWeek: 2 }, recoveryHours: 72 };
    const phases = [
      { id: "one", weeks: [{ exercises: [heavy] }, { exercises: [heavy] }] },
      { id: "two", weeks: [{ exercises: [stiff] }, { exercises: [stiff] }] },
    ];
    const weeks = laidOut(layOutProgram(course(4, [], { phases })));
    const between = gaps(datesOf(weeks, "heavy"));
    expect(Math.min(...between)).toBeGreaterThanOrEqual(2);
    expect(Math.min(...between.slice(6))).toBeGreaterThanOrEqual(3);
    expect(weeks.map((week) => week.phase)).toEqual(["one", "one", "two", "two"]);
  });

  test("stay near the days of the phase before", () => {
    const strong = { ...heavy, id: "strong", minutes: 20 };
    const phases = [
      { id: "one", weeks: [{ exercises: [heavy, balance] }] },
      { id: "two", weeks: [{ exercises: [strong, balance] }] },
    ];
    const [one, two] = laidOut(layOutProgram(course(2, [], { phases })));
    const week = (dates: string[]) => dates.map((date) => new Date(date).getUTCDay());
    expect(week(datesOf(two ? [two] : [], "balance"))).toEqual(
      week(datesOf(one ? [one] : [], "balance")),
    );
  });
});

describe("every second day", () => {
  const second = programExercise("second", { times: { everyDays: 2 }, recoveryHours: 48 });

  test("keeps its part of the day and lets other work share its sessions", () => {
    const weeks = laidOut(layOutProgram(course(4, [second, balance])));
    expect(weeks.map((week) => week.sessions.length)).toEqual([4, 3, 4, 3]);
    expect(new Set(gaps(datesOf(weeks, "second")))).toEqual(new Set([2]));
  });

  test("waits for the next open day when it falls on one that is taken, and counts on from there", () => {
    const taken = { ...CLOSED, usual: EVENING.free };
    const days = Array.from({ length: 14 }, (_, day) => (day === 4 ? taken : EVENING));
    const weeks = laidOut(layOutProgram(course(2, [second], { days })));
    expect(gaps(datesOf(weeks, "second"))).toEqual([2, 3, 2, 2, 2, 2]);
    expect(weeks.flatMap((week) => week.slipped)).toEqual([
      { exercise: "second", date: "2027-01-08", to: "2027-01-09" },
    ]);
  });

  test("goes on counting from one phase to the next", () => {
    const phases = [
      { id: "one", weeks: [{ exercises: [second] }] },
      { id: "two", weeks: [{ exercises: [{ ...second, minutes: 15 }] }] },
    ];
    const weeks = laidOut(layOutProgram(course(2, [], { phases })));
    expect(new Set(gaps(datesOf(weeks, "second")))).toEqual(new Set([2]));
  });
});

describe("inside a session", () => {
  test("drills come before heavy work and the warm-up before all", () => {
    const exercises = [
      { ...heavy, minutes: 10, after: ["drills", "warm-up"] },
      programExercise("drills", { after: ["warm-up"] }),
      programExercise("warm-up", { minutes: 5 }),
    ];
    const weeks = laidOut(layOutProgram(course(1, exercises)));
    const orders = weeks[0]?.sessions.map((session) => session.bouts.map((b) => b.exercise));
    expect(orders).toEqual(new Array(3).fill(["warm-up", "drills", "heavy"]));
  });
});

describe("what cannot be done", () => {
  test("is told of the first week that cannot, with the place each wish comes from", () => {
    const origin = { line: 12 };
    const three = { ...heavy, origins: { times: origin } };
    const days = Array.from({ length: 21 }, (_, day) =>
      day >= 14 && day % 7 > 2 ? CLOSED : EVENING,
    );
    const program = course(3, [three], { days, origins: { freeMinutes: "free" } });
    const result = layOutProgram(program);
    expect(result).toMatchObject({ status: "impossible", week: 2, firstDate: "2027-01-18" });
    if (result.status !== "impossible") return;
    expect(result.weeks).toHaveLength(2);
    const { collision, least } = explainProgram(program, result);
    expect(collision.map(({ kind, origin: from }) => [kind, from])).toEqual([
      ["times", origin],
      ["recovery", undefined],
      ["open-slots", "free"],
    ]);
    expect(least[0]?.sentence).toBe("Open Friday evening for 15 minutes.");
  });

  test("four bouts 48 h apart fit into one week but not into every week", () => {
    const four = { ...heavy, times: { perWeek: 4 } };
    expect(layOutProgram(course(1, [four])).status).toBe("laid-out");
    const program = course(3, [four]);
    const result = layOutProgram(program);
    expect(result).toMatchObject({ status: "impossible", week: 1 });
    if (result.status !== "impossible") return;
    const { collision, least } = explainProgram(program, result);
    expect(collision.map((one) => one.sentence)).toEqual([
      "Heavy heel raise is done four times a week, at most once a day.",
      "Heavy heel raise needs 48 hours from one bout to the next.",
      "The weeks before and after keep their bouts too.",
    ]);
    expect(least[0]?.sentence).toBe("Do Heavy heel raise three times a week in week 2.");
  });

  test("a phase that begins where the last one left no room has the week before placed anew", () => {
    const next = { ...heavy, times: { perWeek: 1 }, recoveryHours: 24 };
    const last = { ...heavy, times: { perWeek: 1 }, recoveryHours: 120 };
    const only = (day: number) => (_: unknown, d: number) => (d % 7 === day ? EVENING : CLOSED);
    const phases = [
      { id: "one", weeks: [{ exercises: [last] }] },
      { id: "two", weeks: [{ exercises: [next] }] },
    ];
    const days = [
      ...Array.from({ length: 7 }, (_, d) => (d > 1 ? EVENING : CLOSED)),
      ...Array.from({ length: 7 }, only(0)),
    ];
    const weeks = laidOut(layOutProgram(course(2, [], { phases, days })));
    expect(gaps(datesOf(weeks, "heavy"))).toEqual([5]);
  });

  test.each([
    [
      "every second day on two evenings",
      { everyDays: 2 },
      [
        "Heavy heel raise is done every second day, in this week on Monday, Wednesday, Friday and Sunday.",
        "Only Monday and Thursday evening are open.",
      ],
      "Do Heavy heel raise twice a week.",
    ],
    [
      "once a day on two evenings",
      { perDay: 1 },
      [
        "Heavy heel raise is done once a day, every day.",
        "Only Monday and Thursday evening are open.",
      ],
      "Do Heavy heel raise twice a week.",
    ],
  ])("%s does not fit in silence", (_, times, collision, less) => {
    const light = { ...heavy, hard: false, recoveryHours: 0, times };
    const days = Array.from({ length: 56 }, (_, day) =>
      day % 7 === 0 || day % 7 === 3 ? EVENING : CLOSED,
    );
    const program = course(8, [light], { days });
    const result = layOutProgram(program);
    if (result.status !== "impossible") throw new Error(result.status);
    const explained = explainProgram(program, result);
    expect(explained.collision.map((one) => one.sentence)).toEqual(collision);
    const all = [...explained.least, ...explained.larger].map((one) => one.sentence);
    expect(all).toContain(less);
  });

  test("once a day is done on every day but those that are taken", () => {
    const light = { ...heavy, hard: false, recoveryHours: 0, times: { perDay: 1 } };
    const away = { ...CLOSED, usual: EVENING.free, taken: ["evening" as const], why: "away" };
    const days = Array.from({ length: 14 }, (_, day) => (day === 9 ? away : EVENING));
    const weeks = laidOut(layOutProgram(course(2, [light], { days })));
    expect(datesOf(weeks, "heavy")).toHaveLength(13);
  });

  test.each([
    ["a first date that is none", { firstDate: "2027-02-30" }, "wrong-date"],
    ["days that do not match the weeks", { days: [] }, "wrong-number"],
  ])("%s is malformed", (_, more, kind) => {
    const result = layOutProgram(course(1, [heavy], more));
    expect(result).toMatchObject({ status: "malformed", mistakes: [{ kind }] });
  });

  test("an order that goes in a circle is malformed", () => {
    const a = programExercise("a", { after: ["b"] });
    const b = programExercise("b", { after: ["a"] });
    expect(layOutProgram(course(1, [a, b]))).toMatchObject({
      status: "malformed",
      mistakes: [{ kind: "order-circle" }],
    });
  });

  test("a node limit that is reached is unknown, not impossible", () => {
    const result = layOutProgram(course(1, [heavy, balance], { nodeLimit: 3 }));
    expect(result).toMatchObject({ status: "unknown", because: "node-limit" });
  });
});
