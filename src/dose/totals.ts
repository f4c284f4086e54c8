/** Sums of a week over all its bouts and sessions, as planned before real dates are known. */
import { ceilTo, floorTo } from "../units/rounding.ts";
import { sessionLoad } from "./load.ts";
import { sessionClock } from "./time.ts";
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
    sessions,
    exercises: bouts.length,
    sessionS: clocks[0] ?? 0,
  };
}

/**
 * Planned load of one session, effort × minutes of each bout with its rests (Foster 1998, Med Sci
 * Sports Exerc 30:1164), to a tenth; undefined where no bout states an effort. Bouts without one add
 * nothing.
 */
export function plannedSessionLoad(bouts: readonly Bout[]): number | undefined {
  const stated = bouts.filter(({ effort }) => effort !== undefined);
  return stated.length === 0 ? undefined : Math.round(total(stated.map(boutLoad)) * 10) / 10;
}

/**
 * How much bouts ask for on the clock: effort × minutes, undefined where one states no effort, and minutes,
 * both with rests and without the way from one exercise to the next.
 */
export function workOf(bouts: readonly Bout[]) {
  const stated = bouts.every(({ effort }) => effort !== undefined);
  return {
    load: stated ? total(bouts.map(boutLoad)) : undefined,
    minutes: total(bouts.map(({ clockS }) => clockS)) / 60,
  };
}

const boutLoad = ({ effort = 0, clockS }: Bout): number => sessionLoad(effort, clockS / 60);

function total(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}
