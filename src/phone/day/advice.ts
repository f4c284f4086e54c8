/** What the pain rule says to the numbers in the diary, in the sentences of the booklet. */
import type { SessionBout } from "../../compose/session-model.ts";
import { type Diary, type DiaryEntry, sessionKey } from "../../diary/entry.ts";
import * as pain from "../../pain/advice.ts";
import type { FeltSession } from "../../pain/felt.ts";
import * as stopped from "../../pain/stopped.ts";
import type { PlannedSession } from "./data.ts";
import { withEntry } from "./entries.ts";
import { dayOf } from "./morning.ts";

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
 * The morning after the day on which this session was done; sessions of one day share it. `settle` is the
 * booklet's sign to call for it; the entry need not be in the diary yet.
 */
export function adviceMorning(
  entry: DiaryEntry,
  sessions: readonly PlannedSession[],
  diary: Diary,
  settle: string,
): Advice | undefined {
  const { entries } = withEntry(diary, entry);
  return inWords(pain.adviceMorning(dayOf(entry), entries.map(felt(sessions))), settle);
}

/** What still holds from the last session that was done, when the next one begins. */
export function adviceFromLast(
  { entries }: Diary,
  sessions: readonly PlannedSession[],
  settle: string,
): Advice | undefined {
  return inWords(pain.adviceFromLast(entries.map(felt(sessions))), settle);
}

/**
 * The exercise that was stopped for its pain on this day, where an exercise of this session is to be left
 * out for it. What is written down of the session itself counts, whatever its day.
 */
export function stoppedBefore(
  bout: SessionBout,
  session: PlannedSession,
  day: string,
  sessions: readonly PlannedSession[],
  { entries }: Diary,
): SessionBout | undefined {
  const key = sessionKey(session);
  const ofDay = entries.filter((entry) => dayOf(entry) === day || sessionKey(entry) === key);
  return stopped.stoppedBefore(bout, ofDay.map(felt(sessions)));
}

/**
 * Brings an entry together with the exercises that its pain is held against: those of its session as
 * planned. Where the booklet has no such session any more, those of the cards that it names; where it has
 * none of them either, all of the booklet, so that the strictest limit holds and none is without advice.
 */
function felt(sessions: readonly PlannedSession[]) {
  const planned = new Map(sessions.map((session) => [sessionKey(session), session.bouts]));
  const all = sessions.flatMap(({ bouts }) => bouts);
  return (entry: DiaryEntry): FeltSession<SessionBout> => {
    const named = () => all.filter(({ card }) => entry.exercises.some((one) => one.card === card));
    const known = planned.get(sessionKey(entry)) ?? named();
    return { day: dayOf(entry), felt: entry, bouts: known.length > 0 ? known : all };
  };
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
