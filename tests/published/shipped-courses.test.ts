/** The demo's courses, as `plan --json` gives them out, against the week-by-week tables of their sources. */
import { describe, expect, test } from "vitest";
import { type MadeProgram, makeProgram } from "../../src/booklet.ts";
import { change, DEMO, demoClinic, shippedText } from "../support/world.ts";
import {
  aimOf,
  boutOf,
  cardsOf,
  clockOf,
  jsonOf,
  mostPain,
  repsIn,
  sayWork,
  sessionsOf,
} from "./course-json.ts";
import { span } from "./course-support.ts";

function made(name: string, edit: (text: string) => string = (text) => text): MadeProgram {
  const file = `${DEMO}/${name}.md`;
  const { value, faults } = makeProgram(demoClinic({ [file]: edit(shippedText(file)) }), file);
  if (!value) throw new Error(faults.map(({ message }) => message).join("\n"));
  return value;
}

/**
 * Beyer et al. 2015, Am J Sports Med 43:1704, as carried over in a clinical graphic that cites it
 * (weeks 1 to 5 and 9 to 12, tempo, rests) and in a second account (weeks 6 to 8).
 * Week, sets, repetitions (equal to the repetition maximum aimed at).
 */
const BEYER = [
  [1, 3, 15],
  [2, 3, 12],
  [3, 3, 12],
  [4, 4, 10],
  [5, 4, 10],
  [6, 4, 8],
  [7, 4, 8],
  [8, 4, 8],
  [9, 4, 6],
  [10, 4, 6],
  [11, 4, 6],
  [12, 4, 6],
] as const;

describe("heavy slow resistance, Achilles (Beyer et al. 2015, Am J Sports Med 43:1704)", () => {
  const program = made("achilles");
  const full = made("achilles", (text) => {
    // all three exercises of the trial, in a gym
    const gym =
      "\n  - { have: leg-press-machine, from: 20 kg, up_to: 400 kg, steps: 5 kg }\n  - { have: calf-raise-machine, from: 10 kg, up_to: 300 kg, steps: 2.5 kg }";
    let all = change(text, "equipment:", `equipment:${gym}`);
    all = change(all, /swap:[\s\S]*?(?=signed:)/, "");
    all = change(all, / {2}away:.*\n/, "");
    // three exercises with five minutes between them take longer than this client's evenings
    all = all.replaceAll("45 min", "90 min");
    const tests = ["heel-press-leg-press", "heel-raise-standing-weight"].map(
      (card) =>
        `  - { test: repetitions, card: ${card}, side: both, load: 100 kg, reps: 10, on: 2026-11-23 }`,
    );
    return change(all, "measures:", `measures:\n${tests.join("\n")}`);
  });
  const cards = ["heel-raise-seated-weight", "heel-press-leg-press", "heel-raise-standing-weight"];

  test.each(BEYER)(
    "week %i: %i sets at %i repetition maximum, the three two-leg exercises of the trial",
    (week, sets, reps) => {
      expect(cardsOf(full, week)).toEqual(cards);
      for (const card of cards) {
        const bout = boutOf(full, week, card);
        expect(sayWork(bout)).toBe(`${sets} × ${reps}`);
        expect(aimOf(full, week, card)).toBe(`${reps} RM`);
        expect([bout.side, bout.tempo]).toEqual(["both", "3-0-3-0"]);
        // rest of 2 to 3 minutes
        expect(bout.rest_s).toBeGreaterThanOrEqual(120);
        expect(bout.rest_s).toBeLessThanOrEqual(180);
      }
    },
  );

  test("five minutes from one exercise to the next", () => {
    for (const session of sessionsOf(full))
      expect(session.minutes).toBe(Math.ceil(clockOf(session, 300) / 60));
  });

  // Epley 1985: 1RM = w (1 + r / 30), turned round for the load of a repetition maximum.
  // One leg: 0.9855 of 68 kg is moved besides the backpack (Dempster 1955: a foot is 1.45 %).
  test.each(BEYER)(
    "week %i: %i sets, the backpack is the whole kilogram under the load for %i RM",
    (week, _sets, reps) => {
      const body = 0.9855 * 68;
      const oneRm = (body + 12) * (1 + 9 / 30);
      const aimed = oneRm / (1 + reps / 30) - body;
      const { load_kg } = boutOf(program, week, "heel-raise-one-leg-step-weight");
      expect(load_kg).toBe(Math.floor(aimed));
    },
  );

  test("three sessions a week for twelve weeks, 48 hours apart", () => {
    expect(jsonOf(full).weeks.map(({ sessions }) => sessions.length)).toEqual(Array(12).fill(3));
    const at = sessionsOf(full).map(({ starts }) => Date.parse(`${starts}Z`) / 3_600_000);
    at.slice(1).forEach((time, index) => {
      expect(time - (at[index] ?? 0)).toBeGreaterThanOrEqual(48);
    });
  });
});

describe("shoulder course (Holmgren et al. 2012, BMJ 344:e787)", () => {
  const whole = made("shoulder", (text) =>
    change(change(text, /leave_out:[\s\S]*?(?=redose:)/, ""), /35 min|40 min/g, "60 min"),
  );
  const stretch = "shoulder-back-stretch";

  test("five strengthening exercises of 3 × 15 and a stretch of 3 × 30 to 60 s", () => {
    const strength = cardsOf(whole, 1).filter((card) => card !== stretch);
    expect(strength).toHaveLength(5);
    for (const card of strength) {
      expect(sayWork(boutOf(whole, 1, card))).toBe("3 × 15");
      expect(boutOf(whole, 1, card).hold_s).toBeNull();
    }
    const { sets, hold_s } = boutOf(whole, 1, stretch);
    expect(sets).toBe(3);
    expect(hold_s).toBeGreaterThanOrEqual(30);
    expect(hold_s).toBeLessThanOrEqual(60);
  });

  test.each([
    ["weeks 1 to 8: twice a day, 450 strengthening repetitions", span(1, 8), 2, 450],
    ["weeks 9 to 12: once a day, 225", span(9, 12), 1, 225],
  ])("%s", (_name, weeks, perDay, reps) => {
    for (const week of weeks) {
      const { sessions = [] } = jsonOf(whole).weeks[week - 1] ?? {};
      const days = new Set(sessions.map(({ date }) => date));
      expect([days.size, sessions.length]).toEqual([7, 7 * perDay]);
      for (const day of days) {
        const today = sessions.filter(({ date }) => date === day);
        expect(repsIn(today, [stretch])).toEqual({ low: reps, high: reps });
      }
    }
  });

  test("pain up to 5 of 10 while exercising", () => {
    expect(mostPain(whole)).toBe(5);
  });

  test("as many sessions on the calendar: 14 a week, then 7", () => {
    const counts = jsonOf(made("shoulder")).weeks.map(({ sessions }) => sessions.length);
    expect(counts).toEqual([...Array(8).fill(14), ...Array(4).fill(7)]);
  });
});
