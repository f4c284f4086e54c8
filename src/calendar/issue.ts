/** What a booklet issues: its sessions with their revisions, against what the client already has. */
import type { Booklet } from "../compose/model.ts";
import type { BookletSession } from "../compose/session-model.ts";
import { findSession, sessionKey } from "../diary/entry.ts";
import { Fault, type WithFaults } from "../faults/fault.ts";
import { type IssuedRecord, type IssuedSession, isIssued, issuedRecord } from "../issued/record.ts";
import { preferredDays } from "../program/preferred-days.ts";
import type { Program } from "../program/program.ts";
import { momentOf, wallText } from "../units/clock.ts";
import { dayNumber } from "../units/dates.ts";

/** A session before its revision is known. */
type Unrevised = Omit<IssuedSession, "sequence">;

/**
 * The record of a booklet after `before`, the record of the one before it. Sessions before the day it
 * is made stay as they were issued. A session that is the same keeps its revision, one that changed
 * rises by one, and one that is gone is cancelled with the next. A draft issues nothing: its sessions
 * have revision 0, below every one that is signed, and cancel none.
 *
 * Fault: issued-kept, a warning, where the plan now says otherwise for what is past or stays.
 */
export function issue(
  booklet: Booklet,
  program: Program,
  before: IssuedRecord | undefined,
): WithFaults<IssuedRecord> {
  const made = booklet.printed.date;
  const now = booklet.sessions.map((session) => sessionNow(session, booklet, program));
  const parts = { plan: booklet.plan, made, prefer: [...preferredDays(program)] };
  if (booklet.draft) {
    const sessions = now.map((session) => ({ ...session, sequence: 0 }));
    return { value: issuedRecord({ ...parts, sessions, cancelled: [] }), faults: [] };
  }
  const isPast = ({ date }: { readonly date: string }) => date < made;
  const had = before?.sessions ?? [];
  const past = had.filter(isPast);
  const sessions = before === undefined ? now : now.filter((session) => !isPast(session));
  const known = before ? [...had, ...before.cancelled] : [];
  const revised = sessions.map((session): IssuedSession => {
    const last = findSession(known, sessionKey(session));
    if (last === undefined) return { ...session, sequence: firstRevision(made) };
    const same = isIssued(last) && calendarText(last) === calendarText(session);
    return { ...session, sequence: last.sequence + (same ? 0 : 1) };
  });
  const gone = had.filter((one) => !isPast(one) && !findSession(now, sessionKey(one)));
  const cancelled = [
    ...gone.map(({ date, part, start, minutes, sequence, title }) => {
      return { date, part, start, minutes, sequence: sequence + 1, title };
    }),
    ...(before?.cancelled ?? []).filter(
      (one) => !isPast(one) && !findSession(now, sessionKey(one)),
    ),
  ].sort(byDay);
  return {
    value: issuedRecord({ ...parts, sessions: [...past, ...revised], cancelled }),
    faults: [...pastFaults(past, now, program), ...preferFaults(parts.prefer, before, program)],
  };
}

/**
 * The revision of a session that no record knows: days since 2020-01-01. Should a record be lost, what
 * is issued later still stands above what was issued before.
 */
function firstRevision(made: string): number {
  return Math.max(1, dayNumber(made) - dayNumber("2020-01-01"));
}

function sessionNow(
  { date, part, minutes, title, exercises, pain, bouts }: BookletSession,
  { clinic, clock }: Booklet,
  program: Program,
): Unrevised {
  const cards = new Map(
    program.phases.flatMap((phase) => phase.exercises.map((one) => [one.key, one.card.card])),
  );
  return {
    date,
    part,
    start: wallText(momentOf({ date, part }, clock)),
    minutes,
    title,
    text: [...exercises, ...pain, `${clinic.name}, ${clinic.phone}`],
    bouts: bouts.map(({ key, recoveryS }) => ({
      exercise: key,
      recovery_h: recoveryS / 3600,
      tissues: [...(cards.get(key)?.tissues ?? [])],
    })),
  };
}

/** All that a calendar shows of a session. */
function calendarText({ start, minutes, title, text }: Unrevised): string {
  return JSON.stringify([start, minutes, title, text]);
}

function byDay(a: { readonly date: string; readonly start: string }, b: typeof a): number {
  return a.start < b.start ? -1 : a.start > b.start ? 1 : 0;
}

/** Told once, for sessions that may stay do not move for the sake of days that are liked better. */
function preferFaults(
  now: readonly string[],
  before: IssuedRecord | undefined,
  program: Program,
): Fault[] {
  if (before === undefined || before.prefer.join() === now.join()) return [];
  const place = program.plan.source.at(["week", "prefer"]);
  return [
    new Fault(
      "issued-kept",
      `The days liked best were ${before.prefer.join(", ") || "none"} and are now ${now.join(", ") || "none"}: only what has to move is laid on them.`,
      {
        level: "warning",
        place,
        hint: "The client has their days by heart. To lay all out anew: --issued none.",
      },
    ),
  ];
}

/** One warning for all sessions that are past and for which the plan now states other work. */
function pastFaults(
  past: readonly IssuedSession[],
  now: readonly Unrevised[],
  program: Program,
): Fault[] {
  const work = ({ text, bouts }: Unrevised) => text.slice(0, bouts.length);
  const differing = past.flatMap((then) => {
    const one = findSession(now, sessionKey(then));
    const [was, is] = [work(then), one ? work(one) : []];
    const [before, after] = [without(was, is), without(is, was)];
    return before.length + after.length === 0 ? [] : [{ then, before, after }];
  });
  const [first] = differing;
  if (first === undefined) return [];
  const quoted = (lines: readonly string[]) => lines.map((line) => `“${line}”`).join(", ");
  const { then, before, after } = first;
  const more = differing.length > 1 ? ` So it does for ${differing.length - 1} more.` : "";
  const place = program.plan.source.at(["starts"]);
  return [
    new Fault(
      "issued-kept",
      `The plan now says otherwise for a session that is past. On ${then.date} (${then.part}) was issued: ${quoted(before) || "less"}; now: ${quoted(after) || "nothing in its place"}.${more}`,
      {
        level: "warning",
        place,
        frame: program.plan.source.frame(place),
        hint: "Past days keep their sessions, and the calendar what it says of them; pages and tables print the plan as it is now. State changes for the weeks to come only.",
      },
    ),
  ];
}

const without = (lines: readonly string[], others: readonly string[]): string[] =>
  lines.filter((line) => !others.includes(line));
