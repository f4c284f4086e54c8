/** Spans of weeks as they are written and read. */
import { expect, test } from "vitest";
import { weekSpan } from "../../src/units/quantities.ts";
import { inSpan, readWeekSpan, spansOf, weekSpanText } from "../../src/units/week-span.ts";

test.each([
  ["3", { first: 3, last: 3 }],
  ["2-5", { first: 2, last: 5 }],
  ["10-12", { first: 10, last: 12 }],
  ["5-2", undefined],
  ["0", undefined],
  ["1-", undefined],
  ["1 - 2", undefined],
  ["one", undefined],
])("%s", (text, span) => {
  expect(readWeekSpan(text)).toEqual(span);
  const read = weekSpan.safeParse(text);
  expect(read.success ? read.data : undefined).toEqual(span);
  if (span) expect(weekSpanText(span)).toBe(text);
});

test("a span backwards says so, and nothing else", () => {
  const issues = weekSpan.safeParse("5-2").error?.issues ?? [];
  expect(issues.map(({ message }) => message)).toEqual(["the first week comes after the last"]);
  const wrong = weekSpan.safeParse("x").error?.issues ?? [];
  expect(wrong.map(({ message }) => message)).toEqual(["write weeks as 3 or 2-5"]);
});

test("its ends belong to it", () => {
  expect([1, 2, 3, 4].map((week) => inSpan(week, { first: 2, last: 3 }))).toEqual([
    false,
    true,
    true,
    false,
  ]);
});

test("runs of weeks", () => {
  expect(spansOf([3, 1, 2, 6, 2])).toEqual([
    { first: 1, last: 3 },
    { first: 6, last: 6 },
  ]);
  expect(spansOf([])).toEqual([]);
});
