/** Whether a session may be started at a moment, by the rules that laid out the week; if not, why, and when it may. */
import type { SessionBout } from "../../compose/session-model.ts";
import type { Diary, DiaryEntry } from "../../diary/entry.ts";
import { HARD_RECOVERY_S } from "../../program/hardness.ts";
import type { KeptEvent, Spacing } from "../../schedule/spacing.ts";
import { type DayClock, type Moment, minutesBetween, momentOf } from "../../units/clock.ts";
import { addDays } from "../../units/dates.ts";
import { PARTS, type PartOfDay } from "../../units/day-parts.ts";
import { minutesApart } from "../../week/search/hours-apart.ts";
import { minutesOf } from "../../week/search/problem.ts";
import type { PlannedSession } from "./data.ts";
import { dayOf } from "./morning.ts";
import type { Pairs } from "./pairs.ts";
import { partNow } from "./parts-now.ts";

/** What stands against a start. */
export type Hold = {
  /** When it may be started, where that is before it would be left out. */
  readonly from: { readonly date: string; readonly part: PartOfDay } | undefined;
} & Reason;

export type Reason =
  /** What was done needs its rest. */
  | { readonly kind: "rest"; readonly title: string }
  /** The next time of an exercise would come too soon after it. */
  | { readonly kind: "next"; readonly session: PlannedSession }
  /** The time before or after an event is kept clear. */
  | { readonly kind: "before" | "after"; readonly event: string; readonly date: string };

/** What is known when a start is asked for. */
export interface Known {
  /** What the client may do, first to last. */
  readonly sessions: readonly PlannedSession[];
  readonly diary: Diary;
  readonly pairs: Pairs;
  /** The session that the client is in the middle of: its exercises count as done. */
  readonly underWay: PlannedSession | undefined;
  readonly clock: DayClock;
  readonly spacing: Spacing;
  /** When sessions were begun, by the names of their entries, where that is known. */
  readonly begun: ReadonlyMap<string, Moment>;
}

/** A session that was not started is spoken of for so many days: after that, going on matters more. */
export const WAIT_DAYS = 3;

/**
 * Undefined where nothing stands against it. Within the part of its own day a session counts as begun
 * when it was laid out: the plan's hours are those of the parts of the day.
 */
export function holdOf(session: PlannedSession, now: Moment, known: Known): Hold | undefined {
  const asked = { now, known };
  const reason = reasonAt(session, now, asked);
  if (reason === undefined) return undefined;
  const from = momentsAfter(session, now, known).find(
    (moment) => reasonAt(session, momentOf(moment, known.clock), asked) === undefined,
  );
  return { ...reason, from };
}

/** Parts of the day to come in which a session could be done: on its own day, and on days without sessions. */
function momentsAfter({ date }: PlannedSession, now: Moment, { sessions, clock }: Known) {
  const days = Array.from({ length: WAIT_DAYS + 1 }, (_, n) => addDays(date, n));
  return days
    .filter((day) => day === date || sessions.every((one) => one.date !== day))
    .flatMap((day) => PARTS.map((part) => ({ date: day, part })))
    .filter((moment) => minutesBetween(now, momentOf(moment, clock)) > 0);
}

/** When it is asked, and what is known then. */
interface Asked {
  readonly now: Moment;
  readonly known: Known;
}

/** What stands against a start at a moment, now or to come. */
function reasonAt(session: PlannedSession, at: Moment, { now, known }: Asked): Reason | undefined {
  const start = asLaidOut(session, at, known.clock);
  const before = restBefore(session, start, known);
  if (before || start !== at) return before;
  return restAfter(session, start, now, known) ?? eventsAt(session, start, known);
}

/** When a session counts as begun. */
function asLaidOut(
  { date, part }: Pick<PlannedSession, "date" | "part">,
  now: Moment,
  clock: DayClock,
): Moment {
  const own = now.date === date && partNow(now.minutes, clock) === part;
  return own ? { date, minutes: clock[part] } : now;
}

/** What was done in other sessions too near to this start. */
function restBefore(session: PlannedSession, start: Moment, known: Known): Reason | undefined {
  const near = doneBouts(session, known).find(({ bout, at }) => {
    const minutes = Math.abs(minutesBetween(at, start));
    return session.bouts.some((one) => minutes < apart(bout, one, known.spacing));
  });
  return near && { kind: "rest", title: near.bout.title };
}

/** What was done of other sessions, and when. */
function doneBouts(session: PlannedSession, known: Known) {
  const { diary, sessions, pairs, underWay } = known;
  const own = pairs.entryOf(session);
  const all = sessions.flatMap(({ bouts }) => bouts);
  const written = diary.entries.flatMap((entry) => {
    if (entry === own) return [];
    const planned = [...(pairs.sessionOf(entry)?.bouts ?? []), ...all];
    const at = doneAt(entry, known);
    return entry.exercises
      .filter(({ done }) => done !== "no")
      .flatMap(({ card }) => planned.find((bout) => bout.card === card) ?? [])
      .map((bout) => ({ bout, at }));
  });
  if (underWay === undefined || isSame(underWay, session)) return written;
  const { date, part, startsAt } = underWay;
  const at = known.begun.get(`${date} ${part}`) ?? { date, minutes: startsAt };
  return [...written, ...underWay.bouts.map((bout) => ({ bout, at }))];
}

/** When an entry's session was done: when it was begun, else when its part of the day begins. */
function doneAt(entry: DiaryEntry, { begun, clock }: Known): Moment {
  const at = begun.get(`${entry.date} ${entry.part}`);
  const usual = { date: dayOf(entry), minutes: clock[entry.part] };
  return at?.date === usual.date ? asLaidOut(entry, at, clock) : usual;
}

/** Sessions that are due now or to come, not written down yet, that would be too near. */
function restAfter(
  session: PlannedSession,
  start: Moment,
  now: Moment,
  { sessions, pairs, clock, spacing }: Known,
): Reason | undefined {
  const isOver = ({ date, part }: PlannedSession) =>
    date < now.date ||
    (date === now.date && PARTS.indexOf(part) < PARTS.indexOf(partNow(now.minutes, clock)));
  const next = sessions.find((one) => {
    if (isSame(one, session) || isOver(one) || pairs.entryOf(one)) return false;
    const minutes = Math.abs(minutesBetween(start, { date: one.date, minutes: one.startsAt }));
    return one.bouts.some((later) =>
      session.bouts.some((bout) => minutes < apart(bout, later, spacing)),
    );
  });
  return next && { kind: "next", session: next };
}

/** Events that some exercise of it is kept clear of. */
function eventsAt(
  { bouts }: PlannedSession,
  start: Moment,
  { spacing, clock }: Known,
): Reason | undefined {
  for (const event of spacing.events) {
    for (const date of event.dates) {
      const until = minutesBetween(start, momentOf({ date, part: event.part }, clock));
      const side = sideOf(event, until);
      if (side && bouts.some(({ keptClearOf }) => keptClearOf[side].includes(event.id)))
        return { kind: side, event: event.what, date };
    }
  }
  return undefined;
}

/** On which side of an event a bout lies within its hours, so many minutes before it. */
function sideOf(
  { clearBeforeHours, clearAfterHours }: KeptEvent,
  until: number,
): "before" | "after" | undefined {
  if (until >= 0 && until < minutesOf(clearBeforeHours)) return "before";
  return until <= 0 && -until < minutesOf(clearAfterHours) ? "after" : undefined;
}

/** Minutes between two bouts in different sessions, as the layout keeps them. */
function apart(one: SessionBout, other: SessionBout, { groupHours }: Spacing): number {
  return minutesApart(asLaid(one), asLaid(other), groupHours);
}

const asLaid = ({ key, card, tissues, recoveryS }: SessionBout) => ({
  id: key,
  movement: card,
  hard: recoveryS >= HARD_RECOVERY_S,
  groups: tissues,
  recoveryHours: recoveryS / 3600,
});

const isSame = (a: PlannedSession, b: PlannedSession) => a.date === b.date && a.part === b.part;
