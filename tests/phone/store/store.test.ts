/** What is written stays: in a full, broken, missing or shared storage, across reloads and re-issued booklets. */
import { describe, expect, test } from "vitest";
import { diaryCsv } from "../../../src/diary/csv.ts";
import type { Diary, DiaryEntry } from "../../../src/diary/entry.ts";
import { emptyEntry, withAll, withEntry } from "../../../src/phone/day/entries.ts";
import { USUAL_SETTINGS } from "../../../src/phone/store/settings.ts";
import { deviceStorage, type KeyValueStore } from "../../../src/phone/store/shelf.ts";
import { openStore } from "../../../src/phone/store/store.ts";
import { NO_DIARY, session } from "../support.ts";

const owner = { plan: "p", client: "c" };
const name = "paulatim p c diary";

/** A storage in memory that can be made to refuse. */
function memory(refuse: { set?: Error; get?: Error } = {}) {
  const items = new Map<string, string>();
  const storage: KeyValueStore = {
    getItem: (key) => {
      if (refuse.get) throw refuse.get;
      return items.get(key) ?? null;
    },
    setItem: (key, text) => {
      if (refuse.set) throw refuse.set;
      items.set(key, text);
    },
    removeItem: (key) => void items.delete(key),
  };
  return { items, storage, refuse };
}

const quota = () => Object.assign(new Error("full"), { name: "QuotaExceededError" });
const entry = (date: string, change: Partial<DiaryEntry> = {}): DiaryEntry => ({
  ...withAll(
    emptyEntry(session(date), "2026-11-25-abcdef", false, `${date}T20:00:00Z`),
    "yes",
    date,
  ),
  ...change,
});
const diaryOf = (...entries: DiaryEntry[]): Diary => entries.reduce(withEntry, NO_DIARY);
const dates = (diary: Diary) => diary.entries.map(({ date }) => date);

test("a new store is empty, and keeps what it is given across a reload", () => {
  const { storage } = memory();
  const first = openStore(storage, owner);
  expect(first.diary().entries).toEqual([]);
  first.keep(diaryOf(entry("2026-11-30")));
  first.keepSettings({ ...USUAL_SETTINGS, voice: true });
  first.keepPlace({
    key: "k",
    day: "2026-11-30",
    short: true,
    at: 1,
    stage: "after",
    pace: undefined,
  });
  const again = openStore(storage, owner);
  expect(again.diary()).toEqual(diaryOf(entry("2026-11-30")));
  expect(again.settings().voice).toBe(true);
  expect(again.place()?.stage).toBe("after");
  again.keepPlace(undefined);
  expect(openStore(storage, owner).place()).toBeUndefined();
  expect(again.trouble()).toBeUndefined();
});

test("another plan or client sees nothing of it", () => {
  const { storage } = memory();
  openStore(storage, owner).keep(diaryOf(entry("2026-11-30")));
  for (const other of [
    { plan: "p", client: "d" },
    { plan: "q", client: "c" },
  ]) {
    expect(openStore(storage, other).diary().entries).toEqual([]);
  }
});

test("two windows keep what both write", () => {
  const { storage } = memory();
  const [one, two] = [openStore(storage, owner), openStore(storage, owner)];
  one.keep(diaryOf(entry("2026-11-30")));
  two.keep(diaryOf(entry("2026-12-02")));
  expect(dates(one.diary())).toEqual(["2026-11-30", "2026-12-02"]);
  expect(dates(openStore(storage, owner).diary())).toEqual(["2026-11-30", "2026-12-02"]);
});

test("of one session the last word stays", () => {
  const { storage } = memory();
  const store = openStore(storage, owner);
  store.keep(diaryOf(entry("2026-11-30", { note: "later", written: "2026-12-01T00:00:01Z" })));
  store.keep(diaryOf(entry("2026-11-30", { note: "earlier", written: "2026-12-01T00:00:00Z" })));
  expect(store.diary().entries.map(({ note }) => note)).toEqual(["later"]);
});

describe("a storage that", () => {
  test.each([
    ["is not there", undefined],
    ["throws at every touch", memory({ set: new Error("no"), get: new Error("no") }).storage],
    ["forgets at once", { getItem: () => null, setItem: () => {}, removeItem: () => {} }],
  ])("%s is told of, and all stays in memory", (_, storage) => {
    const store = openStore(storage, owner);
    expect(store.trouble()).toBe("none");
    store.keep(diaryOf(entry("2026-11-30")));
    store.keep(diaryOf(entry("2026-12-02")));
    expect(dates(store.diary())).toEqual(["2026-11-30", "2026-12-02"]);
    store.keepSettings({ ...USUAL_SETTINGS, sound: false });
    expect(store.settings().sound).toBe(false);
  });

  test("gets full is told of, loses nothing in memory, and keeps all once there is room", () => {
    const { storage, refuse } = memory();
    const store = openStore(storage, owner);
    store.keep(diaryOf(entry("2026-11-30")));
    expect([store.isKept(), store.trouble()]).toEqual([true, undefined]);
    refuse.set = quota();
    store.keep(diaryOf(entry("2026-12-02")));
    expect([store.isKept(), store.trouble()]).toEqual([false, "full"]);
    expect(dates(store.diary())).toEqual(["2026-11-30", "2026-12-02"]);
    delete refuse.set;
    store.keepPlace({
      key: "k",
      day: "2026-11-30",
      short: false,
      at: 1,
      stage: "after",
      pace: undefined,
    });
    expect(store.trouble(), "a place kept is no diary kept").toBe("full");
    store.keep(diaryOf(entry("2026-12-04")));
    expect([store.isKept(), store.trouble()]).toEqual([true, undefined]);
    expect(dates(openStore(storage, owner).diary())).toHaveLength(3);
  });

  test("gets full says of a choice, too, that it is not kept, and keeps it with the next that is", () => {
    const { storage, refuse } = memory();
    const store = openStore(storage, owner);
    refuse.set = quota();
    store.keepSettings({ ...USUAL_SETTINGS, ready: ["You can do ten rises."] });
    expect([store.isKept(), store.trouble()]).toEqual([false, "full"]);
    delete refuse.set;
    store.keep(diaryOf(entry("2026-11-30")));
    expect([store.isKept(), store.trouble()]).toEqual([true, undefined]);
    expect(openStore(storage, owner).settings().ready).toEqual(["You can do ten rises."]);
  });

  test("is full from the start says so at once, and still shows what it kept", () => {
    const { storage, refuse } = memory();
    openStore(storage, owner).keep(diaryOf(entry("2026-11-30")));
    refuse.set = quota();
    const store = openStore(storage, owner);
    expect([store.isKept(), store.trouble()]).toEqual([true, "low"]);
    expect(dates(store.diary())).toEqual(["2026-11-30"]);
    store.keep(diaryOf(entry("2026-12-02")));
    expect([store.isKept(), store.trouble()]).toEqual([false, "full"]);
  });

  test("has room for a word but not for a session says so", () => {
    const { storage } = memory();
    const setItem = (key: string, text: string) => {
      if (text.length > 5000) throw quota();
      storage.setItem(key, text);
    };
    const store = openStore({ ...storage, setItem }, owner);
    expect(store.trouble()).toBe("low");
    store.keep(diaryOf(entry("2026-11-30")));
    expect([store.isKept(), store.trouble()]).toEqual([true, "low"]);
  });

  test("takes what it is given and has something else in its place is not believed", () => {
    const { storage } = memory();
    const store = openStore(
      { ...storage, getItem: (key) => storage.getItem(key)?.replace("2026-12-02", "") ?? null },
      owner,
    );
    store.keep(diaryOf(entry("2026-11-30")));
    expect(store.isKept()).toBe(true);
    store.keep(diaryOf(entry("2026-12-02")));
    expect([store.isKept(), store.trouble()]).toEqual([false, "full"]);
  });

  test.each([
    ["is full", () => memory({ set: quota() }).storage, ["full", undefined]],
    ["is not there", () => undefined, ["none", undefined]],
  ])("%s loses nothing when the window is loaded anew", (_, made, [trouble, after]) => {
    const spare = memory();
    const first = openStore(made(), owner, spare.storage);
    first.keep(diaryOf(entry("2026-11-30")));
    first.keepSettings({ ...USUAL_SETTINGS, ready: ["You can do ten rises."] });
    first.keepPlace({
      ...{ key: "2026-11-30 evening", day: "2026-11-30", short: false },
      ...{ at: 1, stage: "after", pace: undefined },
    });
    const again = openStore(made(), owner, spare.storage);
    expect(dates(again.diary())).toEqual(["2026-11-30"]);
    expect([again.settings().ready, again.place()?.at]).toEqual([["You can do ten rises."], 1]);
    expect([again.isKept(), again.trouble()]).toEqual([false, trouble]);
    const { storage } = memory();
    const roomy = openStore(storage, owner, spare.storage);
    expect([roomy.isKept(), roomy.trouble()]).toEqual([true, after]);
    const kept = openStore(storage, owner);
    expect(dates(kept.diary())).toEqual(["2026-11-30"]);
    expect([kept.settings().ready, kept.place()?.at]).toEqual([["You can do ten rises."], 1]);
    expect(spare.items.size).toBe(0);
  });
});

describe("what is kept but", () => {
  const good = diaryCsv(diaryOf(entry("2026-11-30")));
  test.each([
    ["is no diary", "rubbish", []],
    ["is of another version", good.replace(/^1,/m, "9,").replace(/\r\n1,/g, "\r\n9,"), []],
    ["is of another client", good.replaceAll(",c,", ",d,"), []],
    [
      "has a broken line beside a good one",
      `${good}1,p,c,b,1,2026-12-02,evening,,,,,maybe,,,,,,,,,,,,,\r\n`,
      ["2026-11-30"],
    ],
  ])("%s is put aside, never thrown away", (_, text, left) => {
    const { storage, items } = memory();
    items.set(name, text);
    const store = openStore(storage, owner);
    expect(dates(store.diary())).toEqual(left);
    store.keep(diaryOf(entry("2026-12-04")));
    expect([...items.values()]).toContain(text);
    const again = openStore(storage, owner);
    expect(dates(again.diary())).toEqual([...left, "2026-12-04"]);
    expect([again.aside(), again.trouble()], "told until it is taken").toEqual([[text], "unread"]);
    again.asideTaken();
    const taken = openStore(storage, owner);
    expect([taken.aside(), taken.trouble()]).toEqual([[text], undefined]);
  });

  test("cannot be read nor put aside, for want of room, is not written over", () => {
    const { storage, items } = memory();
    items.set(name, "rubbish");
    const setItem = (key: string, text: string) => {
      if (key.includes("unread")) throw quota();
      storage.setItem(key, text);
    };
    const spare = memory();
    const store = openStore({ ...storage, setItem }, owner, spare.storage);
    store.keep(diaryOf(entry("2026-12-04")));
    expect([store.isKept(), store.trouble()]).toEqual([false, "full"]);
    expect(items.get(name)).toBe("rubbish");
    const again = openStore(storage, owner, spare.storage);
    expect(dates(again.diary())).toEqual(["2026-12-04"]);
    expect([again.aside(), again.trouble()]).toEqual([["rubbish"], "unread"]);
  });
});

describe("deleting", () => {
  const place = {
    key: "k",
    day: "2026-11-30",
    short: false,
    at: 1,
    stage: "after",
    pace: undefined,
  } as const;
  const filled = (refuse = {}) => {
    const { storage, items } = memory(refuse);
    items.set(name, "rubbish");
    const store = openStore(storage, owner);
    store.keep(diaryOf(entry("2026-11-30")));
    store.keepSettings({ ...USUAL_SETTINGS, voice: true });
    store.keepPlace(place);
    return { storage, items, store };
  };

  test("leaves nothing of the plan, and all of another plan and person", () => {
    const { storage, items, store } = filled();
    for (const client of ["slip", "another"]) {
      openStore(storage, { ...owner, client }).keep({ ...NO_DIARY, client });
    }
    store.keepSettings({ ...USUAL_SETTINGS, asked: ["slip", "another"], same: ["slip"] });
    openStore(storage, { plan: "q", client: "c" }).keep({ ...NO_DIARY, plan: "q" });
    expect(store.forget()).toBe(true);
    expect([...items.keys()].sort()).toEqual(["paulatim p another diary", "paulatim q c diary"]);
    expect([store.diary().entries, store.place(), store.settings(), store.aside()]).toEqual([
      [],
      undefined,
      USUAL_SETTINGS,
      [],
    ]);
    store.keep(diaryOf(entry("2026-12-02")));
    expect(dates(openStore(storage, owner).diary())).toEqual(["2026-12-02"]);
  });

  test("is only said to be done where it is", () => {
    const { storage, store } = filled();
    storage.removeItem = () => {
      throw new Error("no");
    };
    expect(store.forget()).toBe(false);
  });

  test("takes what only this window has as well", () => {
    const spare = memory();
    const store = openStore(undefined, owner, spare.storage);
    store.keep(diaryOf(entry("2026-11-30")));
    expect(spare.items.size).toBe(1);
    store.forget();
    expect([spare.items.size, store.diary().entries]).toEqual([0, []]);
  });
});

test("a storage that throws when it is asked for counts as none", () => {
  const refusing = {
    get localStorage(): Storage {
      throw new Error("SecurityError");
    },
  };
  expect(deviceStorage(refusing, "localStorage")).toBeUndefined();
});

test("changes of other keys are not its own", () => {
  const store = openStore(memory().storage, owner);
  expect([name, null, "paulatim p d diary", "else"].map(store.isOurs)).toEqual([
    true,
    true,
    false,
    false,
  ]);
});
