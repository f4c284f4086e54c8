/** Sums of a week whose exercises do not all come equally often. */
import { describe, expect, test } from "vitest";
import { doseProgram } from "../../src/dose/program.ts";
import { card, library, program } from "./fixtures.ts";

/** Sets by the clock, so that their time is plain: one set of so many seconds, so often a week. */
const timed = (id: string) => card({ id, side: "none", load: { kind: "none" } });
const cards = [timed("one"), timed("two"), timed("three")];

function totalsOf(doses: readonly (readonly [string, number])[], changeover = "1 min") {
  const exercises = doses.map(([time, per_week], index) => ({
    card: cards[index] ?? timed("more"),
    side: "none" as const,
    says: { dose: { sets: 1, reps: undefined, time, per_week } },
  }));
  const clinic = { dosing: { changeover } };
  const [week] = doseProgram(program({ exercises: exercises as never, clinic }), library(...cards))
    .value.weeks;
  if (!week) throw new Error("no week");
  return week.totals;
}

describe("minutes of a week", () => {
  test.each([
    // 3 × 10 min alone
    ["one exercise", [["10 min", 3]], 30, 3, 1, 600],
    // two sessions of 10 + 1 + 5 min, one of 10 min: the way counts only where there are two
    [
      "three times and twice",
      [
        ["10 min", 3],
        ["5 min", 2],
      ],
      42,
      3,
      2,
      960,
    ],
    // 10 + 1 + 5 + 1 + 2, 10 + 1 + 5, 10, 10
    [
      "four, twice and once",
      [
        ["10 min", 4],
        ["5 min", 2],
        ["2 min", 1],
      ],
      55,
      4,
      3,
      1140,
    ],
    ["half minutes are rounded up once, for the whole week", [["90 s", 3]], 5, 3, 1, 90],
  ] as const)("%s", (_name, doses, minutes, sessions, exercises, sessionS) => {
    expect(totalsOf(doses)).toMatchObject({ minutes, sessions, exercises, sessionS });
  });
});
