/** The shipped protocols, through the whole program, against the week-by-week tables of their sources. */
import { describe, expect, test } from "vitest";
import { type MadeProgram, makeProgram } from "../../src/booklet.ts";
import { change, DEMO, demoClinic, shippedText } from "../support/world.ts";

function made(name: string, edit: (text: string) => string = (text) => text): MadeProgram {
  const file = `${DEMO}/${name}.md`;
  const { value, faults } = makeProgram(demoClinic({ [file]: edit(shippedText(file)) }), file);
  if (!value) throw new Error(faults.map(({ message }) => message).join("\n"));
  return value;
}

const weeksOf = ({ dosed }: MadeProgram, card: string) =>
  dosed.weeks.map(({ bouts }) => bouts.find((bout) => bout.card === card));

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

  test("the course has the three two-leg exercises of the trial", () => {
    expect(
      full.program.phases[0]?.exercises.map(({ card, side }) => `${card.card.id} ${side}`),
    ).toEqual([
      "heel-raise-seated-weight both",
      "heel-press-leg-press both",
      "heel-raise-standing-weight both",
    ]);
  });

  test.each(BEYER)(
    "week %i: %i sets at %i repetition maximum, every exercise",
    (week, sets, reps) => {
      for (const bout of full.dosed.weeks[week - 1]?.bouts ?? []) {
        expect(bout.sets).toBe(sets);
        expect(bout.reps?.[0]).toEqual({ low: reps, high: reps });
        const stated = full.program.phases[0]?.exercises.find(({ key }) => key === bout.key)?.doses[
          week - 1
        ];
        expect(stated?.dose.target).toEqual({ kind: "rm", reps });
        expect(bout.tempo).toEqual({ lower: 3, bottom: 0, lift: 3, top: 0 });
        expect(bout.frequency).toEqual({ perWeek: 3 });
        // rest of 2 to 3 minutes
        expect(bout.restS).toBeGreaterThanOrEqual(120);
        expect(bout.restS).toBeLessThanOrEqual(180);
      }
      expect(full.dosed.weeks[week - 1]?.bouts).toHaveLength(3);
    },
  );

  test("five minutes from one exercise to the next", () => {
    expect(full.dosed.changeoverS).toBe(300);
  });

  // Epley 1985: 1RM = w (1 + r / 30), turned round for the load of a repetition maximum.
  // One leg: 0.9855 of 68 kg is moved besides the backpack (Dempster 1955: a foot is 1.45 %).
  test.each(BEYER)(
    "week %i: %i sets, the backpack is the whole kilogram under the load for %i RM",
    (week, _sets, reps) => {
      const body = 0.9855 * 68;
      const oneRm = (body + 12) * (1 + 9 / 30);
      const aimed = oneRm / (1 + reps / 30) - body;
      const kg = weeksOf(program, "heel-raise-one-leg-step-weight")[week - 1]?.load.kg;
      expect(kg).toBe(Math.floor(aimed));
    },
  );

  test("three sessions a week for twelve weeks, 48 hours apart", () => {
    const sessions = full.schedule.weeks.flatMap((week) =>
      week.days.flatMap((day) => day.sessions),
    );
    expect(sessions).toHaveLength(36);
    const hour = { morning: 7, midday: 13, evening: 19 };
    const at = sessions.map(
      ({ date, part }) => Date.parse(`${date}T00:00:00Z`) / 3_600_000 + hour[part],
    );
    at.slice(1).forEach((time, index) => {
      expect(time - (at[index] ?? 0)).toBeGreaterThanOrEqual(48);
    });
  });
});

describe("shoulder course (Holmgren et al. 2012, BMJ 344:e787)", () => {
  const whole = made("shoulder", (text) =>
    change(change(text, /leave_out:[\s\S]*?(?=redose:)/, ""), /35 min|40 min/g, "60 min"),
  );

  test("five strengthening exercises of 3 × 15 and a stretch of 3 × 30 to 60 s", () => {
    const bouts = whole.dosed.weeks[0]?.bouts ?? [];
    const strength = bouts.filter((bout) => bout.holdS === undefined);
    expect(strength).toHaveLength(5);
    for (const bout of strength) {
      expect(bout.sets).toBe(3);
      expect(bout.reps).toEqual(Array(3).fill({ low: 15, high: 15 }));
    }
    const stretches = bouts.filter((bout) => bout.holdS !== undefined);
    expect(stretches).toHaveLength(1);
    expect(stretches[0]?.sets).toBe(3);
    expect(stretches[0]?.holdS).toBeGreaterThanOrEqual(30);
    expect(stretches[0]?.holdS).toBeLessThanOrEqual(60);
  });

  test.each([
    ["weeks 1 to 8: twice a day, 450 strengthening repetitions", [1, 2, 3, 4, 5, 6, 7, 8], 2, 450],
    ["weeks 9 to 12: once a day, 225", [9, 10, 11, 12], 1, 225],
  ])("%s", (_name, weeks, perDay, reps) => {
    for (const week of weeks) {
      const bouts = whole.dosed.weeks[week - 1]?.bouts ?? [];
      expect(
        bouts.every(({ frequency }) => "perDay" in frequency && frequency.perDay === perDay),
      ).toBe(true);
      const daily = bouts.reduce(
        (sum, { repsTotal, holdS }) => sum + (holdS ? 0 : (repsTotal?.high ?? 0)) * perDay,
        0,
      );
      expect(daily).toBe(reps);
    }
  });

  test("pain up to 5 of 10 while exercising", () => {
    const limits = whole.program.phases.flatMap((phase) =>
      phase.exercises.map(({ pain }) => pain.during),
    );
    expect(Math.max(...limits)).toBe(5);
  });

  test("as many sessions on the calendar: 14 a week, then 7", () => {
    const counts = made("shoulder").schedule.weeks.map(
      (week) => week.days.flatMap((day) => day.sessions).length,
    );
    expect(counts).toEqual([...Array(8).fill(14), ...Array(4).fill(7)]);
  });
});
