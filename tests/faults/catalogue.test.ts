/** Every code of a problem is provoked somewhere, and what the rarest of them say can be acted on. */
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { makeProgram } from "../../src/booklet.ts";
import { PlanFile } from "../../src/commands/plan-file.ts";
import { CATALOGUE } from "../../src/faults/catalogue.ts";
import { terminalIn } from "../commands/support.ts";
import { freshFolder } from "../files/support.ts";
import { change, DEMO, demoClinic, ROOT, shippedText } from "../support/world.ts";

/**
 * Faults of the program itself: a remedy that does not help is none that it should have offered, and every
 * card has a whole dose to fall back on.
 */
const NEVER_PROVOKED = ["internal", "remedy-fails", "dose-incomplete"];

/** As it is written, and as a constant. */
const namesOf = (code: string) => [code, code.toUpperCase().replaceAll("-", "_")];

test("every code is looked for by a test", () => {
  const texts = readdirSync(join(ROOT, "tests"), { recursive: true, encoding: "utf8" })
    .filter((file) => /\.(ts|txt)$/.test(file))
    .map((file) => readFileSync(join(ROOT, "tests", file), "utf8"));
  const untold = Object.keys(CATALOGUE).filter(
    (code) =>
      !NEVER_PROVOKED.includes(code) &&
      !namesOf(code).some((name) => texts.some((text) => text.includes(name))),
  );
  expect(untold).toEqual([]);
});

const COURSE = "templates/protocols/achilles-lowering-twice-daily.md";
const PLAN = `${DEMO}/lowering.md`;
const plan = change(
  change(
    shippedText(`${DEMO}/achilles.md`),
    /^(protocol): .*$/m,
    "$1: achilles-lowering-twice-daily",
  ),
  /^swap:\n(?: .*\n)+|^leave_out:\n(?: .*\n)+|^redose:\n(?: .*\n)+/gm,
  "",
);
const saidOf = (files: Record<string, string>) => {
  const workspace = demoClinic({ [PLAN]: plan, ...files });
  return [...workspace.faults, ...makeProgram(workspace, PLAN).faults].map(
    ({ code, message, hint }) => `${code}: ${message} ${hint}`,
  );
};

describe("said, and with what to do", () => {
  test("a sum of the source that its table does not give", () => {
    const course = change(shippedText(COURSE), "reps: 7560, sessions: 168", "reps: 7500");
    expect(saidOf({ [COURSE]: course })).toContain(
      "sum-differs: heel-lower-knee-straight: the table gives 7560 repetitions, the source 7500. Check the weeks against the source.",
    );
  });

  test("exercises of which each comes after the other", () => {
    const course = shippedText(COURSE)
      .replace(
        "- card: heel-lower-knee-straight\n",
        "- card: heel-lower-knee-straight\n        after: [heel-lower-knee-bent]\n",
      )
      .replace(
        "- card: heel-lower-knee-bent\n",
        "- card: heel-lower-knee-bent\n        after: [heel-lower-knee-straight]\n",
      );
    expect(saidOf({ [COURSE]: course }).join("\n")).toMatch(
      /week-contradiction: .* comes after itself, by way of the others\. No free time would help/,
    );
  });

  test("a card without all of its dose", () => {
    const file = "exercises/calf-and-achilles/ankle-circles.md";
    const card = change(shippedText(file), /^dose:.*$/m, "dose: { sets: 2 }");
    const said = saidOf({ [file]: card }).join("\n");
    expect(said).toMatch(/wrong-value: dose: a dose needs reps, hold, time, distance or turns\./);
    expect(said).toMatch(/wrong-value: dose: a dose needs one of per_week, per_day and every\./);
  });

  test("a plan that somebody else changes meanwhile is not overwritten", async () => {
    const folder = freshFolder();
    const file = join(folder, "plan.md");
    writeFileSync(file, "---\nid: one\n---\n");
    const held = new PlanFile("plan.md", terminalIn(folder).world);
    writeFileSync(file, "---\nid: two\n---\n");
    await expect(held.write("---\nid: three\n---\n")).rejects.toMatchObject({
      code: "edit-impossible",
      hint: "Nothing was written. Run the command again.",
    });
    expect(readFileSync(file, "utf8")).toBe("---\nid: two\n---\n");
  });

  test("an edit that a plan cannot take is not forced into it", () => {
    const folder = freshFolder();
    writeFileSync(join(folder, "plan.md"), "no front matter\n");
    const held = new PlanFile("plan.md", terminalIn(folder).world);
    expect(() => held.edited([])).toThrow(/could not be written into this file safely/);
  });
});
