/** The table of a phase: what holds for all is said once, and every dose can still be read from it. */
import { expect, test } from "vitest";
import type { DoseLine, DoseRow } from "../../src/compose/exercise-model.ts";
import { phaseDoses } from "../../src/html/doses.ts";

const dose = (weeks: string, more: Partial<DoseLine> = {}): DoseLine => ({
  weeks,
  work: "3 sets of 15",
  load: undefined,
  pace: "3 seconds up, 3 seconds down",
  rest: "Rest 2 minutes between sets",
  effort: "Should feel 7 out of 10",
  often: "3 days a week",
  ...more,
});
const row = (exercise: string, doses: readonly DoseLine[], when?: string): DoseRow => ({
  exercise,
  anchor: exercise,
  side: undefined,
  when,
  doses,
});
const ALL = "Weeks 1 to 4";

test.each<[string, readonly DoseRow[], ReturnType<typeof said>]>([
  [
    "all alike in all weeks: a row each, nothing under them",
    [row("one", [dose(ALL)]), row("two", [dose(ALL)])],
    {
      flat: true,
      columns: 2,
      shared: [
        "3 seconds up, 3 seconds down",
        "Rest 2 minutes between sets",
        "Should feel 7 out of 10",
        "3 days a week",
      ],
      under: [[], []],
      beside: [[[]], [[]]],
    },
  ],
  [
    "one exercise: nothing is shared",
    [row("one", [dose(ALL, { pace: undefined, rest: undefined })])],
    {
      flat: true,
      columns: 2,
      shared: [],
      under: [["Should feel 7 out of 10", "3 days a week"]],
      beside: [[[]]],
    },
  ],
  [
    "what differs from one to the other stands under each",
    [row("one", [dose(ALL)]), row("two", [dose(ALL, { rest: undefined, load: "8 kg" })])],
    {
      flat: true,
      columns: 3,
      shared: ["3 seconds up, 3 seconds down", "Should feel 7 out of 10", "3 days a week"],
      under: [["Rest 2 minutes between sets"], []],
      beside: [[[]], [[]]],
    },
  ],
  [
    "what changes with the weeks stands beside them",
    [
      row("one", [dose("Weeks 1 to 2"), dose("Weeks 3 to 4", { often: "Twice a week" })]),
      row("two", [dose(ALL)]),
    ],
    {
      flat: false,
      columns: 3,
      shared: [
        "3 seconds up, 3 seconds down",
        "Rest 2 minutes between sets",
        "Should feel 7 out of 10",
      ],
      under: [[], ["3 days a week"]],
      beside: [[["3 days a week"], ["Twice a week"]], [[]]],
    },
  ],
  [
    "an exercise of some weeks only is no row of all weeks",
    [row("one", [dose(ALL)]), row("two", [dose("Weeks 2 to 4")])],
    {
      flat: false,
      columns: 2,
      shared: [
        "3 seconds up, 3 seconds down",
        "Rest 2 minutes between sets",
        "Should feel 7 out of 10",
        "3 days a week",
      ],
      under: [[], []],
      beside: [[[]], [[]]],
    },
  ],
])("%s", (_, rows, expected) => {
  expect(said(rows)).toEqual(expected);
});

test("what holds for most of many is said above with the exercises it is for", () => {
  const rows = ["one", "two", "three", "four"].map((name) => row(name, [dose(ALL)]));
  const other = row("five", [dose(ALL, { rest: "Rest 1 minute between sets", effort: undefined })]);
  const { most, groups, shared } = phaseDoses({ rows: [...rows, other], weeks: ALL }, new Map());
  expect(shared).toEqual(["3 seconds up, 3 seconds down", "3 days a week"]);
  expect(most).toEqual({
    rows: [0, 1, 2, 3],
    parts: [
      { part: "rest", says: "Rest 2 minutes between sets" },
      { part: "effort", says: "Should feel 7 out of 10" },
    ],
  });
  expect(groups.map(({ common }) => common)).toEqual([
    [],
    [],
    [],
    [],
    ["Rest 1 minute between sets"],
  ]);
});

test.each<[string, readonly Partial<DoseLine>[]]>([
  [
    "no more than half",
    [
      {},
      {},
      {},
      { rest: "1", effort: "1" },
      { rest: "2", effort: "2" },
      { rest: "3", effort: "3" },
    ],
  ],
  ["two", [{}, {}, { rest: "1", effort: "1" }]],
  ["three, one thing", [{}, {}, {}, { rest: "1" }]],
])("what holds for %s stands under each", (_, others) => {
  const rows = others.map((more, at) => row(String(at), [dose(ALL, more)]));
  expect(phaseDoses({ rows, weeks: ALL }, new Map()).most).toBeUndefined();
});

test("of two groups that are not the same only the larger is named together", () => {
  const others = [{ rest: "1" }, {}, {}, {}, {}, { effort: "1" }];
  const rows = [...others, { rest: "2", effort: "2" }].map((more, at) =>
    row(String(at), [dose(ALL, more)]),
  );
  const { most, groups } = phaseDoses({ rows, weeks: ALL }, new Map());
  expect(most?.parts.map(({ part }) => part)).toEqual(["rest"]);
  expect(groups[1]?.common).toEqual(["Should feel 7 out of 10"]);
});

test("side and load have a line also where nothing else is left to say", () => {
  const rows = [
    { ...row("one", [dose(ALL)]), side: "Left leg" },
    row("two", [dose(ALL, { load: "8 kg" })]),
    row("three", [dose(ALL)]),
  ];
  const { groups } = phaseDoses({ rows, weeks: ALL }, new Map());
  expect(groups.map(({ more }) => more)).toEqual([true, true, false]);
});

test("a sign has its line also where nothing else is left to say", () => {
  const rows = [row("one", [dose(ALL)], "You can."), row("two", [dose(ALL)])];
  const { groups } = phaseDoses({ rows, weeks: ALL }, new Map());
  expect(groups.map(({ more }) => more)).toEqual([true, false]);
});

function said(rows: readonly DoseRow[]) {
  const { flat, columns, shared, groups } = phaseDoses({ rows, weeks: ALL }, new Map());
  return {
    flat,
    columns,
    shared,
    under: groups.map(({ common }) => common),
    beside: groups.map(({ lines }) => lines.map(({ how }) => how)),
  };
}
