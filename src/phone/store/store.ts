/** Keeps what the client writes on this device alone: nothing leaves it, and nothing kept is thrown away. */
import { diaryCsv, readDiary } from "../../diary/csv.ts";
import type { Diary } from "../../diary/entry.ts";
import { mergeDiaries } from "../../diary/merge.ts";
import { readPlace, readSettings, type SessionPlace, type Settings } from "./settings.ts";
import { type KeyValueStore, shelf } from "./shelf.ts";

/**
 * What keeps the device from keeping things: none: it offers no place (a private window, a viewer of
 * attachments); full: something that was written is not kept; low: the place is full or closed to
 * writing, so that the next words may not be; unread: what was kept could not be read, and lies aside.
 */
export type StoreTrouble = "none" | "full" | "low" | "unread";

export interface Store {
  /** The diary as kept, with what another window has written since. */
  readonly diary: () => Diary;
  /** Keeps the diary, joined with what is kept already. Returns what is now known. */
  readonly keep: (diary: Diary) => Diary;
  /** Whether all that is known is kept as well: it was read back. */
  readonly isKept: () => boolean;
  readonly settings: () => Settings;
  readonly keepSettings: (settings: Settings) => void;
  readonly place: () => SessionPlace | undefined;
  readonly keepPlace: (place: SessionPlace | undefined) => void;
  /** Texts that could not be read, as they were found. */
  readonly aside: () => readonly string[];
  /** The client has these texts in a file of their own: they are no news any more. */
  readonly asideTaken: () => void;
  /** Deletes all of this plan and client. Whether nothing of it is left. */
  readonly forget: () => boolean;
  readonly trouble: () => StoreTrouble | undefined;
  /** Whether a change of this key, made by another window, is one of this booklet's. */
  readonly isOurs: (key: string | null) => boolean;
}

/**
 * The store of one plan and client. Booklets of the same plan share it, so that a re-issued one takes
 * over what was written; those of other plans and clients never see it. The diary is kept as the CSV
 * text that is also sent, so that one reader checks both. `spare` is a place with room of its own that
 * outlives a reload, not the window: it has what the storage does not take, for as long as that is so. No
 * storage, or one that refuses, is a trouble to tell, never an exception: everything stays in memory then.
 */
export function openStore(
  storage: KeyValueStore | undefined,
  owner: Pick<Diary, "plan" | "client">,
  spare?: KeyValueStore,
): Store {
  const nameOf = (client: string, what: string) => `paulatim ${owner.plan} ${client} ${what}`;
  const name = (what: string) => nameOf(owner.client, what);
  const empty: Diary = { plan: owner.plan, client: owner.client, entries: [] };
  const [main, second] = [shelf(storage), shelf(spare)];
  let held = empty;
  /** The stored text that `held` has all of, or that lies aside. */
  let seen: string | null = null;
  /** A text in the diary's place that cannot be read and could not be put aside: nothing may be written over it. */
  let stuck: string | undefined;
  let unkept = false;
  let room = main.hasRoom();
  let settings: Settings | undefined;
  let place: SessionPlace | undefined;
  /** Whether the choices that are known are kept: that a call was made is one of them. */
  let chosenKept = true;

  const write = (what: "settings" | "place", text: string | undefined): boolean => {
    const kept = main.write(name(what), text);
    second.write(name(what), kept ? undefined : text);
    room = kept && (room || main.hasRoom());
    return kept;
  };
  const writeSettings = (): void => {
    chosenKept = write("settings", JSON.stringify(settingsNow()));
  };
  const nameAside = (client: string, n: number) => nameOf(client, `unread ${n}`);
  const asideOf = (client: string): readonly string[] => {
    const found: string[] = [];
    for (let text = main.read(nameAside(client, 1)); text !== null; ) {
      found.push(text);
      text = main.read(nameAside(client, found.length + 1));
    }
    return found;
  };
  const aside = () => asideOf(owner.client);
  let unread = aside().length;
  const putAside = (text: string): boolean => {
    const before = aside();
    if (!before.includes(text) && !main.write(nameAside(owner.client, before.length + 1), text))
      return false;
    unread = aside().length;
    return true;
  };
  /** Takes over what a stored text says. */
  const take = (text: string): void => {
    const { diary, problems } = readDiary(text);
    const own = diary?.plan === owner.plan && diary.client === owner.client;
    stuck = problems.length > 0 || !own ? text : undefined;
    if (own) held = mergeDiaries(held, diary);
  };
  const known = (): Diary => {
    const text = main.read(name("diary"));
    if (text !== null && text !== seen) {
      seen = text;
      take(text);
    }
    if (stuck !== undefined && putAside(stuck)) stuck = undefined;
    return held;
  };
  const keep = (diary: Diary): Diary => {
    held = mergeDiaries(known(), diary);
    const text = diaryCsv(held);
    unkept = stuck !== undefined || !main.write(name("diary"), text);
    if (!unkept) seen = text;
    second.write(name("diary"), unkept ? text : undefined);
    room = !unkept && (room || main.hasRoom());
    if (!chosenKept) writeSettings();
    return held;
  };
  const keepSettings = (changed: Settings): void => {
    settings = changed;
    writeSettings();
  };
  const settingsNow = (): Settings => {
    settings ??= readSettings(second.read(name("settings")) ?? main.read(name("settings")));
    return settings;
  };

  // what a window could not keep before it was loaded anew
  const left = second.read(name("diary"));
  const found = left === null ? undefined : readDiary(left).diary;
  if (found?.plan === owner.plan && found.client === owner.client) keep(found);
  if (second.read(name("settings")) !== null) writeSettings();
  const was = second.read(name("place"));
  if (was !== null) write("place", was);

  return {
    diary: known,
    keep,
    isKept: () => main.works && !unkept && chosenKept,
    settings: settingsNow,
    keepSettings,
    place: () => {
      place ??= readPlace(second.read(name("place")) ?? main.read(name("place")));
      return place;
    },
    keepPlace: (changed) => {
      place = changed;
      write("place", changed && JSON.stringify(changed));
    },
    aside,
    asideTaken: () => keepSettings({ ...settingsNow(), asideTaken: unread }),
    forget: () => {
      const keys = [owner.client, ...settingsNow().same].flatMap((client) => [
        ...["diary", "settings", "place"].map((what) => nameOf(client, what)),
        ...asideOf(client).map((_, at) => nameAside(client, at + 1)),
      ]);
      [held, seen, stuck, unkept, unread] = [empty, null, undefined, false, 0];
      [settings, place] = [undefined, undefined];
      const gone = keys.map((key) => main.read(key) === null || main.write(key, undefined));
      for (const what of ["diary", "settings", "place"]) second.write(name(what), undefined);
      chosenKept = true;
      room = main.hasRoom();
      return gone.every(Boolean);
    },
    trouble: () => {
      if (!main.works) return "none";
      if (unkept || !chosenKept) return "full";
      if (!room) return "low";
      return unread > settingsNow().asideTaken ? "unread" : undefined;
    },
    isOurs: (key) => key === null || key === name("diary"),
  };
}
