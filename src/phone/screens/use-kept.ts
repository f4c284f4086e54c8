/** What is kept on the phone as the screens have it: the diary, the place in a session, the choices, and their changes. */
import { useEffect, useMemo, useState } from "preact/hooks";
import { type Diary, type DiaryEntry, findSession, sessionKey } from "../../diary/entry.ts";
import { type Act, joinedTo, type Kept, standing } from "../day/acts.ts";
import { withEntry, writtenAfter } from "../day/entries.ts";
import type { SessionPlace, Settings } from "../store/settings.ts";
import type { Store } from "../store/store.ts";

/** What changes of a place while an exercise is paced. */
export type PaceState = Partial<Pick<SessionPlace, "pace" | "hurts">>;

interface KeptInUse {
  readonly kept: Kept;
  readonly change: (act: Act) => void;
  /** Keeps the state of the pace, or whether it hurts, at the place that the client is in. */
  readonly keepPace: (state: PaceState) => void;
  /** The client has what was put aside in a file of their own. */
  readonly asideTaken: () => void;
  /** Deletes it all. Whether nothing is left. */
  readonly forget: () => boolean;
}

/** `booklet`: the version in which entries are written from now on. */
export function useKept(store: Store, booklet: string): KeptInUse {
  const [known, setKnown] = useState<Diary>(store.diary);
  const diary = useMemo(() => standing(known), [known]);
  const [settings, setSettings] = useState<Settings>(store.settings);
  const [place, setPlace] = useState<SessionPlace | undefined>(store.place);

  useEffect(() => {
    const another = (event: StorageEvent) => {
      if (!store.isOurs(event.key)) return;
      // deleted in another window: nothing of it stays in this one
      if (event.key !== null && event.newValue === null) window.location.reload();
      else setKnown(store.diary());
    };
    window.addEventListener("storage", another);
    return () => window.removeEventListener("storage", another);
  }, [store]);

  /** Marked with this instant, and after what it takes the place of. */
  const written = (all: Diary, entry: DiaryEntry) => {
    const before = findSession(all.entries, sessionKey(entry));
    const mark = writtenAfter(new Date(), before?.written);
    return withEntry(all, { ...entry, booklet, written: mark });
  };
  const change = ({ entries = [], joined = [], place: next, settings: changed }: Act) => {
    if (joined.length > 0) {
      const diary = store.diary();
      setKnown(store.keep({ ...diary, entries: joinedTo(diary, joined) }));
    }
    if (entries.length > 0) setKnown(store.keep(entries.reduce(written, store.diary())));
    if (next) {
      const there = next === "none" ? undefined : next;
      store.keepPlace(there);
      setPlace(there);
    }
    if (changed) {
      const all = { ...settings, ...changed };
      store.keepSettings(all);
      setSettings(all);
    }
  };
  const keepPace = (state: PaceState) =>
    setPlace((there) => {
      const next = there && { ...there, ...state };
      store.keepPlace(next);
      return next;
    });
  const asideTaken = () => {
    store.asideTaken();
    setSettings(store.settings());
  };
  const forget = () => {
    const gone = store.forget();
    setKnown(store.diary());
    setSettings(store.settings());
    setPlace(undefined);
    return gone;
  };
  return { kept: { diary, place, settings }, change, keepPace, asideTaken, forget };
}
