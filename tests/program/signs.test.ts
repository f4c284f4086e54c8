/** Signs to move on and to begin an exercise name only what this client has; else the clinician's word stands there. */
import { describe, expect, test } from "vitest";
import { partsOf, shippedCourse, textOf } from "../support/shipped.ts";
import { change, demoClinic, shippedText } from "../support/world.ts";

const WORD = "Your clinician has said that you may.";
const phases = (html: string): string[] => partsOf(html, "phase").map(textOf);

interface Row {
  readonly what: string;
  readonly protocol: string;
  readonly plan?: string;
  /** Which phase's page, from 0. */
  readonly page: number;
  readonly says?: readonly string[];
  readonly never?: readonly string[];
  /** What the warnings name; none where it is empty. */
  readonly warns?: readonly string[];
}

const ROWS: readonly Row[] = [
  {
    what: "an exercise that the client has",
    protocol: "hamstring-first-weeks",
    page: 0,
    says: [
      "“Dig your heel in and hold”: a firm push does not hurt.",
      "You can do all sets of “Lift your hips with both legs” with no more than light discomfort.",
    ],
    never: [WORD],
  },
  {
    what: "one that the plan leaves out",
    protocol: "hamstring-first-weeks",
    plan: "leave_out: [{ card: heel-dig-hold, why: It did not help. }]",
    page: 0,
    says: ["You walk fast with no limp and no pain.", WORD],
    never: ["a firm push", "Dig your heel"],
    warns: ["“{heel-dig-hold}: a firm push does not hurt.” of the phase wake"],
  },
  {
    what: "one that the plan swaps",
    protocol: "hamstring-first-weeks",
    plan: "swap: [{ card: bridge-two-legs, to: heel-slide-out, dose: { sets: 2, reps: 8, effort: 3, per_week: 2 }, why: She likes it. }]",
    page: 0,
    says: ["You can do all sets of “Lift your hips and let your heels slide away” with no more"],
    never: [WORD, "with both legs"],
  },
  {
    what: "a sign that asks for what a flag forbids",
    protocol: "hamstring-first-weeks",
    plan: "flags: [osteoporosis]",
    page: 1,
    says: ["You can do all sets on the sore leg as well as on the other.", WORD],
    never: ["jog for ten minutes"],
    warns: ["You can jog for ten minutes*the flag osteoporosis stands against it"],
  },
  {
    what: "a flag that ends in the middle of the phase still stands against it",
    protocol: "hamstring-first-weeks",
    plan: "flags: [{ flag: dizziness, until: { week: 4 } }]",
    page: 1,
    says: [WORD],
    never: ["jog for ten minutes"],
    warns: ["the flag dizziness stands against it"],
  },
  {
    what: "a flag that has ended before the phase does not",
    protocol: "hamstring-first-weeks",
    plan: "flags: [{ flag: dizziness, until: { week: 3 } }]",
    page: 1,
    says: ["jog for ten minutes"],
    never: [WORD],
  },
  {
    what: "a sign of one card, for a client who has another in its place",
    protocol: "hamstring-lowering-ten-weeks",
    plan: "swap: [{ card: kneel-lower, to: kneel-lower-half, why: For now. }]",
    page: 0,
    says: [
      "You can do every set of “Kneel and lean forward part of the way” slowly, from start to finish.",
      WORD,
    ],
    never: ["land softly"],
    warns: ["You catch yourself with bent arms*does not have kneel-lower"],
  },
  {
    what: "a sign of a card that comes only in the next phase",
    protocol: "groin-side-lift-eight-weeks",
    page: 0,
    says: ["Your helper has been shown how to hold your leg."],
    never: [WORD],
  },
];

describe("signs to move on", () => {
  test.each(ROWS)("$protocol: $what", ({ protocol, plan, page, says, never, warns = [] }) => {
    const { html, faults } = shippedCourse(protocol, plan === undefined ? {} : { more: plan });
    const text = phases(html)[page] ?? "";
    for (const one of says ?? []) expect(text).toContain(one);
    for (const one of never ?? []) expect(text).not.toContain(one);
    expect(text).not.toMatch(/[{}]/);
    const found = faults.filter(({ code }) => code === "sign-not-theirs");
    expect(found.map(({ level }) => level)).toEqual(warns.map(() => "warning"));
    for (const [at, parts] of warns.entries())
      for (const part of parts.split("*")) expect(found[at]?.message).toContain(part);
  });
});

describe("signs on which an exercise begins", () => {
  const PROTOCOL = "achilles-four-phases";
  const stepsOf = (json: ReturnType<typeof shippedCourse>["json"]) =>
    json.weeks
      .flatMap(({ sessions }) => sessions.flatMap(({ bouts }) => bouts))
      .filter(({ phase }) => phase === "step");

  test("name what the client has in the place of an exercise of the phase before", () => {
    const { html, json } = shippedCourse(PROTOCOL, {
      more: "swap: [{ card: heel-raise-one-leg-floor, to: calf-hold-two-legs, phase: begin, dose: { sets: 3, hold: 20 s, effort: 4, per_day: 1 }, why: For now. }]",
    });
    const sign = "You can do ten of “Stand on your toes and hold, both legs” with your sore leg.";
    expect(phases(html)[1]).toContain(`Start only when: ${sign}`);
    expect(new Set(stepsOf(json).map(({ start_when }) => start_when))).toEqual(new Set([sign]));
  });

  test("fall away with their exercise, and the clinician's word stands in their place everywhere", () => {
    const { html, json, table, faults } = shippedCourse(PROTOCOL, {
      more: "leave_out: [{ card: heel-raise-one-leg-floor, why: It hurts. }]",
    });
    const page = phases(html)[1] ?? "";
    expect(page).toContain(`Start only when: ${WORD}`);
    expect(html).not.toContain("Rise up on one leg on the floor");
    expect(table).toContain(`starts only when: ${WORD}`);
    const steps = stepsOf(json);
    expect(steps.length).toBeGreaterThan(0);
    for (const { start_when, ask_first } of steps)
      expect([start_when, ask_first]).toEqual([null, true]);
    const said = faults.filter(({ code }) => code === "sign-not-theirs");
    expect(said.map(({ message }) => /of the phase (\S+)/.exec(message)?.[1])).toEqual([
      "begin",
      "step",
    ]);
  });
});

describe("a protocol's signs are checked", () => {
  const FILE = "templates/protocols/hamstring-first-weeks.md";
  test.each([
    [
      "a card in a sign to move on",
      "{bridge-two-legs} with",
      "{bridge-two-leg} with",
      "unknown-card",
      "bridge-two-leg.",
    ],
    [
      "a flag",
      "not_for: [joint-replacement-recent,",
      "not_for: [joint-replacement,",
      "wrong-value",
      "There is no flag joint-replacement.",
    ],
  ])("%s that is not there", (_, from, to, code, message) => {
    const workspace = demoClinic({ [FILE]: change(shippedText(FILE), from, to) });
    const [fault] = workspace.faults.filter((one) => one.place?.file === FILE);
    expect(fault).toMatchObject({ level: "error", code });
    expect(fault?.message).toContain(message);
  });
});
