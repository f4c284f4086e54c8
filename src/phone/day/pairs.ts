/** Which entry of the diary tells of which session, also where a re-issued booklet has moved the times of a day. */
import { type Diary, type DiaryEntry, sessionKey } from "../../diary/entry.ts";
import { PARTS } from "../../units/day-parts.ts";
import type { PlannedSession } from "./data.ts";
import { entryFor } from "./entries.ts";

type Planned = Pick<PlannedSession, "date" | "part" | "bouts">;

export interface Pairs {
  /** What is written down of a session. */
  readonly entryOf: (session: Planned) => DiaryEntry | undefined;
  /** The session that an entry tells of; undefined where the booklet has none for it. */
  readonly sessionOf: (entry: DiaryEntry) => PlannedSession | undefined;
}

/**
 * Pairs sessions and entries of a day, each once: those of one part of the day that share an exercise,
 * then others that share one, then what is left of one part of the day, whose exercises were swapped.
 */
export function pairsOf(
  sessions: readonly PlannedSession[],
  { entries }: Pick<Diary, "entries">,
): Pairs {
  const entryBy = new Map<string, DiaryEntry>();
  const sessionBy = new Map<string, PlannedSession>();
  const days = new Map<string, PlannedSession[]>();
  for (const session of sessions)
    days.set(session.date, [...(days.get(session.date) ?? []), session]);
  const samePart = (a: Planned, b: DiaryEntry) => a.part === b.part;
  const sharing = ({ bouts }: Planned, { exercises }: DiaryEntry) =>
    bouts.some(({ card }) => exercises.some((one) => one.card === card));
  const steps = [
    (one: Planned, entry: DiaryEntry) => samePart(one, entry) && sharing(one, entry),
    sharing,
    samePart,
  ];
  for (const fits of steps) {
    for (const entry of entries) {
      if (sessionBy.has(sessionKey(entry))) continue;
      const session = days
        .get(entry.date)
        ?.find((one) => !entryBy.has(sessionKey(one)) && fits(one, entry));
      if (session === undefined) continue;
      sessionBy.set(sessionKey(entry), session);
      entryBy.set(sessionKey(session), entry);
    }
  }
  return {
    entryOf: (session) => entryBy.get(sessionKey(session)),
    sessionOf: (entry) => sessionBy.get(sessionKey(entry)),
  };
}

/**
 * The entry to go on with for a session. A new one is named by the session's part of the day; where that
 * is the name of an entry of another session, by one that is free, so that nothing is written over.
 */
export function entryToWrite(
  session: PlannedSession,
  diary: Diary,
  pairs: Pairs,
  booklet: string,
  short: boolean,
): DiaryEntry {
  const known = pairs.entryOf(session);
  const entry = entryFor(session, known, booklet, short);
  if (known) return entry;
  const taken = diary.entries.filter(({ date }) => date === session.date).map(({ part }) => part);
  const free = [session.part, ...PARTS].find((part) => !taken.includes(part));
  return { ...entry, part: free ?? session.part };
}
