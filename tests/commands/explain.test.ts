/** `paulatim plan --explain CARD`: why a card is not there, and the edit that brings it. */
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeEach, describe, expect, test } from "vitest";
import { applyRemedy } from "../../src/commands/apply.ts";
import { plan } from "../../src/commands/plan.ts";
import { change, ROOT } from "../support/world.ts";
import { terminalIn } from "./support.ts";

const base = mkdtempSync(join(tmpdir(), "paulatim-explain-"));
afterAll(() => rmSync(base, { recursive: true, force: true }));

let clinic: string;
let file: string;
let count = 0;
beforeEach(() => {
  clinic = join(base, String(count++));
  for (const name of ["clinic.yaml", "achilles.md"]) {
    cpSync(join(ROOT, "templates/demo", name), join(clinic, name));
  }
  file = join(clinic, "achilles.md");
});

const textNow = () => readFileSync(file, "utf8");
type Edit = readonly [string | RegExp, string];

/** A card of the clinic's own, with one change. */
function ownHops([from, to]: Edit) {
  const folder = join(clinic, "exercises/calf-and-achilles");
  const text = readFileSync(join(ROOT, "exercises/calf-and-achilles/hops-one-leg.md"), "utf8");
  mkdirSync(folder, { recursive: true });
  writeFileSync(
    join(folder, "own-hops.md"),
    change(change(text, "id: hops-one-leg", "id: own-hops"), from, to),
  );
}

const edit = (...[from, to]: Edit) => writeFileSync(file, change(textNow(), from, to));

function explain(card: string, options: { readonly json?: boolean } = {}) {
  const { said, world } = terminalIn(clinic);
  const status = plan("achilles.md", { explain: card, ...options }, world);
  return { status, ...said };
}

async function apply(card: string, number: string) {
  const { said, world } = terminalIn(clinic);
  const options = { apply: number, explain: card, why: "Agreed." };
  const status = await applyRemedy("achilles.md", options, world);
  return { status, ...said };
}

const DAYS = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"];
/** A longer course, in a week that has room for it. */
const FOUR_PHASES: readonly Edit[] = [
  ["protocol: achilles-heavy-slow-resistance", "protocol: achilles-four-phases"],
  [
    /week:\n[\s\S]*?(?=my_plan)/,
    `week: { free: { ${DAYS.map((day) => `${day}: { evening: 120 min }`).join(", ")} } }\n`,
  ],
  [/swap:\n[\s\S]*?(?=signed)/, ""],
];

describe("why a card is not there", () => {
  test.each<[string, string, readonly Edit[], RegExp, number]>([
    [
      "it is left out",
      "heel-raise-standing-weight",
      [],
      /is not in this client's program\.[\s\S]*achilles\.md:\d+:5 {2}warning[\s\S]*leaves out heel-raise-standing-weight: One exercise with a straight knee[\s\S]*take this entry out of leave_out/,
      0,
    ],
    [
      "another is in its place",
      "heel-press-leg-press",
      [],
      /Edda Marlowe has no leg-press-machine, which heel-press-leg-press needs[\s\S]*Write leg-press-machine under equipment[\s\S]*has heel-raise-one-leg-step-weight in the place of heel-press-leg-press: No leg press at home[\s\S]*out of swap/,
      0,
    ],
    [
      "the protocol does not have it",
      "heel-raise-seated",
      [],
      /achilles-heavy-slow-resistance does not have heel-raise-seated \(.*\), and the plan does not add it\.[\s\S]*1 {2}heel-raise-seated \(.*\) instead of heel-raise-seated-weight\.[\s\S]*Add heel-raise-seated in the course/,
      0,
    ],
    [
      "a flag rules it out",
      "hops-one-leg",
      [
        ["flags: none", "flags: [bone-stress-injury]"],
        ["protocol: achilles-heavy-slow-resistance", "protocol: achilles-lowering-twice-daily"],
      ],
      /What stands against it comes first[\s\S]*hops-one-leg is not for a client with the flag bone-stress-injury: [\s\S]*No edit brings it while the flag holds/,
      1,
    ],
    [
      "a flag rules it out for some weeks",
      "hops-one-leg",
      [["flags: none", "flags: [{ flag: bone-stress-injury, until: { week: 9 } }]"]],
      /flag bone-stress-injury, which holds in weeks 1-8: [\s\S]*It can come in later weeks only/,
      1,
    ],
    [
      "an age that it is not meant for",
      "own-hops",
      [
        ["born: 1979-05-16", "born: 2012-05-16"],
        [/protocol: .*/, "protocol: achilles-lowering-twice-daily"],
      ],
      /is meant for people of 18 and over; the client is 14 when the plan starts/,
      1,
    ],
    [
      "a thing is not there",
      "squat-weight",
      [
        ["  - { have: backpack, from: 1 kg, up_to: 30 kg, steps: 1 kg }\n", ""],
        [/ {2}- \{ have: barbell.*\n/, ""],
      ],
      /Edda Marlowe has no .*barbell.*, which squat-weight needs[\s\S]*If Edda Marlowe has it, or gets it:\n[\s\S]*Write \S+ under equipment/,
      1,
    ],
    [
      "the plan ends before it",
      "heel-raise-quick-rebound",
      [...FOUR_PHASES, ["side: left", "side: left\nweeks: 1"]],
      /The plan prints 1 week of the course; step has heel-raise-quick-rebound from week 3 to week 5\.[\s\S]*1 {2}Print 5 weeks of the course/,
      0,
    ],
  ])("%s", (_name, card, edits, says, status) => {
    if (card === "own-hops") ownHops(["trains: power", "age: { from: 18 }\ntrains: power"]);
    for (const one of edits) edit(...one);
    const { out, status: done } = explain(card);
    expect(out).toMatch(says);
    expect(done).toBe(status);
  });

  test("a misspelt card is asked back, whatever the plan", () => {
    expect(() => explain("heel-raise-seatd")).toThrow("There is no card heel-raise-seatd.");
    try {
      explain("heel-raise-seatd");
    } catch (fault) {
      expect(fault).toMatchObject({ exit: 2, hint: "Did you mean heel-raise-seated?" });
    }
  });

  test("a card whose file has errors is told with these", () => {
    ownHops([/^demand: .*$/m, "demand: 99"]);
    expect(() => explain("own-hops")).toThrow(/demand|10/);
  });

  test("a card that is left out of some weeks says so beside its numbers", () => {
    edit(
      "leave_out:\n",
      "leave_out:\n  - { card: heel-raise-seated-weight, weeks: 7-8, why: Away. }\n",
    );
    const { out, status } = explain("heel-raise-seated-weight");
    expect(status).toBe(0);
    expect(out).toContain("Next load, for a review");
    expect(out).toContain("is in weeks 1-6, 9-12.");
    expect(out).toContain("leaves out heel-raise-seated-weight in weeks 7-8: Away.");
  });

  test("a gate stands with the weeks, and so does a review", () => {
    for (const one of FOUR_PHASES) edit(...one);
    edit("flags: none", "flags: [{ flag: muscle-tear-recent, until: { review: { week: 1 } } }]");
    const { out } = explain("heel-raise-one-leg-step");
    expect(out).toContain(
      "It starts only when: You can do ten of “Rise up on one leg on the floor” with your sore leg.",
    );
    expect(out).toContain("rules it out until a review");
  });

  test("a plan that is stopped tells the gate of its course, with titles", () => {
    for (const one of FOUR_PHASES) edit(...one);
    edit("flags: none", "flags: [tendon-rupture-recent]");
    const { out, status } = explain("heel-raise-one-leg-step");
    expect(status).toBe(1);
    expect(out).toContain(
      "You can do ten of “Rise up on one leg on the floor” with your sore leg.",
    );
  });

  test("a gate that names what the client does not have asks for the clinician's word", () => {
    for (const one of FOUR_PHASES) edit(...one);
    const without = ["heel-raise-one-leg-floor", "heel-raise-one-leg-step-weight"];
    const left = without.map((card) => `  - { card: ${card}, why: Not yet. }\n`).join("");
    edit("side: left\n", `side: left\nleave_out:\n${left}`);
    const { out, status } = explain("heel-raise-one-leg-step");
    expect(status).toBe(0);
    expect(out).not.toContain("It starts only when");
    expect(out).toContain("Its sign to begin is not for this client: they are told to wait");
    const data = JSON.parse(explain("heel-raise-one-leg-step", { json: true }).out);
    expect(data).toMatchObject({ starts_when: [], after_review: true });
  });
});

describe("as data", () => {
  test("an absent card: reasons with their edits", () => {
    const { out } = explain("heel-raise-seated", { json: true });
    const data = JSON.parse(out);
    expect(data).toMatchObject({
      card: "heel-raise-seated",
      in_program: false,
      weeks: [],
      faults: [],
    });
    expect(data.reasons).toMatchObject([
      {
        code: "not-in-program",
        level: "warning",
        line: 5,
        remedies: [
          {
            needs_why: true,
            edits: [
              {
                kind: "append",
                path: ["swap"],
                value: { card: "heel-raise-seated-weight", to: "heel-raise-seated", why: null },
              },
            ],
          },
          { edits: [{ kind: "append", path: ["add"] }] },
        ],
      },
    ]);
  });
  test("a card that is there: its weeks and the provenance of its numbers", () => {
    const data = JSON.parse(explain("heel-raise-seated-weight", { json: true }).out);
    expect(data).toMatchObject({ in_program: true, reasons: [], faults: [] });
    expect(data.weeks).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]);
    expect(data.trails).toHaveLength(12);
    expect(data.trails[0].numbers.load_kg.length).toBeGreaterThan(2);
  });
  test("a plan that is stopped says by what", () => {
    edit("flags: none", "flags: [tendon-rupture-recent]");
    const { out, status } = explain("heel-raise-seated-weight", { json: true });
    expect(status).toBe(1);
    expect(JSON.parse(out).faults[0].code).toBe("not-for-client");
  });
});

describe("what is offered brings it", () => {
  test.each([
    ["instead of one near it", "heel-raise-seated", "1"],
    ["besides", "ankle-circles", "1"],
  ])("%s", async (_name, card, number) => {
    const { out } = await apply(card, number);
    expect(out).toContain(card);
    const { out: now } = explain(card);
    expect(now).toContain("is in weeks 1");
    expect(now).not.toContain("not-in-program");
  });

  test("more weeks of the course", async () => {
    for (const one of FOUR_PHASES) edit(...one);
    edit("side: left", "side: left\nweeks: 1");
    await apply("heel-raise-one-leg-step", "1");
    expect(explain("heel-raise-one-leg-step").out).toContain("is in weeks 3-5.");
  });

  test("equipment, and then the card", async () => {
    const has = await apply("band-push-out", "1");
    expect(has.out).toContain("band");
    const { out } = explain("band-push-out");
    expect(out).not.toContain("has no");
  });
});
