/** A call stays due until the client has made it or a newer booklet has come; nothing that goes well ends it. */
import { describe, expect, test } from "vitest";
import { type Call, dueCalls, type WrittenSession } from "../../src/pain/call.ts";
import type { Felt, Limited } from "../../src/pain/felt.ts";

const RISE: Limited = {
  card: "rise",
  pain: { kind: "monitored", comfortable: 2, during: 5, after: 5 },
};
const MADE = "2026-11-25";

/** A session of a day of December 2026, written down in a booklet made on the 25th of November. */
const on = (
  day: number,
  change: Partial<Felt> = {},
  bookletOf = MADE,
): WrittenSession<Limited> => ({
  day: `2026-12-${String(day).padStart(2, "0")}`,
  felt: {
    done: "yes",
    exercises: [],
    painAfter: undefined,
    painMorning: undefined,
    worseMorning: undefined,
    ...change,
  },
  bouts: [RISE],
  bookletOf,
});
const during = (pain: number, card = "rise") => ({ exercises: [{ card, pain }] });
const bad = { worseMorning: true };
const well = { painMorning: 0, worseMorning: false };

const due = (diary: WrittenSession<Limited>[], calls: Call[] = [], made = MADE): string[] =>
  dueCalls(diary, calls, made, 8).map(({ id }) => id.replace("2026-12-", ""));
const called = (...told: [string, number][]): Call => ({
  at: "2026-12-03T08:00:00Z",
  booklet: `${MADE}-abc`,
  for: told.map(([id, pain]) => ({ id: `2026-12-${id}`, pain })),
});

test.each<[string, WrittenSession<Limited>[], string[]]>([
  ["nothing", [on(2)], []],
  ["pain below the level", [on(2, { ...during(7.5), painAfter: 7, painMorning: 7 })], []],
  ["pain at the level, during", [on(2, during(8))], ["02 during rise"]],
  ["after", [on(2, { painAfter: 8 })], ["02 after"]],
  ["the next morning", [on(2, { painMorning: 8 })], ["02 morning"]],
  ["an exercise that the booklet no longer has", [on(2, during(9, "gone"))], ["02 during gone"]],
  [
    "pain that came suddenly, whatever its number",
    [on(2, { exercises: [{ card: "rise", pain: undefined, sudden: true }] })],
    ["02 sudden rise"],
  ],
  ["pain that did not", [on(2, { exercises: [{ card: "rise", pain: 5, sudden: false }] })], []],
  ["one bad morning", [on(2, bad)], []],
  ["two bad mornings running", [on(2, bad), on(4, bad)], ["04 mornings"]],
  ["with a good one between", [on(2, bad), on(4, well), on(6, bad)], []],
  ["two bad ones, the second severe", [on(2, bad), on(4, { painMorning: 9 })], ["04 morning"]],
  ["three bad ones", [on(2, bad), on(4, bad), on(6, bad)], ["04 mornings", "06 mornings"]],
  [
    "all that went well since, and a week gone by",
    [on(2, during(9)), on(3, well), on(4, well), on(10, well)],
    ["02 during rise"],
  ],
  [
    "several, in their order",
    [on(2, { ...during(9), painAfter: 8, painMorning: 10 })],
    ["02 during rise", "02 after", "02 morning"],
  ],
  ["of a day with two sessions, once", [on(2, during(9)), on(2, during(10))], ["02 during rise"]],
])("due for %s", (_, diary, ids) => {
  expect(due(diary)).toEqual(ids);
});

describe("the client has called", () => {
  const severe = [on(2, during(9))];
  test.each<[string, WrittenSession<Limited>[], Call, string[]]>([
    ["for it", severe, called(["02 during rise", 9]), []],
    ["for something else", severe, called(["01 during rise", 9]), ["02 during rise"]],
    ["and it is corrected to less", [on(2, during(8))], called(["02 during rise", 9]), []],
    [
      "and it is corrected to more",
      [on(2, during(10))],
      called(["02 during rise", 9]),
      ["02 during rise"],
    ],
    [
      "and the next morning is severe too",
      [on(2, { ...during(9), painMorning: 8 })],
      called(["02 during rise", 9]),
      ["02 morning"],
    ],
    ["for two bad mornings", [on(2, bad), on(4, bad)], called(["04 mornings", 0]), []],
    [
      "and a third comes",
      [on(2, bad), on(4, bad), on(6, bad)],
      called(["04 mornings", 0]),
      ["06 mornings"],
    ],
  ])("%s", (_, diary, call, ids) => {
    expect(due(diary, [call])).toEqual(ids);
    expect(due(diary, [])).not.toEqual([]);
  });

  test("what is corrected to below the level is due no more, without a call", () => {
    expect(due([on(2, during(7))])).toEqual([]);
  });
});

describe("the clinic's next booklet", () => {
  test.each<[string, WrittenSession<Limited>, string, string[]]>([
    ["made before it was felt", on(2, during(9)), "2026-12-01", ["02 during rise"]],
    ["made after it was felt", on(2, during(9)), "2026-12-03", []],
    ["made on that day, after it was written down", on(2, during(9)), "2026-12-02", []],
    [
      "made on that day, before it was written down",
      on(2, during(9), "2026-12-02"),
      "2026-12-02",
      ["02 during rise"],
    ],
    [
      "made on the day, felt the next morning",
      on(2, { painMorning: 9 }),
      "2026-12-02",
      ["02 morning"],
    ],
    ["made on the next day, after the morning", on(2, { painMorning: 9 }), "2026-12-03", []],
    [
      "made on the next day, before the answer",
      on(2, { painMorning: 9 }, "2026-12-03"),
      "2026-12-03",
      ["02 morning"],
    ],
  ])("%s", (_, session, made, ids) => {
    expect(due([session], [], made)).toEqual(ids);
  });
});
