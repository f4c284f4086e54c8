/** From measure to load: capacity, target, equipment, rounding, limit; and what is said where it cannot be done. */
import { describe, expect, test } from "vitest";
import { doseProgram } from "../../src/dose/program.ts";
import type { Fault } from "../../src/faults/fault.ts";
import { card, type ExerciseInput, library, program } from "./fixtures.ts";

type Fields = Record<string, unknown>;

const easier = card({ id: "easier", demand: 1, load: { kind: "none" } });
const press = card({
  id: "press",
  side: "both",
  load: { kind: "weight", with: ["backpack", "dumbbell", "barbell"] },
  easier: [{ to: "easier" }],
});
const raise = card({
  id: "raise",
  load: { kind: "body", body_share: 0.9, add: "weight", with: ["backpack"] },
  easier: [{ to: "easier" }],
  capacity_from: ["two-legs", "press"],
});
const bodyOnly = card({
  id: "body-only",
  load: { kind: "body", body_share: 0.9 },
  easier: [{ to: "easier" }],
});
const twoLegs = card({
  id: "two-legs",
  side: "both",
  load: { kind: "body", body_share: 0.5, add: "weight", with: ["backpack"] },
});
const pull = card({ id: "pull", side: "both", load: { kind: "band", with: ["band"] } });
const all = library(easier, press, raise, bodyOnly, twoLegs, pull);

const kilos = { have: "backpack", from: "1 kg", up_to: "60 kg", steps: "1 kg" };
const reps = (of: string, side: string, load: string, count: number, fields: Fields = {}) => ({
  test: "repetitions",
  card: of,
  side,
  load,
  reps: count,
  on: "2026-11-20",
  ...fields,
});

function run(exercise: ExerciseInput, plan: Fields = {}, clinic: Fields = {}, lib = all) {
  const { value, faults } = doseProgram(program({ exercises: [exercise], plan, clinic }), lib);
  const bout = value.weeks[0]?.bouts[0];
  if (!bout) throw new Error("no bout");
  return { bout, load: bout.load, faults, codes: faults.map(({ code }) => code) };
}

const dose = (fields: Fields) => ({ dose: { sets: 3, reps: 8, per_week: 3, ...fields } });
const pressed = (target: string, plan: Fields, clinic: Fields = {}) =>
  run({ card: press, side: "both", says: dose({ target, reps: undefined }) }, plan, clinic);

const messages = (faults: readonly Fault[]) =>
  faults.map(({ level, code, place }) => `${level} ${code} ${place?.file}:${place?.line}`);

describe("load from target, formula and equipment", () => {
  const measured = [reps("press", "both", "30 kg", 10)];
  // 30 kg × 10 is a 1RM of 40 kg by Epley and Brzycki, 37.5 by O'Conner, 39.28 by Mayhew.
  test.each([
    ["10 RM", {}, 30],
    ["8 RM", {}, 31],
    ["6 RM", {}, 33],
    ["15 RM", {}, 26],
    ["1 RM", {}, 40],
    ["70 % of 1RM", {}, 28],
    ["75 % of 1RM", {}, 30],
    ["100 % of 1RM", {}, 40],
    ["12.5 kg", {}, 12],
    ["2 in reserve", {}, 30],
    ["70 % of 1RM", { dosing: { one_rm: "brzycki" } }, 28],
    ["70 % of 1RM", { dosing: { one_rm: "oconner" } }, 26],
    ["70 % of 1RM", { dosing: { one_rm: "mayhew" } }, 27],
    ["12 RM", { dosing: { rm_to_load: "nsca-chart" } }, 28],
    ["11 RM", { dosing: { rm_to_load: "nsca-chart" } }, 29],
    ["12 RM", { dosing: { rm_to_load: "nsca-textbook" } }, 26],
    ["15 RM", { dosing: { rm_to_load: "nsca-chart" } }, 26],
    ["20 RM", { dosing: { rm_to_load: "nsca-textbook" } }, 24],
  ])("30 kg × 10, %s, %j: %d kg", (target, clinic, kg) => {
    const says = target.endsWith("RM") && !target.includes("%") ? { reps: undefined } : {};
    const { load, codes } = run(
      { card: press, side: "both", says: dose({ target, ...says }) },
      { measures: measured, equipment: [kilos] },
      clinic,
    );
    expect(load.kg).toBe(kg);
    expect(load.kind).toBe("weight");
    expect(load.equipment).toBe("backpack");
    expect(codes).not.toContain("load-not-makeable");
  });

  test("one repetition is the load itself", () => {
    const plan = { measures: [reps("press", "both", "40 kg", 1)], equipment: [kilos] };
    expect(pressed("100 % of 1RM", plan).load.kg).toBe(40);
  });

  test("the provenance goes from measure to rounding, each step with its source", () => {
    const { bout } = pressed("8 RM", { measures: measured, equipment: [kilos] });
    const provenance = bout.provenance.load_kg ?? [];
    expect(provenance.map(({ step }) => step)).toEqual([
      "measure",
      "formula",
      "target",
      "equipment",
      "rounding",
    ]);
    expect(provenance[0]?.source).toMatch(/^plan\.md:\d+$/);
    expect(provenance[1]?.source).toContain("Epley 1985");
    expect(provenance.at(-1)?.value).toBe(31);
    for (const { says } of provenance) expect(says).toMatch(/^[A-Z0-9].*\.$/);
  });

  test("the jump to the next load is told as a share of the load moved", () => {
    const plan = {
      measures: measured,
      equipment: [{ have: "dumbbell", loads: ["20 kg", "30 kg"] }],
    };
    const { load } = pressed("70 % of 1RM", plan);
    expect(load).toMatchObject({ kg: 20, nextKg: 30, nextStep: 0.5, targetKg: 28, systemKg: 20 });
  });
});

describe("equipment in pounds", () => {
  // 200 lb once: 60 % of 1RM is 120 lb; a bar of 45 lb with pairs of 10 and 25 lb makes 65, 95 and 115 lb.
  const gym = [{ have: "barbell", bar: "45 lb", plates: ["10 lb", "25 lb"] }];
  const plan = { measures: [reps("press", "both", "200 lb", 1)], equipment: gym };
  test.each([
    ["60 % of 1RM", 115],
    ["57.5 % of 1RM", 115],
    ["57.4 % of 1RM", 95],
    ["95 lb", 95],
  ])("%s: %d lb", (target, lb) => {
    const { load, bout } = pressed(target, plan, { units: "lb" });
    expect(load.kg).toBeCloseTo(lb * 0.45359237, 5);
    const says = (bout.provenance.load_kg ?? []).map((step) => step.says).join(" ");
    expect(says).toContain(`makes ${lb} lb at or under the target`);
    expect(says).not.toContain("kg");
  });
  test("a clinic in kilograms reads the same plan", () => {
    const { bout } = pressed("60 % of 1RM", plan);
    expect(bout.provenance.load_kg?.at(-1)?.says).toBe("Rounded down from 54.43 kg to 52.16 kg.");
  });
});

describe("load with a share of body mass", () => {
  const body = (count: number, load = "20 kg", side = "left") => [reps("raise", side, load, count)];
  const raised = (target: string, plan: Fields, side: ExerciseInput["side"] = "left") =>
    run(
      { card: raise, side, says: dose({ target, reps: undefined }) },
      { equipment: [kilos], ...plan },
    );

  test("1RM counts load and body share: 20 + 67.5 kg × 10", () => {
    const { load } = raised("8 RM", { measures: body(10) });
    // 87.5 × 4/3 = 116.67; 8 RM is 92.1 kg moved, less 67.5 kg.
    expect(load).toMatchObject({
      kind: "weight",
      addedTo: "body",
      kg: 24,
      targetKg: 24.6,
      systemKg: 91.5,
    });
  });
  test("a target between 0 and the lightest load is the body alone, 0 kg", () => {
    const { load, codes } = raised("15 RM", {
      measures: body(10, "10 kg"),
      equipment: [{ have: "backpack", from: "5 kg", up_to: "20 kg", steps: "1 kg" }],
    });
    expect(load).toMatchObject({ kg: 0, addedTo: "body" });
    expect(codes).not.toContain("load-not-makeable");
  });
  test("a target under the body's share: the easier card is offered", () => {
    const { load, faults } = raised("15 RM", { measures: body(5, "0 kg") });
    const fault = faults.find(({ code }) => code === "load-not-makeable");
    expect(fault?.level).toBe("error");
    expect(fault?.hint).toContain("easier");
    expect(load.kg).toBeUndefined();
    expect(load.targetKg).toBe(0);
  });
  test("the same where nothing can be added", () => {
    const measures = [reps("body-only", "left", "0 kg", 5)];
    const { faults, load } = run(
      { card: bodyOnly, says: dose({ target: "15 RM", reps: 15 }) },
      { measures },
    );
    expect(faults.map(({ code }) => code)).toContain("load-not-makeable");
    expect(load).toMatchObject({ kind: "body", systemKg: 67.5 });
  });
  test("no body mass: an error at the client", () => {
    const client = { name: "Client", reference: "1", body_mass: undefined };
    const { faults } = raised("8 RM", { client, measures: body(10) });
    expect(messages(faults)).toContainEqual(
      expect.stringMatching(/^error measure-missing plan\.md:\d+$/),
    );
    expect(faults[0]?.message).toContain("body mass");
  });
  test("a load stated in kilograms needs no body mass", () => {
    const client = { name: "Client", reference: "1", body_mass: undefined };
    const { load, codes } = run(
      { card: raise, says: dose({ target: "10.5 kg" }) },
      { client, equipment: [kilos] },
    );
    expect(load).toMatchObject({ kg: 10, addedTo: "body" });
    expect(codes).toEqual([]);
  });
  test("without target the body alone is the load, and there are no kilograms", () => {
    const { load, bout } = run({ card: raise, says: dose({}) });
    expect(load).toEqual({ kind: "body", systemKg: 67.5 });
    expect(bout.kgTotal).toBeUndefined();
  });
  test("a measure of another card counts by the load moved", () => {
    // two-legs: 60 kg + 0.5 × 75 = 97.5 kg moved 5 times on the left: 1RM 113.75.
    const { load } = raised("75 % of 1RM", { measures: [reps("two-legs", "left", "60 kg", 5)] });
    expect(load.systemKg).toBeCloseTo(84.5, 6);
    expect(load.kg).toBe(17);
  });
});

describe("which measure counts", () => {
  const raised = (measures: unknown[], side: ExerciseInput["side"] = "left") =>
    run(
      { card: raise, side, says: dose({ target: "100 % of 1RM" }) },
      { measures, equipment: [kilos] },
    );
  test("the later of two", () => {
    const early = reps("raise", "left", "40 kg", 1, { on: "2026-11-01" });
    const late = reps("raise", "left", "30 kg", 1, { on: "2026-11-20" });
    expect(raised([early, late]).load.kg).toBe(30);
    expect(raised([late, early]).load.kg).toBe(30);
  });
  test("on the same day the later in the plan", () => {
    expect(
      raised([reps("raise", "left", "40 kg", 1), reps("raise", "left", "30 kg", 1)]).load.kg,
    ).toBe(30);
  });
  test("on the same day the exercise's own card before another", () => {
    expect(
      raised([reps("raise", "left", "30 kg", 1), reps("press", "left", "200 kg", 1)]).load.kg,
    ).toBe(30);
  });
  test("on two sides in turn the weaker", () => {
    const { load, bout } = raised(
      [reps("raise", "left", "40 kg", 1), reps("raise", "right", "25 kg", 1)],
      "each",
    );
    expect(load.kg).toBe(25);
    expect(bout.provenance.load_kg?.some(({ step }) => step === "limit")).toBe(true);
  });
  test("an old one warns at its date", () => {
    const { faults } = raised([reps("raise", "left", "30 kg", 1, { on: "2026-09-01" })]);
    expect(messages(faults)).toContainEqual(expect.stringMatching(/^warning measure-old plan\.md/));
  });
  test("one exactly as old as the limit does not", () => {
    expect(raised([reps("raise", "left", "30 kg", 1, { on: "2026-10-19" })]).codes).toEqual([]);
  });
  test("one taken after the start does not", () => {
    expect(raised([reps("raise", "left", "30 kg", 1, { on: "2027-03-01" })]).codes).toEqual([]);
  });
  test.each([
    ["left", "right", "error"],
    ["left", "both", "error"],
    ["right", "left", "error"],
    ["both", "left", "error"],
    ["each", "both", "error"],
    ["each", "left", "warning"],
  ] as const)("done %s, measured %s: %s measure-side", (side, measured, level) => {
    const { faults, load } = raised([reps("raise", measured, "30 kg", 1)], side);
    const fault = faults.find(({ code }) => code === "measure-side");
    expect(fault?.level).toBe(level);
    expect(fault?.place?.file).toBe("plan.md");
    expect(load.kg).toBe(level === "error" ? undefined : 30);
  });
  test.each(["left", "right", "both"])("without a side any measure counts: %s", (measured) => {
    expect(raised([reps("raise", measured, "30 kg", 1)], "none").load.kg).toBe(30);
  });
  test("none: an error, and the load in words", () => {
    const { faults, load } = pressed("12 RM", { equipment: [kilos] });
    expect(messages(faults)).toEqual([expect.stringMatching(/^error measure-missing plan\.md:/)]);
    expect(load.kg).toBeUndefined();
    expect(load.words).toBe("a weight with which 12 repetitions are the most you can do well");
  });
  test("repetitions in reserve can be found by feel: a warning", () => {
    const { faults, load } = pressed("2 in reserve", { equipment: [kilos] });
    expect(faults[0]?.level ?? "warning").toBe("warning");
    expect(load.words).toContain("2 more repetitions");
  });
  test("a measure of a card that the library does not have is not used", () => {
    const exercise = { card: raise, says: dose({ target: "100 % of 1RM" }) } as const;
    const plan = { measures: [reps("two-legs", "left", "60 kg", 1)], equipment: [kilos] };
    expect(run(exercise, plan, {}, library(raise)).codes).toContain("measure-missing");
  });
});

describe("repetition tests outside a formula's range", () => {
  const outside = (count: number, formula: string) =>
    pressed(
      "10 RM",
      { measures: [reps("press", "both", "10 kg", count)], equipment: [kilos] },
      { dosing: { one_rm: formula } },
    );
  test.each([
    ["epley", 10, [], true],
    ["epley", 11, ["warning"], true],
    ["epley", 30, ["warning"], true],
    ["epley", 31, ["error"], false],
    ["epley", 40, ["error"], false],
    ["epley", 100, ["error"], false],
    ["brzycki", 19, ["warning"], true],
    ["brzycki", 20, ["error"], false],
    ["brzycki", 37, ["error"], false],
    ["brzycki", 40, ["error"], false],
    ["lander", 38, ["error"], false],
    ["lombardi", 40, ["warning"], true],
    ["oconner", 40, ["warning"], true],
    ["mayhew", 15, [], true],
    ["mayhew", 40, ["warning"], true],
    ["wathen", 40, ["warning"], true],
  ] as const)("%s, %d repetitions", (formula, count, levels, usable) => {
    const { faults, load } = outside(count, formula);
    expect(faults.filter(({ code }) => code === "measure-range").map(({ level }) => level)).toEqual(
      levels,
    );
    expect(load.kg !== undefined).toBe(usable);
  });
  test("a test that moved nothing gives no load", () => {
    const { codes, load } = pressed("10 RM", {
      measures: [reps("press", "both", "0 kg", 8)],
      equipment: [kilos],
    });
    expect(codes).toContain("measure-missing");
    expect(load.kg).toBeUndefined();
  });
});

describe("equipment that does not do", () => {
  const measured = [reps("press", "both", "10 kg", 10)];
  test.each([
    [
      "only heavier loads",
      [{ have: "dumbbell", loads: ["20 kg"] }],
      /the lightest load the client has, 20 kg/,
    ],
    ["named without loads", ["backpack"], /for which the plan gives no loads/],
    ["nothing", [], /has nothing that makes a load/],
    ["other equipment", [{ have: "machine", loads: ["1 kg"] }], /has nothing that makes a load/],
  ])("%s: load-not-makeable, with the easier card", (_name, equipment, says) => {
    const { faults, load } = pressed("10 RM", { measures: measured, equipment });
    const fault = faults.find(({ code }) => code === "load-not-makeable");
    expect(fault?.level).toBe("error");
    expect(fault?.message).toMatch(says);
    expect(fault?.hint).toContain("(easier)");
    expect(load.kg).toBeUndefined();
  });
  test.each([
    ["named without loads", ["backpack"]],
    ["nothing", []],
  ])("a load to add to the body, %s: the body alone, with a warning", (_name, equipment) => {
    const measures = [reps("raise", "left", "20 kg", 10)];
    const { faults, load } = run(
      { card: raise, says: dose({ target: "8 RM" }) },
      { measures, equipment },
    );
    expect(load).toMatchObject({ kg: 0, targetKg: 24.6, addedTo: "body" });
    expect(faults.map(({ code, level }) => [code, level])).toEqual([
      ["load-not-makeable", "warning"],
    ]);
  });
  test("no easier card at hand: it says so", () => {
    const { faults } = run(
      { card: press, side: "both", says: dose({ target: "10 RM" }) },
      { measures: measured },
      {},
      library(press),
    );
    const hint = faults.find(({ code }) => code === "load-not-makeable")?.hint;
    expect(hint).toContain("names none");
  });
  test("a weight without target and measure is left to feel", () => {
    const { load, codes } = run({ card: press, side: "both", says: dose({ effort: 6 }) });
    expect(load).toEqual({ kind: "weight", words: "a weight that feels 6 out of 10" });
    expect(codes).toEqual([]);
  });
});

describe("the step from week to week", () => {
  const twoWeeks = (loads: string[], targets: readonly [string, string]) => {
    const says = {
      dose: { sets: 3, reps: 6, per_week: 3 },
      weeks: { 1: { target: targets[0] }, 2: { target: targets[1] } },
    };
    const { value, faults } = doseProgram(
      program({
        weeks: 2,
        exercises: [{ card: press, side: "both", says }],
        plan: {
          measures: [reps("press", "both", "100 kg", 1)],
          equipment: [{ have: "dumbbell", loads }],
        },
      }),
      all,
    );
    return { kg: value.weeks.map(({ bouts }) => bouts[0]?.load.kg), faults, value };
  };
  test.each([
    ["fine equipment stays inside the limit", ["50 kg", "54 kg", "58 kg"], [50, 54], false],
    ["coarse equipment takes one step and says so", ["50 kg", "58 kg", "59 kg"], [50, 58], true],
    ["no further load under the target: it stays", ["50 kg", "80 kg"], [50, 50], true],
  ])("%s", (_name, loads, kg, coarse) => {
    const result = twoWeeks(loads, ["50 % of 1RM", "60 % of 1RM"]);
    expect(result.kg).toEqual(kg);
    const fault = result.faults.find(({ code }) => code === "load-coarse");
    expect(fault !== undefined).toBe(coarse);
    if (fault) expect(fault.hint).toContain("repetitions grow first");
  });
  test("the limit is in the provenance", () => {
    const { value } = twoWeeks(["50 kg", "54 kg", "58 kg"], ["50 % of 1RM", "60 % of 1RM"]);
    expect(value.weeks[1]?.bouts[0]?.provenance.load_kg?.at(-1)).toMatchObject({
      step: "limit",
      value: 54,
    });
  });
  test("a load stated in kilograms is taken as stated, and a large step is told", () => {
    const { kg, faults } = twoWeeks(["50 kg", "54 kg", "58 kg"], ["50 kg", "58 kg"]);
    expect(kg).toEqual([50, 58]);
    expect(faults.map(({ code }) => code)).toEqual(["load-coarse"]);
  });
  test("a lighter week is no step", () => {
    expect(twoWeeks(["50 kg", "30 kg"], ["50 % of 1RM", "30 % of 1RM"]).kg).toEqual([50, 30]);
  });
});

describe("bands", () => {
  const pulled = (fields: Fields, levels: number[] | undefined, measures: unknown[] = []) =>
    run(
      { card: pull, side: "both", says: dose(fields) },
      { measures, equipment: levels ? [{ have: "band", levels }] : ["band"] },
    );
  test.each([
    ["band 4", [1, 3, 5], 3],
    ["band 5", [1, 3, 5], 5],
    ["band 8", [2], 2],
  ])("%s of %j: level %d", (target, levels, level) => {
    expect(pulled({ target }, levels).load).toMatchObject({ kind: "band", level });
  });
  test("no band light enough", () => {
    const { load, codes } = pulled({ target: "band 2" }, [4]);
    expect(codes).toContain("load-not-makeable");
    expect(load.level).toBeUndefined();
  });
  test("kilograms: the level whose force is at or under", () => {
    // Level 4 is 4.6 lb (2.09 kg), level 5 is 5.8 lb (2.63 kg) at 100 %.
    expect(pulled({ target: "2.5 kg" }, [3, 4, 5]).load).toMatchObject({ level: 4, targetKg: 2.5 });
  });
  test("no measure is a warning, and the band is left to feel", () => {
    const { faults, load } = pulled({ target: "15 RM", reps: undefined }, [3]);
    expect(faults.map(({ level }) => level)).toEqual(["warning"]);
    expect(load.words).toContain("15 repetitions");
  });
  test("no target", () => {
    expect(pulled({ effort: 5 }, [3]).load).toEqual({
      kind: "band",
      words: "a band that feels 5 out of 10",
    });
  });
});

describe("targets that do not fit the card", () => {
  const still = card({ id: "still", load: { kind: "none" } });
  test.each([
    [still, "12 RM"],
    [still, "10 kg"],
    [bodyOnly, "10 kg"],
    [bodyOnly, "band 3"],
    [press, "band 3"],
  ] as const)("a warning at the target", (one, target) => {
    const { faults } = run(
      { card: one, says: dose({ target, reps: undefined }) },
      { equipment: [kilos] },
    );
    const fault = faults.find(({ code }) => code === "wrong-value");
    expect(fault?.level).toBe("warning");
    expect(fault?.place).toMatchObject({ file: "protocol.md", line: 10 });
  });
});
