/** The machine form of programs that are made for it: every number of a dose, and a card that stands twice. */
import { describe, expect, test } from "vitest";
import { doseProgram } from "../../src/dose/program.ts";
import { planJson } from "../../src/plan-text/json.ts";
import { layOut } from "../../src/schedule/lay-out.ts";
import { card, library, program } from "../dose/fixtures.ts";

const run = card({ id: "run", load: { kind: "speed" }, recovery: "1 h" });
const press = card({
  id: "press",
  side: "both",
  recovery: "1 h",
  load: { kind: "weight", with: ["dumbbell"] },
});
const all = library(run, press);
const DAYS = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"];
const on = "2026-11-20";

function json(input: Parameters<typeof program>[0]) {
  const built = program({
    ...input,
    plan: {
      week: { free: Object.fromEntries(DAYS.map((day) => [day, { evening: "90 min" }])) },
      measures: [
        { test: "speed", card: "run", speed: "20 km/h", on },
        { test: "repetitions", card: "press", side: "both", load: "100 lb", reps: 1, on },
      ],
      equipment: [{ have: "dumbbell", from: "5 lb", up_to: "90 lb", steps: "5 lb" }],
    },
  });
  const { value: dosed } = doseProgram(built, all);
  const { value: schedule } = layOut(built, dosed);
  if (!schedule) throw new Error("the program cannot be laid out");
  const made = { plan: { ...built.plan, note: "" }, program: built, dosed, schedule };
  return JSON.parse(JSON.stringify(planJson(made as never, [])));
}

describe("every number of a dose", () => {
  test("speed, rest between repetitions, and the version that has them", () => {
    const says = { dose: { sets: 1, reps: 5, rest_reps: "20 s", target: "72.5 % of top speed" } };
    const { version, weeks } = json({ exercises: [{ card: run, side: "none", says }] });
    expect(version).toBeGreaterThanOrEqual(2);
    expect(weeks[0].sessions[0].bouts[0]).toMatchObject({
      speed_km_h: 14.5,
      rest_reps_s: 20,
      load_kg: null,
      load: null,
      load_unit: null,
    });
    expect(weeks[0].trails["phase-1/run"].rest_reps_s.at(-1).value).toBe(20);
  });
  test.each([
    ["lb", 70],
    ["kg", 31.75],
  ])("a load in the clinic's %s beside the kilograms", (units, load) => {
    const says = { dose: { sets: 1, reps: 5, target: "72.5 % of 1RM" } };
    const { weeks } = json({ exercises: [{ card: press, side: "both", says }], clinic: { units } });
    const [bout] = weeks[0].sessions[0].bouts;
    expect(bout).toMatchObject({ load, load_unit: units, speed_km_h: null, rest_reps_s: null });
    expect(bout.load_kg).toBeCloseTo(70 * 0.45359237, 9);
  });
});

test("a card in two phases of one week keeps both provenances", () => {
  const says = (target: string) => ({ dose: { sets: 1, reps: 5, per_week: 2, target } });
  const phases = ["50 % of 1RM", "60 % of 1RM"].map((target) => ({
    weeks: 1,
    exercises: [{ card: press, side: "both" as const, says: says(target) }],
  }));
  const { weeks } = json({ phases });
  const bouts = weeks[0].sessions.flatMap((session: { bouts: unknown[] }) => session.bouts);
  const loads = new Map<string, number>();
  for (const { key, load_kg } of bouts) {
    loads.set(key, load_kg);
    expect(weeks[0].trails[key].load_kg.at(-1).value).toBe(load_kg);
  }
  expect([...loads.keys()].sort()).toEqual(["phase-1/press", "phase-2/press"]);
  expect(new Set(loads.values()).size).toBe(2);
});
