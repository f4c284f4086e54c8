/** The shipped groin courses, on real dates, against the tables of their sources. */
import { describe, expect, test } from "vitest";
import { boutOf, cardsOf, countsOf, jsonOf, mostPain, sayWork, sessionsOf } from "./course-json.ts";
import { course, span } from "./course-support.ts";

/** Levels 1 to 6 of the modified Copenhagen adduction. */
const LEVELS = [
  "side-lift-knee-down",
  "side-lift-knee",
  "side-lift-foot-down",
  "side-lift-foot",
  "side-lift-foot-high",
  "side-lift-helper",
] as const;

describe("side lifts in eight weeks (Polglass et al. 2019, BMJ Open Sport Exerc Med 5:e000570, table 1)", () => {
  const made = course({ protocol: "groin-side-lift-eight-weeks", side: "both" });
  const still = { hold_s: 20, tempo: null };
  const moving = { hold_s: null, tempo: "3-0-3-0" };

  test.each([
    [1, 1, "2 × 6", 240, still],
    [2, 2, "2 × 6", 240, still],
    [3, 3, "3 × 6", 360, still],
    [4, 4, "3 × 8", 480, still],
    [5, 5, "3 × 8", 480, still],
    [6, 6, "3 × 6", 108, moving],
    [7, 6, "3 × 8", 144, moving],
    [8, 6, "3 × 10", 180, moving],
  ])(
    "week %i: level %i, %s, %i s under tension a leg a session, twice a week",
    (week, level, work, seconds, pace) => {
      const card = LEVELS[level - 1] ?? "";
      expect(cardsOf(made, week)).toEqual([card]);
      const bout = boutOf(made, week, card);
      expect(sayWork(bout)).toBe(work);
      expect(bout.tension_s).toBe(seconds);
      expect(bout).toMatchObject(pace);
      expect(bout.side).toBe("each");
      expect(countsOf(made, card)[week - 1]).toBe(2);
    },
  );

  test("16 sessions in eight weeks", () => {
    expect(jsonOf(made).weeks).toHaveLength(8);
    expect(sessionsOf(made)).toHaveLength(16);
  });

  test("each level is harder than the one before and leads to the next", () => {
    const cards = LEVELS.map((id) => {
      const all = made.program.phases.flatMap(({ exercises }) => exercises);
      return all.find(({ card }) => card.card.id === id)?.card.card;
    });
    cards.slice(1).forEach((card, index) => {
      const before = cards[index];
      expect(card?.demand).toBeGreaterThan(before?.demand ?? Number.POSITIVE_INFINITY);
      expect(before?.harder.map(({ to }) => to)).toContain(card?.id);
    });
  });

  test("an easier form over a pain of 3 out of 10 (Harøy et al. 2019, Br J Sports Med 53:150)", () => {
    expect(mostPain(made)).toBe(3);
  });
});

describe("two parts, modified (Yousefzadeh et al. 2018, Rehabil Res Pract 2018:8146819, tables 1 and 2)", () => {
  const protocol = "groin-two-parts-ten-weeks";
  const made = course({ protocol, side: "both" });

  // Rests: from one repetition to the next and from one set to the next, the least and the most printed.
  test.each([
    ["ball squeeze", 1, "ball-squeeze", "3 × 10", 10, 1, [10, 10], [120, 120]],
    ["band, held, both legs", 1, "band-pull-in-hold", "5 × 10", 10, 2, [10, 10], [120, 120]],
    ["sit-up", 1, "sit-up", "4 × 15", undefined, 1, [0, 0], [60, 60]],
    ["front bridge", 1, "front-bridge", "1 × 10", 15, 1, [15, 20], undefined],
    ["side bridge, each side", 1, "side-bridge", "1 × 10", 15, 2, [15, 20], undefined],
    ["band, inwards", 3, "band-pull-in", "5 × 10", undefined, 2, [2, 5], [60, 60]],
    ["band, outwards", 3, "band-push-out", "5 × 10", undefined, 2, [2, 5], [60, 60]],
    ["folding knife", 3, "folding-sit-up-ball", "5 × 10", undefined, 1, [0, 0], [60, 60]],
    ["back", 3, "back-lift", "3 × 10", undefined, 1, [0, 0], [30, 30]],
  ] as const)("%s, from week %i: %s, %s", (_name, from, card, work, holdS, sides, each, sets) => {
    for (const week of from === 1 ? [1, 2] : span(3, 10)) {
      const bout = boutOf(made, week, card);
      expect(sayWork(bout)).toBe(work);
      expect([bout.hold_s ?? undefined, bout.side === "each" ? 2 : 1]).toEqual([holdS, sides]);
      const between = bout.rest_reps_s ?? 0;
      expect(between).toBeGreaterThanOrEqual(each[0]);
      expect(between).toBeLessThanOrEqual(each[1]);
      if (sets) {
        expect(bout.rest_s).toBeGreaterThanOrEqual(sets[0]);
        expect(bout.rest_s).toBeLessThanOrEqual(sets[1]);
      }
    }
  });

  test.each([
    ["band-pull-in", 1, 3],
    ["band-push-out", 1, 3],
  ])("%s: %i s against the band, %i s back", (card, lift, lower) => {
    expect(boutOf(made, 3, card).tempo).toBe(`${lower}-0-${lift}-0`);
  });

  test.each([
    ["balance board, 8 minutes", 1, "balance-board-stand", 1, 8 * 60, undefined],
    ["front bridge with one arm or leg up, 8 of 24 s", 3, "front-bridge-limb-lift", 8, 24, 30],
  ])("%s", (_name, week, card, sets, seconds, restS) => {
    const bout = boutOf(made, week, card);
    expect([bout.sets, bout.time_s, bout.reps]).toEqual([sets, seconds, null]);
    expect(bout.tension_s).toBe(sets * seconds);
    if (restS !== undefined) expect(bout.rest_s).toBe(restS);
  });

  test.each([
    ["the last ones counted", true, 300 + 660],
    ["the last ones not counted", false, 300 + 3 * 9 * 10 + 2 * 120],
  ])("ball squeeze: 300 s of holds, and the rests with %s", (_name, last, clockS) => {
    const counted = course({ protocol, side: "both", dosing: `{ last_rest: ${last} }` });
    const bout = boutOf(counted, 1, "ball-squeeze");
    expect([bout.tension_s, bout.clock_s]).toEqual([300, clockS]);
  });

  test("part 1 for two weeks, part 2 from week 3, 8 to 12 weeks in all (Hölmich et al. 1999, Lancet 353:439)", () => {
    const { weeks } = jsonOf(made);
    const [first, , third] = weeks.map(({ phases }) => phases);
    expect(weeks.slice(0, 2).map(({ phases }) => phases)).toEqual([first, first]);
    expect(weeks.slice(2).map(({ phases }) => phases)).toEqual(Array(weeks.length - 2).fill(third));
    expect(third).not.toEqual(first);
    expect(weeks.length).toBeGreaterThanOrEqual(8);
    expect(weeks.length).toBeLessThanOrEqual(12);
  });

  test("soft check, from memory: three sessions a week (Hölmich et al. 1999, Lancet 353:439)", () => {
    for (const { sessions } of jsonOf(made).weeks) expect(sessions).toHaveLength(3);
    expect(countsOf(made, "band-pull-in")).toEqual([0, 0, 3, 3, 3, 3, 3, 3, 3, 3]);
  });
});
