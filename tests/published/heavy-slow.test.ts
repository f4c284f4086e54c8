/** Heavy slow resistance week by week: sets, repetition maxima, loads and the session clock. */
import { describe, expect, test } from "vitest";
import { doseProgram } from "../../src/dose/program.ts";
import { boutClock, sessionClock } from "../../src/dose/time.ts";
import { card, library, program } from "../dose/fixtures.ts";

const DOSING = { fast_part: 1, last_rest: false };
const easy = card({ id: "easier", demand: 1 });
const exercises = ["seated", "leg-press", "standing"].map((id) =>
  card({
    id,
    side: "both",
    tissues: ["achilles"],
    load: { kind: "weight", with: ["machine"] },
    easier: [{ to: "easier" }],
  }),
);

function heavySlow(sets: readonly number[], fields: Record<string, unknown> = {}) {
  const maxima = [15, 12, 10, 8, 6];
  const spans = ["1", "2-3", "4-5", "6-8", "9-12"];
  const weeks = Object.fromEntries(
    spans.map((span, index) => [span, { sets: sets[index], target: `${maxima[index]} RM` }]),
  );
  const says = { dose: { tempo: "3-0-3-0", rest: "2.5 min", per_week: 3, effort: 7 }, weeks };
  return program({
    restBetween: "5 min",
    phases: [
      {
        weeks: 12,
        exercises: exercises.map((one) => ({ card: one, side: "both", says }) as const),
      },
    ],
    plan: {
      measures: exercises.map(({ card: { id } }) => ({
        test: "repetitions",
        card: id,
        side: "both",
        load: "75 kg",
        reps: 10,
        on: "2026-11-20",
      })),
      equipment: [{ have: "machine", from: "5 kg", up_to: "200 kg", steps: "2.5 kg" }],
    },
    ...fields,
  });
}

// Beyer 2015, Am J Sports Med 43:1704 (Achilles); Kongsgaard 2009 (patellar).
describe.each([
  ["Achilles (Beyer 2015)", [3, 3, 4, 4, 4], []],
  // Four sets of 15 with 5 min between exercises take 52 min; the clinic's limit is 45.
  ["patellar (Kongsgaard 2009)", [4, 4, 4, 4, 4], ["session-long"]],
] as const)("heavy slow resistance, %s", (_name, sets, codes) => {
  const { value, faults } = doseProgram(heavySlow(sets), library(easy, ...exercises));
  const weekly = [15, 12, 12, 10, 10, 8, 8, 8, 6, 6, 6, 6];
  const setsOfWeek = [0, 1, 1, 2, 2, 3, 3, 3, 4, 4, 4, 4].map((row) => sets[row]);

  test.each(weekly.map((reps, index) => [index + 1, setsOfWeek[index], reps]))(
    "week %d: %d × %d",
    (week, sets, reps) => {
      for (const bout of value.weeks[(week ?? 1) - 1]?.bouts ?? []) {
        expect(bout.sets).toBe(sets);
        expect(bout.reps).toEqual(
          Array.from({ length: sets ?? 0 }, () => ({ low: reps, high: reps })),
        );
        expect(bout.frequency).toEqual({ perWeek: 3 });
      }
    },
  );
  test("no errors, and no week grows too fast or in too large a step", () => {
    expect(faults.map(({ code }) => code)).toEqual(codes);
  });
  test("the load rises from 15 RM to 6 RM and never exceeds its target", () => {
    const loads = value.weeks.map(({ bouts }) => bouts[0]?.load);
    const kg = loads.map((load) => load?.kg ?? Number.NaN);
    // 75 kg × 10 is a 1RM of 100 kg (Epley); 15, 12, 10, 8 and 6 RM are 66.7, 71.4, 75, 78.9 and 83.3 %.
    expect(kg).toEqual([65, 70, 70, 75, 75, 77.5, 77.5, 77.5, 82.5, 82.5, 82.5, 82.5]);
    for (const load of loads) expect(load?.kg).toBeLessThanOrEqual(load?.targetKg ?? 0);
  });
});

describe("session clock of heavy slow resistance, Achilles: rest 2.5 min, 5 min between exercises", () => {
  const minutes = (sets: number, reps: number) => {
    const tempo = { lower: 3, bottom: 0, lift: 3, top: 0 };
    const clock = boutClock(
      {
        sets: Array.from({ length: sets }, () => ({ reps, tempo })),
        sides: 1,
        restS: 150,
        restRepsS: 0,
      },
      DOSING,
    );
    return sessionClock([clock, clock, clock], 300) / 60;
  };
  test.each([
    ["1", 3, 15, 38.5],
    ["2-3", 3, 12, 35.8],
    ["4-5", 4, 10, 44.5],
    ["6-8", 4, 8, 42.1],
    ["9-12", 4, 6, 39.7],
  ])("weeks %s, %d × %d: %d min", (_weeks, sets, reps, expected) => {
    expect(minutes(sets, reps)).toBeCloseTo(expected, 1);
  });
  test("soft check, from memory: the trial's about 107 min a week is the least of the weeks", () => {
    expect(3 * minutes(3, 12)).toBeCloseTo(107.4, 1);
    expect(3 * minutes(4, 10)).toBeCloseTo(133.5, 1);
  });
  test("the program's own sums give the same week", () => {
    const { value } = doseProgram(heavySlow([3, 3, 4, 4, 4]));
    expect(value.weeks[0]?.totals.sessionS).toBe(38.5 * 60);
    expect(value.weeks[0]?.totals.minutes).toBe(Math.ceil(3 * 38.5));
    expect(value.changeoverS).toBe(300);
  });
});

describe("session clock of other sources", () => {
  test("Rio 2015, soft check, from memory: 5 × 45 s with 2 min of rest takes 705 s", () => {
    const sets = Array.from({ length: 5 }, () => ({ holdS: 45 }));
    expect(boutClock({ sets, sides: 1, restS: 120, restRepsS: 0 }, DOSING)).toBe(705);
  });
  // Hölmich, modified (Rehabil Res Pract 2018:8146819): squeeze 3 × 10 × 10 s, rest 10 s and 2 min.
  test("Hölmich squeeze: 300 s of work and 660 s of rest with the last rests counted", () => {
    const sets = Array.from({ length: 3 }, () => ({ reps: 10, holdS: 10 }));
    const bout = { sets, sides: 1, restS: 120, restRepsS: 10 } as const;
    expect(boutClock(bout, { fast_part: 1, last_rest: true })).toBe(300 + 660);
    expect(boutClock(bout, DOSING)).toBe(300 + 3 * 90 + 2 * 120);
  });
});
