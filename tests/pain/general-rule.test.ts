/** One rule for several exercises: the commonest, with every other exercise named. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { generalRule, strictestAfter } from "../../src/pain/general-rule.ts";
import type { PainLimits } from "../../src/pain/limits.ts";

const limits = (comfortable: number, during: number, after: number): PainLimits => ({
  kind: during === 0 ? "pain-free" : "monitored",
  comfortable,
  during,
  after,
});
const FREE = limits(0, 0, 0);
const FIVE = limits(2, 5, 5);
const THREE = limits(2, 3, 3);

/** Exercises named a, b, c … with these limits. */
const exercises = (...all: PainLimits[]) =>
  all.map((pain, at) => ({ name: "abcdefgh"[at] ?? "", pain }));

test.each<[string, PainLimits[], PainLimits, string]>([
  ["one exercise", [FIVE], FIVE, ""],
  ["all the same", [FIVE, FIVE, FIVE], FIVE, ""],
  ["most are monitored", [FREE, FIVE, FIVE], FIVE, "a"],
  ["most are pain-free", [FIVE, FREE, FREE], FREE, "a"],
  ["as many of each: the stricter while exercising", [FIVE, THREE], THREE, "a"],
  [
    "as many of each: the stricter after it",
    [limits(2, 5, 5), limits(2, 5, 3)],
    limits(2, 5, 3),
    "a",
  ],
  [
    "as many of each: the stricter of ease",
    [limits(2, 5, 5), limits(1, 5, 5)],
    limits(1, 5, 5),
    "a",
  ],
  ["three rules: all others are named, in order", [THREE, FIVE, FREE, FIVE], FIVE, "ac"],
  ["no exercise", [], FREE, ""],
])("%s", (_, all, general, exceptions) => {
  const rule = generalRule(exercises(...all));
  expect(rule.limits).toEqual(general);
  expect(rule.exceptions.map(({ name }) => name).join("")).toBe(exceptions);
});

test("with the rule and its exceptions every exercise has its own limits, in whatever order", () => {
  const some = fc.array(fc.constantFrom(FREE, FIVE, THREE, limits(2, 5, 3)), { maxLength: 8 });
  fc.assert(
    fc.property(some, fc.integer(), (all, turn) => {
      const named = exercises(...all);
      const rule = generalRule(named);
      for (const one of named) {
        const exception = rule.exceptions.includes(one);
        expect(exception ? one.pain : rule.limits).toEqual(one.pain);
        if (exception) expect(one.pain).not.toEqual(rule.limits);
      }
      const at = named.length === 0 ? 0 : Math.abs(turn) % named.length;
      const turned = [...named.slice(at), ...named.slice(0, at)];
      expect(generalRule(turned).limits).toEqual(rule.limits);
    }),
    { seed: 12 },
  );
});

test.each<[string, PainLimits[], string | undefined]>([
  ["the lowest", [FIVE, FREE, THREE], "b"],
  ["by what is allowed after it, not while exercising", [limits(2, 3, 5), limits(2, 5, 4)], "b"],
  ["the first of equals", [FIVE, FIVE], "a"],
  ["none", [], undefined],
])("the exercise limited most after a session: %s", (_, all, name) => {
  expect(strictestAfter(exercises(...all))?.name).toBe(name);
});
