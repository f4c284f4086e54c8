/** Every way in which a card can be wrong: one located fault each, with the nearest right word. */
import { describe, expect, test } from "vitest";
import { readLibrary } from "../../src/cards/read-library.ts";
import { change, DAY, shippedText, textAt, worldWith } from "../support/world.ts";

const FILE = "exercises/calf-and-achilles/heel-raise-one-leg-step-weight.md";
const GOOD = shippedText(FILE);

/** The faults of the library with this text in place of the good card. */
function faultsOf(text: string, file = FILE) {
  const { faults } = readLibrary(worldWith({ [file]: text }), ["exercises"], DAY);
  return faults.filter((fault) => fault.place?.file === file);
}

test("the card is good before it is spoilt", () => {
  expect(faultsOf(GOOD)).toEqual([]);
});

describe("a slip in the front matter", () => {
  test.each([
    [
      "an unknown field",
      "recovery:",
      "recovry: 48 h\nrecovery:",
      "unknown-field",
      "recovry",
      "Did you mean recovery?",
    ],
    [
      "a text with a comma between braces",
      'say: "Stay inside the limits your surgeon gave you."',
      "say: Stay inside the limits, as your surgeon said",
      "unknown-field",
      "as your surgeon said",
      "quotation marks",
    ],
    [
      "an unknown inner field",
      "tempo: 3-0-3-0",
      "tempoo: 3-0-3-0",
      "unknown-field",
      "tempoo",
      "Did you mean tempo?",
    ],
    [
      "an unknown field inside a list",
      "{ to: heel-raise-one-leg-step }",
      "{ too: heel-raise-one-leg-step }",
      "unknown-field",
      "too",
      "Did you mean to?",
    ],
    ["a missing field", /^limb: leg\n/m, "", "missing-field", "id:", undefined],
    ["an empty field", /^limb: leg$/m, "limb:", "missing-field", "limb:", "leg, arm, body"],
    [
      "a wrong word",
      "trains: strength",
      "trains: strenght",
      "wrong-value",
      "strenght",
      "Did you mean strength?",
    ],
    [
      "an unknown tissue",
      "tissues: [calf, achilles]",
      "tissues: [calf, achiles]",
      "wrong-value",
      "achiles",
      "Did you mean achilles?",
    ],
    [
      "an unknown flag",
      "flag: infection",
      "flag: infektion",
      "wrong-value",
      "infektion",
      "Did you mean infection?",
    ],
    ["a time without its unit", "recovery: 48 h", "recovery: 48", "wrong-value", "48", undefined],
    [
      "a time with a unit of mass",
      "recovery: 48 h",
      "recovery: 48 kg",
      "wrong-value",
      "48 kg",
      undefined,
    ],
    ["a number as text", "demand: 7", "demand: seven", "wrong-value", "seven", undefined],
    ["a demand above the scale", "demand: 7", "demand: 11", "wrong-value", "11", undefined],
    [
      "a body share above 1",
      "body_share: 0.9855",
      "body_share: 9.855",
      "wrong-value",
      "9.855",
      undefined,
    ],
    ["an impossible tempo", "tempo: 3-0-3-0", "tempo: 3-0-3", "wrong-value", "3-0-3", undefined],
    ["no sets at all", "sets: 3", "sets: 0", "wrong-value", "0", undefined],
    [
      "more repetitions than can be done",
      "reps: 12",
      "reps: 1200",
      "wrong-value",
      "1200",
      undefined,
    ],
    ["a target that is none", "target: 12 RM", "target: heavy", "wrong-value", "heavy", undefined],
    [
      "two ways of how often",
      "per_week: 3",
      "per_week: 3, per_day: 1",
      "wrong-value",
      "{ sets",
      undefined,
    ],
    [
      "a date that does not exist",
      "on: 2026-11-02",
      "on: 2026-02-30",
      "wrong-value",
      "2026-02-30",
      undefined,
    ],
    [
      "a review before the last",
      "again: 2028-11-02",
      "again: 2025-11-02",
      "wrong-value",
      "2025-11-02",
      undefined,
    ],
    [
      "a field given twice",
      "demand: 7",
      "demand: 7\ndemand: 8",
      "yaml-syntax",
      "demand: 8",
      "Keep one of the two.",
    ],
    [
      "an open bracket",
      "equipment: [step, handrail]",
      "equipment: [step, handrail",
      "yaml-syntax",
      undefined,
      undefined,
    ],
    [
      "an alias",
      "tissues: [calf, achilles]",
      "tissues: &t [calf, achilles]\nequipment: *t",
      "yaml-syntax",
      "equipment",
      undefined,
    ],
  ] as const)("%s", (_name, from, to, code, at, hint) => {
    const text = change(GOOD, from, to);
    const faults = faultsOf(text);
    expect(faults.map((fault) => fault.code)).toContain(code);
    const fault = faults.find((one) => one.code === code);
    if (at !== undefined)
      expect(textAt(text, fault?.place)).toMatch(new RegExp(`^"?${escaped(at)}`));
    expect(fault?.frame).toContain(">");
    if (hint !== undefined) expect(fault?.hint).toContain(hint);
  });

  test("an alias is refused, where it stands", () => {
    const text = change(
      GOOD,
      "tissues: [calf, achilles]",
      "tissues: &t [calf, achilles]\nalternatives: *t",
    );
    const [fault] = faultsOf(text);
    expect(fault?.code).toBe("yaml-alias");
    expect(textAt(text, fault?.place)).toMatch(/^\*t/);
  });

  test("every problem is told in one run, in the order of the file", () => {
    const text = change(
      change(change(GOOD, "demand: 7", "demand: 70"), "limb: leg", "limb: wing"),
      "## Move",
      "## Moves",
    );
    const codes = faultsOf(text).map((fault) => `${fault.code} ${fault.place?.line}`);
    expect(codes).toHaveLength(4);
    expect(codes.map((code) => code.split(" ")[0])).toEqual([
      "wrong-value",
      "wrong-value",
      "unknown-section",
      "missing-section",
    ]);
  });
});

describe("the text", () => {
  test.each([
    ["a missing section", /## Move[\s\S]*?(?=## You)/, "", "missing-section", /Move/],
    [
      "an empty section",
      /## You should feel[\s\S]*?(?=## Check)/,
      "## You should feel\n\n",
      "missing-section",
      /empty/,
    ],
    ["a section misspelt", "## Set up", "## Setup", "unknown-section", /no section “Setup”/],
    ["a section twice", "## Move", "## Set up\n\nAgain.\n\n## Move", "unknown-section", /twice/],
    [
      "text before the first heading",
      "## Set up",
      "Hello.\n\n## Set up",
      "unknown-section",
      /before the first/,
    ],
    ["an unknown placeholder", "{side} heel", "{sid} heel", "unknown-placeholder", /\{sid\}/],
    [
      "a link to the outside",
      "## Move",
      "[look](https://example.org)\n\n## Move",
      "unsafe-text",
      /outside/,
    ],
    [
      "a script as a link",
      "## Move",
      "[look](javascript:alert(1))\n\n## Move",
      "unsafe-text",
      /outside/,
    ],
  ] as const)("%s", (_name, from, to, code, message) => {
    const fault = faultsOf(change(GOOD, from, to)).find((one) => one.code === code);
    expect(fault?.message).toMatch(message);
    expect(fault?.place?.line).toBeGreaterThan(40);
  });
});

describe("the beginning of the file", () => {
  test.each([
    ["no front matter", "# A card\n", "front-matter-missing"],
    ["an empty file", "", "front-matter-missing"],
    ["front matter without an end", "---\nid: x\n", "front-matter-missing"],
    ["JavaScript", "---js\n{ id: 'x' }\n---\n", "front-matter-language"],
    ["JavaScript, long name", "---JavaScript\n{ id: 'x' }\n---\n", "front-matter-language"],
    ["CoffeeScript", "---coffee\nid: 'x'\n---\n", "front-matter-language"],
    ["JSON", '---json\n{ "id": "x" }\n---\n', "front-matter-language"],
  ])("%s", (_name, text, code) => {
    expect(faultsOf(text).map((fault) => fault.code)).toEqual([code]);
  });

  test.each([
    ["a byte order mark", `\uFEFF${GOOD}`],
    ["line ends of Windows", GOOD.replaceAll("\n", "\r\n")],
    ["the language named", GOOD.replace("---\n", "---yaml\n")],
  ])("%s does no harm", (_name, text) => {
    expect(faultsOf(text)).toEqual([]);
  });

  test.each(["\n", "\r\n"])("places are right with line end %j", (end) => {
    const text = change(GOOD, "demand: 7", "demand: 70").replaceAll("\n", end);
    expect(textAt(text, faultsOf(text)[0]?.place)).toBe("70");
  });
});

describe("cards together", () => {
  const other = "exercises/calf-and-achilles/zz-other.md";

  test("a duplicate id names both files", () => {
    const faults = faultsOf(GOOD, other);
    expect(faults.map((fault) => fault.code)).toEqual(["duplicate-id"]);
    expect(faults[0]?.message).toContain(FILE);
    expect(faults[0]?.message).toContain(other);
  });

  test.each([
    [
      "a harder card that does not exist",
      "harder: [{ to: hops-two-legs",
      "harder: [{ to: hops-two-leg",
      "unknown-card",
      "Did you mean hops-two-legs?",
    ],
    [
      "a harder card that is easier",
      "harder: [{ to: hops-two-legs",
      "harder: [{ to: calf-stretch",
      "ladder-order",
      undefined,
    ],
    [
      "an easier card that is harder",
      "easier: [{ to: heel-raise-one-leg-step }",
      "easier: [{ to: hops-one-leg }",
      "ladder-order",
      undefined,
    ],
    [
      "a card that names itself",
      "harder: [{ to: hops-two-legs",
      "harder: [{ to: heel-raise-one-leg-step-weight",
      "ladder-order",
      undefined,
    ],
    [
      "a measure from nowhere",
      "capacity_from: [heel-raise-one-leg-step,",
      "capacity_from: [heel-raise-one-leg-stp,",
      "unknown-card",
      "heel-raise-one-leg-step",
    ],
  ])("%s", (_name, from, to, code, hint) => {
    const text = change(GOOD, from, to);
    const fault = faultsOf(text).find((one) => one.code === code);
    expect(textAt(text, fault?.place)).toBe(textAt(text, fault?.place).replace(/^\s+/, ""));
    expect(fault).toBeDefined();
    if (hint !== undefined) expect(fault?.hint).toContain(hint);
  });

  test("a circle is told once, with its whole way", () => {
    const step = "exercises/calf-and-achilles/heel-raise-one-leg-step.md";
    const text = change(
      GOOD,
      "harder: [{ to: hops-two-legs",
      "harder: [{ to: heel-raise-one-leg-step",
    );
    const { faults } = readLibrary(
      worldWith({ [FILE]: text, [step]: shippedText(step) }),
      ["exercises"],
      DAY,
    );
    const circles = faults.filter((fault) => fault.code === "ladder-circle");
    expect(circles).toHaveLength(1);
    expect(circles[0]?.message).toContain(
      "heel-raise-one-leg-step → heel-raise-one-leg-step-weight",
    );
  });

  test("a card past its review date is a warning", () => {
    const { faults } = readLibrary(worldWith(), ["exercises"], "2030-01-01");
    expect(new Set(faults.map((fault) => `${fault.code} ${fault.level}`))).toEqual(
      new Set(["review-due warning"]),
    );
  });
});

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
