/** Sums of a week over all its bouts and sessions, as planned before real dates are known. */
import { ceilTo, floorTo, tidy } from "../units/rounding.ts";
import { metresPerSecond, sessionClock, setSeconds, workOfSets } from "./time.ts";
import type { Bout, WeekTotals } from "./types.ts";

/**
 * Totals of a week's bouts, both sides and all sessions. Bouts with fewer sessions are taken
 * together with the others, so that the week has as few sessions as it can.
 */
export function weekTotals(bouts: readonly Bout[], changeoverS: number): WeekTotals {
  const sessions = Math.max(0, ...bouts.map((bout) => bout.sessions));
  const clocks = Array.from({ length: sessions }, (_, session) =>
    sessionClock(
      bouts.filter((bout) => bout.sessions > session).map((bout) => bout.clockS),
      changeoverS,
    ),
  );
  const each = bouts.map((bout) => ({ bout, times: bout.sides * bout.sessions }));
  return {
    reps: {
      low: total(each.map(({ bout, times }) => (bout.repsTotal?.low ?? 0) * times)),
      high: total(each.map(({ bout, times }) => (bout.repsTotal?.high ?? 0) * times)),
    },
    kg: floorTo(total(each.map(({ bout, times }) => (bout.kgTotal ?? 0) * times)), 0.1),
    minutes: ceilTo(total(clocks) / 60, 1),
    load: plannedLoad(bouts),
    sessions,
    exercises: bouts.length,
    sessionS: clocks[0] ?? 0,
  };
}

/**
 * Planned load of all sessions of a week, effort × minutes of each bout (Foster 1998, Med Sci Sports
 * Exerc 30:1164), to a tenth; undefined where no bout states an effort. Bouts without one add nothing.
 */
function plannedLoad(bouts: readonly Bout[]): number | undefined {
  const loads = bouts.flatMap((bout) => boutLoad(bout) ?? []);
  const sum = total(loads.map(({ load, sessions }) => load * sessions));
  return loads.length === 0 ? undefined : Math.round(sum * 10) / 10;
}

/** Planned load of one session from its bouts, to a tenth; undefined where none states an effort. */
export function plannedSessionLoad(bouts: readonly Bout[]): number | undefined {
  const loads = bouts.flatMap((bout) => boutLoad(bout)?.load ?? []);
  return loads.length === 0 ? undefined : Math.round(total(loads) * 10) / 10;
}

/**
 * Seconds of work of one session, both sides, without rests: what grows from week to week. A
 * repetition without tempo counts as in the session clock.
 */
export function workSeconds(bout: Bout, fastPart: number): number {
  const sets = workOfSets(bout, bout.sets, metresPerSecond(bout.load.kmH));
  return tidy(bout.sides * total(sets.map((set) => setSeconds(set, fastPart))));
}

function boutLoad({ effort, clockS, sessions }: Bout) {
  return effort === undefined ? undefined : { load: (effort * clockS) / 60, sessions };
}

function total(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}
