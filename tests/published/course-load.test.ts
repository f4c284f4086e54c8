/** The next load and the weekly training load of whole programs on real dates, against their sources. */
import { describe, expect, test } from "vitest";
import { weightsFor } from "../../src/dose/equipment.ts";
import { nextLoad } from "../../src/dose/next-load.ts";
import { plannedSessionLoad } from "../../src/dose/totals.ts";
import { weekLoads } from "../../src/schedule/week-loads.ts";
import { boutOf, course, sessionsOf, span } from "./course-support.ts";

describe("the next load, 2 to 10 % more (Ratamess et al. 2009, Med Sci Sports Exerc 41:687)", () => {
  const cards = ["squat-weight", "leg-press-two-legs", "hack-squat"];
  const made = course({
    protocol: "knee-tendon-heavy-slow-resistance",
    measures: cards.map((card) => ({ card, side: "both", kg: 80, reps: 10 })),
  });
  const following = (card: string, week: number, over: readonly number[], step?: number) => {
    const { load } = boutOf(made, week, card);
    const kg = load.kg ?? Number.NaN;
    const moved = load.systemKg ?? Number.NaN;
    const exercises = made.program.phases.flatMap((phase) => phase.exercises);
    const own = exercises.find((one) => one.card.card.id === card)?.card.card;
    const makes = own ? weightsFor(own, made.plan.value.equipment) : [];
    const next = nextLoad({ kg, bodyKg: moved - kg }, over, makes, step);
    return { kg, next, rise: (next.kg - kg) / moved };
  };

  // Weeks 1, 2, 4, 6 and 9 are the first at 15, 12, 10, 8 and 6 RM.
  const rows = cards.flatMap((card) => [1, 2, 4, 6, 9].map((week) => [card, week] as const));
  test.each(rows)(
    "%s, week %i: 1 to 2 repetitions over, 2 to 10 %% more load moved",
    (card, week) => {
      for (const over of [
        [1, 1],
        [1, 2],
        [2, 1],
        [2, 2],
        [0, 1, 2],
      ]) {
        const { next, rise } = following(card, week, over);
        expect(next.action).toBe("more-load");
        expect(rise).toBeGreaterThanOrEqual(0.02);
        expect(rise).toBeLessThanOrEqual(0.1);
      }
    },
  );

  test.each(rows)(
    "soft check, from memory: %s, week %i, the load stays until two sessions running are over",
    (card, week) => {
      for (const over of [[], [2], [2, 0], [0, 2], [2, 2, 0], [1, 0, 1], [-1, 1]]) {
        const { kg, next } = following(card, week, over);
        expect([next.action, next.kg]).toEqual(["same", kg]);
      }
    },
  );

  // Leg press in steps of 5 kg: 70, 75, 80, 80 and 85 kg in the plan.
  test.each([
    [1, 70, 75],
    [2, 75, 80],
    [4, 80, 85],
    [6, 80, 85],
    [9, 85, 90],
  ])("leg press, week %i: from %i kg to %i kg", (week, now, then) => {
    const { kg, next } = following("leg-press-two-legs", week, [2, 2]);
    expect([kg, next.kg]).toEqual([now, then]);
  });

  test("where the next load there is lies further away than the step, repetitions grow first", () => {
    const { kg, next } = following("leg-press-two-legs", 1, [2, 2], 0.02);
    expect([next.action, next.kg]).toEqual(["more-repetitions", kg]);
  });
});

/** One exercise by the clock in place of the holds: minutes, effort and how often. */
const timed = (minutes: number, effort: number, often: string) => `leave_out:
  - { card: knee-push-hold, why: Only the board }
add:
  - { card: balance-board-stand, why: The board, dose: { sets: 1, time: ${minutes} min, effort: ${effort}, ${often} } }`;
const board = (minutes: number, effort: number, often: string, dosing?: string) =>
  course({
    protocol: "knee-tendon-holds",
    more: timed(minutes, effort, often),
    ...(dosing === undefined ? {} : { dosing }),
  });

describe("session load, monotony and strain on the calendar (Foster 1998, Med Sci Sports Exerc 30:1164)", () => {
  test.each([
    [75, 7, 525],
    [60, 8, 480],
  ])("%i minutes at effort %i are a load of %i", (minutes, effort, load) => {
    const made = board(minutes, effort, "per_week: 3");
    expect(sessionsOf(made).map(({ bouts }) => plannedSessionLoad(bouts))).toEqual(
      Array(12).fill(load),
    );
    expect(weekLoads(made.schedule, "population").map((week) => week.load)).toEqual(
      Array(4).fill(3 * load),
    );
  });

  // Six equal days and one of rest: √6 with the population's deviation, √(36/7) with the sample's.
  test.each([
    ["population", 50, 8, 2400, 2.449, 5879],
    ["sample", 50, 8, 2400, 2.268, 5443],
    ["population", 8, 4, 192, 2.449, 470],
    ["population", 90, 1, 540, 2.449, 1323],
    ["sample", 90, 1, 540, 2.268, 1225],
  ] as const)(
    "%s deviation: six days of %i min at effort %i and one of rest",
    (deviation, minutes, effort, total, monotony, strain) => {
      const made = board(minutes, effort, "per_week: 6", `{ deviation: ${deviation} }`);
      for (const { days } of made.schedule.weeks) {
        expect(days.map(({ sessions }) => sessions.length).sort()).toEqual([0, 1, 1, 1, 1, 1, 1]);
      }
      for (const week of weekLoads(made.schedule, made.program.clinic.dosing.deviation)) {
        expect(week.load).toBe(total);
        expect(week.monotony).toBe(Math.round(100 * monotony) / 100);
        expect(Math.round(week.strain ?? 0)).toBe(strain);
      }
    },
  );

  test("no value where every day is the same", () => {
    for (const week of weekLoads(board(20, 5, "per_day: 1").schedule, "population")) {
      expect(week.load).toBe(700);
      expect([week.monotony, week.strain]).toEqual([undefined, undefined]);
    }
  });
});

describe("acute and chronic load on the calendar, as description only (Williams et al. 2017, Br J Sports Med 51:209)", () => {
  const free = "morning: 45 min, evening: 45 min";
  const cards = ["heel-lower-knee-straight", "heel-lower-knee-bent"];
  /** Once a day for three weeks, then twice: 21 days of one load and 7 of twice as much. */
  const made = course({
    protocol: "achilles-lowering-twice-daily",
    free,
    more: `redose:\n${cards
      .map((card) => `  - { card: ${card}, weeks: 1-3, why: A gentle start, dose: { per_day: 1 } }`)
      .join("\n")}`,
  });
  const loads = weekLoads(made.schedule, "population");

  test("week 4 is twice as much as week 3", () => {
    expect(loads.slice(0, 4).map(({ change }) => change?.share)).toEqual([undefined, 0, 0, 1]);
  });

  test("day 28: 1.6 coupled, 2 uncoupled, 186.65 by 139.36 weighted", () => {
    expect(loads[3]?.acuteChronic).toEqual({ coupled: 1.6, uncoupled: 2, weighted: 1.34 });
  });

  // λ = 2/(N + 1), from the first day's load on.
  test.each(span(4, 12))("week %i: weighted by λ = 2/8 and 2/29", (week) => {
    let [acute, chronic] = [1, 1];
    for (const day of span(2, 7 * week)) {
      const load = day <= 21 ? 1 : 2;
      acute = (2 / 8) * load + (1 - 2 / 8) * acute;
      chronic = (2 / 29) * load + (1 - 2 / 29) * chronic;
    }
    expect(loads[week - 1]?.acuteChronic?.weighted).toBe(Math.round((100 * acute) / chronic) / 100);
  });

  test("no ratio before 28 days", () => {
    expect(loads.slice(0, 3).map(({ acuteChronic }) => acuteChronic)).toEqual(
      Array(3).fill(undefined),
    );
  });
});
