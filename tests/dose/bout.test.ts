/** Sets, repetitions, holds, speeds, times and frequencies of single bouts. */
import { describe, expect, test } from "vitest";
import { doseProgram } from "../../src/dose/program.ts";
import { card, type ExerciseInput, library, program } from "./fixtures.ts";

type Fields = Record<string, unknown>;

const free = card({ id: "free", load: { kind: "none" }, dose: { sets: 3, reps: 10, per_week: 3 } });
const held = card({
  id: "held",
  load: { kind: "hold" },
  dose: { sets: 4, hold: "30 s", per_week: 3 },
});
const run20 = card({
  id: "run",
  side: "none",
  load: { kind: "speed" },
  dose: { sets: 4, distance: "50 m", per_week: 2 },
});

function bout(exercise: ExerciseInput, plan: Fields = {}, clinic: Fields = {}) {
  const { value, faults } = doseProgram(
    program({ exercises: [exercise], plan, clinic }),
    library(free, held, run20),
  );
  const made = value.weeks[0]?.bouts[0];
  if (!made) throw new Error("no bout");
  return { ...made, faults, codes: faults.map(({ code }) => code) };
}

describe("sets and repetitions", () => {
  test.each([
    ["a number", { sets: 3, reps: 12 }, [12, 12, 12], { low: 36, high: 36 }],
    ["a pyramid", { sets: 3, reps: [12, 10, 8] }, [12, 10, 8], { low: 30, high: 30 }],
    ["a range", { sets: 3, reps: "6-8" }, [8, 8, 8], { low: 18, high: 24 }],
    ["a list stated later than the sets", { reps: [5, 4] }, [5, 4], { low: 9, high: 9 }],
  ])("%s", (_name, says, reps, total) => {
    const made = bout({ card: free, says: { dose: says } });
    expect(made.reps?.map(({ high }) => high)).toEqual(reps);
    expect(made.sets).toBe(reps.length);
    expect(made.repsTotal).toEqual(total);
    expect(made.codes).toEqual([]);
  });
  test("more repetitions than the repetition maximum warns", () => {
    const weight = card({ id: "weight", side: "both" });
    const made = bout({
      card: weight,
      side: "both",
      says: { dose: { reps: 15, target: "12 RM" } },
    });
    expect(made.codes).toContain("wrong-value");
  });
});

describe("a share of the most repetitions", () => {
  const measures = [
    { test: "repetitions", card: "free", side: "left", reps: 25, on: "2026-11-20" },
  ];
  const target = "70 % of most reps";
  test.each([
    ["stated after the card's repetitions it gives them", {}, {}, 17],
    ["stated with repetitions the lower holds: fewer asked", { reps: 12 }, {}, 12],
    ["stated with repetitions the lower holds: fewer possible", { reps: 20 }, {}, 17],
    ["repetitions of the plan win", {}, { reps: [{ low: 20, high: 20 }] }, 20],
  ])("%s", (_name, says, redose, reps) => {
    const made = bout({ card: free, says: { dose: { target, ...says } }, redose }, { measures });
    expect(made.reps?.[0]?.high).toBe(reps);
  });
  test("less than one repetition: an error, and never 0", () => {
    const one = [{ ...measures[0], reps: 1 }];
    const made = bout({ card: free, says: { dose: { target } } }, { measures: one });
    expect(made.codes).toContain("load-not-makeable");
    expect(made.reps?.[0]?.high).toBe(1);
  });
});

describe("a share of the best hold", () => {
  const hold = (time: string, fields: Fields = {}) => [
    { test: "hold", card: "held", side: "left", time, on: "2026-11-20", ...fields },
  ];
  const says = { dose: { target: "70 % of best hold" } };
  test.each([
    ["60 s", 42],
    ["65 s", 45],
    ["2 min", 84],
  ])("of %s: %d s", (best, seconds) => {
    const made = bout({ card: held, says }, { measures: hold(best) });
    expect(made.holdS).toBe(seconds);
    expect(made.tensionS).toBe(4 * seconds);
    expect(made.provenance.hold_s?.[0]?.step).toBe("measure");
  });
  test("a hold stated with it is the most", () => {
    const made = bout(
      { card: held, says: { dose: { ...says.dose, hold: "40 s" } } },
      { measures: hold("2 min") },
    );
    expect(made.holdS).toBe(40);
  });
  test("without a measure the card's hold stays, with an error", () => {
    const made = bout({ card: held, says });
    expect(made.holdS).toBe(30);
    expect(made.faults.map(({ code, level }) => [code, level])).toEqual([
      ["measure-missing", "error"],
    ]);
  });
  test("a hold of no time is an error at the measure", () => {
    const made = bout({ card: held, says }, { measures: hold("0 s") });
    expect(made.faults[0]).toMatchObject({ code: "wrong-value", place: { file: "plan.md" } });
    expect(made.holdS).toBe(30);
  });
  test("less than a second: an error, and never 0", () => {
    const made = bout({ card: held, says }, { measures: hold("1 s") });
    expect(made.codes).toContain("load-not-makeable");
    expect(made.holdS).toBe(1);
  });
});

describe("a share of the top speed", () => {
  const says = { dose: { target: "70 % of top speed" } };
  const speed = (fields: Fields) => [{ test: "speed", card: "run", on: "2026-11-20", ...fields }];
  test.each([
    [
      "a speed",
      { speed: "20 km/h" },
      { kmH: 14, eachS: { low: 13, high: 14 }, runningStart: true },
    ],
    [
      "a timed distance",
      { distance: "40 m", time: "6 s" },
      { kmH: 16.8, eachS: { low: 11, high: 11.5 } },
    ],
    [
      "rounded down to a tenth",
      { speed: "19.9 km/h" },
      { kmH: 13.9, eachS: { low: 13, high: 14 }, runningStart: true },
    ],
  ])("%s", (_name, fields, numbers) => {
    const made = bout({ card: run20, side: "none", says }, { measures: speed(fields) });
    expect(made.load).toEqual({ kind: "speed", share: { low: 0.7, high: 0.7 }, ...numbers });
    expect(made.codes).toEqual([]);
  });
  test.each([
    ["no time", { distance: "40 m" }],
    ["a time of 0", { distance: "40 m", time: "0 s" }],
    ["a speed of 0", { speed: "0 km/h" }],
  ])("%s: an error, and the speed in words", (_name, fields) => {
    const made = bout(
      { card: run20, side: "none", says: { dose: { ...says.dose, effort: 4 } } },
      { measures: speed(fields) },
    );
    expect(made.codes).toContain("wrong-value");
    expect(made.load).toEqual({ kind: "speed", share: { low: 0.7, high: 0.7 } });
    expect(made.clockS).toBe(200);
  });
});

describe("time under tension and the clock", () => {
  test.each([
    ["3-0-1-0", 10, 40],
    ["4-0-2-1", 8, 56],
    ["3-0-3-0", 8, 48],
    ["3-0-3-2", 12, 96],
    ["2-0-2-0", 1, 4],
    ["5-0-3-0", 1, 8],
    ["6-0-4-0", 1, 10],
    ["3-0-X-0", 10, 40],
    ["X-0-X-0", 10, 20],
  ])("tempo %s × %d: %d s (common practice; X counts 1 s)", (tempo, reps, seconds) => {
    expect(bout({ card: free, says: { dose: { sets: 1, reps, tempo } } }).tensionS).toBe(seconds);
  });
  test("X counts what the clinic says", () => {
    const says = { dose: { sets: 1, reps: 10, tempo: "3-0-X-0" } };
    expect(bout({ card: free, says }, {}, { dosing: { fast_part: 0 } }).tensionS).toBe(30);
    expect(bout({ card: free, says }, {}, { dosing: { fast_part: 0.5 } }).tensionS).toBe(35);
  });
  test.each(["0-0-0-0"])("tempo %s takes no time: an error at the tempo", (tempo) => {
    const made = bout({ card: free, says: { dose: { tempo } } });
    expect(made.faults[0]).toMatchObject({
      code: "wrong-value",
      level: "error",
      place: { line: 10 },
    });
    expect(made.tensionS).toBe(0);
    expect(made.minutes).toBe(1);
  });
  test.each([
    [
      "one side",
      "left",
      { sets: 3, reps: 10, tempo: "3-0-3-0", rest: "1 min" },
      false,
      3 * 60 + 2 * 60,
    ],
    [
      "the last rest counts",
      "left",
      { sets: 3, reps: 10, tempo: "3-0-3-0", rest: "1 min" },
      true,
      3 * 60 + 3 * 60,
    ],
    [
      "both sides in turn",
      "each",
      { sets: 3, reps: 10, tempo: "3-0-3-0", rest: "1 min" },
      false,
      6 * 60 + 2 * 60,
    ],
    [
      "rest between repetitions",
      "left",
      { sets: 1, reps: 5, hold: "10 s", rest_reps: "10 s" },
      false,
      50 + 40,
    ],
    ["no tempo: 4 s a repetition", "left", { sets: 2, reps: 10 }, false, 80],
    ["timed", "left", { sets: 3, reps: undefined, time: "60 s", rest: "30 s" }, false, 240],
  ] as const)("%s", (_name, side, dose, last, seconds) => {
    const made = bout({ card: free, side, says: { dose } }, {}, { dosing: { last_rest: last } });
    expect(made.clockS).toBe(seconds);
    expect(made.minutes).toBe(Math.ceil(seconds / 60));
  });
  test("no tempo and no hold: no time under tension", () => {
    const made = bout({ card: free });
    expect(made.tensionS).toBeUndefined();
    expect(made.provenance.tension_s).toBeUndefined();
  });
  test("tension and repetitions count one side, the clock both", () => {
    const dose = { sets: 2, reps: 10, tempo: "3-0-3-0" };
    const made = bout({ card: free, side: "each", says: { dose } });
    expect([made.sides, made.repsTotal?.high, made.tensionS, made.clockS]).toEqual([
      2, 20, 120, 240,
    ]);
  });
});

describe("how often", () => {
  test.each([
    [{ per_week: 3 }, { perWeek: 3 }, 3],
    [{ per_day: 2 }, { perDay: 2 }, 14],
    [{ every: "2 days" }, { everyDays: 2 }, 4],
    [{ every: "3 days" }, { everyDays: 3 }, 3],
    [{ every: "7 days" }, { everyDays: 7 }, 1],
  ])("%j", (dose, frequency, sessions) => {
    const made = bout({ card: free, says: { dose } });
    expect([made.frequency, made.sessions]).toEqual([frequency, sessions]);
  });
});

describe("every number has a provenance", () => {
  test("of what is there, and of nothing else", () => {
    const dose = {
      sets: 3,
      reps: 10,
      tempo: "3-0-3-0",
      rest: "1 min",
      rest_reps: "2 s",
      effort: 6,
    };
    const made = bout({ card: free, says: { dose } });
    expect(Object.keys(made.provenance).sort()).toEqual([
      "clock_s",
      "effort",
      "frequency",
      "minutes",
      "reps",
      "reps_total",
      "rest_reps_s",
      "rest_s",
      "sets",
      "tempo",
      "tension_s",
    ]);
    for (const steps of Object.values(made.provenance)) {
      expect(steps.length).toBeGreaterThan(0);
      for (const { says } of steps) expect(says).toMatch(/\.$/);
    }
    expect(made.provenance.frequency?.[0]?.source).toBe("card.md:20");
    expect(made.provenance.sets?.[0]?.source).toBe("protocol.md:10");
  });
});
