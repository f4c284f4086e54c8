/** A card or protocol that names another card's exercise by its title is told so, at the place, by `check`. */
import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { check } from "../../src/commands/check.ts";
import { terminalIn } from "../commands/support.ts";
import { change, ROOT, shippedText } from "../support/world.ts";

const base = mkdtempSync(join(tmpdir(), "paulatim-titles-"));
afterAll(() => rmSync(base, { recursive: true, force: true }));
let count = 0;

/** The clinic's own files beside the demo's settings, and what `check` says of titles in plain words. */
async function said(file: string, text: string): Promise<{ message: string; at: string }[]> {
  const clinic = join(base, String(count++));
  mkdirSync(join(clinic, file, ".."), { recursive: true });
  cpSync(join(ROOT, "templates/demo/clinic.yaml"), join(clinic, "clinic.yaml"));
  writeFileSync(join(clinic, file), text);
  const terminal = terminalIn(clinic);
  await check([file], { json: true }, terminal.world);
  const faults = JSON.parse(terminal.said.out) as {
    code: string;
    level: string;
    message: string;
    line: number;
    column: number;
  }[];
  return faults
    .filter(({ code }) => code === "title-in-words")
    .map(({ level, message, line, column }) => {
      const at = text.split("\n")[line - 1]?.slice(column - 1, column + 19) ?? "";
      return { message: `${level}: ${message}`, at };
    });
}

const CARD = change(
  shippedText("exercises/hamstring/bridge-one-leg.md"),
  "id: bridge-one-leg",
  "id: own-bridge",
).replace("title: Lift your hips with one leg", "title: Lift your hips with one leg in the air");
const COURSE = change(
  shippedText("templates/protocols/hamstring-first-weeks.md"),
  "id: hamstring-first-weeks",
  "id: own-course",
);

describe("a card", () => {
  const FILE = "exercises/hamstring/own-bridge.md";

  test("of which nothing names another, though its title holds a shorter one", async () => {
    expect(await said(FILE, CARD)).toEqual([]);
    expect(CARD).toContain("Lift your hips with one leg in the air");
  });

  test("that names one in a step, over the end of a line and in small letters", async () => {
    const text = change(
      CARD,
      "1. Press your {side} heel down.",
      "1. Before this, dig your heel in\n   and hold.",
    );
    expect(await said(FILE, text)).toEqual([
      {
        message: "warning: The section “Move” names the exercise of heel-dig-hold in plain words.",
        at: "dig your heel in",
      },
    ]);
  });

  test("that names one for the clinician is not read by clients", async () => {
    const text = change(CARD, "Measure:", "First “Dig your heel in and hold”. Measure:");
    expect(await said(FILE, text)).toEqual([]);
  });
});

describe("a protocol", () => {
  const FILE = "protocols/own-course.md";
  const TITLE = "Dig your heel in and hold";

  test("that names cards by their ids", async () => {
    expect(await said(FILE, COURSE)).toEqual([]);
  });

  test.each([
    [
      "a sign to move on",
      '- "{heel-dig-hold}: a firm push does not hurt."',
      `- "${TITLE}: it does not hurt."`,
      "The list of signs to move on from wake",
    ],
    [
      "a sign to go back",
      "Do only {heel-dig-hold}, with less push.",
      `Do only “${TITLE}”.`,
      "The list of signs to go back from wake",
    ],
    [
      "a sign for whom it is not",
      "say: You can jog for ten minutes, and the next morning is no worse.",
      `say: You can do “${TITLE}”.`,
      "The list of signs to move on from strengthen",
    ],
    [
      "an aim",
      "aim: You use the sore muscle gently and often",
      `aim: You do “${TITLE}” gently and often`,
      "The aim of phase wake",
    ],
  ])("%s", async (_, from, to, where) => {
    const [fault, ...others] = await said(FILE, change(COURSE, from, to));
    expect(fault?.message).toBe(
      `warning: ${where} names the exercise of heel-dig-hold in plain words.`,
    );
    expect(others).toEqual([]);
  });
});

test("nothing that is shipped does so", async () => {
  const terminal = terminalIn(ROOT);
  await check(
    ["exercises", "templates/protocols", "templates/demo", "templates/demo-de"],
    { json: true },
    terminal.world,
  );
  expect(terminal.said.out).not.toContain("title-in-words");
  expect(terminal.said.out.length).toBeGreaterThan(0);
});
