/** What equipment makes: at or under a target, and the next above. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  atOrUnder,
  bandsFor,
  barLoads,
  nextAbove,
  silentFor,
  weightsFor,
} from "../../src/dose/equipment.ts";
import { card, plan } from "./fixtures.ts";

const any = card({
  id: "any",
  load: { kind: "weight", with: ["dumbbell", "backpack", "barbell", "machine"] },
}).card;

const equipmentOf = (equipment: readonly unknown[]) => plan({ equipment }).value.equipment;
const makesOf = (...equipment: readonly unknown[]) => weightsFor(any, equipmentOf(equipment));

describe("the largest load at or under a target, and the next above it", () => {
  const dumbbells = { have: "dumbbell", loads: ["4 kg", "2 kg", "8 kg"] };
  const backpack = { have: "backpack", from: "2 kg", up_to: "20 kg", steps: "1 kg" };
  const half = { have: "backpack", up_to: "10 kg", steps: "0.5 kg" };
  const machine = { have: "machine", from: "5 kg", up_to: "50 kg", steps: "2.5 kg" };
  const ends = { have: "backpack", from: "3 kg", up_to: "15 kg" };
  const bar = { have: "barbell", bar: "10 kg", plates: ["1.25 kg", "2.5 kg", "5 kg"] };
  const plates = { have: "barbell", plates: ["1 kg", "2 kg"] };
  test.each([
    ["dumbbells", [dumbbells], 5, 4, 8],
    ["dumbbells, exactly", [dumbbells], 4, 4, 8],
    ["dumbbells each alone: 2 and 4 are no 6", [dumbbells], 7.9, 4, 8],
    ["dumbbells, under the lightest", [dumbbells], 1.9, undefined, 2],
    ["dumbbells, above the heaviest", [dumbbells], 100, 8, undefined],
    ["backpack, kilogram by kilogram", [backpack], 7.99, 7, 8],
    ["backpack, empty weighs 2 kg", [backpack], 1.5, undefined, 2],
    ["backpack, full", [backpack], 33, 20, undefined],
    ["half kilograms, begins with one step", [half], 0.7, 0.5, 1],
    ["half kilograms, 0.3 is none", [half], 0.3, undefined, 0.5],
    ["machine", [machine], 11, 10, 12.5],
    ["no step: only the ends", [ends], 14, 3, 15],
    ["bar alone", [bar], 12, 10, 12.5],
    ["bar and pairs of plates", [bar], 21, 20, 22.5],
    ["bar, all plates", [bar], 99, 27.5, undefined],
    ["plates without a bar", [plates], 5, 4, 6],
    ["two pieces: the nearer", [dumbbells, machine], 6, 5, 7.5],
    ["nothing", [], 10, undefined, undefined],
    ["named, without loads", ["backpack"], 10, undefined, undefined],
    ["up to less than from", [{ ...backpack, up_to: "1 kg" }], 5, undefined, undefined],
    ["a step of 0 counts as none", [{ ...backpack, steps: "0 kg" }], 5, 2, 20],
    ["a load of 0 is no load", [{ have: "dumbbell", loads: ["0 kg"] }], 5, undefined, undefined],
  ] as const)("%s", (_name, equipment, target, under, above) => {
    const makes = makesOf(...equipment);
    const made = atOrUnder(makes, target);
    expect(made?.kg).toBe(under);
    expect(nextAbove(makes, made?.kg ?? 0)?.kg).toBe(above);
  });

  test("0.1 + 0.2 kg reaches 0.3 kg", () => {
    const makes = makesOf({ have: "backpack", from: "0.1 kg", up_to: "2 kg", steps: "0.1 kg" });
    expect(atOrUnder(makes, 0.3)?.kg).toBe(0.3);
    expect(atOrUnder(makes, 0.1 + 0.2)?.kg).toBe(0.3);
  });

  test("only equipment the card names counts", () => {
    const only = card({ id: "only", load: { kind: "weight", with: ["dumbbell"] } }).card;
    expect(weightsFor(only, equipmentOf([backpack]))).toEqual([]);
    expect(silentFor(only, equipmentOf(["dumbbell", "backpack"]))).toEqual(["dumbbell"]);
  });
});

describe("bar and plates", () => {
  test("all sums of pairs", () => {
    expect(barLoads(10, [1.25, 2.5])).toEqual([10, 12.5, 15, 17.5]);
    expect(barLoads(20, [])).toEqual([20]);
    expect(barLoads(0, [])).toEqual([]);
  });
  test("loads in pounds are found at themselves, by plates and by steps", () => {
    const gym = makesOf({
      have: "barbell",
      bar: "45 lb",
      plates: ["2.5 lb", "5 lb", "10 lb", "25 lb", "45 lb"],
    });
    const stack = makesOf({ have: "machine", from: "2.5 lb", up_to: "300 lb", steps: "2.5 lb" });
    const kg = (lb: number) => lb * 0.45359237;
    for (let lb = 50; lb <= 220; lb += 5) {
      const onBar = atOrUnder(gym, kg(lb))?.kg ?? 0;
      expect(atOrUnder(stack, onBar)?.kg).toBeCloseTo(onBar, 11);
      expect(atOrUnder(stack, kg(lb))?.kg).toBeCloseTo(kg(lb), 11);
      expect(nextAbove(stack, kg(lb))?.kg).toBeCloseTo(kg(lb + 2.5), 11);
    }
    // 45 and two each of 2.5, 10 and 25 lb
    expect(atOrUnder(gym, kg(120))?.kg).toBeCloseTo(kg(120), 11);
  });
  test("nothing makes more than 500 kg", () => {
    expect(barLoads(300, [100, 0.5])).toEqual([300, 301, 500]);
    expect(barLoads(500, [])).toEqual([500]);
    const steps = makesOf({ have: "machine", from: "100 kg", up_to: "900 kg", steps: "100 kg" });
    expect(atOrUnder(steps, 1000)?.kg).toBe(500);
    expect(nextAbove(steps, 400)?.kg).toBe(500);
    expect(nextAbove(steps, 500)).toBeUndefined();
    const open = makesOf({ have: "machine", steps: "250 kg" });
    expect(atOrUnder(open, 1000)?.kg).toBe(500);
    const ends = makesOf({ have: "machine", from: "499 kg", up_to: "400 kg", steps: "1 kg" });
    expect(atOrUnder(ends, 1000)).toBeUndefined();
  });
  test("a list of a hundred plates stays bounded", () => {
    const plates = Array.from({ length: 100 }, (_, index) => 0.25 * (index + 1));
    const sums = barLoads(10, plates);
    expect(sums.length).toBeLessThan(2000);
    expect(Math.max(...sums)).toBeLessThanOrEqual(500);
  });
});

test("band levels, ascending, each once", () => {
  const banded = card({ id: "banded", load: { kind: "band", with: ["band"] } }).card;
  expect(bandsFor(banded, equipmentOf([{ have: "band", levels: [5, 2, 5] }]))).toEqual([2, 5]);
});

describe("properties", () => {
  const pieces = fc
    .tuple(
      fc.array(fc.integer({ min: 1, max: 400 }), { maxLength: 6 }),
      fc.integer({ min: 0, max: 100 }),
      fc.integer({ min: 1, max: 50 }),
    )
    .map(([loads, from, step]) => [
      { have: "dumbbell", loads: loads.map((load) => load / 10).sort((a, b) => a - b) },
      { have: "machine", loads: [], ladder: { from: from / 10, upTo: 40, step: step / 10 } },
    ]);
  const target = fc.double({ min: 0, max: 80, noNaN: true });

  test("never above the target; the next is above what was made", () => {
    fc.assert(
      fc.property(pieces, target, (makes, aim) => {
        const made = atOrUnder(makes, aim);
        if (made) expect(made.kg).toBeLessThanOrEqual(aim + 1e-6);
        const next = nextAbove(makes, made?.kg ?? 0);
        if (next) expect(next.kg).toBeGreaterThan(made?.kg ?? 0);
        if (next) expect(next.kg).toBeGreaterThan(aim - 1e-6);
      }),
    );
  });

  test("a higher target never makes less", () => {
    fc.assert(
      fc.property(pieces, target, target, (makes, one, other) => {
        const low = atOrUnder(makes, Math.min(one, other))?.kg ?? 0;
        const high = atOrUnder(makes, Math.max(one, other))?.kg ?? 0;
        expect(high).toBeGreaterThanOrEqual(low);
      }),
    );
  });
});
