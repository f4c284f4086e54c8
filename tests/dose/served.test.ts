/** A dose against what the client can do and owns: what does not go stops, with the numbers, unless the plan answers it. */
import { describe, expect, test } from "vitest";
import { makeProgram } from "../../src/booklet.ts";
import { planJson } from "../../src/plan-text/json.ts";
import { DEMO, demoClinic } from "../support/world.ts";

const PLAN = `${DEMO}/served.md`;
const days = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"];

interface Client {
  readonly protocol?: string;
  readonly equipment?: string;
  readonly measures: string;
  readonly more?: string;
}

/** A plan as a clinician writes it, made; its faults as code, level, message and hint. */
function told({
  protocol = "shoulder-cuff-lowering",
  equipment = "",
  measures,
  more = "",
}: Client) {
  const text = `---
id: served
client: { name: Ines Halloway, reference: TC-9, born: 1988-03-09, body_mass: 70 kg }
clinician: Robin Ashdown
protocol: ${protocol}
starts: 2027-01-04
side: left
stage: Able to bear load
irritability: low
goals: [{ what: Reach the top shelf, now: 4, want: 8, on: 2026-12-28 }]
measures: [${measures}]
equipment: [step, handrail, wall, chair, mat, towel, pillow, door-anchor, { have: band, levels: [1, 2, 3] }, ${equipment}]
week: { free: { ${days.map((day) => `${day}: { morning: 180 min, evening: 180 min }`).join(", ")} } }
${more}
---
`;
  const { value, faults } = makeProgram(demoClinic({ [PLAN]: text }), PLAN);
  const of = (code: string) => faults.filter((fault) => fault.code === code);
  return { made: value, faults, of, json: value && planJson(value, faults) };
}

const CARD = "turn-out-lower-weight";
const test4 = (reps: number, card = CARD) =>
  `{ test: repetitions, card: ${card}, side: left, load: 4 kg, reps: ${reps}, on: 2026-12-28 }`;
const ONE = "{ have: dumbbells, loads: [4 kg] }";
const ADD = `add: [{ card: ${CARD}, why: Agreed., dose: { sets: 3, reps: 15, per_week: 3 } }]`;
const HSR = "achilles-heavy-slow-resistance";

describe("a weight left to feel", () => {
  const only = { protocol: "knee-tendon-holds", equipment: `strap, ${ONE}`, more: ADD };

  test("one 4 kg weight, four repetitions done with it, fifteen asked for: it stops, with all three", () => {
    const { made, of } = told({ ...only, measures: test4(4) });
    expect(made).toBeUndefined();
    const [fault] = of("dose-beyond-measure");
    expect(fault?.level).toBe("error");
    expect(fault?.message).toMatch(
      /asks for 15 times.*lightest weight the client has, 4 kg,.*4 times \(weeks/,
    );
    // Epley 1985: 1RM = w (1 + r/30); with 4 kg done 4 times, 15 times go with 4 × (34/30) / (45/30)
    expect(fault?.hint).toContain("about 3 kg");
    expect(fault?.remedies.map(({ edits }) => edits[0])).toEqual([
      { kind: "append", path: ["redose"], value: { card: CARD, dose: { reps: 4 }, why: null } },
      {
        kind: "append",
        path: ["accept"],
        value: { code: "dose-beyond-measure", card: CARD, why: null },
      },
    ]);
  });

  test.each([
    ["as many as are asked for", { measures: test4(15) }],
    [
      "a lighter weight beside it",
      { measures: test4(4), equipment: "strap, { have: dumbbells, loads: [2 kg, 4 kg] }" },
    ],
    [
      "a range whose low end goes",
      { measures: test4(4), more: ADD.replace("reps: 15", 'reps: "4-15"') },
    ],
    ["nothing measured", { measures: "" }],
    ["another exercise measured", { measures: test4(4, "arm-raise-weight") }],
  ])("%s: nothing is said", (_, change) => {
    const { made, of } = told({ ...only, ...change });
    expect(of("dose-beyond-measure")).toEqual([]);
    expect(made).toBeDefined();
  });

  test("is done where the plan accepts it, and the reason is told", () => {
    const more = `${ADD}\naccept: [{ code: dose-beyond-measure, card: ${CARD}, why: The test was on a bad day. }]`;
    const { made, json } = told({ ...only, measures: test4(4), more });
    expect(made).toBeDefined();
    const warnings = json?.warnings.filter(({ code }) => code === "dose-beyond-measure");
    expect(warnings?.map(({ level, message }) => `${level} ${message}`)).toEqual([
      expect.stringMatching(/^warning .*Accepted: The test was on a bad day\.$/),
    ]);
  });

  // Epley 1985: 30 kg done 8 times is a 1RM of 30 × 38/30 = 38 kg; an effort of 5 leaves 5 in reserve, so
  // 15 times at 5 are a 20 RM, 38 / (50/30) = 22.8 kg, and at 8 a 17 RM, 38 / (47/30) = 24.2 kg
  const strong = `{ test: repetitions, card: ${CARD}, side: left, load: 30 kg, reps: 8, on: 2026-12-28 }`;
  const at = (effort: number) => ADD.replace("reps: 15", `reps: 15, effort: ${effort}`);

  test.each([
    ["one 4 kg weight, effort 5", 5, ONE, 22.8, 4],
    ["one 4 kg weight, effort 8", 8, ONE, 24.2, 4],
    ["the heaviest of several", 8, "{ have: dumbbells, loads: [2 kg, 16 kg] }", 24.2, 16],
  ])("%s: far too light, it stops", (_, effort, equipment, wanted, heaviest) => {
    const { made, of } = told({
      ...only,
      equipment: `strap, ${equipment}`,
      measures: strong,
      more: at(effort),
    });
    expect(made).toBeUndefined();
    const [fault] = of("load-light");
    expect(fault?.level).toBe("error");
    expect(fault?.message).toContain(`At an effort of ${effort} `);
    expect(fault?.message).toContain(`15 times with about ${wanted} kg`);
    expect(fault?.message).toContain(`the heaviest weight the client has is ${heaviest} kg (weeks`);
    expect(fault?.remedies.map(({ edits }) => edits[0])).toEqual([
      { kind: "append", path: ["accept"], value: { code: "load-light", card: CARD, why: null } },
    ]);
  });

  test.each([
    ["near enough", { equipment: "strap, { have: dumbbells, loads: [2 kg, 17 kg] }" }],
    ["nothing measured", { measures: "" }],
    [
      "a target, which has faults of its own",
      { more: ADD.replace("reps: 15", "reps: 15, effort: 8, target: 4 kg") },
    ],
  ])("%s: it is not called far too light", (_, change) => {
    const { of } = told({ ...only, measures: strong, more: at(8), ...change });
    expect(of("load-light")).toEqual([]);
  });

  test("a light weight is taken where the plan accepts it", () => {
    const accept = `${at(8)}\naccept: [{ code: load-light, card: ${CARD}, why: We begin with the movement. }]`;
    const { made, json } = told({ ...only, measures: strong, more: accept });
    expect(made).toBeDefined();
    expect(json?.warnings.filter(({ code }) => code === "load-light")).toMatchObject([
      {
        level: "warning",
        message: expect.stringMatching(/Accepted: We begin with the movement\.$/),
      },
    ]);
  });

  test("an answer to nothing is told", () => {
    const more = `${ADD}\naccept: [{ code: load-short, card: ${CARD}, why: Just so. }]`;
    const { of } = told({ ...only, measures: "", more });
    expect(of("change-unused").map(({ level, message }) => `${level} ${message}`)).toEqual([
      `warning There is no load-short for ${CARD} to accept.`,
    ]);
  });
});

test("the body alone: told, with the easier exercise that this client may do", () => {
  const measures =
    "{ test: repetitions, card: heel-raise-one-leg-floor, side: left, reps: 4, on: 2026-12-28 }";
  const more =
    "add: [{ card: heel-raise-one-leg-floor, why: Agreed., dose: { sets: 3, reps: 15, per_week: 3 } }]";
  const plain = told({ protocol: "knee-tendon-holds", equipment: "strap", measures, more });
  const [fault] = plain.of("dose-beyond-measure");
  expect(fault?.level).toBe("warning");
  expect(fault?.message).toMatch(/15 times.*the body's own weight.*4 times/);
  expect(plain.made).toBeDefined();
});

test("a hold longer than the best one, with the lightest there is", () => {
  const card = "calf-hold-seated-weight";
  const measures = `{ test: hold, card: ${card}, side: left, load: 4 kg, time: 20 s, on: 2026-12-28 }`;
  const more = `add: [{ card: ${card}, why: Agreed., dose: { sets: 3, hold: 45 s, per_week: 3 } }]`;
  const { of } = told({
    protocol: "knee-tendon-holds",
    equipment: `strap, ${ONE}`,
    measures,
    more,
  });
  expect(of("dose-beyond-measure").map(({ message }) => message)).toEqual([
    expect.stringMatching(/asks for 45 s.*4 kg,.*20 s/),
  ]);
});

describe("equipment that ends below the target", () => {
  const heavy = (more = "") =>
    told({
      protocol: HSR,
      equipment: "{ have: backpack, from: 1 kg, up_to: 25 kg, steps: 1 kg }, book",
      measures: ["heel-raise-seated-weight", "heel-raise-standing-weight"]
        .map(
          (card) =>
            `{ test: repetitions, card: ${card}, side: both, load: 40 kg, reps: 10, on: 2026-12-28 }`,
        )
        .join(", "),
      more: `leave_out: [{ card: heel-press-leg-press, why: No machine at home. }]\n${more}`,
    });

  test("stops, with both loads and what 25 kg would be good for", () => {
    const { made, of } = heavy();
    expect(made).toBeUndefined();
    const seated = of("load-short").find(({ message }) =>
      message.includes("heel-raise-seated-weight"),
    );
    expect(seated?.level).toBe("error");
    expect(seated?.message).toMatch(/ends at 25 kg; the target is [\d.]+ kg/);
    expect(seated?.remedies.at(-1)?.edits[0]).toEqual({
      kind: "append",
      path: ["accept"],
      value: { code: "load-short", card: "heel-raise-seated-weight", why: null },
    });
  });

  test("is done where the plan accepts it", () => {
    const accept = ["heel-raise-seated-weight", "heel-raise-standing-weight"]
      .map((card) => `{ code: load-short, card: ${card}, why: Repetitions grow instead. }`)
      .join(", ");
    const { made, of } = heavy(`accept: [${accept}]`);
    expect(made).toBeDefined();
    expect(of("load-short").every(({ level }) => level === "warning")).toBe(true);
    expect(of("load-short").length).toBeGreaterThan(0);
  });

  test("is done where the plan asks for what it can make", () => {
    const redose = ["heel-raise-seated-weight", "heel-raise-standing-weight"]
      .map(
        (card) =>
          `{ card: ${card}, why: No more weight at home., dose: { reps: 20, target: 25 kg } }`,
      )
      .join(", ");
    const { of } = heavy(`redose: [${redose}]`);
    expect(of("load-short")).toEqual([]);
  });
});
