/** Input that nobody should write, and that must still end in numbers and faults. */
import { describe, expect, test } from "vitest";
import { doseProgram } from "../../src/dose/program.ts";
import { plannedSessionLoad } from "../../src/dose/totals.ts";
import { card, library, program } from "./fixtures.ts";

const weight = card({ id: "weight", side: "both", load: { kind: "weight", with: ["backpack"] } });
const plain = card({ id: "plain", load: { kind: "none" } });

const measure = (fields: Record<string, unknown>) => ({
  test: "repetitions",
  card: "weight",
  side: "both",
  load: "20 kg",
  reps: 8,
  on: "2026-11-20",
  ...fields,
});

describe("whatever is written", () => {
  test.each([1.2, -0.1, "86 %"])("a body share of %j is refused by the card's schema", (share) => {
    expect(() => card({ id: "x", load: { kind: "body", body_share: share } })).toThrow();
  });
  test("no phases: an empty program", () => {
    const { value, faults } = doseProgram({
      ...program({ exercises: [{ card: plain }] }),
      phases: [],
    });
    expect(value.weeks).toHaveLength(1);
    expect(value.weeks[0]?.totals).toEqual({
      reps: { low: 0, high: 0 },
      kg: 0,
      minutes: 0,
      load: undefined,
      sessions: 0,
      exercises: 0,
      sessionS: 0,
    });
    expect(faults).toEqual([]);
  });
  test("fewer weeks than the phase: the rest is left out", () => {
    const { value } = doseProgram(
      program({ weeks: 3, phases: [{ weeks: 12, exercises: [{ card: plain }] }] }),
    );
    expect(value.weeks.map(({ bouts }) => bouts.length)).toEqual([1, 1, 1]);
  });
  test.each([
    ["a test of 40", { reps: 40 }],
    ["a test of 100", { reps: 100 }],
    ["a load of 10 t", { load: "10000 kg" }],
    ["a gram", { load: "1 g" }],
    ["a date long gone", { on: "1900-01-01" }],
    ["a date far ahead", { on: "2999-12-31" }],
    ["another card", { card: "elsewhere" }],
  ])("%s", (_name, fields) => {
    const { value, faults } = doseProgram(
      program({
        exercises: [{ card: weight, side: "both", says: { dose: { target: "8 RM" } } }],
        plan: {
          measures: [measure(fields)],
          equipment: [{ have: "backpack", from: "1 kg", up_to: "30 kg", steps: "1 kg" }],
        },
      }),
    );
    const load = value.weeks[0]?.bouts[0]?.load;
    expect(load?.kg ?? 0).toBeLessThanOrEqual(30);
    if (load?.kg === undefined) expect(faults.some(({ level }) => level === "error")).toBe(true);
    for (const { message, place } of faults) {
      expect(message).not.toMatch(/NaN|undefined|Infinity|null/);
      expect(place?.file).toMatch(/\.md$/);
    }
  });
  test("a year of twenty exercises is dosed", () => {
    const exercises = Array.from({ length: 20 }, (_, index) => ({
      card: card({ id: `card-${index}`, load: { kind: "none" } }),
      says: { rule: { from: { sets: 1, reps: 1 }, to: { sets: 20, reps: 200 } } },
    }));
    const { value, faults } = doseProgram(program({ weeks: 52, exercises }));
    expect(value.weeks).toHaveLength(52);
    expect(value.weeks[51]?.bouts.every(({ repsTotal }) => repsTotal?.high === 4000)).toBe(true);
    expect(faults).toEqual([]);
  });
});

describe("planned load of a session (Foster 1998)", () => {
  test("effort × minutes of each exercise that states an effort", () => {
    const says = (effort: number | undefined) => ({
      dose: {
        sets: 1,
        reps: 10,
        tempo: "3-0-3-0",
        per_week: 2,
        ...(effort !== undefined && { effort }),
      },
    });
    const two = card({ id: "two", load: { kind: "none" } });
    const exercises = [
      { card: plain, says: says(7) },
      { card: two, says: says(undefined) },
    ];
    const { value } = doseProgram(program({ exercises }), library(plain, two));
    expect(plannedSessionLoad(value.weeks[0]?.bouts ?? [])).toBe(7);
    expect(plannedSessionLoad([])).toBeUndefined();
  });
});
