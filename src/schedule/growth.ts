/** How the work of a week differs from the last week before that had any: the one measure of growth. */
import { growth } from "../dose/load.ts";

/** How much some bouts ask for. */
export interface Work {
  /** Effort × minutes; undefined where a bout states no effort, since part of it would be missing. */
  readonly load: number | undefined;
  readonly minutes: number;
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

/** A week of the schedule, with what it asks for. */
export interface Week {
  readonly number: number;
  readonly eased: boolean;
  readonly work: Work;
}

/** One entry a week; undefined in the first with any work, and in weeks of none. */
export function changesOf(weeks: readonly Week[]): (Change | undefined)[] {
  let before: Week | undefined;
  return weeks.map((week) => {
    if (week.work.minutes <= 0) return undefined;
    const change = before && changeFrom(before, week.work);
    if (!week.eased || before === undefined) before = week;
    return change;
  });
}

function changeFrom({ work: before, number: since }: Week, now: Work): Change | undefined {
  const loads = before.load !== undefined && now.load !== undefined && before.load > 0;
  const share = loads
    ? growth(before.load ?? 0, now.load ?? 0)
    : growth(before.minutes, now.minutes);
  return share === undefined ? undefined : { share, since, of: loads ? "load" : "minutes" };
}
