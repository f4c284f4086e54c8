/** Which session is due on a day, when a missed one may still be done, and when the next morning is asked for. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Diary, sessionKey } from "../../../src/diary/entry.ts";
import type { PlannedSession } from "../../../src/phone/day/data.ts";
import { emptyEntry, withAll, withEntry } from "../../../src/phone/day/entries.ts";
import type { Known } from "../../../src/phone/day/hold.ts";
import { pairsOf } from "../../../src/phone/day/pairs.ts";
import { isOddClock, morningOf, todayOf } from "../../../src/phone/day/today.ts";
import { addDays } from "../../../src/units/dates.ts";
import { bout, NO_DIARY, session } from "../support.ts";

// Monday, Wednesday, Friday, and Monday
const week = ["2026-11-30", "2026-12-02", "2026-12-04", "2026-12-07"].map((date) => session(date));
const MADE = "2026-11-25";

const did = (sessions: readonly PlannedSession[], on?: string): Diary =>
  sessions.reduce(
    (diary, one) =>
      withEntry(
        diary,
        withAll(emptyEntry(one, "b", false, "2026-12-01T00:00:00Z"), "yes", on ?? one.date),
      ),
    NO_DIARY,
  );
/** Parts of the day as in most plans; nothing but recovery keeps sessions apart. */
const known = (sessions: readonly PlannedSession[], diary: Diary): Known => ({
  sessions,
  diary,
  pairs: pairsOf(sessions, diary),
  underWay: undefined,
  clock: { morning: 7 * 60, midday: 13 * 60, evening: 19 * 60 },
  spacing: { groupHours: {}, events: [] },
  begun: new Map(),
});
const dueOf = (
  sessions: readonly PlannedSession[],
  diary: Diary,
  now: Parameters<typeof todayOf>[1],
  odd: boolean,
) => todayOf(known(sessions, diary), now, odd);
const at = (date: string, clock = "09:00") => {
  const [hours = 0, minutes = 0] = clock.split(":").map(Number);
  return { date, minutes: hours * 60 + minutes };
};
const dates = (sessions: readonly PlannedSession[]) => sessions.map(({ date }) => date);

describe("a day", () => {
  test.each([
    ["before the program", "2026-11-28", [], "2026-11-30", false],
    ["of a session", "2026-11-30", ["2026-11-30"], "2026-12-02", false],
    ["between two", "2026-12-01", [], "2026-12-02", false],
    ["of the last", "2026-12-07", ["2026-12-07"], undefined, false],
    ["after the last", "2026-12-08", [], undefined, true],
  ] as const)("%s", (_, date, today, next, over) => {
    const found = dueOf(week, did(week), at(date), false);
    expect(dates(found.sessions)).toEqual(today);
    expect(found.next?.date).toBe(next);
    expect(found.over).toBe(over);
  });

  test.each([
    ["as made", "2026-11-25", false],
    ["the day before it was made, in another time zone", "2026-11-24", false],
    ["long before it was made", "2020-01-01", true],
    ["a year after it", "2027-11-30", false],
    ["many years after it", "2036-01-01", true],
  ])("the device's date: %s", (_, date, odd) => {
    expect(isOddClock(week, at(date), MADE)).toBe(odd);
  });
});

test("with a date that cannot be right, the first session not written down is offered", () => {
  const found = dueOf(week, did(week.slice(0, 2)), at("2019-01-01"), true);
  expect(dates(found.sessions)).toEqual(["2026-12-04"]);
  expect([found.missed, found.next, found.over]).toEqual([undefined, undefined, false]);
});

describe("a missed session", () => {
  test.each([
    [
      "the day after, the next one too close",
      week,
      NO_DIARY,
      at("2026-12-01"),
      "2026-11-30",
      false,
    ],
    [
      "two days free before the next",
      week,
      did(week.slice(0, 2)),
      at("2026-12-05"),
      "2026-12-04",
      true,
    ],
    [
      "by the evening it is too late for Monday",
      week,
      did(week.slice(0, 2)),
      at("2026-12-05", "19:01"),
      "2026-12-04",
      false,
    ],
    ["the last of the program", week, did(week.slice(0, 3)), at("2026-12-08"), "2026-12-07", true],
    ["on a day with a session of its own", week, NO_DIARY, at("2026-12-02"), "2026-11-30", false],
    ["written down already", week, did(week.slice(0, 3)), at("2026-12-06"), undefined, false],
    ["three days ago", week.slice(0, 1), NO_DIARY, at("2026-12-03"), "2026-11-30", true],
    [
      "with just its recovery before the next",
      week,
      did(week.slice(0, 2)),
      at("2026-12-05", "19:00"),
      "2026-12-04",
      true,
    ],
    [
      "with just its recovery since the last",
      [session("2026-12-02"), session("2026-12-03")],
      did([session("2026-12-02")]),
      at("2026-12-04", "19:00"),
      "2026-12-03",
      true,
    ],
    [
      "a minute short of its recovery since the last",
      [session("2026-12-02"), session("2026-12-03")],
      did([session("2026-12-02")]),
      at("2026-12-04", "18:59"),
      "2026-12-03",
      false,
    ],
    ["too long ago to speak of", week.slice(0, 1), NO_DIARY, at("2026-12-04"), undefined, false],
    [
      "its exercise was done yesterday",
      week,
      did([session("2026-12-02")], "2026-12-04"),
      at("2026-12-05"),
      "2026-12-04",
      false,
    ],
  ] as const)("%s", (_, sessions, diary, now, date, mayDo) => {
    const { missed } = dueOf(sessions, diary, now, false);
    expect(missed?.session.date).toBe(date);
    expect(missed?.mayDo ?? false).toBe(mayDo);
  });

  test("is never offered against the recovery of any of its exercises", () => {
    const plans = fc.record({
      gaps: fc.array(fc.integer({ min: 1, max: 4 }), { minLength: 2, maxLength: 8 }),
      recovery: fc.integer({ min: 0, max: 96 }),
      later: fc.integer({ min: 0, max: 30 }),
      clock: fc.integer({ min: 0, max: 1439 }),
      done: fc.array(fc.boolean(), { minLength: 9, maxLength: 9 }),
    });
    fc.assert(
      fc.property(plans, ({ gaps, recovery, later, clock, done }) => {
        let date = "2026-11-30";
        const sessions = gaps.map((gap) => {
          date = addDays(date, gap);
          return session(date, { bouts: [bout({ recoveryS: recovery * 3600 })] });
        });
        const now = { date: addDays("2026-11-30", later), minutes: clock };
        const past = sessions.filter((one, n) => one.date < now.date && done[n]);
        const { missed } = dueOf(sessions, did(past), now, false);
        if (!missed?.mayDo) return;
        const hours = (day: string) =>
          Math.abs(
            (Date.parse(`${day}T19:00Z`) - Date.parse(`${now.date}T00:00Z`)) / 3_600_000 -
              clock / 60,
          );
        for (const one of [...past, ...sessions.filter((other) => other.date > now.date)]) {
          expect(hours(one.date)).toBeGreaterThanOrEqual(recovery);
        }
      }),
    );
  });
});

describe("the next morning", () => {
  const monday = did(week.slice(0, 1));
  test.each([
    ["is not asked on the same day", monday, at("2026-11-30", "23:00"), [], undefined],
    ["is asked on the next", monday, at("2026-12-01"), [], "2026-11-30"],
    ["and three days later still", monday, at("2026-12-03"), [], "2026-11-30"],
    ["but not after that", monday, at("2026-12-04"), [], undefined],
    [
      "nor when the client does not remember",
      monday,
      at("2026-12-01"),
      ["2026-11-30 evening"],
      undefined,
    ],
    ["of the latest session first", did(week.slice(0, 2)), at("2026-12-03"), [], "2026-12-02"],
    [
      "of the day on which it was really done",
      did([session("2026-11-30")], "2026-12-01"),
      at("2026-12-01"),
      [],
      undefined,
    ],
  ] as const)("%s", (_, diary, now, passed, date) => {
    expect(morningOf(diary, now.date, passed)?.date).toBe(date);
  });

  test("is asked once, where two sessions were done on one day", () => {
    const early = session("2026-11-30", { part: "morning", startsAt: 7 * 60 });
    const both = did([early, session("2026-11-30")]);
    const evening = morningOf(both, "2026-12-01", []);
    if (!evening) throw new Error("nothing is asked");
    expect(evening.part).toBe("evening");
    const answered = withEntry(both, { ...evening, painMorning: 0 });
    expect(morningOf(answered, "2026-12-01", [])).toBeUndefined();
    expect(morningOf(both, "2026-12-01", ["2026-11-30 evening"])).toBeUndefined();
  });

  test("is not asked once it is answered, nor of a session that was not done", () => {
    const [entry] = monday.entries;
    if (!entry) throw new Error("no entry");
    const answered = withEntry(monday, { ...entry, painMorning: 0 });
    expect(morningOf(answered, "2026-12-01", [])).toBeUndefined();
    const not = withEntry(monday, withAll(entry, "no", "2026-11-30"));
    expect(morningOf(not, "2026-12-01", [])).toBeUndefined();
  });
});

test("two sessions of a day are two", () => {
  const both = [
    session("2026-11-30", { part: "morning", startsAt: 7 * 60 }),
    session("2026-11-30"),
  ];
  const found = dueOf(both, NO_DIARY, at("2026-11-30"), false);
  expect(found.sessions.map(sessionKey)).toEqual(["2026-11-30 morning", "2026-11-30 evening"]);
});
