/** Which session is due: today's by the plan's dates, one that was missed, or the next. */
import { type Diary, type DiaryEntry, sessionKey } from "../../diary/entry.ts";
import type { Moment } from "../../units/clock.ts";
import type { PlannedSession } from "./data.ts";
import { type Hold, holdOf, type Known, WAIT_DAYS } from "./hold.ts";
import { daysBetween } from "./local-day.ts";
import { comingFirst, partNow } from "./parts-now.ts";

/** What the first screen shows. */
export interface Today {
  /**
   * Today's sessions by the plan, whether written down or not, with those that are due or still to come
   * first; where the device's date cannot be right, the first of the program that is not written down.
   */
  readonly sessions: readonly PlannedSession[];
  /** The last session before today with nothing written down, where that is worth a word. */
  readonly missed:
    | {
        readonly session: PlannedSession;
        /** What stands against it; a day with sessions of its own does in any case. */
        readonly hold: Hold | undefined;
        readonly mayDo: boolean;
      }
    | undefined;
  /** The next session after today. */
  readonly next: PlannedSession | undefined;
  /** The whole program lies in the past. */
  readonly over: boolean;
}

/** So many days after its last session a booklet may still be in use; more, and the date is doubted. */
const LONG_AFTER_DAYS = 400;

/** Whether the device's date cannot be right: before the booklet was made, or long after its end. */
export function isOddClock(
  sessions: readonly PlannedSession[],
  now: Moment,
  made: string,
): boolean {
  const last = sessions.at(-1)?.date ?? now.date;
  // a day's grace: the clinic may lie in another time zone
  return daysBetween(now.date, made) > 1 || daysBetween(last, now.date) > LONG_AFTER_DAYS;
}

/** What is due at a moment. */
export function todayOf(known: Known, now: Moment, oddClock: boolean): Today {
  const { sessions, pairs } = known;
  if (oddClock) {
    const first = sessions.find((session) => pairs.entryOf(session) === undefined);
    return { sessions: first ? [first] : [], missed: undefined, next: undefined, over: false };
  }
  const last = sessions.at(-1)?.date ?? now.date;
  const today = sessions.filter(({ date }) => date === now.date);
  return {
    sessions: comingFirst(today, partNow(now.minutes, known.clock)),
    missed: missedAt(known, now, today.length > 0),
    next: sessions.find(({ date }) => date > now.date),
    over: sessions.length > 0 && last < now.date,
  };
}

function missedAt(known: Known, now: Moment, hasOwn: boolean): Today["missed"] {
  const session = known.sessions
    .filter(({ date }) => date < now.date && daysBetween(date, now.date) <= WAIT_DAYS)
    .at(-1);
  if (session === undefined || known.pairs.entryOf(session)) return undefined;
  const hold = hasOwn ? undefined : holdOf(session, now, known);
  return { session, hold, mayDo: !hasOwn && hold === undefined };
}

/** How long after a session the next morning is still asked for. */
const MORNING_DAYS = 3;

/**
 * The session whose next morning is to be asked for: the latest one done before the day whose morning has
 * come, `waking`, with no answer yet. `passed` are the names of sessions whose question the client has passed over. Sessions of one
 * day share their next morning: it is asked for once.
 */
export function morningOf(
  diary: Diary,
  waking: string,
  passed: readonly string[],
): DiaryEntry | undefined {
  const isOver = (entry: DiaryEntry) =>
    entry.painMorning !== undefined || passed.includes(sessionKey(entry));
  const over = new Set(diary.entries.filter(isOver).map(({ doneOn }) => doneOn));
  return diary.entries
    .filter(
      ({ done, doneOn }) =>
        done !== "no" &&
        doneOn !== undefined &&
        doneOn < waking &&
        daysBetween(doneOn, waking) <= MORNING_DAYS &&
        !over.has(doneOn),
    )
    .at(-1);
}
