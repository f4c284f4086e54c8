/** Courses whose phases overlap, and rules that lead from a published start to a published goal. */
import { describe, expect, test } from "vitest";
import { doseProgram } from "../../src/dose/program.ts";
import { expandWeeks } from "../../src/prescription/week-table.ts";
import { protocolExercise } from "../../src/protocols/schema.ts";
import { card, library, program } from "../dose/fixtures.ts";

// Silbernagel 2007, Am J Sports Med 35:897; table in Silbernagel 2020, J Athl Train 55:438.
describe("Silbernagel: phases that overlap", () => {
  const raise = (id: string, sets: number, reps: number | string) => ({
    card: card({ id, side: "none", load: { kind: "none" }, dose: { sets, reps, per_day: 1 } }),
    side: "none" as const,
  });
  const phases = [
    {
      weeks: 2,
      exercises: [
        raise("two-legs-floor", 3, "10-15"),
        raise("one-leg-floor", 3, 10),
        raise("seated-floor", 3, 10),
        raise("lowering-floor", 3, 10),
      ],
    },
    {
      firstWeek: 2,
      weeks: 4,
      exercises: [
        raise("two-legs-step", 3, 15),
        raise("one-leg-step", 3, 15),
        raise("seated-step", 3, 15),
        raise("lowering-step", 3, 15),
        raise("quick-rebound", 3, 20),
      ],
    },
    { firstWeek: 3, weeks: 10, exercises: [raise("one-leg-load", 3, 15)] },
  ];
  const all = library(...phases.flatMap(({ exercises }) => exercises.map((one) => one.card)));
  const { value } = doseProgram(program({ phases }), all);

  test.each([
    [1, 1, 120, 135],
    [2, 2, 120 + 240, 135 + 240],
    [3, 2, 240 + 45, 240 + 45],
    [5, 2, 240 + 45, 240 + 45],
    [6, 1, 45, 45],
    [12, 1, 45, 45],
  ])("week %d: %d phases, %d to %d repetitions a day", (week, count, low, high) => {
    const inWeek = value.weeks[week - 1];
    expect(new Set(inWeek?.bouts.map(({ phase }) => phase)).size).toBe(count);
    expect((inWeek?.totals.reps.low ?? 0) / 7).toBe(low);
    expect((inWeek?.totals.reps.high ?? 0) / 7).toBe(high);
  });
  test("weeks of a phase are counted from its own first week", () => {
    const inWeek = value.weeks[2]?.bouts.map(({ phase, weekOfPhase }) => [phase, weekOfPhase]);
    expect(inWeek).toContainEqual(["phase-2", 2]);
    expect(inWeek).toContainEqual(["phase-3", 1]);
  });
});

// Ishøi 2016, Scand J Med Sci Sports 26:1334: from 2 × 6 to 3 × 15 in eight weeks. The cells between
// are this program's own; the paper's have not been read.
describe("Copenhagen adduction by rule, 2 × 6 to 3 × 15 in eight weeks", () => {
  const rule = { from: { sets: 2, reps: 6 }, to: { sets: 3, reps: 15 } };
  const { doses } = expandWeeks(protocolExercise.parse({ card: "adduction", rule }), 8);
  const sums = doses.map((dose) => (dose?.sets ?? 0) * (dose?.reps?.[0]?.high ?? 0));
  test("begins at 12 repetitions a session and ends at 45", () => {
    expect([sums[0], sums.at(-1)]).toEqual([12, 45]);
  });
  test("each week is more than the one before, by a third at most", () => {
    sums.slice(1).forEach((sum, index) => {
      expect(sum).toBeGreaterThan(sums[index] ?? 0);
      expect(sum / (sums[index] ?? 1)).toBeLessThanOrEqual(4 / 3 + 1e-9);
    });
  });
});

// Praet 2019, as tabulated in a review of trials: 5 kg more each week, until 60 kg.
describe("eccentric calf work with 5 kg more each week", () => {
  const raise = card({
    id: "raise",
    load: { kind: "body", body_share: 0.9, add: "weight", with: ["backpack"] },
    dose: { sets: 3, reps: 15, per_day: 2 },
  });
  const weeks = Object.fromEntries(
    Array.from({ length: 12 }, (_, index) => [index + 1, { target: `${5 * (index + 1)} kg` }]),
  );
  test("loads stated in kilograms come out as stated", () => {
    const equipment = [{ have: "backpack", from: "1 kg", up_to: "60 kg", steps: "1 kg" }];
    const exercises = [{ card: raise, says: { weeks } }];
    const { value, faults } = doseProgram(program({ weeks: 12, exercises, plan: { equipment } }));
    expect(value.weeks.map(({ bouts }) => bouts[0]?.load.kg)).toEqual([
      5, 10, 15, 20, 25, 30, 35, 40, 45, 50, 55, 60,
    ]);
    expect(faults.map(({ code }) => code)).toEqual([]);
  });
});
