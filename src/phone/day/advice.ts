/** What the pain rule says to the numbers in the diary, in the sentences of the booklet. */
import type { SessionBout } from "../../compose/session-model.ts";
import { type Diary, type DiaryEntry, sessionKey } from "../../diary/entry.ts";
import * as pain from "../../pain/advice.ts";
import type { PlannedSession } from "./data.ts";

export interface Advice {
  readonly level: pain.AdviceLevel;
  /** Sentences of the booklet, most urgent first. */
  readonly says: readonly string[];
}

/** Pain during an exercise, 0 to 10: over the limit, the rule's own words; within it nothing. */
export function adviceDuring(
  number: number,
  bout: Pick<SessionBout, "pain" | "painWords">,
): Advice | undefined {
  return pain.adviceDuring(number, bout) && { level: "stop", says: [bout.painWords.over] };
}

/** Pain after a session, 0 to 10. */
export function adviceAfter(number: number, { bouts }: PlannedSession): Advice | undefined {
  return inWords(pain.adviceAfter(number, bouts), "");
}

/**
 * The morning after a session. `settle` is the booklet's sign to call for it; the entry need not be in
 * the diary yet.
 */
export function adviceMorning(
  entry: DiaryEntry,
  sessions: readonly PlannedSession[],
  diary: Diary,
  settle: string,
): Advice | undefined {
  const session = felt(sessions);
  return inWords(pain.adviceMorning(session(entry), diary.entries.map(session)), settle);
}

/** What still holds from the last session that was done, when the next one begins. */
export function adviceFromLast(
  { entries }: Diary,
  sessions: readonly PlannedSession[],
  settle: string,
): Advice | undefined {
  return inWords(pain.adviceFromLast(entries.map(felt(sessions))), settle);
}

/** Brings an entry together with its session as planned. */
function felt(sessions: readonly PlannedSession[]) {
  const planned = new Map(sessions.map((session) => [sessionKey(session), session.bouts]));
  return (entry: DiaryEntry): pain.FeltSession<SessionBout> => ({
    day: entry.doneOn ?? entry.date,
    felt: entry,
    bouts: planned.get(sessionKey(entry)) ?? [],
  });
}

function inWords(advice: pain.Advice<SessionBout> | undefined, settle: string): Advice | undefined {
  if (advice === undefined) return undefined;
  const { level, over, by } = advice;
  const { after, worse } = by.painWords;
  switch (over) {
    case "during":
    case "morning":
      return { level, says: [worse] };
    case "after":
      return { level, says: [after, worse] };
    case "mornings":
      return { level, says: [settle, worse] };
  }
}
