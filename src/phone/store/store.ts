/** Keeps what the client writes on this device alone: nothing leaves it, and nothing kept is thrown away. */
import { diaryCsv, readDiary } from "../../diary/csv.ts";
import type { Diary } from "../../diary/entry.ts";
import { mergeDiaries } from "../../diary/merge.ts";
import { readPlace, readSettings, type SessionPlace, type Settings } from "./settings.ts";

/**
 * What keeps the device from keeping things: none: it offers no place (a private window, a viewer of
 * attachments); full: the place is full or closed to writing; unread: what was kept cannot be read, and
 * was put aside.
 */
export type StoreTrouble = "none" | "full" | "unread";

/** The part of the Web Storage API that is used. */
export type KeyValueStore = Pick<Storage, "getItem" | "setItem" | "removeItem">;

export interface Store {
  /** The diary as kept, with what another window has written since. */
  readonly diary: () => Diary;
  /** Keeps the diary, joined with what is kept already. Returns what is now known. */
  readonly keep: (diary: Diary) => Diary;
  readonly settings: () => Settings;
  readonly keepSettings: (settings: Settings) => void;
  readonly place: () => SessionPlace | undefined;
  readonly keepPlace: (place: SessionPlace | undefined) => void;
  readonly trouble: () => StoreTrouble | undefined;
  /** Whether a change of this key, made by another window, is one of this booklet's. */
  readonly isOurs: (key: string | null) => boolean;
}

/**
 * The store of one plan and client. Booklets of the same plan share it, so that a re-issued one takes
 * over what was written; those of other plans and clients never see it. The diary is kept as the CSV
 * text that is also sent, so that one reader checks both. No storage, or one that refuses, is a trouble
 * to tell, never an exception: everything stays in memory then.
 */
export function openStore(
  storage: KeyValueStore | undefined,
  owner: Pick<Diary, "plan" | "client">,
): Store {
  const name = (what: string) => `paulatim ${owner.plan} ${owner.client} ${what}`;
  const empty: Diary = { plan: owner.plan, client: owner.client, entries: [] };
  let held = empty;
  /** The stored text that `held` has all of. */
  let seen: string | null = null;
  let settings: Settings | undefined;
  let place: SessionPlace | undefined;
  let trouble: StoreTrouble | undefined = works(storage) ? undefined : "none";

  const read = (what: string): string | null => {
    try {
      return storage?.getItem(name(what)) ?? null;
    } catch {
      return null;
    }
  };
  const write = (what: string, text: string | undefined): boolean => {
    if (storage === undefined || trouble === "none") return false;
    try {
      if (text === undefined) storage.removeItem(name(what));
      else storage.setItem(name(what), text);
      if (trouble === "full") trouble = undefined;
      return true;
    } catch {
      trouble = "full";
      return false;
    }
  };
  const putAside = (text: string): void => {
    trouble = "unread";
    for (let n = 1; n <= MOST_ASIDE; n += 1) {
      const aside = read(`unread ${n}`);
      if (aside === text) return;
      if (aside === null) {
        write(`unread ${n}`, text);
        return;
      }
    }
  };
  const known = (): Diary => {
    const text = read("diary");
    if (text === null || text === seen) return held;
    seen = text;
    const { diary, problems } = readDiary(text);
    const own = diary?.plan === owner.plan && diary.client === owner.client;
    if (problems.length > 0 || !own) putAside(text);
    if (own) held = mergeDiaries(held, diary);
    return held;
  };
  const keepDiary = (diary: Diary): Diary => {
    held = mergeDiaries(known(), diary);
    const text = diaryCsv(held);
    if (write("diary", text)) seen = text;
    return held;
  };

  return {
    diary: known,
    keep: keepDiary,
    settings: () => {
      settings ??= readSettings(read("settings"));
      return settings;
    },
    keepSettings: (changed) => {
      settings = changed;
      write("settings", JSON.stringify(changed));
    },
    place: () => {
      place ??= readPlace(read("place"));
      return place;
    },
    keepPlace: (changed) => {
      place = changed;
      write("place", changed && JSON.stringify(changed));
    },
    trouble: () => trouble,
    isOurs: (key) => key === null || key === name("diary"),
  };
}

/** Texts that could not be read and were put aside; more would mean that something writes rubbish. */
const MOST_ASIDE = 20;

/** Some devices offer a storage that throws at the first touch, or forgets at once. */
function works(storage: KeyValueStore | undefined): boolean {
  const key = "paulatim try";
  try {
    storage?.setItem(key, "1");
    const found = storage?.getItem(key) === "1";
    storage?.removeItem(key);
    return found;
  } catch (thrown) {
    // full is not the same as missing: what is kept can still be read
    return storage !== undefined && thrown instanceof Error && thrown.name === "QuotaExceededError";
  }
}

/** The device's storage, or undefined where asking for it is refused. */
export function deviceStorage(from: { readonly localStorage: Storage }): Storage | undefined {
  try {
    return from.localStorage ?? undefined;
  } catch {
    return undefined;
  }
}
