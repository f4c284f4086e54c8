/** Warnings for texts over the limit: which texts, where they point, and what they say to do. */
import { describe, expect, test } from "vitest";
import type { Fault } from "../../src/faults/fault.ts";
import { readPlan } from "../../src/plan/read-plan.ts";
import { mostLongWords, mostWords } from "../../src/readability/short-text.ts";
import {
  cardTextFaults,
  clinicTextFaults,
  HARD_TO_READ,
  planTextFaults,
  protocolTextFaults,
  USUAL_GRADE,
} from "../../src/readability/text-faults.ts";
import type { Workspace } from "../../src/workspace.ts";
import { change, DEMO, demoClinic, shippedText, textAt } from "../support/world.ts";

const CARD = "exercises/knee/step-up.md";
const PROTOCOL = "templates/protocols/achilles-heavy-slow-resistance.md";
const PLAN = `${DEMO}/achilles.md`;

/** A sentence of grade 20 and more. */
const HARD =
  "Simultaneously maintaining appropriate pelvic orientation, gradually accelerate until muscular exhaustion necessitates discontinuation.";

function clinicWith(file: string, text: string): Workspace {
  const workspace = demoClinic({ [file]: text });
  // a text that is changed here is no longer what its translation says
  const faults = workspace.faults.filter(({ place }) => place?.file === file);
  if (faults.length > 0) throw new Error(faults.map(String).join("\n"));
  return workspace;
}

function cardFaults(text: string, grade = USUAL_GRADE, language = "en"): Fault[] {
  const card = clinicWith(CARD, text).cards.library.cards.get("step-up");
  if (!card) throw new Error("no card");
  return cardTextFaults(card, grade, language);
}

const card = shippedText(CARD);
const inSection = (heading: string, text: string) =>
  change(card, new RegExp(`(## ${heading}\n\n)`), `## ${heading}\n\n${text}\n\n`);

describe("a card", () => {
  test("that is plain has no warning", () => {
    expect(cardFaults(card)).toEqual([]);
  });

  test.each(["Set up", "Move", "You should feel", "Check yourself", "Stop and call us if"])(
    "with a hard section %s has one warning, at its hardest sentence",
    (heading) => {
      const text = inSection(heading, `Stand up. ${HARD} ${HARD}`);
      const faults = cardFaults(text);
      expect(faults).toHaveLength(1);
      const [fault] = faults;
      expect(fault).toMatchObject({ code: HARD_TO_READ, level: "warning" });
      expect(fault?.message).toMatch(
        new RegExp(`^The section “${heading}” reads at grade \\d+\\.\\d.*; the limit is 6\\.$`),
      );
      expect(textAt(text, fault?.place)).toMatch(/^Simultaneously/);
      expect(fault?.hint).toContain(`${fault?.place?.line}:${fault?.place?.column} (grade `);
      expect(fault?.hint).toContain("Simultaneously maintaining");
      expect(fault?.hint).toContain("Say “at the same time” for “simultaneously”");
      expect(fault?.frame).toContain("Simultaneously");
    },
  );

  test("the clinician's section may be as hard as it likes", () => {
    expect(cardFaults(inSection("For the clinician", HARD))).toEqual([]);
  });

  test("the place is right on a later line of a list, and with Windows line ends", () => {
    const text = inSection("Move", `1. Rise.\n2. Lower.\n3. Now\n   rest. ${HARD}`);
    for (const typed of [text, text.replaceAll("\n", "\r\n")]) {
      const [fault] = cardFaults(typed);
      expect(textAt(typed, fault?.place)).toMatch(/^Simultaneously/);
    }
  });

  test("title, reason and words of care are judged, each at its own place", () => {
    const title = "Unilateral eccentric quadriceps loading";
    let text = change(card, /title: .*/, `title: ${title}`);
    text = change(text, /why: .*/, `why: ${HARD}`);
    text = change(
      text,
      /(care:\n {2}- \{ flag: [\w-]+, say: )"[^"]*"/,
      `care:\n  - { flag: diabetes-neuropathy, say: "${HARD}"`,
    );
    const faults = cardFaults(text);
    expect(faults.map(({ place }) => textAt(text, place).slice(0, 16))).toEqual([
      title.slice(0, 16),
      HARD.slice(0, 16),
      `"${HARD.slice(0, 15)}`,
    ]);
    expect(faults[0]?.message).toContain("unilateral, eccentric, quadriceps");
    expect(faults[2]?.message).toMatch(/^The care for diabetes-neuropathy /);
  });

  test("the limit is the clinic's", () => {
    const text = inSection("Move", `Stand up. ${HARD} ${HARD}`);
    expect(cardFaults(text, 40)).toEqual([]);
    expect(cardFaults(card, 0).length).toBeGreaterThan(0);
  });

  test("a language without a formula is not judged", () => {
    const text = inSection("Move", `Stand up. ${HARD} ${HARD}`);
    expect(cardFaults(text, 6, "eo")).toEqual([]);
  });
});

test("a protocol: titles, aims and signs, at the item in question", () => {
  let text = change(shippedText(PROTOCOL), /aim: .*/, `aim: ${HARD}`);
  text = change(text, /move_on:\n/, `move_on:\n      - ${HARD} ${HARD}\n`);
  const workspace = clinicWith(PROTOCOL, text);
  const protocol = workspace.protocols.protocols.get("achilles-heavy-slow-resistance");
  if (!protocol) throw new Error("no protocol");
  const faults = protocolTextFaults(protocol, 6, "en");
  expect(faults.map(({ message }) => message.replace(/ (has|reads).*/, ""))).toEqual([
    expect.stringMatching(/^The aim of phase /),
    expect.stringMatching(/^The list of signs to move on from /),
  ]);
  for (const { place } of faults) expect(textAt(text, place)).toMatch(/^Simultaneously/);
});

test("a plan: goals and note", () => {
  let text = change(shippedText(PLAN), /what: [^,\n]*/, `what: "${HARD}"`);
  text = `${text}\n${HARD} ${HARD}\n`;
  const workspace = demoClinic({ [PLAN]: text });
  const { plan } = readPlan(workspace.tree, PLAN, workspace.cards.library.words);
  if (!plan) throw new Error("no plan");
  const faults = planTextFaults(plan, 6, "en");
  expect(faults.map(({ message }) => message.replace(/ (has|reads).*/, ""))).toEqual([
    "The goal",
    "The note",
  ]);
  for (const { place } of faults) expect(textAt(text, place)).toMatch(/^"?Simultaneously/);
});

test("a clinic: its own lines", () => {
  const file = `${DEMO}/clinic.yaml`;
  const text = change(shippedText(file), /out_of_hours: .*/, `out_of_hours: ${HARD}`);
  const { clinic } = clinicWith(file, text);
  if (!clinic) throw new Error("no clinic");
  const [fault, ...more] = clinicTextFaults(clinic, 6, "en");
  expect(more).toEqual([]);
  expect(textAt(text, fault?.place)).toMatch(/^Simultaneously/);
});

describe("short texts", () => {
  test("their bounds grow with the limit", () => {
    expect([4, 6, 8].map(mostWords)).toEqual([10, 16, 21]);
    expect([4, 6, 8].map((grade) => mostLongWords(14, grade))).toEqual([2, 2, 3]);
    expect(mostLongWords(3, 6)).toBe(1);
    expect(mostWords(-100)).toBe(5);
  });

  test("one name of a thing is allowed, figures and short parts of compounds are no long words", () => {
    for (const title of ["Exercise for your calf", "Out-of-hours step-by-step 17 times", "Hold"]) {
      expect(cardFaults(change(card, /title: .*/, `title: ${title}`))).toEqual([]);
    }
  });

  test("a long sentence is named as one", () => {
    const title = "Rise up on both of your feet and then come down on one";
    const [fault] = cardFaults(change(card, /title: .*/, `title: ${title}`), 4);
    expect(fault?.message).toBe(
      "The title has a sentence of 13 words; for grade 4 the most is 10.",
    );
  });
});
