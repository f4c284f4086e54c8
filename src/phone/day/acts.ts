/** What one tap changes, and the change that takes it back. */
import { type Diary, type DiaryEntry, findSession, sessionKey } from "../../diary/entry.ts";
import type { SessionPlace, Settings } from "../store/settings.ts";
import { writtenAfter } from "./entries.ts";

/** All that is kept on the phone. */
export interface Kept {
  readonly diary: Diary;
  readonly place: SessionPlace | undefined;
  readonly settings: Settings;
}

/** A change of what is kept; what it does not name stays as it is. */
export interface Act {
  readonly entries?: readonly DiaryEntry[];
  /** Entries written elsewhere, joined to the diary: of each session, what was written last holds. */
  readonly joined?: readonly DiaryEntry[];
  /** `none`: no session is under way any more. */
  readonly place?: SessionPlace | "none";
  readonly settings?: Partial<Settings>;
}

/** The act after which everything is as it was before this one. */
export function undoOf(act: Act, before: Kept): Act {
  const { entries = [], joined = [], place, settings } = act;
  const asBefore = (entry: DiaryEntry) =>
    findSession(before.diary.entries, sessionKey(entry)) ?? withdrawn(entry);
  return {
    entries: [...entries, ...joined].map(asBefore),
    ...(place && { place: before.place ?? "none" }),
    ...(settings && { settings: before.settings }),
  };
}

/**
 * An entry that was taken back. Kept diaries are put together by what was written last, so that an entry
 * cannot just go: it stays without exercises, and says nothing to anybody.
 */
const withdrawn = (entry: DiaryEntry): DiaryEntry => ({
  ...entry,
  done: "no",
  doneOn: undefined,
  short: false,
  effort: undefined,
  painAfter: undefined,
  painMorning: undefined,
  worseMorning: undefined,
  note: "",
  exercises: [],
});

/**
 * Entries from elsewhere as they join a diary: over one that was taken back they are told anew, and so
 * written later than it; else what is older would stay away.
 */
export const joinedTo = ({ entries }: Diary, joined: readonly DiaryEntry[]): DiaryEntry[] =>
  joined.map((entry) => {
    const before = findSession(entries, sessionKey(entry));
    if (before === undefined || before.exercises.length > 0) return entry;
    return { ...entry, written: writtenAfter(new Date(entry.written), before.written) };
  });

/** The diary as screens, advice and everybody it is sent to see it: without entries that were taken back. */
export function standing(diary: Diary): Diary {
  const entries = diary.entries.filter(({ exercises }) => exercises.length > 0);
  return entries.length === diary.entries.length ? diary : { ...diary, entries };
}
