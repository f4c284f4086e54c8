/** Published volumes: repetitions, sessions and time under tension of whole courses. */
import { describe, expect, test } from "vitest";
import { type CourseWeek, courseSums, isWithin } from "../../src/dose/course.ts";
import { expandWeeks } from "../../src/prescription/week-table.ts";
import { protocolExercise } from "../../src/protocols/schema.ts";

const DOSING = { fast_part: 1, last_rest: false };

function course(weeks: number, says: Record<string, unknown>): CourseWeek[] {
  const exercise = protocolExercise.parse({ card: "exercise", ...says });
  const { doses, problems } = expandWeeks(exercise, weeks);
  expect(problems).toEqual([]);
  return doses.flatMap((dose, index) => (dose ? [{ week: index + 1, dose }] : []));
}

const sums = (weeks: number, says: Record<string, unknown>) =>
  courseSums(course(weeks, says), DOSING);

const row = (sets: number, reps: number | string | number[], perWeek: number) => ({
  sets,
  reps,
  per_week: perWeek,
});

// Cuthbert 2019, Sports Med 50:83, table 2.
describe("Nordic programmes, published total repetitions", () => {
  test.each([
    [
      "Alonso-Fernandez",
      8,
      { "1-2": row(2, 6, 2), "3-4": row(3, "4-6", 3), "5-6": row(3, 8, 3), "7-8": row(3, 10, 3) },
      480,
      60,
    ],
    ["Alt", 4, { "1-4": row(3, 3, 3) }, 108, 27],
    [
      "Anastasi",
      10,
      { "1-2": row(3, 6, 3), "3-4": row(3, 7, 3), "5-7": row(3, 8, 3), "8-10": row(3, 10, 3) },
      720,
      72,
    ],
    ["Freeman", 4, { 1: row(2, 5, 2), 2: row(3, 4, 2), 3: row(3, 5, 2), 4: row(3, 6, 2) }, 110, 28],
  ] as const)("%s: %d weeks", (_name, weeks, table, total, mean) => {
    const { reps } = sums(weeks, { weeks: table });
    expect(reps.high).toBe(total);
    expect(isWithin(total, reps)).toBe(true);
    expect(Math.round(reps.high / weeks)).toBe(mean);
  });
});

// Mjølsnes 2004, Scand J Med Sci Sports 14:311; same table in Petersen 2011, Am J Sports Med 39:2296.
describe("Nordic, ten weeks", () => {
  const table = {
    1: row(2, 5, 1),
    2: row(2, 6, 2),
    3: row(3, "6-8", 3),
    4: row(3, "8-10", 3),
    "5-10": row(3, [12, 10, 8], 3),
  };
  test("27 sessions (Petersen 2011)", () => expect(sums(10, { weeks: table }).sessions).toBe(27));
  test("700 to 736 repetitions", () =>
    expect(sums(10, { weeks: table }).reps).toEqual({ low: 700, high: 736 }));
  test.each([
    [1, 10, 10],
    [2, 12, 12],
    [3, 18, 24],
    [4, 24, 30],
    [5, 30, 30],
    [10, 30, 30],
  ])("week %d: %d to %d repetitions a session", (week, low, high) => {
    const one = course(10, { weeks: table })[week - 1];
    const dose = one ? { ...one.dose, per_week: 1 } : {};
    expect(courseSums([{ week: 1, dose }], DOSING).reps).toEqual({ low, high });
  });
  test("after ten weeks once a week, the same sets", () => {
    const after = sums(12, { weeks: { ...table, "11-12": row(3, [12, 10, 8], 1) } });
    expect(after.sessions).toBe(29);
    expect(after.reps.high).toBe(796);
  });
});

describe("Nordic, 13 weeks (van der Horst 2015)", () => {
  const table = {
    1: row(2, [5, 5], 1),
    2: row(2, [6, 6], 2),
    3: row(3, [6, 6, 6], 2),
    4: row(3, [6, 7, 8], 2),
    5: row(3, [8, 9, 10], 2),
    "6-13": row(3, [10, 9, 8], 2),
  };
  test("soft check, from memory: 25 sessions, 598 repetitions", () => {
    const { sessions, reps } = sums(13, { weeks: table });
    expect([sessions, reps.high]).toEqual([25, 598]);
  });
});

// BMJ Open Sport Exerc Med 2019;5:e000570, table 1: time under tension per leg and session.
describe("Modified Copenhagen adduction, eight weeks", () => {
  const hold = (sets: number, reps: number) => ({ sets, reps, hold: "20 s" });
  const moving = (sets: number, reps: number) => ({ sets, reps, tempo: "3-0-3-0" });
  const weeks = [
    hold(2, 6),
    hold(2, 6),
    hold(3, 6),
    hold(3, 8),
    hold(3, 8),
    moving(3, 6),
    moving(3, 8),
    moving(3, 10),
  ];
  const table = Object.fromEntries(weeks.map((dose, index) => [index + 1, dose]));
  test.each([
    [1, 240],
    [2, 240],
    [3, 360],
    [4, 480],
    [5, 480],
    [6, 108],
    [7, 144],
    [8, 180],
  ])("week %d: %d s", (week, seconds) => {
    const all = course(8, { dose: { per_week: 2 }, weeks: table });
    expect(courseSums(all.slice(0, week), DOSING).tensionS).toBe(seconds);
  });
  test("16 sessions", () =>
    expect(sums(8, { dose: { per_week: 2 }, weeks: table }).sessions).toBe(16));
});

// Rathleff 2015, Scand J Med Sci Sports 25:e292.
describe("Rathleff: heel raise every second day, twelve weeks", () => {
  const says = {
    dose: { tempo: "3-0-3-2", every: "2 days" },
    weeks: {
      "1-2": { sets: 3, target: "12 RM" },
      "3-4": { sets: 4, target: "10 RM" },
      "5-12": { sets: 5, target: "8 RM" },
    },
  };
  test.each([
    [2, 288],
    [4, 320],
    [12, 320],
  ])("in week %d a session has %d s under tension", (week, seconds) => {
    expect(courseSums(course(12, says).slice(0, week), DOSING).tensionS).toBe(seconds);
  });
  test("42 sessions, 1652 repetitions", () => {
    const { sessions, reps } = sums(12, says);
    expect([sessions, reps.high]).toEqual([42, 1652]);
  });
  test("four and three sessions in turn", () => {
    const each = course(12, says).map((week) => courseSums([week], DOSING).sessions);
    expect(each).toEqual([4, 3, 4, 3, 4, 3, 4, 3, 4, 3, 4, 3]);
  });
  test.each([
    ["1-2", 1, 2, 252],
    ["3-4", 3, 4, 280],
    ["5-12", 5, 12, 1120],
  ] as const)("weeks %s", (_name, first, last, reps) => {
    expect(courseSums(course(12, says).slice(first - 1, last), DOSING).reps.high).toBe(reps);
  });
});

// Alfredson 1998, Am J Sports Med 26:360: 3 × 15, twice a day, two exercises, every day.
describe("Alfredson: eccentric calf work", () => {
  const says = { dose: { sets: 3, reps: 15, per_day: 2 } };
  const twoExercises = 2;
  test("180 repetitions a day", () =>
    expect((sums(1, says).reps.high * twoExercises) / 7).toBe(180));
  test("1260 a week", () => expect(sums(1, says).reps.high * twoExercises).toBe(1260));
  test("15120 in twelve weeks", () => expect(sums(12, says).reps.high * twoExercises).toBe(15120));
});

// Holmgren 2012, BMJ 344:e787: five exercises 3 × 15, twice a day, from week 8 once.
describe("Holmgren: shoulder, the switch of how often", () => {
  const says = {
    dose: { sets: 3, reps: 15 },
    weeks: { "1-8": { per_day: 2 }, "9-12": { per_day: 1 } },
  };
  test.each([
    [1, 450],
    [8, 450],
    [9, 225],
    [12, 225],
  ])("week %d: %d repetitions a day", (week, reps) => {
    const one = course(12, says)[week - 1];
    expect((5 * courseSums(one ? [one] : [], DOSING).reps.high) / 7).toBe(reps);
  });
});

// Rio 2015, Br J Sports Med 49:1277.
describe("Rio: isometric against isotonic", () => {
  test("soft check, from memory: 225 s against 224 s under tension", () => {
    expect(sums(1, { dose: { sets: 5, hold: "45 s", per_week: 1 } }).tensionS).toBe(225);
    const isotonic = { sets: 4, reps: 8, tempo: "4-0-3-0", per_week: 1 };
    expect(sums(1, { dose: isotonic }).tensionS).toBe(224);
  });
});
