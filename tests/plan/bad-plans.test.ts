/** Every way in which a plan can be wrong: a located fault, and no booklet. */
import { describe, expect, test } from "vitest";
import { makeProgram } from "../../src/booklet.ts";
import { change, DEMO, demoClinic, shippedText, textAt } from "../support/world.ts";

const FILE = `${DEMO}/achilles.md`;
const GOOD = shippedText(FILE);

function made(text: string, more: Record<string, string> = {}) {
  return makeProgram(demoClinic({ [FILE]: text, ...more }), FILE);
}

test("the demo plans are good before they are spoilt", () => {
  for (const name of ["achilles", "shoulder"]) {
    const file = `${DEMO}/${name}.md`;
    const { value, faults } = makeProgram(demoClinic(), file);
    expect(faults.filter((fault) => fault.level === "error")).toEqual([]);
    expect(value).toBeDefined();
  }
});

describe("a plan with an error makes nothing", () => {
  test.each([
    [
      "an unknown protocol",
      "protocol: achilles-heavy-slow-resistance",
      "protocol: achilles-heavy-slow",
      "unknown-protocol",
      "achilles-heavy-slow",
      "achilles-heavy-slow-resistance",
    ],
    [
      "a path in place of an id",
      "protocol: achilles-heavy-slow-resistance",
      "protocol: ../../secret",
      "wrong-value",
      "../../secret",
      undefined,
    ],
    [
      "a missing card in a swap",
      "to: heel-raise-one-leg-step-weight",
      "to: heel-raise-one-leg-step-wait",
      "unknown-card",
      "heel-raise-one-leg-step-wait",
      "Did you mean heel-raise-one-leg-step-weight?",
    ],
    [
      "a swap of what is not there",
      "swap:\n  - card: heel-press-leg-press",
      "swap:\n  - card: heel-press-leg-pres",
      "change-unused",
      "heel-press-leg-pres",
      "Did you mean heel-press-leg-press?",
    ],
    [
      "leaving out another card of the library, whose name is near",
      "leave_out:\n  - card: heel-raise-standing-weight",
      "leave_out:\n  - card: heel-raise-seated",
      "change-unused",
      "heel-raise-seated",
      "There are: ",
    ],
    [
      "leaving out what is not there",
      "leave_out:\n  - card: heel-raise-standing-weight",
      "leave_out:\n  - card: calf-stretch",
      "change-unused",
      "calf-stretch",
      "There are",
    ],
    [
      "a start that does not exist",
      "starts: 2026-11-30",
      "starts: 2026-11-31",
      "wrong-value",
      "2026-11-31",
      undefined,
    ],
    [
      "a start that is no date",
      "starts: 2026-11-30",
      "starts: Monday",
      "wrong-value",
      "Monday",
      undefined,
    ],
    [
      "a day away that does not exist",
      "away: [2026-12-25,",
      "away: [2026-13-25,",
      "wrong-value",
      "2026-13-25",
      undefined,
    ],
    [
      "days away that end before they begin",
      "to: 2027-01-01",
      "to: 2026-01-01",
      "wrong-value",
      "{ from",
      "Swap",
    ],
    ["no free slot", /free:\n(?: {4}\w.*\n)+/, "free: {}\n", "no-free-slot", "{}", undefined],
    [
      "free time of nothing",
      /free:\n(?: {4}\w.*\n)+/,
      "free: { mon: { evening: 0 min } }\n",
      "no-free-slot",
      "{ mon",
      undefined,
    ],
    [
      "a weekday that does not exist",
      "mon: { evening: 45 min }",
      "moon: { evening: 45 min }",
      "unknown-field",
      "moon",
      "Did you mean mon?",
    ],
    [
      "a load target without a measure",
      /^.*heel-raise-seated-weight, side: both.*\n/m,
      "",
      "measure-missing",
      undefined,
      undefined,
    ],
    [
      "a body share without body mass",
      ", body_mass: 68 kg",
      "",
      "measure-missing",
      undefined,
      undefined,
    ],
    [
      "an unknown flag",
      "flags: none",
      "flags: [osteoporosys]",
      "wrong-value",
      "osteoporosys",
      "Did you mean osteoporosis?",
    ],
    [
      "equipment that does not exist",
      "  - handrail",
      "  - handrale",
      "wrong-value",
      "handrale",
      undefined,
    ],
    [
      "equipment with a step of 0",
      "steps: 1 kg",
      "steps: 0 kg",
      "wrong-value",
      undefined,
      undefined,
    ],
    [
      "equipment with a most but no step",
      ", steps: 1 kg",
      "",
      "missing-field",
      undefined,
      undefined,
    ],
    ["a mass in stone", "body_mass: 68 kg", "body_mass: 11 st", "wrong-value", "11 st", "kg"],
    [
      "a side that does not exist",
      /^side: left$/m,
      "side: lefft",
      "wrong-value",
      "lefft",
      "Did you mean left?",
    ],
    [
      "a measure of an impossible test",
      "test: repetitions, card: heel-raise-seated",
      "test: repetition, card: heel-raise-seated",
      "wrong-value",
      undefined,
      undefined,
    ],
    [
      "an event on no day",
      "what: Long walk, day: sun, ",
      "what: Long walk, ",
      "wrong-value",
      undefined,
      undefined,
    ],
    [
      "an unknown field with markup",
      "irritability: moderate",
      "irritability: moderate\n<b>x: 1",
      "unknown-field",
      "<b>x",
      undefined,
    ],
  ] as const)("%s", (_name, from, to, code, at, hint) => {
    const text = change(GOOD, from, to);
    const { value, faults } = made(text);
    expect(value).toBeUndefined();
    const fault = faults.find((one) => one.code === code);
    expect(faults.map((one) => one.code)).toContain(code);
    expect(fault?.level).toBe("error");
    expect(fault?.place?.file).toBe(FILE);
    if (at !== undefined) expect(textAt(text, fault?.place).startsWith(at)).toBe(true);
    if (hint !== undefined) expect(`${fault?.hint} ${fault?.message}`).toContain(hint);
  });

  test("equipment that is not there is told with what could be done instead", () => {
    const { value, faults } = made(change(GOOD, /^ {2}- \{ have: backpack.*\n/m, ""));
    expect(value).toBeUndefined();
    const fault = faults.find((one) => one.code === "equipment-missing");
    expect(fault?.message).toMatch(
      /Edda Marlowe has no backpack, .*which heel-raise-one-leg-step-weight needs/,
    );
    expect(fault?.hint).toMatch(/Could be done instead: heel-raise-[a-z-]+ \(/);
    // where the plan names the card, and what is printed there
    expect(fault?.frame).toMatch(/^> +\d+ \| +to: heel-raise-one-leg-step-weight$/m);
    expect(fault?.frame).toMatch(new RegExp(`^> +${fault?.place?.line} `, "m"));
  });

  test.each([
    ["tendon-rupture-recent", "heel-raise-seated-weight"],
    ["bone-stress-injury", "heel-raise-one-leg-step-weight"],
  ])("the flag %s stops %s with the reason of the card", (flag, card) => {
    const text = change(GOOD, "flags: none", `flags: [${flag}]`);
    const { value, faults } = made(text);
    expect(value).toBeUndefined();
    const fault = faults.find((one) => one.code === "not-for-client" && one.message.includes(card));
    expect(fault?.message).toMatch(new RegExp(`not for a client with the flag ${flag}: .{20,}`));
    expect(textAt(text, fault?.place).startsWith(flag)).toBe(true);
  });
});

describe("warnings stop nothing", () => {
  test.each([
    ["a plan without sign-off", /^signed:.*$/m, "", "not-signed"],
    ["a goal already reached", "now: 4, want: 8", "now: 9, want: 8", "wrong-value"],
    ["an old measure", "reps: 10, on: 2026-11-23", "reps: 10, on: 2026-06-01", "measure-old"],
  ] as const)("%s", (_name, from, to, code) => {
    const { value, faults } = made(change(GOOD, from, to));
    expect(value).toBeDefined();
    expect(faults.find((one) => one.code === code)?.level).toBe("warning");
  });
});

describe("changes of the plan", () => {
  const exercises = (text: string) =>
    made(text).value?.program.phases.flatMap((phase) =>
      phase.exercises.map(({ card, origin, side }) => `${card.card.id} ${origin} ${side}`),
    );

  test("leave out and swap", () => {
    expect(exercises(GOOD)).toEqual([
      "heel-raise-seated-weight protocol both",
      "heel-raise-one-leg-step-weight swap left",
    ]);
  });

  test("add, in some weeks only", () => {
    const text = change(
      GOOD,
      "swap:",
      "add:\n  - { card: calf-stretch, why: Stiff ankle, weeks: 3-4, dose: { per_week: 3 } }\nswap:",
    );
    const program = made(change(text, "  - chair", "  - chair\n  - wall")).value?.program;
    const added = program?.phases[0]?.exercises.find(({ origin }) => origin === "add");
    expect(added?.card.card.id).toBe("calf-stretch");
    expect(added?.doses.map((dose) => dose?.dose.per_week ?? 0)).toEqual([
      0, 0, 3, 3, 0, 0, 0, 0, 0, 0, 0, 0,
    ]);
  });

  test("re-dose some weeks; the statement points into the plan", () => {
    const text = change(
      GOOD,
      "redose:\n",
      "redose:\n  - { card: heel-raise-seated-weight, weeks: 9-12, why: Knee, dose: { sets: 3 } }\n",
    );
    const seated = made(text).value?.program.phases[0]?.exercises[0];
    expect(seated?.doses.map((dose) => dose?.dose.sets)).toEqual([
      3, 3, 3, 4, 4, 4, 4, 4, 3, 3, 3, 3,
    ]);
    expect(seated?.doses[8]?.stated.sets).toMatchObject({ by: "plan", place: { file: FILE } });
    expect(textAt(text, seated?.doses[8]?.stated.sets?.place)).toMatch(/^3 \}/);
    expect(seated?.doses[0]?.stated.sets?.by).toBe("protocol");
    expect(seated?.doses[0]?.stated.sets?.place.file).toContain(
      "achilles-heavy-slow-resistance.md",
    );
  });

  test("fewer weeks than the protocol has", () => {
    const program = made(change(GOOD, "starts:", "weeks: 5\nstarts:")).value;
    expect(program?.program.weeks).toBe(5);
    expect(program?.schedule.weeks).toHaveLength(5);
  });

  test("both sides: each in turn", () => {
    const text = change(GOOD, /^side: left$/m, "side: both");
    expect(exercises(text)).toContain("heel-raise-one-leg-step-weight swap each");
  });
});

describe("pain rules", () => {
  const limits = (text: string) =>
    made(text).value?.program.phases[0]?.exercises.map(({ pain }) => pain.during);

  test("the clinic's numbers for monitored pain", () => expect(limits(GOOD)).toEqual([5, 5]));
  test("the plan's own numbers win", () => {
    const text = change(
      GOOD,
      "side: left\n",
      "side: left\npain: { comfortable: 1, during: 3, after: 3 }\n",
    );
    expect(limits(text)).toEqual([3, 3]);
  });
  test("otherwise the stricter of protocol and card", () => {
    const file = "exercises/calf-and-achilles/heel-raise-seated-weight.md";
    const card = change(shippedText(file), "pain: monitored", "pain: pain-free");
    const program = makeProgram(demoClinic({ [file]: card }), FILE).value?.program;
    expect(program?.phases[0]?.exercises.map(({ pain }) => pain.kind)).toEqual([
      "pain-free",
      "monitored",
    ]);
  });

  const level = (text: string) => made(text).value?.program.callLevel;
  const withLine = (line: string) => change(GOOD, "side: left\n", `side: left\n${line}\n`);
  const CLINIC = `${DEMO}/clinic.yaml`;
  const clinic = (pain: string) => ({ [CLINIC]: `${shippedText(CLINIC)}\npain: ${pain}\n` });

  test("from 8 on a client calls, or from what the clinic or the plan says", () => {
    expect(level(GOOD)).toBe(8);
    expect(level(withLine("pain_call: 6"))).toBe(6);
    expect(made(GOOD, clinic("{ call: 7 }")).value?.program.callLevel).toBe(7);
    expect(limits(withLine("pain_call: 4"))).toEqual([3, 3]);
  });

  test.each<[string, string, string, string, string]>([
    ["a level above the clinic's", "pain_call: 9", "9", "from a pain of 8 on", "Write 8 or less"],
    [
      "a limit of its own at the clinic's level",
      "pain: { comfortable: 2, during: 8, after: 5 }",
      "8",
      "allows a pain of 8, and from 8 on",
      "Write less than 8",
    ],
    [
      "a limit of its own above its own level",
      "pain: { comfortable: 2, during: 5, after: 6 }\npain_call: 5.5",
      "6 }",
      "allows a pain of 6, and from 5.5 on",
      "Write less than 5.5",
    ],
  ])("%s is refused", (_, line, at, message, hint) => {
    const text = withLine(line);
    const { value, faults } = made(text);
    expect(value).toBeUndefined();
    const [fault] = faults.filter((one) => one.level === "error");
    expect(fault?.code).toBe("wrong-value");
    expect(fault?.message).toContain(message);
    expect(fault?.hint).toContain(hint);
    expect(textAt(text, fault?.place).startsWith(at)).toBe(true);
  });

  test.each(["{ during: 8 }", "{ during: 4, after: 6, call: 6 }"])(
    "a clinic whose limits reach the level, %s, is refused",
    (pain) => {
      const { faults } = demoClinic({ [FILE]: GOOD, ...clinic(pain) });
      expect(faults.map(({ message }) => message).join()).toContain(
        "call has to be more than during and after",
      );
    },
  );
});
