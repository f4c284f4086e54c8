/** `paulatim plan`: what a clinician reads of loads, in the clinic's unit, and the load to come. */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeEach, describe, expect, test } from "vitest";
import { plan } from "../../src/commands/plan.ts";
import { change, DAY, ROOT } from "../support/world.ts";

const base = mkdtempSync(join(tmpdir(), "paulatim-plan-"));
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

function run(options: Parameters<typeof plan>[1]) {
  let [out, err] = ["", ""];
  const status = plan("achilles.md", options, {
    cwd: clinic,
    env: {},
    platform: "linux",
    today: DAY,
    out: (text) => {
      out += `${text}\n`;
    },
    err: (text) => {
      err += `${text}\n`;
    },
    colour: { out: false, err: false },
  });
  return { status, out, err };
}

/** The part of an explanation under a heading. */
const part = (text: string, heading: string) =>
  text.split("\n\n").find((one) => one.startsWith(heading)) ?? "";

describe("--explain says the load to come (Ratamess 2009, Med Sci Sports Exerc 41:687)", () => {
  test("2 to 10 % more load moved, as this client's bar makes it", () => {
    const { status, out } = run({ explain: "heel-raise-seated-weight" });
    expect(status).toBe(0);
    const next = part(out, "Next load, for a review");
    expect(next).toContain(
      "Where each set is beaten by a repetition or more in 2 sessions running",
    );
    expect(next).toContain("Ratamess 2009, Med Sci Sports Exerc 41:687");
    // The lower legs are moved too: 10 % of both together is a little over 10 % of the bar.
    expect(next).toMatch(/Week 1\n[\s\S]*to take instead of 37.5 kg[\s\S]*next load 40 kg\./);
    expect(next).toMatch(/Weeks 9 to 12\n[\s\S]*to take instead of 50 kg[\s\S]*next load 55 kg\./);
  });
  test("where the equipment is too coarse repetitions grow first", () => {
    edit(
      "achilles.md",
      "plates: [1.25 kg, 2.5 kg, 5 kg, 10 kg, 15 kg]",
      "plates: [5 kg, 10 kg, 15 kg]",
    );
    const { out } = run({ explain: "heel-raise-seated-weight" });
    expect(part(out, "Next load, for a review")).toContain(
      "The next load there is, 40 kg, is further away: repetitions grow first, with 30 kg.",
    );
  });
  test("the machine form has it too, and a smaller limit of the clinic holds", () => {
    edit("clinic.yaml", "limits:\n", "limits:\n  load_step: 5 %\n");
    const [week] = JSON.parse(run({ json: true }).out).weeks;
    const [key = ""] = Object.keys(week.trails).filter((one) =>
      one.endsWith("/heel-raise-seated-weight"),
    );
    expect(week.trails[key].next_load_kg.at(0).says).toContain("up to 5 % more load moved");
  });
  test("an exercise without a load to change says nothing of it", () => {
    expect(run({ explain: "heel-raise-one-leg-step-weight" }).out).toContain("Next load");
    edit("achilles.md", "signed:", "add:\n  - { card: ankle-circles, why: To warm up }\nsigned:");
    const { out } = run({ explain: "ankle-circles" });
    expect(out).not.toContain("Next load");
  });
});

test("what is moved in a session and in a week is said in the clinic's unit", () => {
  edit("clinic.yaml", "limits:\n", "units: lb\nlimits:\n");
  edit(
    "achilles.md",
    /\{ have: backpack,[^}]*\}/,
    "{ have: backpack, from: 2.5 lb, up_to: 60 lb, steps: 2.5 lb }",
  );
  const { out } = run({ explain: "heel-raise-one-leg-step-weight" });
  expect(part(out, "Weight moved in a session")).toMatch(
    /Weeks 2 to 3\n +sum +36 repetitions × 12\.5 lb make 450 lb, without the body's share\./,
  );
  expect(out).not.toMatch(/\d kg\b/);
  const { weeks } = JSON.parse(run({ json: true }).out);
  for (const { totals, sessions } of weeks) {
    const moved = (unit: "load" | "load_kg") =>
      sessions
        .flatMap(({ bouts }: { bouts: readonly Record<string, unknown>[] }) => bouts)
        .reduce((sum: number, bout: Record<string, unknown>) => {
          const reps = [bout.reps].flat().at(-1) as number;
          const sides = bout.side === "each" ? 2 : 1;
          return sum + Number(bout.sets) * reps * Number(bout[unit]) * sides;
        }, 0);
    expect(totals.mass_unit).toBe("lb");
    expect(totals.mass).toBeCloseTo(moved("load"), 1);
    // each session's kilograms are rounded down to a tenth
    expect(Math.abs(totals.kg - moved("load_kg"))).toBeLessThan(0.2 * sessions.length);
  }
});
