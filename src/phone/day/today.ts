/** Which session is due: today's by the plan's dates, one that was missed, or the next. */
import { type Diary, type DiaryEntry, sessionKey } from "../../diary/entry.ts";
import { type Moment, minutesBetween } from "../../units/clock.ts";
import type { PlannedSession } from "./data.ts";
import { daysBetween } from "./local-day.ts";
import { pairsOf } from "./pairs.ts";

/** What the first screen shows. */
export interface Today {
  /**
   * Today's sessions by the plan, first to last, whether written down or not; where the device's date
   * cannot be right, the first of the program that is not written down.
   */
  readonly sessions: readonly PlannedSession[];
  /** The last session before today with nothing written down, where that is worth a word. */
  readonly missed: { readonly session: PlannedSession; readonly mayDo: boolean } | undefined;
  /** The next session after today. */
  readonly next: PlannedSession | undefined;
  /** The whole program lies in the past. */
  readonly over: boolean;
}

/** A missed session is spoken of for so many days: after that, going on matters more. */
const MISSED_DAYS = 3;

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
export function todayOf(
  sessions: readonly PlannedSession[],
  diary: Diary,
  now: Moment,
  oddClock: boolean,
): Today {
  const { entryOf } = pairsOf(sessions, diary);
  if (oddClock) {
    const first = sessions.find((session) => entryOf(session) === undefined);
    return { sessions: first ? [first] : [], missed: undefined, next: undefined, over: false };
  }
  const last = sessions.at(-1)?.date ?? now.date;
  const today = sessions.filter(({ date }) => date === now.date);
  const missed = sessions
    .filter(({ date }) => date < now.date && daysBetween(date, now.date) <= MISSED_DAYS)
    .at(-1);
  return {
    sessions: today,
    missed:
      missed === undefined || entryOf(missed)
        ? undefined
        : { session: missed, mayDo: today.length === 0 && rested(missed, sessions, diary, now) },
    next: sessions.find(({ date }) => date > now.date),
    over: sessions.length > 0 && last < now.date,
  };
}

/**
 * Whether a missed session done now leaves each of its exercises the time its tissue needs, from the
 * last time it was done and to the next time it is planned.
 */
function rested(
  missed: PlannedSession,
  sessions: readonly PlannedSession[],
  diary: Diary,
  now: Moment,
): boolean {
  const planned = new Map(sessions.map((session) => [sessionKey(session), session]));
  return missed.bouts.every(({ card, recoveryS }) => {
    const minutes = recoveryS / 60;
    const next = sessions.find(
      (session) => session.date > now.date && session.bouts.some((bout) => bout.card === card),
    );
    if (next && minutesBetween(now, startOf(next)) < minutes) return false;
    return diary.entries
      .filter((entry) => did(entry, card))
      .every((entry) => {
        const session = planned.get(sessionKey(entry));
        const done = { date: entry.doneOn ?? entry.date, minutes: session?.startsAt ?? 0 };
        return minutesBetween(done, now) >= minutes;
      });
  });
}

const startOf = ({ date, startsAt }: PlannedSession): Moment => ({ date, minutes: startsAt });

function did(entry: DiaryEntry, card: string): boolean {
  return (
    entry.done !== "no" && entry.exercises.some((one) => one.card === card && one.done !== "no")
  );
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
