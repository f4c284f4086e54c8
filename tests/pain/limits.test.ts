/** The limits of an exercise: the plan's own, or the stricter of protocol and card. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { callLevel, painLimits } from "../../src/pain/limits.ts";
import { type PainRule, painRule } from "../../src/pain/rule.ts";

/** Zones of Thomeé 1997, Phys Ther 77:1690 (from memory): to 2 safe, to 5 acceptable, above it too much. */
const CLINIC = { comfortable: 2, during: 5, after: 5 };
const NONE = { kind: "pain-free", comfortable: 0, during: 0, after: 0 };
const numbers = (comfortable: number, during: number, after: number) => ({
  comfortable,
  during,
  after,
});

test.each<[string, PainRule | undefined, [PainRule, PainRule], object]>([
  ["monitored", undefined, ["monitored", "monitored"], { kind: "monitored", ...CLINIC }],
  ["a pain-free card in a monitored course", undefined, ["monitored", "pain-free"], NONE],
  ["a monitored card in a pain-free course", undefined, ["pain-free", "monitored"], NONE],
  [
    "the stricter number of each kind",
    undefined,
    [numbers(3, 4, 2), "monitored"],
    { kind: "monitored", ...numbers(2, 4, 2) },
  ],
  [
    "the plan's own over a stricter card",
    numbers(1, 3, 4),
    ["monitored", "pain-free"],
    { kind: "monitored", ...numbers(1, 3, 4) },
  ],
  ["the plan's own pain-free rule", "pain-free", ["monitored", "monitored"], NONE],
  ["numbers that allow none", numbers(0, 0, 0), ["monitored", "monitored"], NONE],
  [
    "none while exercising, some in the hours after",
    numbers(0, 0, 2),
    ["monitored", "monitored"],
    { kind: "pain-free", ...numbers(0, 0, 2) },
  ],
])("%s", (_, own, others, limits) => {
  expect(painLimits(own, others, CLINIC, 8)).toEqual(limits);
});

test.each<[string, number, PainRule, object]>([
  ["a limit below the level to call from", 8, numbers(2, 7, 7), numbers(2, 7, 7)],
  ["a limit at it", 8, numbers(2, 8, 9), numbers(2, 7, 7)],
  ["all of the scale", 8, numbers(10, 10, 10), numbers(7, 7, 7)],
  ["the clinic's own numbers above a plan's level", 4, "monitored", numbers(2, 3, 3)],
  ["a level between two numbers", 4.5, "monitored", numbers(2, 4, 4)],
])("%s: no pain to call for is all right", (_, level, rule, limits) => {
  const kind = "monitored";
  expect(painLimits(undefined, [rule, "monitored"], { ...CLINIC, ...limits }, level)).toEqual({
    kind,
    ...limits,
  });
  expect(painLimits(undefined, [rule, numbers(10, 10, 10)], CLINIC, level)).toEqual({
    kind,
    ...limits,
  });
});

test.each([
  ["the clinic's", 8, undefined, 8],
  ["a lower one of the plan", 8, 6, 6],
  ["never above the clinic's", 8, 9, 8],
])("the level to call from: %s", (_, clinic, plan, level) => {
  expect(callLevel(clinic, plan)).toBe(level);
});

test("a clinic whose monitored pain is none is pain-free", () => {
  const clinic = { comfortable: 0, during: 0, after: 0 };
  expect(painLimits(undefined, ["monitored", "monitored"], clinic, 8)).toEqual(NONE);
});

test("no limit is above that of protocol, card or clinic", () => {
  const number = fc.double({ min: 0, max: 10, noNaN: true });
  const rule = fc.oneof(
    fc.constantFrom<PainRule>("pain-free", "monitored"),
    fc
      .tuple(number, number, number)
      .map(([a, b, after]) => numbers(Math.min(a, b), Math.max(a, b), after)),
  );
  const most = (one: PainRule, name: "comfortable" | "during" | "after") =>
    one === "pain-free" ? 0 : one === "monitored" ? CLINIC[name] : one[name];
  fc.assert(
    fc.property(rule, rule, (protocol, card) => {
      const limits = painLimits(undefined, [protocol, card], CLINIC, 11);
      for (const name of ["comfortable", "during", "after"] as const) {
        expect(limits[name]).toBe(Math.min(most(protocol, name), most(card, name)));
      }
      expect(limits.comfortable).toBeLessThanOrEqual(limits.during);
      expect(limits.kind).toBe(limits.during === 0 ? "pain-free" : "monitored");
    }),
    { seed: 11 },
  );
});

describe("a rule as it is stated", () => {
  test.each<[string, unknown]>([
    ["pain-free", "pain-free"],
    ["monitored", "monitored"],
    ["the ends of the scale", numbers(0, 10, 10)],
    ["comfortable up to the limit", numbers(3, 3, 3)],
    ["halves", numbers(1.5, 5.5, 2.5)],
  ])("may be %s", (_, rule) => {
    expect(painRule.parse(rule)).toEqual(rule);
  });

  test.each<[string, unknown, string]>([
    ["another word", "none", "write pain-free, monitored, or the numbers"],
    ["a number left out", { comfortable: 1, during: 2 }, "write pain-free, monitored"],
    ["below the scale", numbers(-1, 5, 5), "expected number to be >=0"],
    ["above the scale", numbers(2, 5, 11), "expected number to be <=10"],
    ["comfortable above the limit", numbers(4, 3, 3), "comfortable cannot be more than during"],
  ])("may not be %s", (_, rule, message) => {
    const found = painRule.safeParse(rule);
    expect(found.error?.issues[0]?.message).toContain(message);
  });

  test("what is wrong is placed at the number that is wrong", () => {
    const found = painRule.safeParse(numbers(4, 3, 3));
    expect(found.error?.issues.map(({ path }) => path)).toEqual([["comfortable"]]);
  });
});
