/** Rounding that is safe for doses: never up for loads, and no step lost to floating-point arithmetic. */
import { describe, expect, test } from "vitest";
import { atMost, ceilTo, floorTo, show, showPercent, showTime } from "../../src/units/rounding.ts";

describe("the tolerance is a billionth: more than arithmetic leaves, far less than any step", () => {
  test.each([
    [0.1 + 0.2, 0.3, true],
    [0.30001, 0.3, false],
    [1 + 5e-10, 1, true],
    [1 + 5e-9, 1, false],
    // of large numbers a share, of small ones and 0 the same
    [500 + 4e-7, 500, true],
    [500 + 6e-7, 500, false],
    [5e-10, 0, true],
    [5e-9, 0, false],
    [-5 + 6e-9, -5, false],
  ])("%d is at most %d: %s", (value, limit, is) => expect(atMost(value, limit)).toBe(is));
  test.each([
    [0.7, 0.1, 0.7],
    [0.6999, 0.1, 0.6],
    [3 - 5e-10, 1, 3],
    [3 - 5e-9, 1, 2],
    [2.9999, 1, 2],
    [1.1 * 3, 1.1, 3.3],
  ])("%d in steps of %d, down: %d", (value, step, down) => expect(floorTo(value, step)).toBe(down));
  test.each([
    [0.3, 0.1, 0.3],
    [0.1 * 3, 0.1, 0.3],
    [3 + 5e-10, 1, 3],
    [3 + 5e-9, 1, 4],
    [3.0001, 1, 4],
  ])("%d in steps of %d, up: %d", (value, step, up) => expect(ceilTo(value, step)).toBe(up));
});

test("numbers as a clinician reads them", () => {
  expect([12.5, 12.345, 0, -0].map(show)).toEqual(["12.5", "12.35", "0", "0"]);
  expect([0.675, 0.1, 1].map(showPercent)).toEqual(["67.5 %", "10 %", "100 %"]);
  expect([45, 60, 90, 120, 150].map(showTime)).toEqual([
    "45 s",
    "1 min",
    "90 s",
    "2 min",
    "2 min 30 s",
  ]);
});
