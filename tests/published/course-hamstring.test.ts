/** The shipped hamstring courses, on real dates, against the tables of their sources. */
import { describe, expect, test } from "vitest";
import {
  boutOf,
  cardsOf,
  countsOf,
  jsonOf,
  repsIn,
  repsOf,
  sayWork,
  sessionsOf,
} from "./course-json.ts";
import { course, span } from "./course-support.ts";

const CARD = "kneel-lower";

describe("ten weeks (Mjølsnes et al. 2004, Scand J Med Sci Sports 14:311; Petersen et al. 2011, Am J Sports Med 39:2296)", () => {
  const made = course({ protocol: "hamstring-lowering-ten-weeks" });

  test.each([
    [1, 1, "2 × 5", 10, 10],
    [2, 2, "2 × 6", 12, 12],
    [3, 3, "3 × 6-8", 18, 24],
    [4, 3, "3 × 8-10", 24, 30],
    [5, 3, "12, 10, 8", 30, 30],
    [6, 3, "12, 10, 8", 30, 30],
    [7, 3, "12, 10, 8", 30, 30],
    [8, 3, "12, 10, 8", 30, 30],
    [9, 3, "12, 10, 8", 30, 30],
    [10, 3, "12, 10, 8", 30, 30],
  ])("week %i: %i sessions of %s, %i to %i repetitions each", (week, sessions, work, low, high) => {
    const bout = boutOf(made, week, CARD);
    expect(cardsOf(made, week)).toEqual([CARD]);
    expect(countsOf(made, CARD)[week - 1]).toBe(sessions);
    expect(sayWork(bout)).toBe(work);
    expect(repsOf(bout)).toEqual({ low, high });
  });

  test("27 sessions in ten weeks (Petersen 2011)", () => {
    expect(jsonOf(made).weeks).toHaveLength(10);
    expect(sessionsOf(made)).toHaveLength(27);
  });

  test("700 repetitions with the low ends of the table, 736 with the high ends", () => {
    expect(repsIn(sessionsOf(made))).toEqual({ low: 700, high: 736 });
  });

  test("after the ten weeks once a week, 12, 10 and 8, as a plan states it", () => {
    const more = `redose:
  - { card: ${CARD}, weeks: 10, why: The ten weeks are over, dose: { per_week: 1 } }`;
    const after = course({ protocol: "hamstring-lowering-ten-weeks", more });
    expect(countsOf(after, CARD)[9]).toBe(1);
    expect(sayWork(boutOf(after, 10, CARD))).toBe("12, 10, 8");
    expect(repsIn(sessionsOf(after).slice(-1))).toEqual({ low: 30, high: 30 });
  });
});

/** A programme of the review: first and last week, sets × repetitions, sessions; printed total and mean. */
interface Reviewed {
  readonly protocol: string;
  readonly study: string;
  readonly rows: readonly (readonly [number, number, string, number])[];
  /** Repetitions with the low ends of ranges. */
  readonly low: number;
  readonly total: number;
  readonly mean: number;
}

const REVIEWED: readonly Reviewed[] = [
  {
    protocol: "hamstring-lowering-480-in-eight-weeks",
    study: "Alonso-Fernandez",
    rows: [
      [1, 2, "2 × 6", 2],
      [3, 4, "3 × 4-6", 3],
      [5, 6, "3 × 8", 3],
      [7, 8, "3 × 10", 3],
    ],
    low: 444,
    total: 480,
    mean: 60,
  },
  {
    protocol: "hamstring-lowering-108-in-four-weeks",
    study: "Alt",
    rows: [[1, 4, "3 × 3", 3]],
    low: 108,
    total: 108,
    mean: 27,
  },
  {
    protocol: "hamstring-lowering-720-in-ten-weeks",
    study: "Anastasi",
    rows: [
      [1, 2, "3 × 6", 3],
      [3, 4, "3 × 7", 3],
      [5, 7, "3 × 8", 3],
      [8, 10, "3 × 10", 3],
    ],
    low: 720,
    total: 720,
    mean: 72,
  },
  {
    protocol: "hamstring-lowering-110-in-four-weeks",
    study: "Freeman",
    rows: [
      [1, 1, "2 × 5", 2],
      [2, 2, "3 × 4", 2],
      [3, 3, "3 × 5", 2],
      [4, 4, "3 × 6", 2],
    ],
    low: 110,
    total: 110,
    mean: 28,
  },
];

describe.each(REVIEWED)(
  "$study, in the review's table 2 (Cuthbert et al. 2019, Sports Med 50:83)",
  ({ protocol, rows, low, total, mean }) => {
    const made = course({ protocol });
    const weeks = jsonOf(made).weeks.length;

    test.each(rows)("weeks %i to %i: %s, %i times a week", (first, last, work, sessions) => {
      for (const week of span(first, last)) {
        expect(sayWork(boutOf(made, week, CARD))).toBe(work);
        expect(countsOf(made, CARD)[week - 1]).toBe(sessions);
      }
    });

    test(`${total} repetitions in all, ${mean} a week`, () => {
      expect(weeks).toBe(rows.at(-1)?.[1]);
      expect(repsIn(sessionsOf(made))).toEqual({ low, high: total });
      expect(Math.round(total / weeks)).toBe(mean);
    });
  },
);

describe("first weeks (common practice)", () => {
  const free = "morning: 60 min, evening: 60 min";
  const made = course({ protocol: "hamstring-first-weeks", free });

  test.each([1, 2])("common practice: week %i, a heel dig is held for 10 seconds", (week) => {
    const bout = boutOf(made, week, "heel-dig-hold");
    expect(bout.hold_s).toBe(10);
    expect(bout.tension_s).toBe(repsOf(bout).high * 10);
  });

  test.each([2, 3, 4])("common practice: week %i, bridges are three sets of ten", (week) => {
    expect(sayWork(boutOf(made, week, "bridge-two-legs"))).toBe("3 × 10");
    expect(countsOf(made, "bridge-two-legs")[week - 1]).toBe(7);
  });

  test.each([
    ["left", "left"],
    ["right", "right"],
    ["both", "each"],
  ] as const)(
    "common practice: curls with the treated side %s are done on %s side, never on both at once",
    (side, worked) => {
      const client = course({ protocol: "hamstring-first-weeks", free, side });
      for (const week of [3, 4]) {
        expect(boutOf(client, week, "leg-curl-one-leg").side).toBe(worked);
      }
      const curls = client.program.phases
        .flatMap(({ exercises }) => exercises)
        .filter(({ card }) => card.card.id.includes("curl"));
      expect(curls.map(({ card }) => card.card.side)).toEqual(["each"]);
    },
  );
});
