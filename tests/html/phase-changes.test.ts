/** A phase says what it does in another way than the one before, where that is all there is to say. */
import { expect, test } from "vitest";
import type { DoseLine, DoseRow } from "../../src/compose/exercise-model.ts";
import { changesSince } from "../../src/html/phase-changes.ts";

const FIRST = "Weeks 1 to 8";
const THEN = "Weeks 9 to 12";

const dose = (weeks: string, more: Partial<DoseLine> = {}): DoseLine => ({
  weeks,
  work: "3 sets of 15",
  load: "2 kg",
  pace: undefined,
  rest: "Rest 30 seconds between sets",
  effort: "Should feel 5 out of 10",
  often: "Twice every day",
  ...more,
});

/** Exercises a, b, c and so on, an entry each: what is other than usual. */
const phase = (weeks: string, ...others: Partial<DoseLine>[]) => ({
  weeks,
  rows: others.map(
    (more, at): DoseRow => ({
      exercise: "abcdef"[at] ?? "",
      anchor: "abcdef"[at] ?? "",
      side: undefined,
      when: undefined,
      doses: [dose(weeks, more)],
    }),
  ),
});
const before = phase(FIRST, {}, {}, {});

test("what changes for all is said of all, what changes for some of these", () => {
  const once = { often: "Once every day" };
  const harder = { ...once, effort: "Should feel 6 out of 10" };
  expect(changesSince(before, phase(THEN, harder, once, harder))).toEqual([
    { rows: [0, 2], says: "Should feel 6 out of 10" },
    { rows: undefined, says: "Once every day" },
  ]);
});

test("nothing changes", () => {
  expect(changesSince(before, phase(THEN, {}, {}, {}))).toEqual([]);
});

test.each([
  ["other sets", phase(THEN, { work: "4 sets of 15" }, {}, {})],
  ["another load", phase(THEN, { load: "3 kg" }, {}, {})],
  ["a rest that is no longer asked for", phase(THEN, { rest: undefined }, {}, {})],
  ["an exercise more", phase(THEN, {}, {}, {}, {})],
  [
    "more than a few changes",
    phase(THEN, { pace: "1 second up" }, { effort: "a" }, { effort: "b", rest: "c" }),
  ],
  ["two exercises, of which a table is as short", phase(THEN, {}, {})],
  ["weeks of its own for an exercise", { ...phase("Weeks 9 to 10", {}, {}, {}), weeks: THEN }],
])("a table is printed for %s", (_, then) => {
  const first = then.rows.length === 2 ? phase(FIRST, {}, {}) : before;
  expect(changesSince(first, then)).toBeUndefined();
});

test("a sign to wait for, another side or another exercise needs a table", () => {
  const [row, ...others] = phase(THEN, {}, {}, {}).rows as [DoseRow, ...DoseRow[]];
  for (const more of [{ when: "You can." }, { side: "Left arm" }, { anchor: "z" }])
    expect(
      changesSince(before, { weeks: THEN, rows: [{ ...row, ...more }, ...others] }),
    ).toBeUndefined();
});
