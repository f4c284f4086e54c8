/** What the plan's own pain rule says to a number: ease, stop or call. It never asks for more. */
import type { SessionBout } from "../../compose/session-model.ts";
import { byPlan, type Diary, type DiaryEntry, findSession, sessionKey } from "../../diary/entry.ts";
import type { PlannedSession } from "./data.ts";

/** How serious it is: do less, stop this exercise, or call the clinic. */
export type AdviceLevel = "ease" | "stop" | "call";

export interface Advice {
  readonly level: AdviceLevel;
  /** Sentences of the booklet, most urgent first. */
  readonly says: readonly string[];
}

/** Pain during an exercise, 0 to 10: over the limit, the rule's own words; within it nothing. */
export function adviceDuring(
  pain: number,
  { pain: limits, painWords }: Pick<SessionBout, "pain" | "painWords">,
): Advice | undefined {
  return pain > limits.during ? { level: "stop", says: [painWords.over] } : undefined;
}

/** Pain after a session, 0 to 10, against the strictest of its exercises. */
export function adviceAfter(pain: number, session: PlannedSession): Advice | undefined {
  const bout = strictest(session);
  if (bout === undefined || pain <= bout.pain.after) return undefined;
  return { level: "ease", says: [bout.painWords.after, bout.painWords.worse] };
}

/**
 * The next morning: worse than usual, or over the limit, asks for less; two times running, for a call.
 * `settle` is the booklet's sign to call for it; the entry need not be in the diary yet.
 */
export function adviceMorning(
  entry: DiaryEntry,
  session: PlannedSession | undefined,
  diary: Diary,
  settle: string,
): Advice | undefined {
  const bout = session && strictest(session);
  if (bout === undefined || !badMorning(entry, bout.pain)) return undefined;
  const before = diary.entries
    .filter((other) => wasTried(other) && byPlan(other, entry) < 0)
    .at(-1);
  const says = [bout.painWords.worse];
  return before && badMorning(before, bout.pain)
    ? { level: "call", says: [settle, ...says] }
    : { level: "ease", says };
}

/** What still holds from the last session that was done, when the next one begins. */
export function adviceFromLast(
  diary: Diary,
  sessions: readonly PlannedSession[],
  settle: string,
): Advice | undefined {
  const last = diary.entries.filter(wasTried).at(-1);
  const session = last && findSession(sessions, sessionKey(last));
  if (last === undefined || session === undefined) return undefined;
  const morning = adviceMorning(last, session, diary, settle);
  if (morning) return morning;
  if (last.painAfter !== undefined) {
    const after = adviceAfter(last.painAfter, session);
    if (after) return after;
  }
  const over = session.bouts.find((bout) => {
    const pain = last.exercises.find(({ card }) => card === bout.card)?.pain;
    return pain !== undefined && pain > bout.pain.during;
  });
  return over && { level: "ease", says: [over.painWords.worse] };
}

/** Whether any of it was done, or given up for its pain. */
function wasTried({ done, exercises }: DiaryEntry): boolean {
  return done !== "no" || exercises.some(({ pain }) => pain !== undefined);
}

function badMorning(
  { painMorning, worseMorning }: DiaryEntry,
  limits: Pick<SessionBout["pain"], "after">,
): boolean {
  return worseMorning === true || (painMorning !== undefined && painMorning > limits.after);
}

/** The exercise of a session whose pain after it is limited most. */
function strictest({ bouts }: PlannedSession): SessionBout | undefined {
  return [...bouts].sort((a, b) => a.pain.after - b.pain.after)[0];
}
