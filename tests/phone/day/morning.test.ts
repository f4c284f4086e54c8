/** The next morning is one answer a day, whichever of the day's sessions holds it. */
import { expect, test } from "vitest";
import type { DiaryEntry } from "../../../src/diary/entry.ts";
import { emptyEntry, withAll, withEntry } from "../../../src/phone/day/entries.ts";
import { dayOf, morningAfter, withMorning } from "../../../src/phone/day/morning.ts";
import { NO_DIARY, session } from "../support.ts";

const entry = (date: string, part: "morning" | "evening", change: Partial<DiaryEntry> = {}) => ({
  ...withAll(emptyEntry(session(date, { part }), "b", false, ""), "yes", date),
  ...change,
});
const early = entry("2026-11-30", "morning");
const late = entry("2026-11-30", "evening");
const next = entry("2026-12-01", "morning", { painMorning: 9 });
const diaryOf = (...entries: DiaryEntry[]) => entries.reduce(withEntry, NO_DIARY);
const answer = (painMorning: number | undefined, worseMorning: boolean | undefined) => ({
  painMorning,
  worseMorning,
});

test.each<[string, DiaryEntry[], ReturnType<typeof answer>]>([
  ["nothing", [early, late], answer(undefined, undefined)],
  ["with the first", [{ ...early, ...answer(6, true) }, late], answer(6, true)],
  ["with the second", [early, { ...late, ...answer(2, false) }], answer(2, false)],
  [
    "with both: the worse of each",
    [
      { ...early, ...answer(2, true) },
      { ...late, ...answer(6, false) },
    ],
    answer(6, true),
  ],
  [
    "with both, a number and a word",
    [
      { ...early, ...answer(undefined, false) },
      { ...late, ...answer(3, undefined) },
    ],
    answer(3, false),
  ],
])("answered %s", (_, entries, known) => {
  const diary = diaryOf(...entries, next);
  for (const one of [early, late]) expect(morningAfter(one, diary)).toEqual(known);
});

test.each<[string, DiaryEntry[], string[]]>([
  ["where nothing is answered yet, with the session that is asked", [early, late], ["evening"]],
  ["with the one that holds it", [{ ...early, painMorning: 6 }, late], ["morning"]],
  [
    "with both where both hold one",
    [
      { ...early, painMorning: 6 },
      { ...late, painMorning: 2 },
    ],
    ["morning", "evening"],
  ],
])("an answer is written %s", (_, entries, parts) => {
  const written = withMorning(late, diaryOf(...entries, next), { painMorning: 1 });
  expect(written.map(({ part }) => part)).toEqual(parts);
  for (const one of written) expect([one.date, one.painMorning]).toEqual(["2026-11-30", 1]);
  const after = diaryOf(...entries, next, ...written);
  expect(morningAfter(early, after).painMorning).toBe(1);
});

test("what was answered before stays when the other question is answered", () => {
  const diary = diaryOf({ ...early, painMorning: 6 }, late);
  expect(withMorning(late, diary, { worseMorning: true })).toEqual([
    { ...early, painMorning: 6, worseMorning: true },
  ]);
});

test("a session belongs to the day on which it was done", () => {
  expect(dayOf({ ...early, doneOn: "2026-12-01" })).toBe("2026-12-01");
  expect(dayOf({ ...early, doneOn: undefined })).toBe("2026-11-30");
});
