/** The next morning as the diary keeps it: one answer a day, whichever of its sessions holds it. */
import type { Diary, DiaryEntry } from "../../diary/entry.ts";
import { isAnswered, type Morning, worstMorning } from "../../pain/morning.ts";

/** The day on which a session was done; of one that was not, the day it was planned for. YYYY-MM-DD. */
export const dayOf = ({ doneOn, date }: Pick<DiaryEntry, "doneOn" | "date">): string =>
  doneOn ?? date;

/** What is known of the morning after the day of this entry, from all sessions of that day. */
export const morningAfter = (entry: DiaryEntry, diary: Diary): Morning =>
  worstMorning(sameDay(entry, diary));

/**
 * The entries to write when the morning after the day of this entry is answered: those that hold an answer
 * to it already, so that none is left that says otherwise; where there is none, this one.
 */
export function withMorning(
  entry: DiaryEntry,
  diary: Diary,
  change: Partial<Morning>,
): DiaryEntry[] {
  const all = sameDay(entry, diary);
  const answer = { ...worstMorning(all), ...change };
  const holders = all.filter(isAnswered);
  return (holders.length > 0 ? holders : [entry]).map((one) => ({ ...one, ...answer }));
}

const sameDay = (entry: DiaryEntry, { entries }: Diary): DiaryEntry[] =>
  entries.filter((one) => dayOf(one) === dayOf(entry));
