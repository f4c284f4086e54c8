/** `paulatim check` of a plan: the cause of what it lacks, fields that belong elsewhere, and a clinic's own words. */
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { afterAll, beforeEach, describe, expect, test } from "vitest";
import { check } from "../../src/commands/check.ts";
import { plan } from "../../src/commands/plan.ts";
import { change, DAY, ROOT, shippedText } from "../support/world.ts";

const base = mkdtempSync(join(tmpdir(), "paulatim-check-"));
afterAll(() => rmSync(base, { recursive: true, force: true }));

let clinic: string;
let count = 0;
beforeEach(() => {
  clinic = join(base, String(count++));
  for (const file of ["clinic.yaml", "achilles.md"]) {
    cpSync(join(ROOT, "templates/demo", file), join(clinic, file));
  }
});

const edit = (file: string, from: string | RegExp, to: string) =>
  writeFileSync(join(clinic, file), change(readFileSync(join(clinic, file), "utf8"), from, to));
const write = (file: string, text: string) => {
  mkdirSync(dirname(join(clinic, file)), { recursive: true });
  writeFileSync(join(clinic, file), text);
};

async function run(command: "check" | "plan", file = "achilles.md") {
  let text = "";
  const print = (line: string) => {
    text += `${line}\n`;
  };
  const terminal = {
    cwd: clinic,
    env: {},
    platform: "linux" as const,
    today: DAY,
    out: print,
    err: print,
    colour: { out: false, err: false },
  };
  const status = command === "check" ? await check([file], {}, terminal) : plan(file, {}, terminal);
  return { status, text };
}

describe("a plan whose card or protocol is broken says the cause", () => {
  test.each(["check", "plan"] as const)("%s: of a card that cannot be read", async (command) => {
    write("exercises/calf-and-achilles/own-card.md", "---\nid: own-card\ntitle: [Half\n---\n");
    edit("achilles.md", "to: heel-raise-one-leg-step-weight", "to: own-card");
    const { status, text } = await run(command);
    expect(status).toBe(1);
    expect(text).not.toContain("There is no card own-card");
    expect(text).toContain("The card own-card cannot be used: its file has errors.");
    expect(text).toMatch(/own-card\.md:\d+:\d+ .*yaml-syntax/);
  });
  test("of a protocol with a wrong field", async () => {
    write(
      "protocols/own-course.md",
      change(
        shippedText("templates/protocols/achilles-heavy-slow-resistance.md"),
        "id: achilles-heavy-slow-resistance",
        "id: own-course\ncolour: red",
      ),
    );
    edit("achilles.md", "protocol: achilles-heavy-slow-resistance", "protocol: own-course");
    const { text } = await run("check");
    expect(text).toContain("The protocol own-course cannot be used");
    expect(text).toContain("There is no field colour");
  });
  test("a card that is nowhere is still not there", async () => {
    edit("achilles.md", "to: heel-raise-one-leg-step-weight", "to: own-card");
    expect((await run("check")).text).toContain("There is no card own-card.");
  });
});

test("a field of another kind of measure is told where it belongs", async () => {
  edit(
    "achilles.md",
    "measures:\n",
    "measures:\n  - { test: speed, card: run-easy, side: left, speed: 9 km/h, on: 2026-11-23 }\n",
  );
  const { text } = await run("check");
  expect(text).toContain("There is no field side in measures › 1.");
  expect(text).toContain("It goes with test: repetitions or test: hold.");
  expect(text).not.toContain("Did you mean side?");
});

describe("a clinic's own words", () => {
  test("hold only what they add", async () => {
    write(
      "exercises/vocabulary.yaml",
      "equipment:\n  sling: { say: a sling trainer, makes: weight }\n",
    );
    edit("achilles.md", "  - step\n", "  - step\n  - sling\n");
    expect((await run("check")).text).not.toMatch(/ error /);
    expect((await run("check", ".")).text).not.toMatch(/vocabulary\.yaml.*error/);
  });
  test("things that it takes for granted need not stand in a plan", async () => {
    edit("achilles.md", "  - handrail\n", "");
    expect((await run("check")).text).toContain("has no handrail");
    edit("clinic.yaml", /\n$/, "\nat_home: [handrail]\n");
    expect((await run("check")).text).not.toContain("has no handrail");
  });
  test("a thing that is no word is told", async () => {
    edit("clinic.yaml", /\n$/, "\nat_home: [handrale]\n");
    const { text } = await run("check", ".");
    expect(text).toMatch(/clinic\.yaml:\d+:\d+ .*wrong-value/);
    expect(text).toContain("Did you mean handrail?");
  });
});

test("a thing that several phases need is told once for its card", async () => {
  const days = ["mon", "tue", "wed"].map((day) => `${day}: { evening: 2 h }`).join(", ");
  edit("achilles.md", /swap:[\s\S]*?(?=signed:)/, "");
  edit("achilles.md", /week:[\s\S]*?(?=my_plan:)/, `week: { free: { ${days} } }\n`);
  edit("achilles.md", "protocol: achilles-heavy-slow-resistance", "protocol: achilles-four-phases");
  edit("achilles.md", / {2}- (step|handrail)\n/g, "");
  const { text } = await run("plan");
  const lines = text
    .split("\n")
    .filter((line) => line.includes("which ") && line.includes("needs"));
  expect(lines.length).toBeGreaterThan(1);
  expect(new Set(lines).size).toBe(lines.length);
});
