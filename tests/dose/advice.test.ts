/** Advice on a whole program: each warning once a cause, with its weeks, its place and its source. */
import { describe, expect, test } from "vitest";
import { sayList, sayWeeks } from "../../src/dose/findings.ts";
import { doseProgram } from "../../src/dose/program.ts";
import { card, library, program } from "./fixtures.ts";

const base = card({ id: "base", load: { kind: "none" } });
const all = library(base);

type Input = Parameters<typeof program>[0];
const faultsOf = (input: Input, lib: typeof all | undefined = all) =>
  doseProgram(program(input), lib).faults;
const only = (input: Input, code: string, lib: typeof all | undefined = all) =>
  faultsOf(input, lib).filter((fault) => fault.code === code);

describe("tissue-untrained", () => {
  const thigh = card({ id: "thigh", tissues: ["thigh"], load: { kind: "none" } });
  const lib = library(base, thigh);
  const partly = { dose: { sets: 1 }, weeks: { "1-2": {} } };
  test("weeks without any exercise for a main tissue", () => {
    const exercises = [{ card: base }, { card: thigh, says: partly }];
    const faults = only({ weeks: 4, exercises }, "tissue-untrained", lib);
    expect(faults).toHaveLength(1);
    expect(faults[0]?.message).toContain("thigh in weeks 3 and 4");
  });
  test.each([
    ["a stretch does not stand in for load", "strength", "mobility", 1],
    ["load does", "strength", "isometric", 0],
    ["for a stretch another stretch does", "mobility", "mobility", 0],
  ] as const)("%s", (_name, first, then, count) => {
    const [before, after] = [first, then].map((trains, at) =>
      card({ id: `thigh-${at}`, trains, tissues: ["thigh"], load: { kind: "none" } }),
    );
    if (!before || !after) throw new Error("two cards");
    const exercises = [
      { card: base },
      { card: before, says: partly },
      { card: after, main: false, says: { dose: { sets: 1 } } },
    ];
    const found = only({ weeks: 4, exercises }, "tissue-untrained", library(base, before, after));
    expect(found).toHaveLength(count);
  });
  test("extras do not count", () => {
    const exercises = [{ card: base }, { card: thigh, main: false, says: partly }];
    expect(only({ weeks: 4, exercises }, "tissue-untrained", lib)).toEqual([]);
  });
  test("an exercise of the protocol that the plan leaves out", () => {
    const full = program({ weeks: 2, exercises: [{ card: base }, { card: thigh }] });
    const [phase] = full.phases;
    const left = {
      ...full,
      phases: phase ? [{ ...phase, exercises: phase.exercises.slice(0, 1) }] : [],
    };
    const codes = doseProgram(left, lib).faults.map(({ code }) => code);
    expect(codes).toContain("tissue-untrained");
  });
});

describe("no-easier-rung", () => {
  const hard = card({ id: "hard", demand: 6, load: { kind: "none" } });
  const laddered = card({
    id: "laddered",
    demand: 6,
    load: { kind: "none" },
    easier: [{ to: "base" }],
  });
  const broken = card({
    id: "broken",
    demand: 6,
    load: { kind: "none" },
    easier: [{ to: "gone" }],
  });
  test.each([
    ["a demanding card without one", hard, 1],
    ["one that has one", laddered, 0],
    ["one whose easier card is not in the library", broken, 1],
    ["the foot of a ladder", base, 0],
  ])("%s", (_name, one, count) => {
    const exercises = [{ card: one }];
    expect(only({ weeks: 3, exercises }, "no-easier-rung", library(base, one))).toHaveLength(count);
  });
  test("one below the next counts, where the client has not what the next needs", () => {
    const next = card({
      id: "next",
      demand: 5,
      equipment: ["machine"],
      easier: [{ to: "base" }],
    });
    const top = card({ id: "top", demand: 6, easier: [{ to: "next" }] });
    const found = only({ exercises: [{ card: top }] }, "no-easier-rung", library(base, next, top));
    expect(found).toEqual([]);
  });
  test("none is for this client: the library is not said to lack it", () => {
    const next = card({ id: "next", demand: 5, equipment: ["machine"] });
    const top = card({ id: "top", demand: 6, easier: [{ to: "next" }] });
    const [found] = only(
      { exercises: [{ card: top }] },
      "no-easier-rung",
      library(base, next, top),
    );
    expect(found?.hint).toContain("None of the cards below it (the next: next)");
    expect(found?.hint).not.toContain("the library does not have");
  });
  test("an extra needs none", () => {
    expect(only({ exercises: [{ card: hard, main: false }] }, "no-easier-rung")).toEqual([]);
  });
});

describe("load-coarse over many weeks", () => {
  test("once, with the weeks", () => {
    const press = card({ id: "press", side: "both", load: { kind: "weight", with: ["dumbbell"] } });
    const faults = only(
      {
        weeks: 6,
        exercises: [{ card: press, side: "both", says: { dose: { target: "70 % of 1RM" } } }],
        plan: {
          measures: [
            {
              test: "repetitions",
              card: "press",
              side: "both",
              load: "10 kg",
              reps: 1,
              on: "2026-11-20",
            },
          ],
          equipment: [{ have: "dumbbell", loads: ["5 kg", "10 kg"] }],
        },
      },
      "load-coarse",
      library(press),
    );
    expect(faults).toHaveLength(1);
    expect(faults[0]?.message).toContain("from 5 kg to 10 kg, a step of 100 %");
    expect(faults[0]?.message).toContain("(weeks 1 to 6)");
    expect(faults[0]?.place?.file).toBe("plan.md");
  });
});

describe("weeks in words", () => {
  test.each([
    [[], ""],
    [[3], "week 3"],
    [[3, 3], "week 3"],
    [[3, 4], "weeks 3 and 4"],
    [[6, 7, 8, 9, 10, 11, 12], "weeks 6 to 12"],
    [[1, 4, 6, 7, 8], "weeks 1, 4 and 6 to 8"],
    [[2, 1, 5, 6], "weeks 1, 2, 5 and 6"],
  ])("%j: %s", (weeks, words) => expect(sayWeeks(weeks)).toBe(words));
  test("lists", () =>
    expect([sayList([]), sayList(["a"]), sayList(["a", "b"])]).toEqual(["", "a", "a and b"]));
});
