/** What the pain rule says to the numbers in the diary, in the sentences of the booklet. */
import type { SessionBout } from "../../compose/session-model.ts";
import type { Diary, DiaryEntry } from "../../diary/entry.ts";
import * as pain from "../../pain/advice.ts";
import type { WrittenSession } from "../../pain/call.ts";
import * as stopped from "../../pain/stopped.ts";
import type { PainSigns, PlannedSession } from "./data.ts";
import { withEntry } from "./entries.ts";
import { dayOf } from "./morning.ts";
import { pairsOf } from "./pairs.ts";

export interface Advice {
  readonly level: pain.AdviceLevel;
  /** Sentences of the booklet, most urgent first. */
  readonly says: readonly string[];
}

/** Pain during an exercise, 0 to 10: over the limit, the rule's own words; within it nothing. */
export function adviceDuring(
  number: number | undefined,
  bout: SessionBout,
  signs: PainSigns,
  sudden = false,
): Advice | undefined {
  const advice = pain.adviceDuring(number, bout, signs.callLevel, sudden);
  return advice?.level === "stop"
    ? { level: "stop", says: [bout.painWords.over] }
    : inWords(advice, signs);
}

/** Pain after a session, 0 to 10. */
export function adviceAfter(
  number: number,
  { bouts }: PlannedSession,
  signs: PainSigns,
): Advice | undefined {
  return inWords(pain.adviceAfter(number, bouts, signs.callLevel), signs);
}

/**
 * The morning after the day on which this session was done; sessions of one day share it. The entry need
 * not be in the diary yet.
 */
export function adviceMorning(
  entry: DiaryEntry,
  sessions: readonly PlannedSession[],
  diary: Diary,
  signs: PainSigns,
): Advice | undefined {
  const { entries } = withEntry(diary, entry);
  const advice = pain.adviceMorning(
    dayOf(entry),
    entries.map(felt(sessions, entries)),
    signs.callLevel,
  );
  return inWords(advice, signs);
}

/**
 * What still holds from the last session that was done, when the next one begins. Where the client has
 * called for it already, what is left of a call is to do less.
 */
export function adviceFromLast(
  { entries }: Diary,
  sessions: readonly PlannedSession[],
  signs: PainSigns,
  hasCalled = false,
): Advice | undefined {
  const advice = pain.adviceFromLast(entries.map(felt(sessions, entries)), signs.callLevel);
  return inWords(
    advice?.level === "call" && hasCalled ? { ...advice, level: "ease" } : advice,
    signs,
  );
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
  const own = pairsOf(sessions, { entries }).entryOf(session);
  const ofDay = entries.filter((entry) => dayOf(entry) === day || entry === own);
  return stopped.stoppedBefore(bout, ofDay.map(felt(sessions, entries)));
}

/**
 * Brings an entry together with the exercises that its pain is held against: those of its session as
 * planned. Where the booklet has no such session any more, those of the cards that it names; where it has
 * none of them either, all of the booklet, so that the strictest limit holds and none is without advice.
 */
export function felt(sessions: readonly PlannedSession[], entries: readonly DiaryEntry[]) {
  const { sessionOf } = pairsOf(sessions, { entries });
  const all = sessions.flatMap(({ bouts }) => bouts);
  return (entry: DiaryEntry): WrittenSession<SessionBout> => {
    const named = () => all.filter(({ card }) => entry.exercises.some((one) => one.card === card));
    const known = sessionOf(entry)?.bouts ?? named();
    return {
      day: dayOf(entry),
      felt: entry,
      bouts: known.length > 0 ? known : all,
      bookletOf: /^\d{4}-\d\d-\d\d\b/.exec(entry.booklet)?.[0],
    };
  };
}

function inWords(
  advice: pain.Advice<SessionBout> | undefined,
  { less, severe, settle }: PainSigns,
): Advice | undefined {
  if (advice === undefined) return undefined;
  const { level, over, by } = advice;
  const { after, worse } = by.painWords;
  if (level === "call") return { level, says: over === "mornings" ? [settle, worse] : [severe] };
  // each occasion has its own sentence on the page
  if (over === "during") return { level, says: [less] };
  return { level, says: over === "after" ? [after, worse] : [worse] };
}
