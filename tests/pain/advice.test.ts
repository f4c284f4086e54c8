/**
 * What each number of pain asks for, at the edges of the published zones: 2 and 5 (Thomeé 1997, Phys
 * Ther 77:1690, from memory), 3 and 5 in later forms; up to 5 in the hours after, settled by the next
 * morning (Silbernagel et al. 2007, Am J Sports Med 35:897).
 */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { AdviceLevel } from "../../src/pain/advice.ts";
import * as pain from "../../src/pain/advice.ts";
import type { Felt, FeltSession } from "../../src/pain/felt.ts";
import type { PainLimits } from "../../src/pain/limits.ts";

interface Bout {
  readonly card: string;
  readonly pain: PainLimits;
}

const bout = (card: string, during: number, after = during): Bout => ({
  card,
  pain: {
    kind: during === 0 ? "pain-free" : "monitored",
    comfortable: Math.min(2, during),
    during,
    after,
  },
});
const FIVE = bout("rise", 5);
const THREE = bout("squat", 3);
const FREE = bout("circle", 0);

const felt = (change: Partial<Felt> = {}): Felt => ({
  done: "yes",
  exercises: [],
  painAfter: undefined,
  painMorning: undefined,
  worseMorning: undefined,
  ...change,
});

/** A session of a day of December 2026. */
const on = (
  day: number,
  change: Partial<Felt> = {},
  bouts: readonly Bout[] = [FIVE],
): FeltSession<Bout> => ({
  day: `2026-12-${String(day).padStart(2, "0")}`,
  felt: felt(change),
  bouts,
});

/** Above the scale: no number asks for a call by itself. */
const NEVER = 11;
const adviceDuring = (n: number, one: Bout) => pain.adviceDuring(n, one, NEVER);
const adviceAfter = (n: number, bouts: readonly Bout[]) => pain.adviceAfter(n, bouts, NEVER);
const adviceMorning = (day: string, diary: readonly FeltSession<Bout>[]) =>
  pain.adviceMorning(day, diary, NEVER);
const adviceFromLast = (diary: readonly FeltSession<Bout>[], level = NEVER) =>
  pain.adviceFromLast(diary, level);

/** What is said to the morning after the day of a session, with the other sessions of a diary. */
const morningOf = (one: FeltSession<Bout>, others: readonly FeltSession<Bout>[] = []) =>
  adviceMorning(one.day, [...others, one]);

const NOTHING_BELOW = [0, 2, 3, 5, 5.5, 6, 10];

describe("pain at and above each limit", () => {
  const edges: [number, number[]][] = [
    [5, [0, 2, 3, 5]],
    [3, [0, 2, 3]],
    [2, [0, 2]],
    [0, [0]],
    [5.5, [0, 2, 3, 5, 5.5]],
    [10, NOTHING_BELOW],
  ];
  test.each(edges)("limit %d: all right up to %j", (limit, allowed) => {
    const one = bout("rise", limit);
    for (const pain of NOTHING_BELOW) {
      const right = allowed.includes(pain);
      const level = (advice: { level: AdviceLevel } | undefined) => advice?.level ?? "none";
      expect([pain, level(adviceDuring(pain, one))]).toEqual([pain, right ? "none" : "stop"]);
      expect([pain, level(adviceAfter(pain, [one]))]).toEqual([pain, right ? "none" : "ease"]);
      const morning = morningOf(on(2, { painMorning: pain }, [one]), []);
      expect([pain, level(morning)]).toEqual([pain, right ? "none" : "ease"]);
      for (const change of [
        { painAfter: pain },
        { painMorning: pain },
        { exercises: [{ card: "rise", pain }] },
      ]) {
        const last = adviceFromLast([on(2, change, [one])]);
        expect([pain, level(last)]).toEqual([pain, right ? "none" : "ease"]);
      }
    }
  });

  test("the hours after have a limit of their own", () => {
    const one = bout("rise", 5, 2);
    expect(adviceDuring(5, one)).toBeUndefined();
    expect(adviceAfter(2, [one])).toBeUndefined();
    expect(adviceAfter(3, [one])).toEqual({ level: "ease", over: "after", by: one });
    expect(morningOf(on(2, { painMorning: 3 }, [one]), [])?.over).toBe("morning");
  });

  test("after a session of several exercises the strictest counts", () => {
    expect(adviceAfter(4, [FIVE, THREE])).toEqual({ level: "ease", over: "after", by: THREE });
    expect(adviceAfter(3, [FIVE, THREE])).toBeUndefined();
    expect(adviceAfter(1, [FIVE, FREE])?.by).toBe(FREE);
    expect(morningOf(on(2, { painMorning: 4 }, [FIVE, THREE]), [])?.by).toBe(THREE);
  });

  test("while exercising only the exercise itself counts", () => {
    expect(adviceDuring(5, FIVE)).toBeUndefined();
    const both = on(2, { exercises: [{ card: "rise", pain: 5 }] }, [FREE, FIVE]);
    expect(adviceFromLast([both])).toBeUndefined();
    const over = on(2, { exercises: [{ card: "circle", pain: 1 }] }, [FIVE, FREE]);
    expect(adviceFromLast([over])).toEqual({ level: "ease", over: "during", by: FREE });
  });

  test("without an exercise there is no advice", () => {
    expect(adviceAfter(9, [])).toBeUndefined();
    expect(morningOf(on(2, { worseMorning: true }, []), [])).toBeUndefined();
    expect(adviceFromLast([on(2, { painAfter: 9 }, [])])).toBeUndefined();
    expect(adviceFromLast([])).toBeUndefined();
  });
});

describe("the next morning", () => {
  const bad = { worseMorning: true };
  const usual = { worseMorning: false, painMorning: 1 };
  test.each<[string, Partial<Felt>, readonly Bout[], AdviceLevel | undefined]>([
    ["nothing written", {}, [FIVE], undefined],
    ["worse than usual, whatever the number", { ...bad, painMorning: 0 }, [FIVE], "ease"],
    ["usual, at the limit", { worseMorning: false, painMorning: 5 }, [FIVE], undefined],
    ["usual, but over the limit", { worseMorning: false, painMorning: 6 }, [FIVE], "ease"],
    ["pain-free, a number and no word", { painMorning: 1 }, [FREE], "ease"],
    ["pain-free, no more than usual", usual, [FREE], undefined],
    ["pain-free, worse than usual", { ...bad, painMorning: 1 }, [FREE], "ease"],
  ])("%s", (_, change, bouts, level) => {
    expect(morningOf(on(2, change, bouts), [])?.level).toBe(level);
  });

  test.each<[string, FeltSession<Bout>[], AdviceLevel]>([
    ["the first of the plan", [], "ease"],
    ["after a bad one", [on(2, bad)], "call"],
    ["after a good one", [on(2, usual)], "ease"],
    ["after bad, then good", [on(2, bad), on(4, usual)], "ease"],
    ["after good, then bad", [on(2, usual), on(4, bad)], "call"],
    ["after bad, then good, whatever the order given", [on(4, usual), on(2, bad)], "ease"],
    ["after a number over the limit", [on(2, { painMorning: 6 })], "call"],
    ["after a number at the limit", [on(2, { painMorning: 5 })], "ease"],
    ["after bad, then one left out", [on(2, bad), on(4, { done: "no" })], "call"],
    ["after bad, then a morning not written down", [on(2, bad), on(4)], "call"],
    [
      "after bad, then good, then left out",
      [on(2, bad), on(3, usual), on(4, { done: "no" })],
      "ease",
    ],
    [
      "after bad, then one given up for its pain, well in the morning",
      [on(2, bad), on(4, { ...usual, done: "no", exercises: [{ card: "rise", pain: 7 }] })],
      "ease",
    ],
    ["a morning has two sessions, both bad", [on(6, bad)], "ease"],
    ["and another session that day, well", [on(6, usual)], "ease"],
    ["after a day of two sessions, both bad", [on(5, bad), on(5, bad)], "call"],
    ["after a day of two sessions, the later one not asked", [on(5, bad), on(5)], "call"],
    ["after a day of two sessions, the earlier one not asked", [on(5), on(5, bad)], "call"],
    ["after a day answered twice, bad and well", [on(5, bad), on(5, usual)], "call"],
    ["after a day answered twice, well and bad", [on(5, usual), on(5, bad)], "call"],
    ["after bad, then a day of two, well", [on(4, bad), on(5, usual), on(5)], "ease"],
    ["what came later does not count", [on(8, bad)], "ease"],
  ])("a bad one, %s", (_, diary, level) => {
    const advice = morningOf(on(6, bad), diary);
    expect(advice?.level).toBe(level);
    expect(advice?.over).toBe(level === "call" ? "mornings" : "morning");
  });

  test("the sessions of a day share the strictest limit of all their exercises", () => {
    const four = { painMorning: 4 };
    expect(morningOf(on(6, four, [FIVE]), [on(6, {}, [THREE])])?.by).toBe(THREE);
    expect(morningOf(on(6, four, [FIVE]), [on(6, { done: "no" }, [THREE])])).toBeUndefined();
  });

  test("each morning is held against the session that came before it", () => {
    const four = { painMorning: 4 };
    expect(morningOf(on(6, { painMorning: 4 }, [THREE]), [on(2, four, [FIVE])])?.level).toBe(
      "ease",
    );
    expect(morningOf(on(6, { painMorning: 6 }, [FIVE]), [on(2, four, [THREE])])?.level).toBe(
      "call",
    );
  });

  test("a session no longer planned is held against the present one", () => {
    const gone = on(2, { painMorning: 4 }, []);
    expect(morningOf(on(6, bad, [THREE]), [gone])?.level).toBe("call");
    expect(morningOf(on(6, bad, [FIVE]), [gone])?.level).toBe("ease");
  });
});

describe("from the last session", () => {
  const over = { exercises: [{ card: "rise", pain: 6 }] };
  test.each<[string, FeltSession<Bout>[], string | undefined]>([
    ["all was well", [on(2, { painAfter: 5, painMorning: 0 })], undefined],
    ["the morning before all else", [on(2, { painAfter: 6, painMorning: 6, ...over })], "morning"],
    ["then the hours after", [on(2, { painAfter: 6, painMorning: 5, ...over })], "after"],
    ["then the exercise", [on(2, { painAfter: 5, painMorning: 5, ...over })], "during"],
    ["given up for its pain", [on(2, { done: "no", ...over })], "during"],
    ["done in part", [on(2, { done: "part", painAfter: 6 })], "after"],
    ["the latest counts", [on(2, { painAfter: 6 }), on(4)], undefined],
    ["the latest by its day", [on(4, { painAfter: 6 }), on(2)], "after"],
    ["one left out does not", [on(2, { painAfter: 6 }), on(4, { done: "no" })], "after"],
    [
      "one left out with no number either",
      [
        on(2, { painAfter: 6 }),
        on(4, { done: "no", exercises: [{ card: "rise", pain: undefined }] }),
      ],
      "after",
    ],
    ["two bad mornings", [on(2, { painMorning: 6 }), on(4, { worseMorning: true })], "mornings"],
    ["of a day both sessions", [on(2, { painAfter: 6 }), on(2)], "after"],
    ["of a day the morning of either", [on(2, { worseMorning: true }), on(2)], "morning"],
  ])("%s", (_, diary, what) => {
    expect(adviceFromLast(diary)?.over).toBe(what);
  });
});

describe("from the level to call from on", () => {
  test.each([
    [8, [0, 5, 6, 7, 7.5], [8, 8.5, 10]],
    [6.5, [0, 5, 6], [6.5, 7, 10]],
    [10, [0, 9.5], [10]],
    [1, [0, 0.5], [1, 10]],
  ])("%d: a call, whenever it was felt and whatever the exercise", (level, below, from) => {
    for (const one of [FIVE, FREE, bout("all", 10)]) {
      for (const n of [...below, ...from]) {
        const here = from.includes(n) ? "call" : "less";
        const said = (advice: { level: AdviceLevel } | undefined) =>
          advice?.level === "call" ? "call" : "less";
        const told = [
          pain.adviceDuring(n, one, level),
          pain.adviceAfter(n, [one], level),
          pain.adviceMorning("2026-12-02", [on(2, { painMorning: n }, [one])], level),
          adviceFromLast([on(2, { painAfter: n }, [one])], level),
          adviceFromLast([on(2, { painMorning: n, worseMorning: false }, [one])], level),
          adviceFromLast([on(2, { exercises: [{ card: one.card, pain: n }] }, [one])], level),
        ];
        expect([n, ...told.map(said)]).toEqual([n, ...told.map(() => here)]);
      }
    }
  });

  test("pain that came suddenly asks for a call at any number", () => {
    for (const n of [0, 5, 10]) {
      expect(pain.adviceDuring(n, FIVE, 8, true)).toEqual({
        level: "call",
        over: "during",
        by: FIVE,
      });
    }
  });

  test("sudden pain of the last day, with or without a number, asks for a call", () => {
    for (const n of [undefined, 2]) {
      const day = on(2, { done: "no", exercises: [{ card: "rise", pain: n, sudden: true }] });
      expect(adviceFromLast([day], 8)).toEqual({ level: "call", over: "during", by: FIVE });
    }
  });

  test("a call comes before a milder word of the same day", () => {
    const day = on(2, { worseMorning: true, exercises: [{ card: "rise", pain: 9 }] });
    expect(adviceFromLast([day], 8)).toEqual({ level: "call", over: "during", by: FIVE });
  });
});

test("more pain never brings milder advice, and no advice asks for more", () => {
  const rank = { none: 0, ease: 1, stop: 2, call: 3 } as const;
  const scale = fc.integer({ min: 0, max: 20 }).map((n) => n / 2);
  const morning = fc.record({
    painMorning: fc.option(scale, { nil: undefined }),
    worseMorning: fc.option(fc.boolean(), { nil: undefined }),
  });
  fc.assert(
    fc.property(scale, scale, scale, scale, morning, (a, b, limit, callLevel, before) => {
      const one = bout("rise", limit);
      const [low, high] = [Math.min(a, b), Math.max(a, b)];
      const earlier = [on(2, before, [one])];
      for (const advice of [
        (n: number) => pain.adviceDuring(n, one, callLevel),
        (n: number) => pain.adviceAfter(n, [one], callLevel),
        (painMorning: number) =>
          pain.adviceMorning("2026-12-04", [...earlier, on(4, { painMorning }, [one])], callLevel),
        (painAfter: number) => adviceFromLast([...earlier, on(4, { painAfter }, [one])], callLevel),
      ]) {
        const level = (n: number) => rank[advice(n)?.level ?? "none"];
        expect(level(high)).toBeGreaterThanOrEqual(level(low));
      }
    }),
    { seed: 13 },
  );
});
