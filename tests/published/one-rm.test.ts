/** One repetition maximum and printed load tables against published values. */
import { describe, expect, test } from "vitest";
import { FORMULAS, type FormulaName, oneRmFactor } from "../../src/dose/one-rm.ts";
import { rmShare } from "../../src/dose/rm-tables.ts";
import { floorTo } from "../../src/units/rounding.ts";

const NAMES: readonly FormulaName[] = [
  "epley",
  "brzycki",
  "lander",
  "lombardi",
  "oconner",
  "mayhew",
  "wathen",
];

// Worked from the printed formulas (Epley 1985, Brzycki 1993, Lander 1985, Lombardi 1989,
// O'Conner 1989, Mayhew 1992, Wathen 1994); columns in the order of NAMES.
const WORKED: readonly (readonly [w: number, r: number, ...values: number[]])[] = [
  [100, 3, 110.0, 105.88, 107.2, 111.61, 107.5, 113.99, 108.98],
  [100, 5, 116.67, 112.5, 113.71, 117.46, 112.5, 119.01, 116.58],
  [100, 8, 126.67, 124.14, 125.11, 123.11, 120.0, 126.29, 127.67],
  [100, 10, 133.33, 133.33, 134.07, 125.89, 125.0, 130.93, 134.75],
  [60, 12, 84.0, 86.4, 86.65, 76.93, 78.0, 81.24, 84.9],
  [42.5, 15, 63.75, 69.55, 69.41, 55.72, 58.44, 60.23, 64.14],
];

describe("1RM by formula", () => {
  const rows = WORKED.flatMap(([w, r, ...values]) =>
    NAMES.map((name, index) => [name, w, r, values[index] ?? Number.NaN] as const),
  );
  test.each(rows)("%s: %d kg × %d is %d kg", (name, load, reps, expected) => {
    expect(load * (oneRmFactor(name, reps) ?? 0)).toBeCloseTo(expected, 2);
  });

  // The printed forms alone give these at one repetition.
  test.each([
    ["epley", 103.33],
    ["brzycki", 100],
    ["lander", 101.39],
    ["lombardi", 100],
    ["oconner", 102.5],
    ["mayhew", 108.86],
    ["wathen", 101.3],
  ] as const)(
    "%s alone prints %d at one repetition; here it is the load itself",
    (name, printed) => {
      expect(100 * FORMULAS[name].factor(1)).toBeCloseTo(printed, 2);
      expect(oneRmFactor(name, 1)).toBe(1);
    },
  );

  test("Epley and Brzycki agree at 10 repetitions, and Epley is higher from 2 to 9", () => {
    expect(oneRmFactor("epley", 10)).toBeCloseTo(oneRmFactor("brzycki", 10) ?? 0, 12);
    for (let reps = 2; reps < 10; reps += 1) {
      expect(oneRmFactor("epley", reps)).toBeGreaterThan(oneRmFactor("brzycki", reps) ?? 99);
    }
  });

  // Epley as whole percents of 1RM, 2 to 10 repetitions, as printed.
  test.each([
    [2, 94],
    [3, 91],
    [4, 88],
    [5, 86],
    [6, 83],
    [7, 81],
    [8, 79],
    [9, 77],
    [10, 75],
  ])("Epley: %d repetitions are %d %% of 1RM", (reps, percent) => {
    expect(Math.round(100 * (rmShare("same-formula", "epley", reps)?.share ?? 0))).toBe(percent);
  });

  test.each([
    ["brzycki", 37],
    ["brzycki", 40],
    ["lander", 38],
  ] as const)("%s has no value at %d repetitions", (name, reps) => {
    expect(oneRmFactor(name, reps)).toBeUndefined();
  });
});

describe("pull-up with added load: body 100 kg + 30 kg × 3", () => {
  // Published worked example for loads that include body mass.
  const max = 130 * (oneRmFactor("epley", 3) ?? 0);
  test("1RM of load moved is 143 kg", () => expect(max).toBeCloseTo(143, 1));
  test("70 % is 100.1 kg", () => expect(max * 0.7).toBeCloseTo(100.1, 1));
  test("0.1 kg is left to add", () => expect(floorTo(max * 0.7 - 100, 0.1)).toBe(0.1));
});

describe("NSCA training load chart, as printed", () => {
  const CHART = [
    [1, 100],
    [2, 95],
    [3, 93],
    [4, 90],
    [5, 87],
    [6, 85],
    [7, 83],
    [8, 80],
    [9, 77],
    [10, 75],
    [12, 70],
  ] as const;
  test.each(CHART)("%d repetitions: %d %%", (reps, percent) => {
    expect(rmShare("nsca-chart", "epley", reps)?.share).toBe(percent / 100);
  });

  const cells = Array.from({ length: 31 }, (_, index) => (index + 1) * 10);
  test.each(cells)("every cell of the row %d lb is 1RM × percent", (max) => {
    for (const [reps, percent] of CHART) {
      const share = rmShare("nsca-chart", "epley", reps)?.share ?? 0;
      expect(max * share).toBeCloseTo((max * percent) / 100, 9);
    }
  });

  test.each([
    [160, 8, 128],
    [160, 5, 139.2],
    [160, 3, 148.8],
    [100, 10, 75],
  ])("1RM %d, %d repetitions: %d", (max, reps, load) => {
    expect(max * (rmShare("nsca-chart", "epley", reps)?.share ?? 0)).toBeCloseTo(load, 9);
  });

  // Published load conversions citing the chart.
  test.each([
    [135, 12, 192.857],
    [120, 8, 150],
    [135, 10, 180],
  ])("%d lifted %d times is a 1RM of %d", (load, reps, max) => {
    expect(load / (rmShare("nsca-chart", "epley", reps)?.share ?? 1)).toBeCloseTo(max, 3);
  });

  test("135 lb × 12 gives 154.286 lb for 8 repetitions", () => {
    const max = 135 / (rmShare("nsca-chart", "epley", 12)?.share ?? 1);
    expect(max * (rmShare("nsca-chart", "epley", 8)?.share ?? 0)).toBeCloseTo(154.286, 3);
  });
});

describe("NSCA textbook table", () => {
  test.each([
    [1, 100],
    [2, 95],
    [3, 93],
    [4, 90],
    [5, 87],
    [6, 85],
    [7, 83],
    [8, 80],
    [9, 77],
    [10, 75],
  ])("%d repetitions: %d %%", (reps, percent) => {
    expect(rmShare("nsca-textbook", "epley", reps)?.share).toBe(percent / 100);
  });
  test.each([
    [11, 70],
    [12, 67],
    [15, 65],
  ])("soft check, from memory: %d repetitions: %d %%", (reps, percent) => {
    expect(rmShare("nsca-textbook", "epley", reps)?.share).toBe(percent / 100);
  });
  test("the two printed tables disagree at 12 repetitions", () => {
    expect(rmShare("nsca-textbook", "epley", 12)?.share).toBeLessThan(
      rmShare("nsca-chart", "epley", 12)?.share ?? 0,
    );
  });
});
