/**
 * Whether a session may be started now: nothing done before it nor planned after it too near, no time kept clear.
 * Held both ways: what is offered may be started, and what is held back has something against it.
 */

import { boutsOf, dayOf, sessionRows } from "./advice.ts";
import {
  type Bout,
  type Moment,
  minutesOf,
  momentAt,
  type Part,
  type Program,
  partAt,
  type Session,
} from "./program.ts";
import type { Sheet } from "./sheet.ts";

export interface Begun {
  readonly session: Session;
  readonly at: Moment;
}

/** From this recovery on work is hard, and hard work of one tissue is kept apart. */
const HARD_S = 36 * 3600;

export interface Asked {
  readonly sheet: Sheet;
  readonly program: Program;
  readonly nowMs: number;
  /** When sessions were begun on this phone, by their names. */
  readonly begun: ReadonlyMap<string, Begun>;
  /** The session that can be gone on with. */
  readonly underWay: Session | undefined;
}

/** Why a session may not be started; undefined where it may. */
export function wrongStart(session: Session, asked: Asked): string | undefined {
  const { program, nowMs } = asked;
  const now = momentAt(nowMs, program);
  const own = now.day === session.date && partAt(now.minutes, program) === session.part;
  const start = minutesOf(own ? { day: now.day, minutes: program.clock[session.part] } : now);
  return (
    tooSoon(session, start, asked) ??
    // in its own part of its own day it lies as it was laid out
    (own ? undefined : (tooLate(session, start, now, asked) ?? keptClear(session, start, asked)))
  );
}

/**
 * Whether nothing at all stands against a start, so that it may not be held back. Where it is open what
 * counts as written down or as still to come, that stands against it; so does what was so a minute ago.
 */
export function maySurelyStart(session: Session, asked: Asked): boolean {
  return [0, STALE_MS].every((ago) => {
    const before = { ...asked, nowMs: asked.nowMs - ago };
    return wrongStart(session, before) === undefined && !nearToday(session, before);
  });
}

/** A screen looks at its clock once a minute. */
const STALE_MS = 61_000;

/** Something of the same day, or of one that is partly written down, that would come too near. */
function nearToday(session: Session, { sheet, program, nowMs }: Asked): boolean {
  const now = momentAt(nowMs, program);
  const rows = sessionRows(sheet).map(({ date }) => date);
  const count = (dates: readonly string[], day: string) =>
    dates.filter((one) => one === day).length;
  const planned = program.sessions.map(({ date }) => date);
  return program.sessions.some((next) => {
    if (next === session || next.date < now.day) return false;
    if (count(rows, next.date) >= count(planned, next.date)) return false;
    const at = minutesOf({ day: next.date, minutes: program.clock[next.part] });
    const away = Math.abs(at - minutesOf(now));
    return session.bouts.some((one) =>
      next.bouts.some((later) => away < apart(one, later, program)),
    );
  });
}

function tooSoon(session: Session, start: number, asked: Asked): string | undefined {
  const { sheet, program, begun, underWay } = asked;
  const done = [...sheet.values()].flatMap((row) => {
    if (row.card === "" || row.done === "no") return [];
    const bout =
      boutsOf(row, sheet, program).find(({ card }) => card === row.card) ??
      program.bouts.find(({ card }) => card === row.card);
    if (bout === undefined) return [];
    const day = dayOf(row, sheet);
    const known = begun.get(`${row.date}-${row.part}`);
    const usual = { day, minutes: program.clock[row.part as Part] };
    const at = known?.at.day === day ? laidOut(known, program) : usual;
    return [{ bout, at: minutesOf(at) }];
  });
  const now = underWay && underWay !== session ? begun.get(underWay.name) : undefined;
  const going = now ? now.session.bouts.map((bout) => ({ bout, at: minutesOf(now.at) })) : [];
  for (const { bout, at } of [...done, ...going]) {
    const near = session.bouts.find((one) => Math.abs(start - at) < apart(bout, one, program));
    if (near) return `${near.title} comes ${start - at} minutes after ${bout.title}`;
  }
  return undefined;
}

/** Begun in its own part of its own day: as it was laid out. */
function laidOut({ session, at }: Begun, program: Program): Moment {
  const own = at.day === session.date && partAt(at.minutes, program) === session.part;
  return own ? { day: at.day, minutes: program.clock[session.part] } : at;
}

function tooLate(
  session: Session,
  start: number,
  now: Moment,
  { sheet, program }: Asked,
): string | undefined {
  const written = new Set([...sheet.values()].map(({ date }) => date));
  for (const next of program.sessions) {
    if (next.date <= now.day || written.has(next.date)) continue;
    const at = minutesOf({ day: next.date, minutes: program.clock[next.part] });
    for (const one of session.bouts)
      for (const later of next.bouts)
        if (Math.abs(at - start) < apart(one, later, program))
          return `${later.title} follows ${at - start} minutes later, on ${next.name}`;
  }
  return undefined;
}

function keptClear({ bouts }: Session, start: number, { program }: Asked): string | undefined {
  for (const { id, part, dates, clearBeforeHours, clearAfterHours } of program.events) {
    for (const day of dates) {
      const until = minutesOf({ day, minutes: program.clock[part] }) - start;
      const before = until >= 0 && until < clearBeforeHours * 60;
      const after = until <= 0 && -until < clearAfterHours * 60;
      const kept = bouts.some(
        ({ keptClearOf }) =>
          (before && keptClearOf.before.includes(id)) || (after && keptClearOf.after.includes(id)),
      );
      if (kept) return `the time around ${id} on ${day} is kept clear`;
    }
  }
  return undefined;
}

/** Minutes from start to start. */
function apart(one: Bout, other: Bout, { groupHours }: Program): number {
  const same = one.card === other.card ? Math.max(one.recoveryS, other.recoveryS) / 60 : 0;
  if (one.recoveryS < HARD_S || other.recoveryS < HARD_S) return Math.floor(same);
  const shared = one.tissues.filter((tissue) => other.tissues.includes(tissue));
  return Math.floor(Math.max(same, ...shared.map((tissue) => 60 * (groupHours[tissue] ?? 0))));
}
