/** A start is offered by the rules that laid out the week, whichever session it is: else why not, and when. */
import { describe, expect, test } from "vitest";
import { begunTimes, withBegun } from "../../../src/phone/day/begun.ts";
import type { PlannedSession } from "../../../src/phone/day/data.ts";
import { emptyEntry, withAll, withEntry } from "../../../src/phone/day/entries.ts";
import { holdOf, type Known } from "../../../src/phone/day/hold.ts";
import { pairsOf } from "../../../src/phone/day/pairs.ts";
import { comingFirst, partNow } from "../../../src/phone/day/parts-now.ts";
import type { PartOfDay } from "../../../src/units/day-parts.ts";
import { bout, NO_DIARY, session } from "../support.ts";

const clock = { morning: 7 * 60, midday: 13 * 60, evening: 19 * 60 };
const hours = (n: number) => n * 3600;

/** A session with an exercise of so many hours of recovery. */
const at = (date: string, part: PartOfDay, recovery: number, card = "rise", tissue = "calf") =>
  session(date, {
    part,
    startsAt: clock[part],
    bouts: [
      bout({
        key: card,
        card,
        title: card,
        recoveryS: hours(recovery),
        tissues: [tissue],
        keptClearOf: { before: ["walk"], after: ["match"] },
      }),
    ],
  });

const walk = {
  id: "walk",
  what: "Long walk",
  part: "midday",
  dates: ["2026-12-06"],
  clearBeforeHours: 24,
  clearAfterHours: 48,
} as const;
const match = {
  ...walk,
  id: "match",
  what: "Match",
  dates: ["2026-12-02"],
  part: "evening",
} as const;

interface Case {
  readonly sessions: readonly PlannedSession[];
  readonly done?: readonly PlannedSession[];
  /** The day on which they were done, where it was another. */
  readonly on?: string;
  readonly change?: Partial<Known>;
}

function knownOf({ sessions, done = [], on, change }: Case): Known {
  const diary = done.reduce(
    (all, one) =>
      withEntry(
        all,
        withAll(emptyEntry(one, "b", false, "2026-12-01T00:00:00Z"), "yes", on ?? one.date),
      ),
    NO_DIARY,
  );
  return {
    sessions,
    diary,
    pairs: pairsOf(sessions, diary),
    underWay: undefined,
    clock,
    spacing: { groupHours: {}, events: [] },
    begun: new Map(),
    ...change,
  };
}

/** "rest rise, from 2026-12-02 evening", or "start". */
function said(one: PlannedSession, now: string, known: Known): string {
  const [date = "", time = ""] = now.split(" ");
  const [h = 0, m = 0] = time.split(":").map(Number);
  const hold = holdOf(one, { date, minutes: h * 60 + m }, known);
  if (hold === undefined) return "start";
  const what =
    hold.kind === "rest"
      ? hold.title
      : hold.kind === "next"
        ? `${hold.session.date} ${hold.session.part}`
        : `${hold.event} ${hold.date}`;
  const { from } = hold;
  return `${hold.kind} ${what}${from ? `, from ${from.date} ${from.part}` : ", leave"}`;
}

const twice = [at("2026-12-01", "morning", 8), at("2026-12-01", "evening", 8)];
const [early, late] = [at("2026-12-01", "morning", 8), at("2026-12-01", "evening", 8)];
const daily = ["2026-12-02", "2026-12-03", "2026-12-04"].map((date) => at(date, "morning", 8));
const mon = at("2026-11-30", "evening", 48);
const wed = at("2026-12-02", "evening", 48);
const fri = at("2026-12-04", "evening", 48);
const week = [mon, wed, fri];
const noEvents: Case = { sessions: week };

describe("recovery", () => {
  test.each([
    ["as it was laid out", wed, "2026-12-02 19:00", { ...noEvents, done: [mon] }, "start"],
    ["late in its part of the day", wed, "2026-12-02 22:50", { ...noEvents, done: [mon] }, "start"],
    ["somewhat before its part", wed, "2026-12-02 16:00", { ...noEvents, done: [mon] }, "start"],
    [
      "in the morning of its day",
      wed,
      "2026-12-02 08:00",
      { ...noEvents, done: [mon] },
      "rest rise, from 2026-12-02 evening",
    ],
    ["in the morning, nothing done before", wed, "2026-12-02 08:00", noEvents, "start"],
    [
      "Monday's was done a day late",
      wed,
      "2026-12-02 19:00",
      { ...noEvents, done: [mon], on: "2026-12-01" },
      "rest rise, leave",
    ],
    [
      "the same, and nothing comes after it",
      wed,
      "2026-12-02 19:00",
      { sessions: [mon, wed], done: [mon], on: "2026-12-01" },
      "rest rise, from 2026-12-03 evening",
    ],
    [
      "missed, too near the next",
      mon,
      "2026-12-01 09:00",
      noEvents,
      "next 2026-12-02 evening, leave",
    ],
    ["missed, with its rest", fri, "2026-12-05 09:00", { ...noEvents, done: [mon, wed] }, "start"],
  ] as const)("%s", (_, one, now, given, expected) => {
    expect(said(one, now, knownOf(given))).toBe(expected);
  });

  test("of two on one day, by when the first was begun", () => {
    const known = (begun: string) =>
      knownOf({
        sessions: twice,
        done: [early],
        change: { begun: begunTimes([`2026-12-01 morning ${begun}`]) },
      });
    expect(said(late, "2026-12-01 19:00", known("2026-12-01 420"))).toBe("start");
    // begun at nine, in its part of the day: as it was laid out
    expect(said(late, "2026-12-01 16:30", known("2026-12-01 540"))).toBe("start");
    expect(said(late, "2026-12-01 19:30", known("2026-12-01 1000"))).toBe(
      "rest rise, from 2026-12-02 morning",
    );
  });

  test("of two on one day, the first is not put beside the second", () => {
    const known = knownOf({ sessions: twice });
    const full = { ...known, sessions: [...twice, ...daily] };
    expect(said(early, "2026-12-01 11:00", known)).toBe("start");
    expect(said(early, "2026-12-01 11:01", known)).toBe(
      "next 2026-12-01 evening, from 2026-12-02 morning",
    );
    expect(said(early, "2026-12-01 20:00", known)).toBe(
      "next 2026-12-01 evening, from 2026-12-02 morning",
    );
    expect(said(early, "2026-12-01 20:00", full)).toBe("next 2026-12-01 evening, leave");
    expect(said(late, "2026-12-01 12:00", known)).toBe("start");
  });

  test("hard work on one tissue keeps its hours between exercises too", () => {
    const first = at("2026-12-01", "evening", 48, "rise");
    const other = at("2026-12-02", "evening", 48, "sit");
    const spacing = { groupHours: { calf: 48 }, events: [] };
    const given = { sessions: [first, other], done: [first] };
    expect(said(other, "2026-12-02 19:00", knownOf(given))).toBe("start");
    expect(said(other, "2026-12-02 19:00", knownOf({ ...given, change: { spacing } }))).toBe(
      "rest rise, from 2026-12-03 evening",
    );
  });

  test("a session that is under way counts as done", () => {
    const known = knownOf({ sessions: twice, change: { underWay: early } });
    expect(said(late, "2026-12-01 14:00", known)).toBe("rest rise, from 2026-12-01 evening");
    expect(said(early, "2026-12-01 14:00", { ...known, underWay: late })).toContain("rest rise");
  });
});

describe("events", () => {
  const spacing = { groupHours: {}, events: [walk, match] };
  const sat = at("2026-12-05", "morning", 24);
  test.each([
    ["with 24 hours to go", fri, "2026-12-05 13:00", [fri], "start"],
    [
      "with less",
      fri,
      "2026-12-05 13:01",
      [fri],
      "before Long walk 2026-12-06, from 2026-12-06 evening",
    ],
    [
      "its own session, moved into it",
      sat,
      "2026-12-05 19:00",
      [sat],
      "before Long walk 2026-12-06, from 2026-12-06 evening",
    ],
    ["its own session as laid out", sat, "2026-12-05 09:00", [sat], "start"],
    [
      "the day after a match",
      at("2026-12-03", "evening", 24),
      "2026-12-03 09:00",
      [at("2026-12-03", "evening", 24)],
      "after Match 2026-12-02, from 2026-12-03 evening",
    ],
    [
      "after an event that it is not kept clear of",
      at("2026-12-07", "evening", 24),
      "2026-12-07 08:00",
      [],
      "start",
    ],
  ] as const)("%s", (_, one, now, sessions, expected) => {
    expect(said(one, now, knownOf({ sessions: [...sessions], change: { spacing } }))).toBe(
      expected,
    );
  });

  test("a missed session waits for a time that is kept clear of nothing", () => {
    const thu = at("2026-12-03", "evening", 24);
    const known = knownOf({ sessions: [thu], change: { spacing } });
    expect(said(thu, "2026-12-04 09:00", known)).toBe(
      "after Match 2026-12-02, from 2026-12-04 evening",
    );
  });
});

test.each([
  [0, "morning"],
  [9 * 60 + 59, "morning"],
  [10 * 60, "midday"],
  [15 * 60 + 59, "midday"],
  [16 * 60, "evening"],
  [23 * 60, "evening"],
] as const)("the part of the day at minute %s", (minutes, part) => {
  expect(partNow(minutes, clock)).toBe(part);
});

test("what is due or to come stands before what was due", () => {
  const all = [{ part: "morning" }, { part: "midday" }, { part: "evening" }] as const;
  const order = (now: PartOfDay) => comingFirst(all, now).map(({ part }) => part);
  expect(order("morning")).toEqual(["morning", "midday", "evening"]);
  expect(order("midday")).toEqual(["midday", "evening", "morning"]);
  expect(order("evening")).toEqual(["evening", "morning", "midday"]);
});

test("when a session was begun is kept, the last time of it", () => {
  const moment = { date: "2026-12-01", minutes: 1165 };
  const first = withBegun([], "2026-12-01 evening", moment);
  const other = withBegun(first, "2026-12-02 evening", { date: "2026-12-02", minutes: 5 });
  const again = withBegun(other, "2026-12-01 evening", { ...moment, minutes: 1200 });
  expect([...begunTimes(again)]).toEqual([
    ["2026-12-02 evening", { date: "2026-12-02", minutes: 5 }],
    ["2026-12-01 evening", { date: "2026-12-01", minutes: 1200 }],
  ]);
  expect([...begunTimes(["rubbish", "2026-12-01 evening 2026-12-01 x"])]).toEqual([]);
});
