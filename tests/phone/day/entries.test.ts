/** Entries of the diary as the client's answers make them. */
import { describe, expect, test } from "vitest";
import {
  amountToChange,
  boutsOf,
  doneOf,
  emptyEntry,
  entryFor,
  isUnplanned,
  leftOut,
  plannedAmount,
  withAll,
  withEntry,
  withExercise,
  withFelt,
  writtenAfter,
  writtenAt,
} from "../../../src/phone/day/entries.ts";
import { bout, NO_DIARY, session } from "../support.ts";

const two = session("2026-11-30", {
  bouts: [bout(), bout({ key: "phase/sit", card: "sit", title: "Sit", kg: undefined })],
  short: { minutes: 8, bouts: [{ key: "phase/rise", sets: 2 }] },
});
const empty = emptyEntry(two, "2026-11-25-abcdef", false, "2026-11-30T19:00:00Z");

test("an empty entry plans all and has done nothing", () => {
  expect(empty.done).toBe("no");
  expect(empty.doneOn).toBeUndefined();
  expect(empty.exercises.map(({ planned }) => planned)).toEqual([
    { sets: 3, reps: 10, kg: 8 },
    { sets: 3, reps: 10, kg: undefined },
  ]);
});

test("the short version keeps its exercises and sets alone", () => {
  expect(boutsOf(two, true).map(({ bout: one, sets }) => [one.card, sets])).toEqual([["rise", 2]]);
  expect(emptyEntry(two, "b", true, "").exercises.map(({ planned }) => planned.sets)).toEqual([2]);
  expect(boutsOf({ ...two, short: undefined }, true)).toHaveLength(2);
});

test("going over to the short version and back keeps what was written of the exercises", () => {
  const written = withExercise(empty, "rise", { done: "yes", pain: 2 }, "2026-11-30");
  expect(entryFor(two, undefined, "b", true).short).toBe(true);
  expect(entryFor(two, written, "b", false)).toBe(written);
  const short = entryFor(two, written, "b", true);
  expect(
    short.exercises.map(({ card, done, pain, planned }) => [card, done, pain, planned.sets]),
  ).toEqual([["rise", "yes", 2, 2]]);
  expect([short.short, short.done]).toEqual([true, "yes"]);
  const whole = entryFor(two, short, "b", false);
  expect(whole.exercises.map(({ card, done }) => [card, done])).toEqual([
    ["rise", "yes"],
    ["sit", "no"],
  ]);
  expect(whole.done).toBe("part");
});

test.each([
  ["all", ["yes", "yes"], "yes"],
  ["none", ["no", "no"], "no"],
  ["one of two", ["yes", "no"], "part"],
  ["part of both", ["part", "part"], "part"],
  ["nothing planned", [], "no"],
] as const)("what was done of a session: %s", (_, parts, done) => {
  expect(doneOf(parts)).toBe(done);
});

describe("changing an exercise", () => {
  test("sets what was done of the session, and the day", () => {
    const one = withExercise(empty, "rise", { done: "yes" }, "2026-12-01");
    expect([one.done, one.doneOn]).toEqual(["part", "2026-12-01"]);
    const both = withExercise(one, "sit", { done: "yes" }, "2026-12-02");
    expect([both.done, both.doneOn]).toEqual(["yes", "2026-12-01"]);
    const none = withExercise(
      withExercise(both, "sit", { done: "no" }, "2026-12-02"),
      "rise",
      { done: "no" },
      "2026-12-02",
    );
    expect([none.done, none.doneOn]).toEqual(["no", undefined]);
  });

  test("keeps only amounts that differ from the plan", () => {
    const real = { sets: 2, reps: 10, kg: 8 };
    const [rise] = withExercise(empty, "rise", { done: "part", real }, "d").exercises;
    expect(rise?.real).toEqual({ sets: 2, reps: undefined, kg: undefined });
  });

  test("all at once leaves what is told of an exercise, and one that was left out", () => {
    const real = { sets: 1, reps: 5, kg: 4 };
    const change = { done: "part", real, pain: 7 } as const;
    const told = { ...withExercise(empty, "rise", change, "d"), note: "a note", painAfter: 3 };
    const all = withAll(told, "yes", "2026-11-30");
    expect(all.exercises.map(({ done, real: { reps }, pain }) => [done, reps, pain])).toEqual([
      ["part", 5, 7],
      ["yes", undefined, undefined],
    ]);
    expect([all.done, all.note, all.painAfter]).toEqual(["part", "a note", 3]);
    expect(all.exercises.map(isUnplanned)).toEqual([true, false]);
    expect(withAll(empty, "yes", "d", ["sit"]).exercises.map(({ done }) => done)).toEqual([
      "yes",
      "no",
    ]);
  });

  test.each([
    ["made ready", "ready", 1, ["rise"]],
    ["in its pace", "pace", 0, []],
    ["after it", "after", 0, ["rise"]],
    ["at the end", "end", 1, ["rise", "sit"]],
  ] as const)("exercises that the client has gone past: %s", (_, stage, at, cards) => {
    const day = "2026-11-30";
    const place = { key: `${day} evening`, day, short: false, at, stage, pace: undefined };
    expect(leftOut(two, place)).toEqual(cards);
    expect(leftOut(two, { ...place, key: "2026-12-02 evening" })).toEqual([]);
    expect(leftOut(two, undefined)).toEqual([]);
  });
});

test.each([
  ["the first number", undefined, 4, undefined, ["part", 4]],
  ["less than earlier in the exercise", undefined, 2, 4, ["part", 4]],
  ["more than earlier in the exercise", undefined, 7, 4, ["part", 7]],
  ["none at all", undefined, 0, undefined, ["part", 0]],
  ["of an exercise that was done", "yes", 3, undefined, ["yes", 3]],
] as const)("pain felt in an exercise says that it was tried: %s", (_, done, pain, before, now) => {
  const entry = done ? withExercise(empty, "rise", { done }, "2026-11-30") : empty;
  const felt = withFelt(entry, "rise", { pain, before }, "2026-12-01");
  const [rise] = felt.exercises;
  expect([rise?.done, rise?.pain]).toEqual(now);
  expect(felt.doneOn).toBe(done ? "2026-11-30" : "2026-12-01");
});

test("the diary holds one entry a session, in the order of the plan", () => {
  const morning = emptyEntry(session("2026-11-30", { part: "morning" }), "b", false, "");
  const later = emptyEntry(session("2026-12-02"), "b", false, "");
  const diary = [later, empty, morning, { ...empty, note: "again" }].reduce(withEntry, NO_DIARY);
  expect(diary.entries.map(({ date, part, note }) => `${date} ${part} ${note}`)).toEqual([
    "2026-11-30 morning ",
    "2026-11-30 evening again",
    "2026-12-02 evening ",
  ]);
});

test("of a range of repetitions the top is planned; timed sets have none", () => {
  expect(plannedAmount(bout())).toEqual({ sets: 3, reps: 10, kg: 8 });
  const range = { low: 6, high: 8 };
  expect(plannedAmount(bout({ reps: [range, range, range] })).reps).toBe(8);
  // no one number is what was planned where sets have different ones; the client counts from the most
  const pyramid = bout({ reps: [12, 10, 8].map((n) => ({ low: n, high: n })) });
  expect(plannedAmount(pyramid).reps).toBeUndefined();
  const [exercise] = emptyEntry(
    session("2026-12-01", { bouts: [pyramid] }),
    "b",
    false,
    "",
  ).exercises;
  expect(exercise && amountToChange(pyramid, exercise).reps).toBe(12);
  expect(plannedAmount(bout({ reps: undefined, timeS: 30, kg: undefined }))).toEqual({
    sets: 3,
    reps: undefined,
    kg: undefined,
  });
});

test("an instant is kept in UTC to the second", () => {
  expect(writtenAt(new Date(Date.UTC(2026, 10, 30, 18, 5, 9, 999)))).toBe("2026-11-30T18:05:09Z");
});

test.each([
  ["the first", "2026-11-30T18:05:09Z", undefined, "2026-11-30T18:05:09Z"],
  ["a later one", "2026-11-30T18:05:10Z", "2026-11-30T18:05:09Z", "2026-11-30T18:05:10Z"],
  ["two in one second", "2026-11-30T18:05:09Z", "2026-11-30T18:05:09Z", "2026-11-30T18:05:10Z"],
  ["a clock set back", "2020-01-01T00:00:00Z", "2026-12-31T23:59:59Z", "2027-01-01T00:00:00Z"],
])("a change is marked after the one before it: %s", (_, now, before, written) => {
  expect(writtenAfter(new Date(now), before)).toBe(written);
});
