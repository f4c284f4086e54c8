/** Sums of a bout by the shape of its sets, worked out by hand. */
import { describe, expect, test } from "vitest";
import { type BoutNumbers, boutSums } from "../../src/dose/sums.ts";

const DOSING = { fast_part: 1, last_rest: false } as const;
const TEMPO = { lower: 3, bottom: 0, lift: 3, top: 0 };
const each = (...reps: readonly number[]) => reps.map((n) => ({ low: n, high: n }));

const sums = (numbers: Partial<BoutNumbers>) => boutSums({ sets: 3, sides: 1, ...numbers }, DOSING);

describe("repetitions, kilograms, tension and clock", () => {
  test.each<readonly [string, Partial<BoutNumbers>, Readonly<Record<string, unknown>>]>([
    [
      // 3 × 8 × 10 kg, not 3 × 6: what is planned at most; 6 s each
      "a range counts at its top",
      { reps: [{ low: 6, high: 8 }], kg: 10, tempo: TEMPO, restS: 60 },
      { repsTotal: { low: 18, high: 24 }, kgTotal: 240, tensionS: 144, clockS: 144 + 120 },
    ],
    [
      "one number a set",
      { reps: each(12, 10, 8), kg: 10, tempo: TEMPO },
      { repsTotal: { low: 30, high: 30 }, kgTotal: 300, tensionS: 180 },
    ],
    [
      // 5 + 3 + 2 holds of 10 s; rests after all but the last of a set: 4 + 2 + 1
      "other numbers of holds",
      { reps: each(5, 3, 2), holdS: 10, restRepsS: 5 },
      { repsTotal: { low: 10, high: 10 }, tensionS: 100, clockS: 100 + 35 },
    ],
    [
      // 4 to 6 holds of 10 s at most: 3 × 6 × 10
      "a range of holds",
      { reps: [{ low: 4, high: 6 }], holdS: 10 },
      { repsTotal: { low: 12, high: 18 }, tensionS: 180 },
    ],
    ["one hold a set", { holdS: 45, restS: 120 }, { tensionS: 135, clockS: 135 + 240 }],
    ["a time", { timeS: 60, restS: 30 }, { tensionS: 180, clockS: 240, repsTotal: undefined }],
    [
      // 5 × 80 m at 4 m/s are 100 s a set; four rests of 30 s
      "a distance several times",
      { sets: 2, reps: each(5), distanceM: 80, speed: 4, restRepsS: 30, restS: 120 },
      { repsTotal: { low: 10, high: 10 }, tensionS: undefined, clockS: 2 * 220 + 120 },
    ],
    [
      // six times 3 and 2 minutes; the work alone is tension
      "turns",
      { sets: 1, turns: { work: 180, easy: 120, times: 6 } },
      { tensionS: 1080, clockS: 1800, minutes: 30, repsTotal: undefined },
    ],
    [
      "turns on each side",
      { sides: 2, sets: 1, turns: { work: 20, easy: 10, times: 2 } },
      { clockS: 120 },
    ],
  ])("%s", (_name, numbers, expected) => {
    expect(sums(numbers)).toMatchObject(expected);
  });

  test("what is said of it has the same numbers", () => {
    const { provenance } = sums({ sets: 2, turns: { work: 30, easy: 15, times: 4 } });
    expect(provenance.tension_s?.[0]?.says).toBe("2 sets of 4 turns with 30 s of work.");
    expect(provenance.clock_s?.at(-1)?.value).toBe(2 * 4 * 45);
  });
});
