/** The shipped courses for the knee-cap tendon and the plantar heel, on real dates, against their sources. */
import { describe, expect, test } from "vitest";
import {
  aimOf,
  boutOf,
  cardsOf,
  countsOf,
  daysOf,
  jsonOf,
  mostPain,
  repsIn,
  repsOf,
  sayWork,
  sessionsOf,
} from "./course-json.ts";
import { BODY_KG, course, span } from "./course-support.ts";

/** Epley 1985: the load of a repetition maximum, from another; `body`: kilograms of the body moved with it. */
const epley = (kg: number, reps: number, aim: number, body = 0) =>
  ((kg + body) * (1 + reps / 30)) / (1 + aim / 30) - body;

describe("heavy slow resistance, knee (Kongsgaard et al. 2009, Scand J Med Sci Sports 19:790)", () => {
  const cards = ["squat-weight", "leg-press-two-legs", "hack-squat"];
  const made = course({
    protocol: "knee-tendon-heavy-slow-resistance",
    measures: cards.map((card) => ({ card, side: "both", kg: 80, reps: 10 })),
  });
  const rows = [
    [1, 15],
    [2, 12],
    [3, 12],
    [4, 10],
    [5, 10],
    [6, 8],
    [7, 8],
    [8, 8],
    [9, 6],
    [10, 6],
    [11, 6],
    [12, 6],
  ] as const;

  test.each(rows)(
    "week %i: squat, leg press and hack squat, 4 sets at %i RM, three times",
    (week, reps) => {
      expect(cardsOf(made, week)).toEqual(cards);
      for (const card of cards) {
        const bout = boutOf(made, week, card);
        expect(sayWork(bout)).toBe(`4 × ${reps}`);
        expect(aimOf(made, week, card)).toBe(`${reps} RM`);
        expect(bout.side).toBe("both");
        expect(countsOf(made, card)[week - 1]).toBe(3);
      }
    },
  );

  test.each(rows)("week %i at %i RM: rests of 2 to 3 minutes between sets", (week, _reps) => {
    for (const card of cards) {
      expect(boutOf(made, week, card).rest_s).toBeGreaterThanOrEqual(120);
      expect(boutOf(made, week, card).rest_s).toBeLessThanOrEqual(180);
    }
  });

  test.each(rows)(
    "soft check, from memory: week %i at %i RM, 3 s down and 3 s up",
    (week, reps) => {
      for (const card of cards) {
        const bout = boutOf(made, week, card);
        expect(bout.tempo).toBe("3-0-3-0");
        expect(bout.tension_s).toBe(4 * reps * 6);
      }
    },
  );

  // Machines in steps of 5 kg, bar in steps of 2.5 kg; 0.86 of the body is squatted (Hartmann and Tünnemann).
  test.each(rows)(
    "week %i: the load for %i RM by Epley 1985, rounded down to what there is",
    (week, reps) => {
      const machine = Math.floor(epley(80, 10, reps) / 5 + 1e-9) * 5;
      const bar = Math.floor(epley(80, 10, reps, 0.86 * BODY_KG) / 2.5 + 1e-9) * 2.5;
      expect(cards.map((card) => boutOf(made, week, card).load_kg)).toEqual([
        bar,
        machine,
        machine,
      ]);
    },
  );

  test("36 sessions in twelve weeks", () => {
    expect(jsonOf(made).weeks).toHaveLength(12);
    expect(sessionsOf(made)).toHaveLength(36);
  });

  test("pain up to 5 of 10 (Silbernagel et al. 2007, Am J Sports Med 35:897)", () => {
    expect(mostPain(made)).toBe(5);
  });
});

describe("holds, knee (Rio et al. 2015, Br J Sports Med 49:1277; van Ark et al. 2016, J Sci Med Sport 19:702)", () => {
  const protocol = "knee-tendon-holds";
  const card = "knee-push-hold";
  const made = course({ protocol });

  test.each(span(1, 4))(
    "soft check, from memory (Rio 2015): week %i, five holds of 45 s, 2 min of rest",
    (week) => {
      const bout = boutOf(made, week, card);
      expect(cardsOf(made, week)).toEqual([card]);
      expect([bout.sets, repsOf(bout).high, bout.hold_s, bout.rest_s]).toEqual([5, 5, 45, 120]);
      expect(bout.tension_s).toBe(225);
      expect(bout.clock_s).toBe(705);
    },
  );

  test("soft check, from memory (Rio 2015): the lifting arm, 4 × 8 at 8 RM, 4 s down and 3 s up, is 224 s", () => {
    const more = `add:
  - { card: leg-press-two-legs, why: The other arm, dose: { sets: 4, reps: 8, tempo: 4-0-3-0, target: 8 RM, per_week: 2 } }`;
    const both = course({
      protocol,
      measures: [{ card: "leg-press-two-legs", side: "both", kg: 80, reps: 10 }],
      more,
    });
    expect(boutOf(both, 1, "leg-press-two-legs").tension_s).toBe(224);
    expect(boutOf(both, 1, card).tension_s).toBe(225);
  });

  test("four sessions a week for four weeks (van Ark 2016)", () => {
    expect(countsOf(made, card)).toEqual([4, 4, 4, 4]);
    expect(sessionsOf(made)).toHaveLength(16);
  });

  test("pain up to 5 of 10 (Silbernagel et al. 2007, Am J Sports Med 35:897)", () => {
    expect(mostPain(made)).toBe(5);
  });
});

describe("towel raise, every second day (Rathleff et al. 2015, Scand J Med Sci Sports 25:e292)", () => {
  const card = "heel-raise-towel-one-leg";
  const client = (starts?: string) =>
    course({
      protocol: "plantar-heel-towel-raise",
      measures: [{ card, side: "left", kg: 20, reps: 10 }],
      ...(starts === undefined ? {} : { starts }),
    });
  const made = client();

  test.each([
    [1, 2, 3, 12, 288],
    [3, 4, 4, 10, 320],
    [5, 12, 5, 8, 320],
  ])(
    "weeks %i to %i: %i sets at %i RM, %i s under tension a session",
    (first, last, sets, reps, seconds) => {
      for (const week of span(first, last)) {
        const bout = boutOf(made, week, card);
        expect(cardsOf(made, week)).toEqual([card]);
        expect(sayWork(bout)).toBe(`${sets} × ${reps}`);
        expect(aimOf(made, week, card)).toBe(`${reps} RM`);
        expect(bout.tempo).toBe("3-0-3-2");
        expect(bout.tension_s).toBe(seconds);
      }
    },
  );

  test.each([
    ["Monday, over the end of a year", "2026-12-07"],
    ["Saturday, over a leap day", "2028-01-15"],
    ["Thursday, over the change to summer time", "2027-03-11"],
    ["Sunday, over the change to winter time", "2027-09-19"],
  ])("from a %s: 42 sessions in 84 days, four and three in alternate weeks", (_name, starts) => {
    const dated = client(starts);
    expect(jsonOf(dated).weeks).toHaveLength(12);
    expect(daysOf(dated, card)).toEqual(span(0, 41).map((session) => 2 * session));
    expect(countsOf(dated, card)).toEqual([4, 3, 4, 3, 4, 3, 4, 3, 4, 3, 4, 3]);
  });

  test.each([
    [1, 2, 7, 252],
    [3, 4, 7, 280],
    [5, 12, 28, 1120],
    [1, 12, 42, 1652],
  ])("weeks %i to %i: %i sessions, %i repetitions", (first, last, sessions, reps) => {
    const dated = jsonOf(made)
      .weeks.slice(first - 1, last)
      .flatMap((week) => week.sessions);
    expect(dated).toHaveLength(sessions);
    expect(repsIn(dated)).toEqual({ low: reps, high: reps });
  });

  test("a backpack makes the load", () => {
    for (const week of span(1, 12)) {
      expect(boutOf(made, week, card).equipment).toBe("backpack");
    }
  });

  test("pain up to 5 of 10 (Silbernagel et al. 2007, Am J Sports Med 35:897)", () => {
    expect(mostPain(made)).toBe(5);
  });
});
