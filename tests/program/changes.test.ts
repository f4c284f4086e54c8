/** Changes of a plan for some weeks or phases, through the whole program; and changes that change nothing. */
import { describe, expect, test } from "vitest";
import { achillesPlan, outputsOf, textOf, tryPlan } from "../support/outputs.ts";
import { change, textAt } from "../support/world.ts";

const FLOOR = "heel-raise-one-leg-floor";
const BAG = "heel-raise-one-leg-step-weight";
const SEATED = "heel-raise-seated-weight";

/** The demo's plan without days away, with one more swap as a test writes it. */
const swapped = (span: string, more = "") =>
  change(
    change(achillesPlan(), / {2}away:.*\n/, ""),
    /swap:[\s\S]*?(?=signed:)/,
    `swap:
  - { card: heel-press-leg-press, to: ${BAG}, why: No leg press at home. }
  - { card: heel-raise-seated-weight, to: ${FLOOR}, ${span}, why: The bar is away., dose: { sets: 2, reps: 12, tempo: 3-0-3-0, rest: 2 min, per_week: 3 } }
leave_out: [{ card: heel-raise-standing-weight, why: Two are enough. }]
${more}`,
  );

describe("a swap for some weeks", () => {
  const made = outputsOf(swapped("weeks: 2-3"));

  test("leaves the protocol's card in all others", () => {
    for (const week of [1, 4, 12])
      expect([week, made.cardsIn(week)]).toEqual([week, [BAG, SEATED]]);
    for (const week of [2, 3])
      expect([week, made.cardsIn(week)]).toEqual([week, [FLOOR, BAG].sort()]);
  });

  test("is on every surface in its weeks, and only there", async () => {
    const [row] = made.booklet.phases.flatMap(({ rows }) =>
      rows.filter(({ anchor }) => anchor.endsWith(FLOOR)),
    );
    expect(row?.doses.map(({ weeks, work }) => [weeks, work])).toEqual([
      ["Weeks 2 to 3", "2 sets of 12"],
    ]);
    const title = row?.exercise ?? "";
    const events = made.ics.split("BEGIN:VEVENT").filter((event) => event.includes(title));
    const days = events.map((event) => /DTSTART[^:]*:(\d{8})/.exec(event)?.[1] ?? "");
    expect(days.length).toBe(6);
    expect(days.every((day) => day >= "20261207" && day <= "20261220")).toBe(true);
    const text = textOf(await made.html());
    expect(text).toContain(title);
    const [seated] = made.booklet.phases.flatMap(({ rows }) =>
      rows.filter(({ anchor }) => anchor.endsWith(SEATED)),
    );
    expect(seated?.doses.map(({ weeks }) => weeks)[0]).toBe("Week 1");
    expect(seated?.doses.map(({ weeks }) => weeks)[1]).not.toMatch(/2|3/);
  });

  test("two swaps of one card, each with weeks of its own", () => {
    const text = swapped("weeks: 2-3").replace(
      "\nleave_out",
      `\n  - { card: ${SEATED}, to: heel-raise-two-legs-floor, weeks: 5, why: A cold., dose: { sets: 2, reps: 12, tempo: 3-0-3-0, rest: 2 min, per_week: 3 } }\nleave_out`,
    );
    const { cardsIn } = outputsOf(text);
    expect(cardsIn(3)).toEqual([FLOOR, BAG].sort());
    expect(cardsIn(4)).toEqual([BAG, SEATED].sort());
    expect(cardsIn(5)).toEqual(["heel-raise-two-legs-floor", BAG].sort());
  });
});

test("an exercise left out for some weeks is done in the others", () => {
  const { cardsIn, booklet } = outputsOf(
    change(
      achillesPlan(),
      "leave_out:",
      `leave_out:\n  - { card: ${SEATED}, weeks: 6-7, why: Trip }`,
    ),
  );
  expect(cardsIn(5)).toContain(SEATED);
  expect(cardsIn(6)).not.toContain(SEATED);
  expect(cardsIn(7)).not.toContain(SEATED);
  expect(cardsIn(8)).toContain(SEATED);
  expect(booklet.phases[0]?.rows.length).toBe(2);
});

/** A course of several phases for the same client, at home all day, with these changes. */
const four = (changes: string) => {
  const days = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"];
  const free = days.map((day) => `${day}: { morning: 2 h, evening: 2 h }`).join(", ");
  return achillesPlan()
    .replace(/swap:[\s\S]*?(?=signed:)/, `${changes}\nweeks: 5\n`)
    .replace(/week:[\s\S]*?(?=my_plan:)/, `week: { free: { ${free} } }\n`)
    .replace("protocol: achilles-heavy-slow-resistance", "protocol: achilles-four-phases");
};

test("a swap for one phase leaves the card in another", () => {
  const { made } = outputsOf(
    four("swap: [{ card: heel-raise-seated, to: ankle-circles, phase: begin, why: Sore }]"),
  );
  const cards = (id: string) =>
    made.program.phases.find((phase) => phase.id === id)?.exercises.map(({ card }) => card.card.id);
  expect(cards("begin")).toContain("ankle-circles");
  expect(cards("begin")).not.toContain("heel-raise-seated");
  expect(cards("step")).toContain("heel-raise-seated");
  expect(cards("step")).not.toContain("ankle-circles");
});

describe("a change that changes nothing is an error at its place", () => {
  test.each([
    ["weeks past the phase", swapped("weeks: 12-13"), "change-unused", "12-13", "12 weeks"],
    ["a phase that is not there", swapped("phase: heavy"), "change-unused", "heavy,", "heavy-slow"],
    [
      "added in weeks that are not there",
      swapped("weeks: 2-3", "add: [{ card: ankle-circles, weeks: 14, why: Warm }]\n"),
      "change-unused",
      "14",
      "12 weeks",
    ],
    [
      "another dose in weeks in which it is swapped",
      swapped(
        "weeks: 2-3",
        `redose: [{ card: ${SEATED}, weeks: 2-3, why: x, dose: { sets: 2 } }]\n`,
      ),
      "change-unused",
      "2-3",
      "in weeks 2-3",
    ],
    [
      "left out and swapped",
      swapped("weeks: 2-3").replace(
        "leave_out: [",
        `leave_out: [{ card: ${SEATED}, weeks: 3-4, why: x }, `,
      ),
      "change-unused",
      SEATED,
      "left out and swapped",
    ],
    [
      "swapped twice in a week",
      swapped("weeks: 2-3").replace(
        "\nleave_out",
        `\n  - { card: ${SEATED}, to: ankle-circles, weeks: 3-4, why: x }\nleave_out`,
      ),
      "card-twice",
      SEATED,
      "swapped twice",
    ],
    [
      "left out of a phase that does not have it",
      four("leave_out: [{ card: ankle-pumps, phase: step, why: Dull }]"),
      "change-unused",
      "step",
      "begin (weeks 1-2)",
    ],
  ])("%s", (_, text, code, at, says) => {
    const { value, errors } = tryPlan(text);
    expect(value).toBeUndefined();
    const fault = errors.find((one) => one.code === code);
    expect(textAt(text, fault?.place)).toMatch(new RegExp(`^${at}`));
    expect(`${fault?.message} ${fault?.hint}`).toContain(says);
  });
});

describe("a hint names a move that the plan has", () => {
  const needs = (text: string) =>
    tryPlan(text).errors.find(({ code }) => code === "equipment-missing")?.hint;

  test("an added exercise is not swapped, but added instead", () => {
    const hint = needs(swapped("weeks: 2-3", "add: [{ card: heel-press-leg-press, why: More }]\n"));
    expect(hint).toMatch(/Add it instead/);
    expect(hint).not.toMatch(/swap/);
  });
  test("what a swap brings in is named there", () => {
    const text = swapped("weeks: 2-3").replace(`to: ${FLOOR}`, "to: heel-raise-standing-weight-x");
    expect(tryPlan(text).errors[0]?.hint).toBeDefined();
    const press = swapped("weeks: 2-3").replace(`to: ${FLOOR}`, "to: heel-press-leg-press");
    expect(needs(press)).toMatch(/Write it as to of this swap/);
  });
});
