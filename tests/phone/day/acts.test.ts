/** An act and its undo leave what is kept as it was, also where diaries are put together in between. */
import { expect, test } from "vitest";
import { diaryCsv, readDiary } from "../../../src/diary/csv.ts";
import type { Diary, DiaryEntry } from "../../../src/diary/entry.ts";
import { mergeDiaries } from "../../../src/diary/merge.ts";
import { type Act, joinedTo, standing, undoOf } from "../../../src/phone/day/acts.ts";
import { emptyEntry, withAll, withEntry } from "../../../src/phone/day/entries.ts";
import { USUAL_SETTINGS } from "../../../src/phone/store/settings.ts";
import { NO_DIARY, session } from "../support.ts";

const entry = emptyEntry(session("2026-11-30"), "b", false, "2026-11-30T19:00:00Z");
const done = { ...withAll(entry, "yes", "2026-11-30"), painAfter: 4, note: "a note" };
const later = (one: DiaryEntry, n: number) => ({ ...one, written: `2026-12-01T00:00:0${n}Z` });
const day = "2026-11-30";
const place = { key: `${day} evening`, day, short: true, at: 1, stage: "pace", pace: "x" } as const;
const applied = (diary: Diary, { entries = [] }: Act, n: number) =>
  entries.map((one) => later(one, n)).reduce(withEntry, diary);

test.each([
  ["an entry where there was none", NO_DIARY, done],
  ["an entry over another", withEntry(NO_DIARY, later(done, 1)), { ...done, painAfter: 7 }],
])("%s", (_, before, changed) => {
  const act: Act = { entries: [changed] };
  const after = applied(before, act, 2);
  const undone = applied(after, undoOf(act, { diary: before, place, settings: USUAL_SETTINGS }), 3);
  const said = (diary: Diary) =>
    standing(diary).entries.map(({ written: _written, ...rest }) => rest);
  expect(said(after)).not.toEqual(said(before));
  expect(said(undone)).toEqual(said(before));
  // what another window still holds does not bring it back, and the file that is kept is read whole
  expect(said(mergeDiaries(after, undone))).toEqual(said(before));
  expect(readDiary(diaryCsv(undone))).toEqual({ diary: undone, problems: [] });
});

test("a diary that was joined and taken back can be joined again", () => {
  const others = [later(done, 1)];
  const join = (diary: Diary) =>
    mergeDiaries(diary, { ...NO_DIARY, entries: joinedTo(diary, others) });
  const once = join(NO_DIARY);
  const act = undoOf({ joined: others }, { diary: NO_DIARY, place, settings: USUAL_SETTINGS });
  const undone = applied(once, act, 3);
  expect(standing(undone).entries).toEqual([]);
  const again = standing(join(undone)).entries;
  expect(again).toEqual([{ ...others[0], written: "2026-12-01T00:00:04Z" }]);
  // what was written since is not written over
  const [entry] = again;
  const since = withEntry(once, { ...done, painAfter: 9, written: "2026-12-02T00:00:00Z" });
  expect(entry && standing(join(since)).entries[0]?.painAfter).toBe(9);
});

test("where the client was, and what they had chosen", () => {
  const kept = { diary: NO_DIARY, place, settings: USUAL_SETTINGS };
  expect(undoOf({ place: "none" }, kept)).toMatchObject({ place });
  expect(undoOf({ place }, { ...kept, place: undefined })).toMatchObject({ place: "none" });
  expect(undoOf({ settings: { passed: ["x"] } }, kept)).toMatchObject({ settings: USUAL_SETTINGS });
});
