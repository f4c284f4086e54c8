/** The short session: it fits, never does more than planned, and keeps as much as can be kept. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { shortSession } from "../../src/dose/short-session.ts";
import type { Bout } from "../../src/dose/types.ts";

const dosing = { fast_part: 1, last_rest: false };

const bout = (key: string, sets: number, reps: number, restS: number): Bout =>
  ({
    key,
    sets,
    sides: 1,
    reps: Array(sets).fill({ low: reps, high: reps }),
    tempo: { lower: 3, bottom: 0, lift: 3, top: 0 },
    restS,
    load: { kind: "none" },
  }) as unknown as Bout;

const item = (key: string, stimulus: string, sets = 3, reps = 10, restS = 60) => ({
  bout: bout(key, sets, reps, restS),
  stimulus,
});

describe("what is kept", () => {
  test.each([
    // a set is 10 repetitions of 6 s: 60 s; a rest is 60 s; a changeover 60 s
    ["the whole session fits: there is no short one", [item("a", "x")], 300, undefined],
    ["fewer sets", [item("a", "x")], 180, [["a", 2]]],
    ["one of two that do the same", [item("a", "x"), item("b", "x")], 300, [["a", 3]]],
    [
      "both of two that do different things",
      [item("a", "x"), item("b", "y")],
      300,
      [
        ["a", 2],
        ["b", 1],
      ],
    ],
    [
      "as many as fit",
      [item("a", "x"), item("b", "y"), item("c", "z")],
      180,
      [
        ["a", 1],
        ["b", 1],
      ],
    ],
    ["not one set fits", [item("a", "x")], 30, undefined],
  ] as const)("%s", (_name, items, limit, expected) => {
    const short = shortSession(items, limit, 60, dosing);
    expect(short?.bouts.map(({ key, sets }) => [key, sets])).toEqual(expected);
  });
});

test("it always fits, in the order of the session, with no more sets than planned", () => {
  const items = fc.array(
    fc.record({
      stimulus: fc.constantFrom("x", "y", "z"),
      sets: fc.integer({ min: 1, max: 6 }),
      reps: fc.integer({ min: 1, max: 15 }),
      rest: fc.integer({ min: 0, max: 180 }),
    }),
    { minLength: 1, maxLength: 7 },
  );
  fc.assert(
    fc.property(items, fc.integer({ min: 1, max: 3600 }), (list, limit) => {
      const all = list.map(({ stimulus, sets, reps, rest }, n) =>
        item(`k${n}`, stimulus, sets, reps, rest),
      );
      const short = shortSession(all, limit, 60, dosing);
      if (!short) return;
      expect(short.minutes).toBeLessThanOrEqual(Math.ceil(limit / 60));
      const places = short.bouts.map(({ key }) => all.findIndex((one) => one.bout.key === key));
      expect([...places].sort((a, b) => a - b)).toEqual(places);
      short.bouts.forEach(({ sets }, n) => {
        expect(sets).toBeGreaterThanOrEqual(1);
        expect(sets).toBeLessThanOrEqual(list[places[n] ?? 0]?.sets ?? 0);
      });
      const more = shortSession(all, limit + 60, 60, dosing);
      const kept = (one: typeof short) =>
        new Set(one.bouts.map(({ key }) => all.find((it) => it.bout.key === key)?.stimulus)).size;
      if (more) expect(kept(more)).toBeGreaterThanOrEqual(kept(short));
    }),
  );
});
