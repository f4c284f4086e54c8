/** Compacted path data draws the same path, as another reader of paths sees it. */

import fc from "fast-check";
import svgpath from "svgpath";
import { describe, expect, test } from "vitest";
import { compactPath, inHundredths } from "../../../src/figure/draw/compact-path.ts";

/** Every command with absolute numbers, in hundredths; lines along an axis are lines. */
const places = (path: string, times = 100): unknown[] => {
  const segments: unknown[] = [];
  svgpath(path)
    .abs()
    .iterate(([command, ...numbers], _index, x, y) => {
      const end = command === "H" ? [numbers[0], y] : command === "V" ? [x, numbers[0]] : numbers;
      const name = command === "H" || command === "V" ? "L" : command;
      segments.push([name, ...end.map((one) => Math.round(Number(one) * times) + 0)]);
    });
  return segments;
};

const n = fc.integer({ min: -9999, max: 9999 }).map((hundredths) => String(hundredths / 100));
const positive = fc.integer({ min: 1, max: 9999 }).map((hundredths) => String(hundredths / 100));
const flag = fc.constantFrom("0", "1");
const part = fc.oneof(
  fc.tuple(n, n).map(([x, y]) => `L${x} ${y}`),
  n.map((x) => `H${x}`),
  n.map((y) => `V${y}`),
  fc.tuple(n, n, n, n).map((all) => `Q${all.join(" ")}`),
  fc.tuple(n, n, n, n, n, n).map((all) => `C${all.join(" ")}`),
  fc
    .tuple(positive, positive, flag, flag, n, n)
    .map(([rx, ry, large, sweep, x, y]) => `A${rx} ${ry} 0 ${large} ${sweep} ${x} ${y}`),
  fc.tuple(n, n).map(([x, y]) => `ZM${x} ${y}`),
);
const paths = fc
  .tuple(n, n, fc.array(part, { minLength: 1, maxLength: 12 }))
  .map(([x, y, parts]) => `M${x} ${y}${parts.join("")}Z`);

describe("a compacted path", () => {
  test("has the same points", () => {
    fc.assert(
      fc.property(paths, (path) => {
        const compact = compactPath(path);
        expect(places(compact)).toEqual(places(path));
      }),
      { seed: 7, numRuns: 300 },
    );
  });

  test("in whole hundredths has them too, but for the turns and flags of arcs", () => {
    fc.assert(
      fc.property(paths, (path) => {
        const fine = inHundredths(compactPath(path));
        expect(fine).not.toContain(".");
        const [found, wanted] = [places(fine, 1), places(path)].map((all) =>
          all.map((one) => {
            const [name, ...numbers] = one as [string, ...number[]];
            const sizeless = name === "A" ? numbers.splice(2, 3) : [];
            return [name, ...numbers, ...sizeless.map((n) => n !== 0)];
          }),
        );
        expect(found).toEqual(wanted);
      }),
      { seed: 8, numRuns: 300 },
    );
  });

  test.each([
    ["M0 0L.5.5", "m0 0l.5.5"],
    ["M-17.93 0.28H21.84", "m-17.93.28h39.77"],
    ["M1 1L1 2ZM3 3L4 4", "m1 1v1zm2 2l1 1"],
  ])("%s", (path, compact) => expect(compactPath(path)).toBe(compact));

  test.each(["m1 1l2 2", "M1 1S2 2 3 3", "M1 1L2 2 3 3"])("%s is left as it is", (path) =>
    expect(compactPath(path)).toBe(path),
  );
});
