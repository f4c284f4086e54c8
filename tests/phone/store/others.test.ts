/** Diaries kept for another reference of the same plan are found; those of other plans never. */
import { expect, test } from "vitest";
import { diaryCsv } from "../../../src/diary/csv.ts";
import { emptyEntry } from "../../../src/phone/day/entries.ts";
import { otherDiaries } from "../../../src/phone/store/others.ts";
import { USUAL_SETTINGS } from "../../../src/phone/store/settings.ts";
import { session } from "../support.ts";

const entry = emptyEntry(session("2026-11-30"), "b", false, "2026-11-30T19:00:00Z");
const csv = (plan: string, client: string, entries = [entry]) =>
  diaryCsv({ plan, client, entries });

function storage(items: Readonly<Record<string, string>>) {
  const keys = Object.keys(items);
  return {
    length: keys.length,
    key: (at: number) => keys[at] ?? null,
    getItem: (key: string) => items[key] ?? null,
  };
}

test.each([
  ["another reference", { "paulatim p BF 1 diary": csv("p", "BF 1") }, ["BF 1"]],
  [
    "two others",
    { "paulatim p a diary": csv("p", "a"), "paulatim p b diary": csv("p", "b") },
    ["a", "b"],
  ],
  ["its own", { "paulatim p c diary": csv("p", "c") }, []],
  ["another plan", { "paulatim q a diary": csv("q", "a") }, []],
  ["a plan whose name begins alike", { "paulatim p-2 a diary": csv("p-2", "a") }, []],
  ["an empty diary", { "paulatim p a diary": csv("p", "a", []) }, []],
  ["a text that is no diary", { "paulatim p a diary": "?" }, []],
  ["a diary under a wrong name", { "paulatim p a diary": csv("p", "b") }, []],
  ["what was put aside", { "paulatim p a unread 1": csv("p", "a") }, []],
] as const)("%s", (_, items, clients) => {
  const found = otherDiaries(storage(items), { plan: "p", client: "c" });
  expect(found.map(({ diary }) => diary.client)).toEqual(clients);
});

test("with the signs that were ticked there, and without a storage nothing", () => {
  const items = {
    "paulatim p a diary": csv("p", "a"),
    "paulatim p a settings": JSON.stringify({ ready: ["You can hop"] }),
  };
  const [found] = otherDiaries(storage(items), { plan: "p", client: "c" });
  expect(found?.settings).toEqual({ ...USUAL_SETTINGS, ready: ["You can hop"] });
  expect(found?.diary.entries).toEqual([entry]);
  expect(otherDiaries(undefined, { plan: "p", client: "c" })).toEqual([]);
  const refusing = {
    ...storage(items),
    getItem: () => {
      throw new Error("no");
    },
  };
  expect(otherDiaries(refusing, { plan: "p", client: "c" })).toEqual([]);
});
