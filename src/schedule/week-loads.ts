/** The planned training load of each week on its real days: a description, never a forecast of injury. */
import { acuteChronic, growth, weekLoad, weightedAcuteChronic } from "../dose/load.ts";
import { plannedSessionLoad, type Work, workOf } from "../dose/totals.ts";
import type { Bout } from "../dose/types.ts";
import type { Schedule, ScheduledWeek } from "./schedule.ts";

export interface WeekLoads {
  /** Effort × minutes of all sessions; undefined where no exercise states an effort. */
  readonly load: number | undefined;
  /** Mean of the daily loads by their deviation; undefined where the days are nearly the same. */
  readonly monotony: number | undefined;
  /** Load × monotony. */
  readonly strain: number | undefined;
  /** Change from the last week before that had work. */
  readonly change: Change | undefined;
  /** Load of the last 7 days by that of the last 28, in three ways; undefined before day 28. */
  readonly acuteChronic:
    | { readonly coupled: number; readonly uncoupled: number; readonly weighted: number }
    | undefined;
}

export interface Change {
  /** 0.3 is 30 % more. */
  readonly share: number;
  /**
   * The week compared with: the last one before that had any work, which may be some weeks back. A
   * first week back after a break is easier on purpose and is passed over.
   */
  readonly since: number;
  /** Minutes where an exercise of one of the two weeks states no effort. */
  readonly of: "load" | "minutes";
}

/** One entry a week. Rounded to a tenth (loads), a hundredth (ratios) and a thousandth (change). */
export function weekLoads(schedule: Schedule, deviation: "population" | "sample"): WeekLoads[] {
  const past: number[] = [];
  const changes = changesOf(schedule, () => true);
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

/**
 * How the work of each week differs from the last week before that had any; the one measure of
 * growth, for the terminal, the machine form and the warning. Effort × minutes with rests (Foster
 * 1998, Med Sci Sports Exerc 30:1164) of the sessions as laid out; minutes alone where an exercise
 * states no effort. `counts`: which bouts are meant. Undefined in the first week and in weeks of none.
 */
export function changesOf(
  { weeks }: Schedule,
  counts: (bout: Bout) => boolean,
): (Change | undefined)[] {
  let before: { readonly work: Work; readonly week: number } | undefined;
  return weeks.map((week) => {
    const work = workOf(boutsIn(week).filter(counts));
    if (work.minutes <= 0) return undefined;
    const change = before && changeFrom(before.work, work, before.week);
    if (!week.eased || before === undefined) before = { work, week: week.number };
    return change;
  });
}

/** Every bout of every session of a week. */
export function boutsIn({ days }: ScheduledWeek): Bout[] {
  return days.flatMap(({ sessions }) => sessions.flatMap(({ bouts }) => bouts));
}

function changeFrom(before: Work, now: Work, since: number): Change | undefined {
  const loads = before.load !== undefined && now.load !== undefined && before.load > 0;
  const share = loads
    ? growth(before.load ?? 0, now.load ?? 0)
    : growth(before.minutes, now.minutes);
  return share === undefined ? undefined : { share, since, of: loads ? "load" : "minutes" };
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
