/** Diaries of one client put together: of each session, what was written last. */
import { byPlan, type Diary, type DiaryEntry, sessionKey } from "./entry.ts";

/**
 * The entries of both. It does not matter which comes first, nor how often one is merged.
 *
 * Throws for diaries of two plans or clients: whoever calls must have seen that they are one.
 */
export function mergeDiaries(a: Diary, b: Diary): Diary {
  if (a.plan !== b.plan || a.client !== b.client) {
    throw new Error("Diaries of two plans or clients cannot be merged.");
  }
  const kept = new Map<string, DiaryEntry>();
  for (const entry of [...a.entries, ...b.entries]) {
    const key = sessionKey(entry);
    const other = kept.get(key);
    if (other === undefined || byAge(other, entry) < 0) kept.set(key, entry);
  }
  return { plan: a.plan, client: a.client, entries: [...kept.values()].sort(byPlan) };
}

/** The entries of sessions planned on that day, YYYY-MM-DD, or later. */
export const sinceDay = (diary: Diary, date: string): Diary => ({
  ...diary,
  entries: diary.entries.filter((entry) => entry.date >= date),
});

/** Older first; of one age, the one that says less; of as much, by the alphabet, so that all devices agree. */
function byAge(a: DiaryEntry, b: DiaryEntry): number {
  if (a === b) return 0;
  if (a.written !== b.written) return compare(a.written, b.written);
  const [textA, textB] = [stated(a), stated(b)];
  return textA.length - textB.length || compare(textA, textB);
}

/** All that an entry says as one text; what is undefined is left out, and the order of fields does not matter. */
const stated = (entry: DiaryEntry): string =>
  JSON.stringify(entry, (_key, value: unknown) =>
    typeof value === "object" && value !== null && !Array.isArray(value)
      ? Object.fromEntries(Object.entries(value).sort(([a], [b]) => compare(a, b)))
      : value,
  );

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
