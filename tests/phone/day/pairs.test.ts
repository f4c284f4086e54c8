/** Entries are found by plan, day and card, also where a re-issued booklet has moved the times. */
import { describe, expect, test } from "vitest";
import { adviceFromLast } from "../../../src/phone/day/advice.ts";
import type { PlannedSession } from "../../../src/phone/day/data.ts";
import { emptyEntry, entryFor, withEntry, withExercise } from "../../../src/phone/day/entries.ts";
import { entryToWrite, pairsOf } from "../../../src/phone/day/pairs.ts";
import { todayOf } from "../../../src/phone/day/today.ts";
import type { PartOfDay } from "../../../src/units/day-parts.ts";
import { bout, NO_DIARY, session } from "../support.ts";

const DAY = "2026-12-02";
const at = (part: PartOfDay, cards: string, date = DAY) =>
  session(date, {
    part,
    bouts: [...cards].map((card) => bout({ key: card, card, title: card })),
  });
const written = (part: PartOfDay, cards: string, date = DAY) => {
  const empty = emptyEntry(at(part, cards, date), "b", false, "2026-12-02T19:00:00Z");
  return [...cards].reduce(
    (entry, card) => withExercise(entry, card, { done: "yes" }, date),
    empty,
  );
};
const diaryOf = (...entries: ReturnType<typeof written>[]) => entries.reduce(withEntry, NO_DIARY);
const all = [written("morning", "A"), written("midday", "B"), written("evening", "C")];

describe("a day in a re-issued booklet", () => {
  test.each([
    ["as it was", [at("evening", "A")], [written("evening", "A")], ["evening"]],
    ["moved", [at("morning", "A")], [written("evening", "A")], ["evening"]],
    [
      "swapped",
      [at("morning", "B"), at("evening", "A")],
      [written("morning", "A")],
      [undefined, "morning"],
    ],
    ["with another exercise", [at("evening", "Z")], [written("evening", "A")], ["evening"]],
    [
      "twice the same, of which the later one was done",
      [at("morning", "A"), at("evening", "A")],
      [written("evening", "A")],
      [undefined, "evening"],
    ],
    [
      "of one that shares one exercise",
      [at("morning", "AB")],
      [written("evening", "BC")],
      ["evening"],
    ],
    ["on another day", [at("evening", "A")], [written("evening", "A", "2026-12-03")], [undefined]],
    [
      "all moved on",
      [at("morning", "C"), at("midday", "A"), at("evening", "B")],
      all,
      ["evening", "morning", "midday"],
    ],
  ])("%s", (_, sessions, entries, parts) => {
    const { entryOf, sessionOf } = pairsOf(sessions, diaryOf(...entries));
    const found = sessions.map(entryOf);
    expect(found.map((entry) => entry?.part)).toEqual(parts);
    for (const [n, entry] of found.entries()) {
      if (entry) expect(sessionOf(entry)).toBe(sessions[n]);
    }
  });

  test("a session that was done is not missed, and what hurt in it still holds", () => {
    const done = written("evening", "A");
    const diary = diaryOf(withExercise(done, "A", { pain: 7 }, DAY));
    const moved = [at("morning", "A"), at("morning", "A", "2026-12-04")];
    const now = { date: "2026-12-03", minutes: 600 };
    const known = {
      sessions: moved,
      diary,
      pairs: pairsOf(moved, diary),
      underWay: undefined,
      clock: { morning: 420, midday: 780, evening: 1140 },
      spacing: { groupHours: {}, events: [] },
      begun: new Map(),
    };
    const signs = { callLevel: 8, less: "less", severe: "severe", settle: "settle" };
    expect(todayOf(known, now, false).missed).toBeUndefined();
    expect(adviceFromLast(diary, moved, signs)?.says).toEqual(["less"]);
  });
});

describe("what is written next", () => {
  const write = (
    one: PlannedSession,
    sessions: readonly PlannedSession[],
    ...entries: ReturnType<typeof written>[]
  ) => {
    const diary = diaryOf(...entries);
    return entryToWrite(one, diary, pairsOf(sessions, diary), "b", false);
  };

  test("goes on with the entry under its own name", () => {
    const moved = at("morning", "A");
    const entry = write(moved, [moved], written("evening", "A"));
    expect([entry.part, entry.done]).toEqual(["evening", "yes"]);
  });

  test("is never put over the entry of another session", () => {
    const [first, second] = [at("morning", "B"), at("evening", "A")];
    const entry = write(first, [first, second], written("morning", "A"));
    expect([entry.part, entry.done]).toEqual(["midday", "no"]);
    const fresh = write(first, [first, second]);
    expect(fresh.part).toBe("morning");
  });

  test("keeps what is told of exercises that the session no longer has", () => {
    const told = withExercise(written("evening", "AB"), "B", { done: "no", pain: 7 }, DAY);
    const entry = entryFor(at("evening", "AC"), told, "b", false);
    expect(entry.exercises.map(({ card, done, pain }) => [card, done, pain])).toEqual([
      ["A", "yes", undefined],
      ["C", "no", undefined],
      ["B", "no", 7],
    ]);
  });
});
