/** The planned training load of each week on its real days: a description, never a forecast of injury. */
import { acuteChronic, growth, weekLoad, weightedAcuteChronic } from "../dose/load.ts";
import { plannedSessionLoad } from "../dose/totals.ts";
import type { Schedule } from "./schedule.ts";

export interface WeekLoads {
  /** Effort × minutes of all sessions; undefined where no exercise states an effort. */
  readonly load: number | undefined;
  /** Mean of the daily loads by their deviation; undefined where every day is the same. */
  readonly monotony: number | undefined;
  /** Load × monotony. */
  readonly strain: number | undefined;
  /** Change of load from the week before, as a share. */
  readonly change: number | undefined;
  /** Load of the last 7 days by that of the last 28, in three ways; undefined before day 28. */
  readonly acuteChronic:
    | { readonly coupled: number; readonly uncoupled: number; readonly weighted: number }
    | undefined;
}

/** One entry a week. Rounded to a tenth (loads) and a hundredth (ratios). */
export function weekLoads(schedule: Schedule, deviation: "population" | "sample"): WeekLoads[] {
  const past: number[] = [];
  let before: number | undefined;
  return schedule.weeks.map((week) => {
    const sessions = week.days.map((day) =>
      day.sessions.map(({ bouts }) => plannedSessionLoad(bouts)),
    );
    const days = sessions.map((loads) => loads.reduce((sum: number, load) => sum + (load ?? 0), 0));
    const stated = sessions.some((loads) => loads.some((load) => load !== undefined));
    past.push(...days);
    const { total, monotony, strain } = weekLoad(days, deviation);
    const change = before === undefined ? undefined : growth(before, total);
    before = total;
    return {
      load: stated ? round(total, 10) : undefined,
      monotony: stated && monotony !== undefined ? round(monotony, 100) : undefined,
      strain: stated && strain !== undefined ? round(strain, 10) : undefined,
      change: stated && change !== undefined ? round(change, 1000) : undefined,
      acuteChronic: stated ? ratios(past) : undefined,
    };
  });
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
