/** Exercises that wait for a sign: part of a session only once the client has seen it. */
import type { PlannedSession } from "./data.ts";

/** A sign, and the exercises that wait for it. */
export interface Gate {
  readonly sign: string;
  /** Titles, each once. */
  readonly titles: readonly string[];
}

/**
 * The sessions with what the client may do of them: without exercises whose sign is not among `ready`,
 * and without sessions that are left with none. Minutes stay as they were laid out.
 */
export function openSessions(
  sessions: readonly PlannedSession[],
  ready: readonly string[],
): readonly PlannedSession[] {
  if (sessions.every(({ bouts }) => bouts.every(({ when }) => when === undefined))) return sessions;
  return sessions.flatMap((session): PlannedSession[] => {
    const bouts = session.bouts.filter(({ when }) => when === undefined || ready.includes(when));
    if (bouts.length === 0) return [];
    const kept = session.short?.bouts.filter(({ key }) => bouts.some((bout) => bout.key === key));
    const short =
      session.short && kept && kept.length > 0 ? { ...session.short, bouts: kept } : undefined;
    return [{ ...session, bouts, short }];
  });
}

/** The signs of the sessions of a day, or where it has none of the next session after it. */
export function gatesOn(sessions: readonly PlannedSession[], day: string): readonly Gate[] {
  const today = sessions.filter(({ date }) => date === day);
  const next = sessions.find(({ date }) => date > day);
  return gatesOf(today.length > 0 ? today : next ? [next] : []);
}

/** The signs of some sessions, each once, in the order of its exercises. */
export function gatesOf(sessions: readonly PlannedSession[]): readonly Gate[] {
  const titles = new Map<string, Set<string>>();
  for (const { when, title } of sessions.flatMap(({ bouts }) => bouts)) {
    if (when === undefined) continue;
    titles.set(when, (titles.get(when) ?? new Set<string>()).add(title));
  }
  return [...titles].map(([sign, all]) => ({ sign, titles: [...all] }));
}
