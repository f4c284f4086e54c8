/** Diaries put together: of each session what was written last, whatever the order and however often. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { sessionKey } from "../../src/diary/entry.ts";
import { mergeDiaries, sinceDay } from "../../src/diary/merge.ts";
import { anyOfOneClient, diaryOf, entry, THREE } from "./fixtures.ts";

const older = entry({ note: "before breakfast", written: "2026-12-01T18:30:04Z" });
const newer = entry({ note: "", effort: undefined, written: "2026-12-01T18:30:05Z" });

describe("of one session", () => {
  test("what was written last, even if it says less", () => {
    expect(mergeDiaries(diaryOf(older), diaryOf(newer))).toEqual(diaryOf(newer));
    expect(mergeDiaries(diaryOf(newer), diaryOf(older))).toEqual(diaryOf(newer));
  });

  test("of the same second, what says more", () => {
    const fuller = entry({ note: "and the stairs" });
    expect(mergeDiaries(diaryOf(fuller), diaryOf(entry()))).toEqual(diaryOf(fuller));
    expect(mergeDiaries(diaryOf(entry()), diaryOf(fuller))).toEqual(diaryOf(fuller));
  });

  test("of the same second and length, the same one on every device", () => {
    const [a, b] = [diaryOf(entry({ note: "a" })), diaryOf(entry({ note: "b" }))];
    expect(mergeDiaries(a, b)).toEqual(mergeDiaries(b, a));
  });

  test("the order of an entry's fields does not matter", () => {
    const turned = Object.fromEntries(Object.entries(entry()).reverse()) as unknown;
    expect(mergeDiaries(diaryOf(entry()), diaryOf(turned as typeof older))).toEqual(
      diaryOf(entry()),
    );
  });
});

test("entries come in the order of the planned sessions", () => {
  const parts = ["evening", "morning", "midday"] as const;
  const days = ["2026-12-10", "2026-12-02"];
  const mixed = days.flatMap((date) => parts.map((part) => entry({ date, part })));
  expect(mergeDiaries(diaryOf(...mixed), diaryOf()).entries.map(sessionKey)).toEqual([
    "2026-12-02 morning",
    "2026-12-02 midday",
    "2026-12-02 evening",
    "2026-12-10 morning",
    "2026-12-10 midday",
    "2026-12-10 evening",
  ]);
});

test.each([
  ["plans", { ...THREE, plan: "knee" }],
  ["clients", { ...THREE, client: "R-0418" }],
])("diaries of two %s are never merged", (_name, other) => {
  expect(() => mergeDiaries(THREE, other)).toThrow(/two plans or clients/);
});

describe("any diaries of one client", () => {
  const runs = { numRuns: 200 };
  test("it does not matter which comes first", () => {
    fc.assert(
      fc.property(anyOfOneClient, anyOfOneClient, (a, b) => {
        expect(mergeDiaries(a, b)).toEqual(mergeDiaries(b, a));
      }),
      runs,
    );
  });

  test("nor which two are merged first", () => {
    fc.assert(
      fc.property(anyOfOneClient, anyOfOneClient, anyOfOneClient, (a, b, c) => {
        expect(mergeDiaries(mergeDiaries(a, b), c)).toEqual(mergeDiaries(a, mergeDiaries(b, c)));
      }),
      runs,
    );
  });

  test("nor how often", () => {
    fc.assert(
      fc.property(anyOfOneClient, anyOfOneClient, (a, b) => {
        const merged = mergeDiaries(a, b);
        expect(mergeDiaries(a, a)).toEqual(a);
        expect(mergeDiaries(merged, b)).toEqual(merged);
      }),
      runs,
    );
  });

  test("every session of either is there once, as one of the two had it", () => {
    fc.assert(
      fc.property(anyOfOneClient, anyOfOneClient, (a, b) => {
        const { entries } = mergeDiaries(a, b);
        const all = [...a.entries, ...b.entries];
        expect(entries.map(sessionKey).sort()).toEqual([...new Set(all.map(sessionKey))].sort());
        for (const one of entries) expect(all).toContain(one);
      }),
      runs,
    );
  });
});

test("since a day: that day and later", () => {
  expect(sinceDay(THREE, "2026-12-03").entries).toEqual(THREE.entries.slice(1));
  expect(sinceDay(THREE, "2026-12-06")).toEqual(diaryOf());
});
