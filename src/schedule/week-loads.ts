/** The planned training load of each week on its real days: a description, never a forecast of injury. */
import { acuteChronic, weekLoad, weightedAcuteChronic } from "../dose/load.ts";
import { plannedSessionLoad, workOf } from "../dose/totals.ts";
import type { Bout } from "../dose/types.ts";
import { type Change, changesOf } from "./growth.ts";
import type { Schedule, ScheduledWeek } from "./schedule.ts";

export interface WeekLoads {
  /** Effort × minutes of all sessions; undefined where no exercise states an effort. */
  readonly load: number | undefined;
  /** Mean of the daily loads by their deviation; undefined where the days are nearly the same. */
  readonly monotony: number | undefined;
  /** Load × monotony. */
  readonly strain: number | undefined;
  /** Change from the last week before that had work, of all work together: unlike kinds are added. */
  readonly change: Change | undefined;
  /** Load of the last 7 days by that of the last 28, in three ways; undefined before day 28. */
  readonly acuteChronic:
    | { readonly coupled: number; readonly uncoupled: number; readonly weighted: number }
    | undefined;
}

/** One entry a week. Rounded to a tenth (loads), a hundredth (ratios) and a thousandth (change). */
export function weekLoads(schedule: Schedule, deviation: "population" | "sample"): WeekLoads[] {
  const past: number[] = [];
  const changes = changesOf(
    schedule.weeks.map((week) => ({ ...week, work: workOf(boutsIn(week)) })),
  );
  return schedule.weeks.map((week, index) => {
    const sessions = week.days.map((day) =>
      day.sessions.map(({ bouts }) => plannedSessionLoad(bouts)),
    );
    const days = sessions.map((loads) => loads.reduce((sum: number, load) => sum + (load ?? 0), 0));
    const stated = sessions.some((loads) => loads.some((load) => load !== undefined));
    past.push(...days);
    const { total, monotony, strain } = weekLoad(days, deviation);
    const change = changes[index];
    return {
      load: stated ? round(total, 10) : undefined,
      monotony: stated && monotony !== undefined ? round(monotony, 100) : undefined,
      strain: stated && strain !== undefined ? round(strain, 10) : undefined,
      change: change && { ...change, share: round(change.share, 1000) },
      acuteChronic: stated ? ratios(past) : undefined,
    };
  });
}

/** Every bout of every session of a week. */
export function boutsIn({ days }: ScheduledWeek): Bout[] {
  return days.flatMap(({ sessions }) => sessions.flatMap(({ bouts }) => bouts));
}

function ratios(past: readonly number[]): WeekLoads["acuteChronic"] {
  const coupled = acuteChronic(past, "coupled").ratio;
  const uncoupled = acuteChronic(past, "uncoupled").ratio;
  const weighted = weightedAcuteChronic(past).ratio;
  if (coupled === undefined || uncoupled === undefined || weighted === undefined) return undefined;
  return {
    coupled: round(coupled, 100),
    uncoupled: round(uncoupled, 100),
    weighted: round(weighted, 100),
  };
}

const round = (value: number, parts: number): number => Math.round(value * parts) / parts;
