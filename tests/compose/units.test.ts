/** A clinic that writes pounds: every surface says pounds, from equipment to booklet, and the file stays in kilograms. */
import { describe, expect, test } from "vitest";
import { makeBooklet, makeProgram } from "../../src/booklet.ts";
import { phoneData } from "../../src/html/phone.ts";
import { planTable } from "../../src/plan-text/table.ts";
import { loadWords } from "../../src/words/load-words.ts";
import { asSigned } from "../support/signed.ts";
import { change, DAY, DEMO, demoClinic, english, shippedText } from "../support/world.ts";

const plan = [
  [/load: 45 kg/, "load: 100 lb"],
  [/bar: 10 kg, plates: \[.*?\]/, "bar: 25 lb, plates: [2.5 lb, 5 lb, 10 lb, 25 lb]"],
  [/from: 1 kg, up_to: 30 kg, steps: 1 kg/, "from: 2.5 lb, up_to: 60 lb, steps: 2.5 lb"],
] as const;
const inPounds = plan.reduce(
  (text, [from, to]) => change(text, from, to),
  shippedText(`${DEMO}/achilles.md`),
);

function made(clinic: string, language: "en" | "de" = "en") {
  const settings = `${shippedText(`${DEMO}/clinic.yaml`)}${clinic}`;
  const workspace = demoClinic({
    [`${DEMO}/achilles.md`]: inPounds,
    [`${DEMO}/clinic.yaml`]:
      language === "en"
        ? settings
        : `${change(settings, "locale: en-GB", "locale: de-DE")}\nlanguage: de\n`,
  });
  const { value, faults } = makeProgram(workspace, `${DEMO}/achilles.md`);
  if (!value) throw new Error(faults.map(({ message }) => message).join("\n"));
  const words = language === "en" ? english() : loadWords("de", "de-DE");
  return {
    value,
    workspace,
    words,
    faults,
    booklet: makeBooklet(asSigned(value), workspace, words, DAY),
  };
}

/** Numbers before a unit of mass, each once. */
const masses = (text: string, unit: string) => [
  ...new Set([...text.matchAll(new RegExp(`([\\d.,]+)[  ]${unit}\\b`, "g"))].map(([, n]) => n)),
];

describe("units: lb", () => {
  const { value, workspace, words, booklet } = made("\nunits: lb\n");
  // 100 lb for 10 are a 15 RM of 88.9 lb and a 6 RM of 111.1 lb; the bar makes 85, 95 … in steps of 5 lb.
  test("the booklet with its sessions for the calendar, and the table of the terminal, say the loads in pounds, whole ones", () => {
    const surfaces = [JSON.stringify(booklet), planTable(value, workspace.texts.library, words)];
    for (const text of surfaces) {
      expect(masses(text, "lb")).toEqual(expect.arrayContaining(["85", "110"]));
      for (const number of masses(text, "lb")) expect(Number(number) % 2.5, number).toBe(0);
      expect(masses(text, "kg")).toEqual([]);
    }
    expect(booklet.progress.map(({ unit }) => unit)).toEqual(["lb", "lb"]);
    expect(booklet.progress[0]?.planned[0]).toBe(85);
  });
  test("the companion is told the unit, and keeps kilograms to the gram", () => {
    const data = phoneData(booklet, words);
    expect(data.units).toBe("lb");
    expect(data.bouts.flatMap(({ kg }) => kg ?? [])).toContain(38.555);
    expect(data.bouts.flatMap(({ dose }) => dose).join("\n")).toContain("85 lb (bar)");
  });
  test("in German too", () => {
    const german = made("\nunits: lb\n", "de").booklet;
    expect(masses(JSON.stringify(german), "lb")).toEqual(expect.arrayContaining(["85", "110"]));
    expect(masses(JSON.stringify(german), "kg")).toEqual([]);
  });
});

test("a clinic in kilograms prints the same equipment in kilograms", () => {
  const text = JSON.stringify(made("").booklet);
  expect(text).toContain("38.56 kg (bar)");
  expect(masses(text, "lb")).toEqual([]);
});
