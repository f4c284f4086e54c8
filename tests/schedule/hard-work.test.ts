/** Hard work is kept clear of the client's events, before and after, by a rule that the outputs state. */
import { describe, expect, test } from "vitest";
import { makeProgram } from "../../src/booklet.ts";
import { planJson } from "../../src/plan-text/json.ts";
import { planTable } from "../../src/plan-text/table.ts";
import { course } from "../published/course-support.ts";
import { change, DEMO, demoClinic, english, shippedText } from "../support/world.ts";

const FREE = "morning: 180 min, midday: 180 min, evening: 180 min";

/** The bouts of a course with an event, each with when it begins; times are the plan's own. */
function boutsWith(protocol: string, events: string) {
  const made = course({ protocol, free: FREE, more: `  events: [${events}]` });
  const json = planJson(made, []);
  const bouts = json.weeks.flatMap(({ sessions }) =>
    sessions.flatMap((session) =>
      session.bouts.map((bout) => ({ ...bout, at: Date.parse(`${session.starts}:00Z`) })),
    ),
  );
  return { bouts, table: planTable(made, demoClinic().texts.library, english()) };
}

const HOUR = 3_600_000;

/** Hours from each bout to the nearest event on the weekday (0 is Sunday) at this hour: negative after it. */
function hoursTo(at: number, weekday: number, hour: number): number {
  const day = new Date(at).getUTCDay();
  const event = at - (at % (24 * HOUR)) + ((weekday - day + 7) % 7) * 24 * HOUR + hour * HOUR;
  const ahead = (event - at) / HOUR;
  return ahead > 84 ? ahead - 168 : ahead;
}

const REGATTA =
  "{ what: Regatta, day: sun, part: morning, hard: true, tissues: [quadriceps], clear_before: 24 h }";
const MATCH = "{ what: Match, day: sat, part: midday, hard: true, tissues: [hamstrings] }";
const LOWERING = "hamstring-lowering-480-in-eight-weeks";

describe("before an event", () => {
  test("holds at effort 8 with a short recovery are kept clear of it, too", () => {
    const { bouts, table } = boutsWith("knee-tendon-holds", REGATTA);
    const hard = bouts.filter(({ effort }) => (effort ?? 0) >= 7);
    expect(hard.length).toBeGreaterThan(0);
    for (const { at, hard: said, hard_because } of hard) {
      const hours = hoursTo(at, 0, 7);
      expect(hours >= 24 || hours <= 0, new Date(at).toISOString()).toBe(true);
      expect(said).toBe(true);
      expect(hard_because).toMatch(/^effort [78] of 10$/);
    }
    expect(table).toMatch(/hard work: effort [78] of 10/);
  });

  test("an event may say which work it means", () => {
    const long = change(REGATTA, "24 h", "96 h");
    const near = (event: string) =>
      boutsWith("knee-tendon-holds", event).bouts.filter(({ card, at }) => {
        const hours = hoursTo(at, 0, 7);
        // the hours to the next event, where the one before is nearer
        return card === "knee-push-hold" && (hours < 0 ? hours + 168 : hours) < 96 && hours !== 0;
      }).length;
    expect(near(long)).toBe(0);
    const strength = change(long, "clear_before", "clear_of: [strength], clear_before");
    expect(near(strength)).toBeGreaterThan(0);
    expect(near(change(strength, "strength", "isometric"))).toBe(0);
    expect(near(change(strength, "strength", "knee-push-hold"))).toBe(0);
  });

  test("what an event means has to be there", () => {
    const more = change(REGATTA, "clear_before", "clear_of: [strenght], clear_before");
    expect(() => boutsWith("knee-tendon-holds", more)).toThrow(
      /strenght is no quality, and no card/,
    );
  });
});

describe("after a hard event that does not say how long", () => {
  test("no hard work on its tissues for a day, and the terminal says so", () => {
    const { bouts, table } = boutsWith(LOWERING, MATCH);
    const lowers = bouts.filter(({ card }) => card === "kneel-lower");
    expect(lowers.length).toBeGreaterThan(0);
    for (const { at } of lowers) {
      const hours = hoursTo(at, 6, 13);
      expect(hours >= 0 || hours <= -24, new Date(at).toISOString()).toBe(true);
    }
    expect(table).toContain(
      "24 h after Match (Saturday) without hard work on its tissues: not stated, assumed.",
    );
  });

  test.each([
    ["0 h for none", change(MATCH, "tissues", "clear_after: 0 h, tissues")],
    ["other tissues", change(MATCH, "hamstrings", "shoulder-cuff")],
  ])("%s: nothing is assumed for this work", (_, event) => {
    const { bouts } = boutsWith(LOWERING, event);
    expect(bouts.filter(({ card }) => card === "kneel-lower").length).toBeGreaterThan(0);
    if (event.includes("0 h")) {
      expect(boutsWith(LOWERING, event).table).not.toContain("assumed");
    }
  });
});

test("two hard events close together on one tissue are told, first in the course, and nothing else", () => {
  const plan = `${DEMO}/achilles.md`;
  const text = change(
    shippedText(plan),
    "  events:\n",
    "  events:\n    - { what: Match, day: sat, part: evening, hard: true, tissues: [calf] }\n",
  );
  const { value, faults } = makeProgram(demoClinic({ [plan]: text }), plan);
  expect(value).toBeDefined();
  const near = faults.filter(({ code }) => code === "events-near");
  expect(near.map(({ level, message }) => `${level} ${message}`)).toEqual([
    expect.stringMatching(
      /^warning Long walk on 2026-12-06 comes 18 hours after Match; 24 are to be kept clear/,
    ),
  ]);
});

test("a card may say itself what it is", () => {
  const file = "exercises/hamstring/kneel-lower.md";
  const card = change(shippedText(file), "pain: ", "hard: false\npain: ");
  const world = demoClinic({ [file]: card });
  expect(world.texts.library.cards.get("kneel-lower")?.card.hard).toBe(false);
});
