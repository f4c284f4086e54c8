/** The kept diary is read when it is opened and when another window has changed it, and at no other time. */
import { beforeEach, expect, test, vi } from "vitest";
import { readDiary } from "../../../src/diary/csv.ts";
import { emptyEntry, withAll, withEntry } from "../../../src/phone/day/entries.ts";
import type { KeyValueStore } from "../../../src/phone/store/shelf.ts";
import { openStore } from "../../../src/phone/store/store.ts";
import { NO_DIARY, session } from "../support.ts";

vi.mock("../../../src/diary/csv.ts", async (load) => {
  const real = await load<typeof import("../../../src/diary/csv.ts")>();
  return { ...real, readDiary: vi.fn(real.readDiary) };
});
beforeEach(() => void vi.mocked(readDiary).mockClear());

const readings = () => vi.mocked(readDiary).mock.calls.length;
const items = new Map<string, string>();
const storage: KeyValueStore = {
  getItem: (key) => items.get(key) ?? null,
  setItem: (key, text) => void items.set(key, text),
  removeItem: (key) => void items.delete(key),
};
const open = () => openStore(storage, { plan: "p", client: "c" });
const day = (n: number) => `2026-12-${String(n).padStart(2, "0")}`;
const diaryOf = (n: number) =>
  withEntry(
    NO_DIARY,
    withAll(emptyEntry(session(day(n)), "b", false, `${day(n)}T20:00:00Z`), "yes", day(n)),
  );

test("ten changes of a diary of ten days need one reading, and another window's one more", () => {
  const before = open();
  for (let n = 1; n <= 10; n += 1) before.keep(diaryOf(n));
  expect(readings()).toBe(0);
  const store = open();
  for (let n = 11; n <= 20; n += 1) {
    store.keep(diaryOf(n));
    store.diary();
  }
  expect(readings()).toBe(1);
  before.keep(diaryOf(21));
  expect(readings()).toBe(2);
  expect(store.diary().entries).toHaveLength(21);
  expect(store.diary().entries).toHaveLength(21);
  expect(readings()).toBe(3);
});
