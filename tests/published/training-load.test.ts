/** Session load, monotony, strain and acute:chronic ratios against published and constructed values. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  acuteChronic,
  growth,
  sessionLoad,
  weekLoad,
  weightedAcuteChronic,
  weightedMean,
} from "../../src/dose/load.ts";

const days = (count: number, load: number) => Array.from({ length: count }, () => load);

describe("session load (Foster 1998)", () => {
  test.each([
    [7, 75, 525],
    [8, 60, 480],
  ])("effort %d for %d min is %d", (effort, minutes, load) => {
    expect(sessionLoad(effort, minutes)).toBe(load);
  });
});

describe("monotony and strain (Foster 1998), two constructed weeks", () => {
  test.each([
    ["population", [300, 0, 450, 200, 0, 600, 250], 1800, 204.29, 1.259, 2266],
    ["sample", [300, 0, 450, 200, 0, 600, 250], 1800, 220.66, 1.165, 2098],
    ["population", [400, 400, 400, 400, 400, 400, 0], 2400, 139.97, 2.449, 5879],
    ["sample", [400, 400, 400, 400, 400, 400, 0], 2400, 151.19, 2.268, 5443],
  ] as const)("%s deviation of %j", (deviation, week, total, spread, monotony, strain) => {
    const load = weekLoad(week, deviation);
    expect(load.total).toBe(total);
    expect(load.mean).toBeCloseTo(total / 7, 9);
    expect(load.deviation).toBeCloseTo(spread, 2);
    expect(load.monotony).toBeCloseTo(monotony, 3);
    expect(Math.round(load.strain ?? 0)).toBe(strain);
  });

  test("six equal days and one of rest are √6, whatever the load", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 5000 }),
        fc.integer({ min: 0, max: 6 }),
        (load, rest) => {
          const week = days(7, load).map((day, index) => (index === rest ? 0 : day));
          expect(weekLoad(week, "population").monotony).toBeCloseTo(Math.sqrt(6), 9);
        },
      ),
    );
  });

  test.each([
    ["every day the same", days(7, 400)],
    ["every day the same, not a round number", days(7, 133.7)],
    ["nothing", days(7, 0)],
    ["no days", []],
    ["nearly the same: monotony would be 1565", [313, 313, 313, 313.5, 313, 313, 313.2]],
    ["a tenth of the mean apart and less", [100, 110, 100, 110, 100, 110, 100]],
  ])("no value where the days are alike: %s", (_name, week) => {
    for (const deviation of ["population", "sample"] as const) {
      const { monotony, strain } = weekLoad(week, deviation);
      expect([monotony, strain]).toEqual([undefined, undefined]);
    }
  });
});

test("a deviation of more than a tenth of the mean has a monotony", () => {
  const { monotony } = weekLoad([100, 100, 100, 100, 100, 100, 150], "population");
  expect(monotony).toBeCloseTo(6.12, 2);
});

describe("acute and chronic load, as description only", () => {
  const rise = [...days(21, 100), ...days(7, 200)];
  test("coupled: 1.600", () => expect(acuteChronic(rise, "coupled").ratio).toBeCloseTo(1.6, 9));
  test("uncoupled: 2.000", () => expect(acuteChronic(rise, "uncoupled").ratio).toBeCloseTo(2, 9));
  // Four unlike weeks after one that must not count: 40, 100, 60 and 200 a day, before them 900.
  const unlike = [900, 40, 100, 60, 200].flatMap((load) => days(7, load));
  test("coupled: the last 7 days by the last 28, 200 by 100", () => {
    expect(acuteChronic(unlike, "coupled")).toEqual({ acute: 200, chronic: 100, ratio: 2 });
  });
  test("uncoupled: the last 7 days by the 21 before them, 200 by 66.67", () => {
    const { acute, chronic, ratio } = acuteChronic(unlike, "uncoupled");
    expect([acute, chronic, ratio]).toEqual([
      200,
      expect.closeTo(200 / 3, 9),
      expect.closeTo(3, 9),
    ]);
  });
  // Williams 2017, Br J Sports Med 51:209: λ = 2/(N + 1).
  test("weighted: 186.65 by 139.36 is 1.339", () => {
    const { acute, chronic, ratio } = weightedAcuteChronic(rise);
    expect(acute).toBeCloseTo(186.65, 2);
    expect(chronic).toBeCloseTo(139.36, 2);
    expect(ratio).toBeCloseTo(1.339, 3);
  });
  test.each([
    [7, 0.25],
    [28, 0.069],
  ])("λ for %d days is %d", (count, weight) => {
    expect(weightedMean([0, 1], count)).toBeCloseTo(weight, 4);
  });
  test("after nothing, coupled is 4 at most and uncoupled has no value", () => {
    const start = [...days(21, 0), ...days(7, 137)];
    expect(acuteChronic(start, "coupled").ratio).toBeCloseTo(4, 9);
    expect(acuteChronic(start, "uncoupled").ratio).toBeUndefined();
  });
  test("no ratio before 28 days", () => {
    expect(acuteChronic(days(27, 100), "coupled").ratio).toBeUndefined();
    expect(weightedAcuteChronic(days(27, 100)).ratio).toBeUndefined();
  });
});

describe("growth from week to week", () => {
  test.each([
    [100, 130, 0.3],
    [100, 80, -0.2],
  ])("%d to %d", (before, now, share) => expect(growth(before, now)).toBeCloseTo(share, 9));
  test("none after a week of nothing", () => expect(growth(0, 10)).toBeUndefined());
});
