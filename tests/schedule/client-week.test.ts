/** Events, dates and cards named twice, through the whole program: said at their place, printed, never lost. */
import { describe, expect, test } from "vitest";
import { makeBooklet, makeProgram } from "../../src/booklet.ts";
import { planTable } from "../../src/plan-text/table.ts";
import { addDays, weekdayOf } from "../../src/units/dates.ts";
import { WEEKDAYS } from "../../src/units/day-parts.ts";
import { asSigned } from "../support/signed.ts";
import {
  change,
  DAY,
  DEMO,
  demoClinic,
  english,
  shippedText,
  textAt,
  worldWith,
} from "../support/world.ts";

const FILE = `${DEMO}/achilles.md`;
const GOOD = shippedText(FILE);
const clinic = demoClinic();

function made(text: string) {
  const workspace = { ...clinic, tree: worldWith({ [FILE]: text }) };
  return { workspace, ...makeProgram(workspace, FILE) };
}

function sessionsOf(text: string) {
  const { value, faults } = made(text);
  if (!value) throw new Error(faults.map(({ message, hint }) => `${message} ${hint}`).join("\n"));
  return value.schedule.weeks.flatMap((week) => week.days.flatMap((day) => day.sessions));
}

const withEvent = (event: string) => change(GOOD, "  events:\n", `  events:\n    - ${event}\n`);

/** Each exercise once a week, on this day where that can be. */
const onceOn = (day: string, text: string) =>
  change(
    change(text, /redose:[\s\S]*?(?=signed:)/, `redose:\n${ONCE.join("\n")}\n`),
    "  events:\n",
    `  prefer: [${day}]\n  events:\n`,
  );
const ONCE = ["heel-raise-seated-weight", "heel-raise-one-leg-step-weight"].map(
  (card) => `  - { card: ${card}, why: x, dose: { per_week: 1 } }`,
);
const weekdayNames = (text: string) =>
  new Set<string>(sessionsOf(text).map(({ date }) => WEEKDAYS[weekdayOf(date)] ?? ""));

describe("after an event", () => {
  const match = (clear: string) =>
    onceOn(
      "thu",
      withEvent(`{ what: Match, day: wed, part: evening, hard: true, tissues: [calf]${clear} }`),
    );
  const text = match(", clear_after: 48 h");

  test("no heavy session lies in the hours that the plan keeps clear, nor in its slot", () => {
    expect(weekdayNames(match("")).has("thu")).toBe(true);
    const days = weekdayNames(text);
    expect(days.has("wed") || days.has("thu")).toBe(false);
  });

  test("it is said that hard work is kept away after it", () => {
    const { workspace, value } = made(text);
    if (!value) throw new Error("the plan has errors");
    const { kept } = makeBooklet(asSigned(value), workspace, english(), DAY);
    expect(kept).toContain("No hard work soon after: Match (Wednesday).");
    expect(planTable(value, workspace.texts.library, english())).toContain(
      "No hard work soon after: Match (Wednesday).",
    );
  });

  test("a slot of a hard event takes no session, even where it has free time", () => {
    const circuit = (hard: boolean) =>
      onceOn("mon", withEvent(`{ what: Circuit, day: mon, part: evening, hard: ${hard} }`));
    expect(weekdayNames(circuit(false)).has("mon")).toBe(true);
    expect(weekdayNames(circuit(true)).has("mon")).toBe(false);
  });
});

describe("a date that the course does not reach is a warning at its place", () => {
  test.each([
    [
      "a day away",
      change(GOOD, "away: [2026-12-25", "away: [2025-12-25"),
      /2025-12-25 lies outside/,
      /^2025-12-25/,
    ],
    [
      "days away",
      change(GOOD, "{ from: 2026-12-31, to: 2027-01-01 }", "{ from: 2027-12-31, to: 2028-01-01 }"),
      /2027-12-31 to 2028-01-01 lie outside/,
      /^\{ from: 2027-12-31/,
    ],
    [
      "an event",
      withEvent("{ what: Race, on: [2026-12-16, 2027-12-16], part: morning }"),
      /Race on 2027-12-16 lies outside the program/,
      /^2027-12-16/,
    ],
  ])("%s", (_, text, message, at) => {
    const { faults } = made(text);
    const found = faults.filter(({ code }) => code === "date-outside");
    expect(found.map(({ level }) => level)).toEqual(["warning"]);
    expect(found[0]?.message).toMatch(message);
    expect(textAt(text, found[0]?.place)).toMatch(at);
  });

  test("but not an event just after the course that keeps days in it clear", () => {
    const last = addDays("2026-11-30", 83);
    const race = (clear: string) =>
      withEvent(`{ what: Race, on: [${addDays(last, 1)}], part: morning, hard: true${clear} }`);
    const codes = (text: string) => made(text).faults.map(({ code }) => code);
    expect(codes(race(", clear_before: 24 h"))).not.toContain("date-outside");
    expect(codes(race(""))).toContain("date-outside");
  });
});

describe("a card twice in a phase is refused where it is named", () => {
  test.each([
    [
      "by a swap to a card that is there",
      change(
        GOOD,
        "    to: heel-raise-one-leg-step-weight\n",
        "    to: heel-raise-seated-weight\n",
      ),
      /has heel-raise-seated-weight already/,
      /^heel-raise-seated-weight$/,
      /redose/,
    ],
    [
      "by adding it",
      change(GOOD, "swap:\n", "add:\n  - { card: heel-raise-seated-weight, why: More }\nswap:\n"),
      /has heel-raise-seated-weight already/,
      /^heel-raise-seated-weight, why: More/,
      /redose/,
    ],
    [
      "by adding it twice",
      change(
        GOOD,
        "swap:\n",
        "add:\n  - { card: calf-stretch-straight, why: A, weeks: 1-2 }\n  - { card: calf-stretch-straight, why: B, weeks: 3-4 }\nswap:\n",
      ),
      /has calf-stretch-straight already/,
      /^calf-stretch-straight, why: B/,
      /redose/,
    ],
    [
      "by swapping one card a second time",
      change(
        GOOD,
        "leave_out:\n",
        "  - { card: heel-press-leg-press, to: heel-raise-two-legs-step, why: B }\nleave_out:\n",
      ),
      /heel-press-leg-press is swapped twice/,
      /^heel-press-leg-press, to: heel-raise-two-legs-step/,
      /Keep one/,
    ],
  ])("%s", (_, text, message, at, hint) => {
    const roomy = text.replaceAll("45 min", "3 h");
    const { value, faults } = made(roomy);
    expect(value).toBeUndefined();
    const found = faults.find(({ code }) => code === "card-twice");
    expect(found?.message).toMatch(message);
    expect(textAt(roomy, found?.place)).toMatch(at);
    expect(found?.hint).toMatch(hint);
    expect(faults.map(({ code }) => code)).not.toContain("week-impossible");
  });
});
