/** Weeks of a protocol's table: each has a dose, or is said to be without the exercise. */
import { describe, expect, test } from "vitest";
import { planTable } from "../../src/plan-text/table.ts";
import { madeSmall, PROTOCOL, smallCourse } from "../support/small-course.ts";
import { english } from "../support/world.ts";

const rows = (says: string) => {
  const { made, workspace } = madeSmall({ says, weeks: 4 });
  const table = planTable(made, workspace.cards.library, english());
  return table
    .split("\n")
    .flatMap((line) => /^ {4}(Weeks? .*?) {2,}(.*?) {2,}/.exec(line)?.slice(1) ?? []);
};

describe("what is printed", () => {
  test.each([
    [
      "a table that ends early: the dose holds on",
      "dose: { sets: 3, reps: 10, per_week: 1 }\nweeks:\n  1-2: { reps: 6 }",
      ["Weeks 1 to 2", "3 sets of 6", "Weeks 3 to 4", "3 sets of 10"],
    ],
    [
      "weeks said to be without it",
      "dose: { sets: 3, reps: 10, per_week: 1 }\nweeks:\n  1: none\n  4: none",
      ["Weeks 2 to 3", "3 sets of 10"],
    ],
  ])("%s", (_name, says, expected) => {
    expect(rows(says)).toEqual(expected);
  });
});

describe("a gap is an error at the table", () => {
  test.each([
    ["after the last row", "1-3: { sets: 3, reps: 6 }", "week 4", "4: none"],
    ["before the first", "2-4: { sets: 3, reps: 6 }", "week 1", "1: none"],
    [
      "between two",
      "1: { sets: 3, reps: 6 }\n  4: { sets: 3, reps: 6 }",
      "weeks 2 to 3",
      "2-3: none",
    ],
  ])("%s", (_name, table, weeks, hint) => {
    const { made, faults } = smallCourse({
      says: `dose: { per_week: 1 }\nweeks:\n  ${table}`,
      weeks: 4,
    });
    expect(made).toBeUndefined();
    expect(faults[0]).toMatchObject({ code: "week-gap", place: { file: PROTOCOL } });
    expect(faults[0]?.message).toContain(weeks);
    expect(faults[0]?.hint).toContain(hint);
    expect(faults[0]?.at).toMatch(/^(\d|weeks)/);
  });

  test("an exercise that no week has", () => {
    const { faults } = smallCourse({ says: "weeks:\n  1-4: none", weeks: 4 });
    expect(faults[0]).toMatchObject({ code: "week-gap" });
  });

  test("a row backwards", () => {
    const { faults } = smallCourse({ says: "weeks:\n  4-1: { reps: 6 }", weeks: 4 });
    expect(faults[0]).toMatchObject({ code: "wrong-value" });
    expect(faults[0]?.message).toContain("the first week comes after the last");
  });

  test("a slip inside a row is still named", () => {
    const { faults } = smallCourse({ says: "weeks:\n  1-4: { repz: 6 }", weeks: 4 });
    expect(faults[0]).toMatchObject({ code: "unknown-field" });
    expect(faults[0]?.hint).toContain("reps");
    const { faults: words } = smallCourse({ says: "weeks:\n  1-4: nothing", weeks: 4 });
    expect(words[0]).toMatchObject({ code: "wrong-value" });
  });
});
