/** The next load and the weekly training load of whole programs, as `plan --json` gives them out, against their sources. */
import { describe, expect, test } from "vitest";
import { CARDS } from "../surfaces/shipped.ts";
import { boutOf, jsonOf, sessionsOf } from "./course-json.ts";
import { BODY_KG, course, span } from "./course-support.ts";

describe("the next load, 2 to 10 % more (Ratamess et al. 2009, Med Sci Sports Exerc 41:687)", () => {
  const cards = ["squat-weight", "leg-press-two-legs", "hack-squat"];
  const made = course({
    protocol: "knee-tendon-heavy-slow-resistance",
    measures: cards.map((card) => ({ card, side: "both", kg: 80, reps: 10 })),
  });
  const nextOf = (card: string, week: number) => {
    const { key, load_kg } = boutOf(made, week, card);
    const steps = jsonOf(made).weeks[week - 1]?.trails[key]?.next_load_kg ?? [];
    return { kg: load_kg ?? Number.NaN, next: Number(steps.at(-1)?.value) };
  };

  // Weeks 1, 2, 4, 6 and 9 are the first at 15, 12, 10, 8 and 6 RM.
  const rows = cards.flatMap((card) => [1, 2, 4, 6, 9].map((week) => [card, week] as const));
  test.each(rows)("%s, week %i: 2 to 10 %% more load moved", (card, week) => {
    const { kg, next } = nextOf(card, week);
    const share = CARDS.get(card)?.load.body_share ?? 0;
    const rise = (next - kg) / (kg + share * BODY_KG);
    expect(rise).toBeGreaterThanOrEqual(0.02);
    expect(rise).toBeLessThanOrEqual(0.1);
  });

  // Leg press in steps of 5 kg: 70, 75, 80, 80 and 85 kg in the plan.
  test.each([
    [1, 70, 75],
    [2, 75, 80],
    [4, 80, 85],
    [6, 80, 85],
    [9, 85, 90],
  ])("leg press, week %i: from %i kg to %i kg", (week, now, then) => {
    expect(nextOf("leg-press-two-legs", week)).toEqual({ kg: now, next: then });
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
    for (const { minutes: laid, bouts } of sessionsOf(made))
      expect(laid * (bouts[0]?.effort ?? 0)).toBe(load);
    expect(jsonOf(made).weeks.map(({ totals }) => totals.load)).toEqual(Array(4).fill(3 * load));
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
      for (const { sessions, totals } of jsonOf(made).weeks) {
        expect(new Set(sessions.map(({ date }) => date)).size).toBe(6);
        expect(totals.load).toBe(total);
        expect(totals.monotony).toBe(Math.round(100 * monotony) / 100);
        expect(Math.round(totals.strain ?? 0)).toBe(strain);
      }
    },
  );

  test("no value where every day is the same", () => {
    for (const { totals } of jsonOf(board(20, 5, "per_day: 1")).weeks) {
      expect([totals.load, totals.monotony, totals.strain]).toEqual([700, null, null]);
    }
  });
});

// Effort × minutes (Foster 1998, Med Sci Sports Exerc 30:1164) at work, as time under tension and load both
// tire a muscle (Tran and Docherty 2006, J Sports Sci Med 5:707). Repetitions and sessions of the published
// tables; 4 s a repetition and an effort of 8 are the card's and the course's own.
describe("the work of the hamstrings in strength, courses of kneeling lowers (Cuthbert et al. 2020, Sports Med 50:83, table 2)", () => {
  const week = (sets: number, reps: number, often: number) =>
    Math.round((10 * (sets * reps * often * 4 * 8)) / 60) / 10;
  test.each([
    ["108-in-four-weeks", span(1, 4).map(() => week(3, 3, 3))],
    ["110-in-four-weeks", [week(2, 5, 2), week(3, 4, 2), week(3, 5, 2), week(3, 6, 2)]],
    [
      "480-in-eight-weeks",
      [
        [2, 6, 2],
        [3, 6, 3],
        [3, 8, 3],
        [3, 10, 3],
      ].flatMap(([sets = 0, reps = 0, often = 0]) => Array(2).fill(week(sets, reps, often))),
    ],
    ["720-in-ten-weeks", [6, 6, 7, 7, 8, 8, 8, 10, 10, 10].map((reps) => week(3, reps, 3))],
    // Mjølsnes et al. 2004, Scand J Med Sci Sports 14:311: 12, 10 and 8 repetitions from week 5 on
    [
      "ten-weeks",
      [
        week(2, 5, 1),
        week(2, 6, 2),
        week(3, 8, 3),
        week(3, 10, 3),
        ...Array(6).fill(week(1, 30, 3)),
      ],
    ],
  ])("%s", (protocol, loads) => {
    const made = course({ protocol: `hamstring-lowering-${protocol}` });
    const work = jsonOf(made).weeks.map(({ totals }) => totals.work);
    expect(work).toEqual(
      loads.map((load) => [
        expect.objectContaining({ tissue: "hamstrings", trains: "strength", load }),
      ]),
    );
  });

  test("a daily walk does not make an early week the heaviest, nor does it hide the growth", () => {
    const made = course({
      protocol: "hamstring-lowering-ten-weeks",
      more: `add:
  - { card: balance-board-stand, weeks: 1-2, why: To begin with, dose: { sets: 1, time: 40 min, effort: 4, per_day: 1 } }`,
    });
    const weeks = jsonOf(made).weeks.map(({ totals }) => totals);
    const heaviest = (loads: readonly number[]) => loads.indexOf(Math.max(...loads)) + 1;
    expect(heaviest(weeks.map(({ load }) => load ?? 0))).toBeLessThan(3);
    const hamstrings = weeks.map(
      ({ work }) => work.find(({ tissue }) => tissue === "hamstrings")?.load ?? 0,
    );
    expect(heaviest(hamstrings)).toBeGreaterThan(3);
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
  const loads = jsonOf(made).weeks.map(({ totals }) => totals);

  test("week 4 is twice as much as week 3", () => {
    expect(loads.slice(0, 4).map(({ change }) => change)).toEqual([null, 0, 0, 1]);
  });

  test("day 28: 1.6 coupled, 2 uncoupled, 186.65 by 139.36 weighted", () => {
    expect(loads[3]?.acute_chronic).toEqual({ coupled: 1.6, uncoupled: 2, weighted: 1.34 });
  });

  // λ = 2/(N + 1), from the first day's load on.
  test.each(span(4, 12))("week %i: weighted by λ = 2/8 and 2/29", (week) => {
    let [acute, chronic] = [1, 1];
    for (const day of span(2, 7 * week)) {
      const load = day <= 21 ? 1 : 2;
      acute = (2 / 8) * load + (1 - 2 / 8) * acute;
      chronic = (2 / 29) * load + (1 - 2 / 29) * chronic;
    }
    expect(loads[week - 1]?.acute_chronic?.weighted).toBe(
      Math.round((100 * acute) / chronic) / 100,
    );
  });

  test("no ratio before 28 days", () => {
    expect(loads.slice(0, 3).map(({ acute_chronic }) => acute_chronic)).toEqual(
      Array(3).fill(null),
    );
  });
});
