/** What the pain rule says on the phone: the booklet's own sentences, most urgent first. */
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
const friday = session("2026-12-04");
const SESSIONS = [monday, wednesday, friday];
const SETTLE = "call: not settled two times running";
const SIGNS = { callLevel: 8, less: "less", severe: "call: severe", settle: SETTLE };

const entryOf = (one: typeof monday, change: Partial<DiaryEntry> = {}): DiaryEntry => ({
  ...withAll(emptyEntry(one, "b", false, "2026-12-01T00:00:00Z"), "yes", one.date),
  ...change,
});
const diaryOf = (...entries: DiaryEntry[]) => entries.reduce(withEntry, NO_DIARY);

test.each([
  ["at the limit", 5, undefined],
  ["over the limit", 6, { level: "stop", says: ["over"] }],
  ["below the level to call from", 7, { level: "stop", says: ["over"] }],
  ["at the level to call from", 8, { level: "call", says: ["call: severe"] }],
])("pain during: %s", (_, pain, advice) => {
  expect(adviceDuring(pain, bout(), SIGNS)).toEqual(advice);
});

test("pain after: the words of the strictest exercise", () => {
  const strict = bout({
    pain: { kind: "pain-free", comfortable: 0, during: 0, after: 1 },
    painWords: { rule: "r", over: "o", after: "strict", worse: "less" },
  });
  const one = session("2026-11-30", { bouts: [bout(), strict] });
  expect(adviceAfter(1, one, SIGNS)).toBeUndefined();
  expect(adviceAfter(2, one, SIGNS)).toEqual({ level: "ease", says: ["strict", "less"] });
});

describe("the next morning", () => {
  const bad = { worseMorning: true };
  const morning = (now: DiaryEntry, ...before: DiaryEntry[]) =>
    adviceMorning(now, SESSIONS, diaryOf(...before), SIGNS);

  test("at the limit nothing, over it less, two times running a call", () => {
    expect(morning(entryOf(wednesday, { painMorning: 4 }))).toBeUndefined();
    expect(morning(entryOf(wednesday, { painMorning: 5 }))).toEqual({
      level: "ease",
      says: ["worse"],
    });
    expect(morning(entryOf(wednesday, bad), entryOf(monday, bad))).toEqual({
      level: "call",
      says: [SETTLE, "worse"],
    });
  });

  test("of the entries before it the latest decides, the entry itself and later ones do not", () => {
    const [one, two, three] = [entryOf(monday), entryOf(wednesday), entryOf(friday)];
    const level = (...diary: DiaryEntry[]) => morning({ ...three, ...bad }, ...diary)?.level;
    expect(level({ ...one, ...bad }, { ...two, painMorning: 1 })).toBe("ease");
    expect(level({ ...one, painMorning: 1 }, { ...two, ...bad })).toBe("call");
    expect(level({ ...three, ...bad })).toBe("ease");
    expect(morning({ ...two, ...bad }, { ...three, ...bad })?.level).toBe("ease");
  });

  test("a missed session counts on the day on which it was done", () => {
    const late = entryOf(monday, { ...bad, doneOn: "2026-12-03" });
    expect(morning(entryOf(friday, bad), late)?.level).toBe("call");
    expect(morning(entryOf(wednesday, bad), late)?.level).toBe("ease");
  });

  test("two sessions of a day share their next morning, whichever holds the answer", () => {
    const early = (date: string) => session(date, { part: "morning", startsAt: 420 });
    const days = ["2026-11-30", "2026-12-01"].flatMap((date) => [early(date), session(date)]);
    const [a, b, c, d] = days.map((one) => entryOf(one)) as [
      DiaryEntry,
      DiaryEntry,
      DiaryEntry,
      DiaryEntry,
    ];
    const level = (now: DiaryEntry, ...before: DiaryEntry[]) =>
      adviceMorning(now, days, diaryOf(a, b, c, d, ...before), SIGNS)?.level;
    expect(level({ ...b, ...bad }, { ...a, ...bad })).toBe("ease");
    expect(level({ ...d, ...bad }, { ...a, ...bad })).toBe("call");
    expect(level({ ...c, ...bad }, { ...b, ...bad })).toBe("call");
    expect(level(c, { ...d, ...bad }, { ...b, ...bad })).toBe("call");
    expect(level({ ...d, painMorning: 1 }, { ...b, ...bad })).toBeUndefined();
  });

  test.each<[string, Partial<DiaryEntry>, number]>([
    ["moved to another time: by its cards", { date: "2026-12-01" }, 5],
    [
      "with none of its cards any more: by the strictest of the booklet",
      { date: "2026-12-01", exercises: [] },
      1,
    ],
  ])("a session %s", (_, change, over) => {
    const strict = bout({
      card: "circle",
      pain: { kind: "pain-free", comfortable: 0, during: 0, after: 0 },
    });
    const sessions = [monday, session("2026-12-03", { bouts: [strict] })];
    const entry = { ...entryOf(monday), ...change };
    const level = (painMorning: number) =>
      adviceMorning({ ...entry, painMorning }, sessions, NO_DIARY, SIGNS)?.level;
    expect([level(over - 1), level(over)]).toEqual([undefined, "ease"]);
  });
});

describe("before the next session", () => {
  test.each<[string, DiaryEntry, readonly string[] | undefined]>([
    ["nothing was wrong", entryOf(monday), undefined],
    [
      "pain at the limit during",
      withExercise(entryOf(monday), "rise", { pain: 5 }, "2026-11-30"),
      undefined,
    ],
    [
      "pain over the limit during",
      withExercise(entryOf(monday), "rise", { pain: 6 }, "2026-11-30"),
      ["less"],
    ],
    [
      "given up for its pain, with nothing done",
      withExercise(withAll(entryOf(monday), "no", ""), "rise", { pain: 7 }, "2026-11-30"),
      ["less"],
    ],
    [
      "given up for pain to call for",
      withExercise(withAll(entryOf(monday), "no", ""), "rise", { pain: 8 }, "2026-11-30"),
      ["call: severe"],
    ],
    ["pain at the limit after", entryOf(monday, { painAfter: 4 }), undefined],
    ["pain over the limit after", entryOf(monday, { painAfter: 5 }), ["after", "worse"]],
    ["a bad morning", entryOf(monday, { worseMorning: true }), ["worse"]],
    [
      "of a session that was moved",
      entryOf(session("2026-11-29"), { painAfter: 5 }),
      ["after", "worse"],
    ],
  ])("%s", (_, entry, says) => {
    expect(adviceFromLast(diaryOf(entry), SESSIONS, SIGNS)?.says).toEqual(says);
  });

  test("two bad mornings ask for a call", () => {
    const bad = { worseMorning: true };
    const diary = diaryOf(entryOf(monday, bad), entryOf(wednesday, bad));
    expect(adviceFromLast(diary, SESSIONS, SIGNS)).toEqual({
      level: "call",
      says: [SETTLE, "worse"],
    });
  });
});
