/** A diary for the terminal and for programs: what is said of a session, and that no text of a client acts. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { diaryJson } from "../../src/diary/json.ts";
import { printableJson } from "../../src/diary/printable.ts";
import { diaryTable } from "../../src/diary/table.ts";
import { Fault } from "../../src/faults/fault.ts";
import { anyDiary, diaryOf, entry, exercise, NO_AMOUNT, THREE } from "./fixtures.ts";

test("each session, and under it what was not as planned", () => {
  expect(diaryTable(THREE)).toBe(`R-0417, achilles-demo: 3 sessions written down

Week 1
  Tue 2026-12-01  evening  done                                            effort 6  pain 2 after, 1 next morning, no worse than usual
    1 exercise as planned
  Thu 2026-12-03  evening  done in part, short version, on Fri 2026-12-04  effort 6  pain 4 during, 2 after, 1 next morning, no worse than usual
    Rise up on one leg, heel over a step [heel-raise-one-leg-step], left  done in part, 2 sets (3 planned), 10 repetitions (12 planned), 7.5 kg (10 planned), pain 4
    1 exercise as planned
    Note: Sore, then better. "Stairs" were fine; knee too.
  Sat 2026-12-05  morning  not done
    Rise up on one leg, heel over a step [heel-raise-one-leg-step], left  not done`);
});

describe("a line of a session", () => {
  const lines = (...args: Parameters<typeof entry>) =>
    diaryTable(diaryOf(entry(...args)))
      .split("\n")
      .slice(3)
      .map((line) => line.trim());
  test.each([
    [
      "nothing said",
      { effort: undefined, painAfter: undefined, painMorning: undefined, worseMorning: undefined },
      "Tue 2026-12-01  evening  done",
    ],
    [
      "a worse morning alone",
      { effort: undefined, painAfter: undefined, painMorning: undefined, worseMorning: true },
      "Tue 2026-12-01  evening  done    worse than usual",
    ],
    [
      "pain of nought",
      { painAfter: 0, painMorning: 0, worseMorning: true },
      "Tue 2026-12-01  evening  done  effort 6  pain 0 after, 0 next morning, worse than usual",
    ],
  ])("%s", (_name, over, line) => {
    expect(lines(over)[0]).toBe(line);
  });

  test("more than planned, and what was not planned by number", () => {
    const real = { sets: 4, reps: undefined, kg: 12.5 };
    const planned = { sets: 3, reps: 12, kg: undefined };
    const [, line] = lines({ exercises: [exercise({ side: "none", planned, real })] });
    expect(line).toBe(
      "Rise up on one leg, heel over a step [heel-raise-one-leg-step]  4 sets (3 planned), 12.5 kg",
    );
  });

  test("as much as planned is as planned", () => {
    const amount = { ...NO_AMOUNT, sets: 3 };
    expect(lines({ exercises: [exercise({ planned: amount, real: amount })] })[1]).toBe(
      "1 exercise as planned",
    );
  });
});

test("weeks are told apart", () => {
  const table = diaryTable(diaryOf(entry(), entry({ date: "2026-12-08", week: 2 })));
  expect(table.match(/^Week \d+$/gm)).toEqual(["Week 1", "Week 2"]);
});

describe("texts of clients never act on a terminal", () => {
  // what a terminal obeys, or what turns the writing direction of the lines after it
  const ACTS = /(?!\n)[\p{Cc}\u061C\u200E\u200F\u2028-\u202E\u2066-\u2069]/u;

  test.each([
    ["a colour", "\u001b[31mred", "�[31mred"],
    ["a title", "\u001b]0;owned\u0007", "�]0;owned�"],
    ["the one-byte form of an escape", "\u009b2J", "�2J"],
    ["a backspace", "a\bb", "a�b"],
    ["a carriage return", "fine\rNote: awful", "fine Note: awful"],
    ["lines", "one\n\ntwo", "one two"],
    ["turned writing", "a\u202Ecba", "a�cba"],
    ["letters of the right", "שלום", "שלום"],
  ])("%s", (_name, note, shown) => {
    expect(diaryTable(diaryOf(entry({ note })))).toContain(`Note: ${shown}`);
  });

  test("in any diary, as a table or as JSON", () => {
    fc.assert(
      fc.property(anyDiary, (diary) => {
        expect(diaryTable(diary)).not.toMatch(ACTS);
        const json = printableJson(diaryJson(diary, []));
        expect(json).not.toMatch(ACTS);
        expect(JSON.parse(json).sessions.map(({ note }: { note: string }) => note)).toEqual(
          diary.entries.map(({ note }) => note),
        );
      }),
      { numRuns: 200 },
    );
  });
});

test("the machine form keeps its fields", () => {
  const place = { file: "a.csv", line: 2, column: 3 };
  const fault = new Fault("diary-broken", "Wrong.", { place });
  expect(diaryJson(diaryOf(entry()), [fault])).toEqual({
    version: 1,
    plan: "achilles-demo",
    client: "R-0417",
    sessions: [
      {
        date: "2026-12-01",
        part: "evening",
        week: 1,
        booklet: "2026-11-25 3f9a2c",
        done: "yes",
        done_on: "2026-12-01",
        short: false,
        effort: 6,
        pain_during: null,
        pain_after: 2,
        pain_morning: 1,
        worse_morning: false,
        note: "",
        written: "2026-12-01T18:30:05Z",
        exercises: [
          {
            card: "heel-raise-one-leg-step",
            title: "Rise up on one leg, heel over a step",
            side: "left",
            done: "yes",
            planned: { sets: 3, reps: 12, kg: 10 },
            real: { sets: null, reps: null, kg: null },
            pain_during: null,
            sudden: null,
          },
        ],
      },
    ],
    problems: [
      {
        code: "diary-broken",
        level: "error",
        ...place,
        message: "Wrong.",
        hint: null,
        remedies: [],
      },
    ],
  });
  expect(diaryJson(THREE, []).sessions.map((one) => one.pain_during)).toEqual([null, 4, null]);
  expect(diaryJson(undefined, [])).toEqual({
    version: 1,
    plan: null,
    client: null,
    sessions: [],
    problems: [],
  });
});
