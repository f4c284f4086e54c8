/** The diary's tables: a column of boxes for each part of the day, or one that names the part. */
import { expect, test } from "vitest";
import type { DiaryPart, DiaryRow } from "../../src/compose/model.ts";
import { diaryParts } from "../../src/html/diary.ts";
import { wordsUnder } from "../../src/words/words.ts";
import { english } from "../support/world.ts";

const row = (...ticks: boolean[]): DiaryRow => ({
  day: "Mon",
  date: "30 Nov",
  exercises: [1],
  ticks,
  weights: [true, true],
  morning: true,
});

const table = (parts: readonly string[], ...rows: DiaryRow[]) => {
  const weeks = [{ number: 1, dates: "30 Nov to 6 Dec", as: undefined, doses: [], rows }];
  const part: DiaryPart = {
    phases: ["Heavy"],
    parts,
    weights: [1, 2],
    which: false,
    groups: [],
    weeks,
  };
  const [view] = diaryParts(
    { diary: [part], edition: "standard", units: "kg" },
    wordsUnder(english(), "frame"),
  );
  if (!view) throw new Error("no table");
  return view;
};

test("days with one session each name its part beside the box, in one column", () => {
  const view = table(["Midday", "Evening"], row(false, true), row(true, false));
  expect(view.tickHeads).toEqual(["When"]);
  expect(view.weeks[0]?.rows.map(({ ticks }) => ticks)).toEqual([
    [{ part: "Evening" }],
    [{ part: "Midday" }],
  ]);
});

test("that leaves room for two weights and notes in the same line", () => {
  expect(table(["Morning", "Midday", "Evening"], row(false, true, false)).apart).toBe(false);
  expect(table(["Morning", "Midday", "Evening"], row(false, true, true)).apart).toBe(true);
});

test("a day with two sessions has a box under each of their parts", () => {
  const view = table(["Midday", "Evening"], row(true, true), row(true, false));
  expect(view.tickHeads).toEqual(["Midday", "Evening"]);
  expect(view.weeks[0]?.rows.map(({ ticks }) => ticks)).toEqual([
    [{ part: "" }, { part: "" }],
    [{ part: "" }, undefined],
  ]);
});

test("one part of the day stands at the head alone", () => {
  expect(table(["Evening"], row(true)).tickHeads).toEqual(["Evening"]);
});
