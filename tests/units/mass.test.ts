/** Masses and shares as people write them: kilograms, grams, pounds, half percents. */
import { describe, expect, test } from "vitest";
import { dosePart } from "../../src/prescription/fields.ts";
import { serialiseDose } from "../../src/prescription/serialise.ts";
import { inUnit, sayMass } from "../../src/units/mass.ts";
import { mass, percent } from "../../src/units/quantities.ts";

describe("a mass with its unit", () => {
  // The pound is 0.45359237 kg by the agreement of 1959.
  test.each([
    ["12.5 kg", 12.5],
    ["12.5kg", 12.5],
    ["750 g", 0.75],
    ["88 lb", 39.91612856],
    ["1 lb", 0.45359237],
    ["2.5 lb", 1.133980925],
  ])("%s is %d kg", (text, kg) => expect(mass.parse(text)).toBeCloseTo(kg, 12));
  test.each(["12", "lb", "12 st", "12 LB", "-5 kg", "1e3 kg", "12,5 kg", "5 lb 3 oz"])(
    "%s is none",
    (text) => expect(mass.safeParse(text).success).toBe(false),
  );
  test.each([
    [11.33980925, "lb", "25 lb"],
    [22.679619, "lb", "50 lb"],
    [1.13398, "lb", "2.5 lb"],
    [11.33980925, "kg", "11.34 kg"],
    [20, "kg", "20 kg"],
    [20, "lb", "44.09 lb"],
    [0, "lb", "0 lb"],
  ] as const)("%d kg in %s: %s", (kg, unit, text) => expect(sayMass(kg, unit)).toBe(text));
  test("an amount in pounds is exact to a hundredth", () => {
    for (let lb = 0.5; lb < 500; lb += 0.5) expect(inUnit(lb * 0.45359237, "lb")).toBe(lb);
  });
});

describe("targets with pounds and half percents", () => {
  const target = (text: string) => dosePart.parse({ target: text }).target;
  test.each([
    ["67.5 % of 1RM", { kind: "percent-1rm", share: 0.675 }],
    ["67.5% of 1RM", { kind: "percent-1rm", share: 0.675 }],
    ["82.25 % of best hold", { kind: "percent-hold", share: 0.8225 }],
    ["62.5 % of most reps", { kind: "percent-reps", share: 0.625 }],
    ["97.5 % of top speed", { kind: "percent-speed", share: 0.975 }],
    ["25 lb", { kind: "load", kg: 11.33980925 }],
    ["500 g", { kind: "load", kg: 0.5 }],
  ])("%s", (text, value) => expect(target(text)).toEqual(value));
  test.each(["100.5 % of 1RM", "0.0 % of 1RM", "67. % of 1RM", "25 stone", "25 lbs"])(
    "%s is none",
    (text) => expect(() => target(text)).toThrow("write a target as"),
  );
  test.each(["67.5 % of 1RM", "33.3 % of top speed"])("%s is written back as it was", (text) =>
    expect(serialiseDose(dosePart.parse({ target: text })).target).toBe(text),
  );
  test("the clinic's shares too", () => expect(percent.parse("7.5 %")).toBeCloseTo(0.075, 12));
});
