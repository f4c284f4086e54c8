/** What the pain rule says to each number: ease, stop or call, and never more. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { DiaryEntry } from "../../../src/diary/entry.ts";
import {
  adviceAfter,
  adviceDuring,
  adviceFromLast,
  adviceMorning,
} from "../../../src/phone/day/advice.ts";
import { emptyEntry, withAll, withEntry, withExercise } from "../../../src/phone/day/entries.ts";
import { bout, NO_DIARY, session } from "../support.ts";

const monday = session("2026-11-30");
const wednesday = session("2026-12-02");
const SETTLE = "call: not settled two times running";

const entryOf = (one: typeof monday, change: Partial<DiaryEntry> = {}): DiaryEntry => ({
  ...withAll(emptyEntry(one, "b", false, "2026-12-01T00:00:00Z"), "yes", one.date),
  ...change,
});

test.each([
  ["none", 0, undefined],
  ["at the limit", 5, undefined],
  ["over the limit", 6, { level: "stop", says: ["over"] }],
  ["the worst", 10, { level: "stop", says: ["over"] }],
])("pain during: %s", (_, pain, advice) => {
  expect(adviceDuring(pain, bout())).toEqual(advice);
});

test.each([
  ["at the limit", 4, [bout()], undefined],
  ["over the limit", 5, [bout()], ["after", "worse"]],
  [
    "the strictest exercise decides",
    2,
    [
      bout(),
      bout({
        pain: { kind: "pain-free", comfortable: 0, during: 0, after: 1 },
        painWords: { rule: "r", over: "o", after: "strict", worse: "less" },
      }),
    ],
    ["strict", "less"],
  ],
])("pain after: %s", (_, pain, bouts, says) => {
  expect(adviceAfter(pain, session("2026-11-30", { bouts }))?.says).toEqual(says);
});

describe("the next morning", () => {
  test.each([
    ["as usual", {}, {}, undefined],
    ["as usual, but over the limit", {}, { painMorning: 5 }, "ease"],
    ["worse", {}, { worseMorning: true, painMorning: 1 }, "ease"],
    ["worse two times running", { worseMorning: true }, { worseMorning: true }, "call"],
    ["over the limit, then worse", { painMorning: 9 }, { worseMorning: true }, "call"],
    ["worse last time only", { worseMorning: true }, { painMorning: 1 }, undefined],
  ])("%s", (_, before, now, level) => {
    const diary = withEntry(NO_DIARY, entryOf(monday, before));
    const advice = adviceMorning(entryOf(wednesday, now), wednesday, diary, SETTLE);
    expect(advice?.level).toBe(level);
    if (level === "call") expect(advice?.says[0]).toBe(SETTLE);
  });

  test("a session left out between two bad mornings does not hide them", () => {
    const left = withAll(entryOf(wednesday), "no", "2026-12-02");
    const diary = withEntry(withEntry(NO_DIARY, entryOf(monday, { worseMorning: true })), left);
    const friday = session("2026-12-04");
    const advice = adviceMorning(entryOf(friday, { worseMorning: true }), friday, diary, SETTLE);
    expect(advice?.level).toBe("call");
  });
});

describe("before the next session", () => {
  const last = (entry: DiaryEntry) =>
    adviceFromLast(withEntry(NO_DIARY, entry), [monday, wednesday], SETTLE);
  test.each([
    ["nothing was wrong", entryOf(monday), undefined],
    [
      "pain over the limit during",
      withExercise(entryOf(monday), "rise", { pain: 7 }, "2026-11-30"),
      ["worse"],
    ],
    [
      "given up for its pain, with nothing done",
      withExercise(withAll(entryOf(monday), "no", ""), "rise", { pain: 8 }, "2026-11-30"),
      ["worse"],
    ],
    ["pain over the limit after", entryOf(monday, { painAfter: 8 }), ["after", "worse"]],
    ["a bad morning", entryOf(monday, { worseMorning: true }), ["worse"]],
    ["of a session no longer planned", entryOf(session("2026-11-29"), { painAfter: 9 }), undefined],
  ])("%s", (_, entry, says) => {
    expect(last(entry)?.says).toEqual(says);
  });
});

test("more pain never brings milder advice", () => {
  const level = { none: 0, ease: 1, stop: 2, call: 3 } as const;
  const scale = fc.integer({ min: 0, max: 10 });
  fc.assert(
    fc.property(scale, scale, fc.integer({ min: 0, max: 10 }), (a, b, during) => {
      const limits = bout({ pain: { kind: "monitored", comfortable: 0, during, after: during } });
      const one = session("2026-11-30", { bouts: [limits] });
      const [low, high] = [Math.min(a, b), Math.max(a, b)];
      for (const advice of [
        (pain: number) => adviceDuring(pain, limits),
        (pain: number) => adviceAfter(pain, one),
        (painMorning: number) => adviceMorning(entryOf(one, { painMorning }), one, NO_DIARY, ""),
      ]) {
        expect(level[advice(high)?.level ?? "none"]).toBeGreaterThanOrEqual(
          level[advice(low)?.level ?? "none"],
        );
      }
    }),
  );
});
