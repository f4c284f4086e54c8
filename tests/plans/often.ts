/** Whether every exercise is laid out as often as the plan asks, less what days away and events take. */
import { addDays, daysBetween } from "../surfaces/calendar-days.ts";
import type { AskedWeek, Entry } from "./asked.ts";
import { isClosed } from "./clear.ts";
import { datesOf, hasTime, hasUsualTime, leftMinutes, usualMinutes } from "./days.ts";
import { PARTS, type PlanText } from "./plan-text.ts";
import { datesOfKey, type PrintedWeek } from "./printed.ts";

/** What is wrong with how often, a line for each. */
export function wrongOften(
  plan: PlanText,
  asked: readonly AskedWeek[],
  weeks: readonly PrintedWeek[],
): string[] {
  if (weeks.length !== asked.length) return [`${weeks.length} weeks for ${asked.length}`];
  return [
    ...weeks.flatMap((week, at) => wrongWeek(plan, asked[at]?.entries ?? [], week)),
    ...runsOf(asked).flatMap((run) => wrongRun(run, plan, asked, weeks)),
  ];
}

function wrongWeek(plan: PlanText, entries: readonly Entry[], week: PrintedWeek): string[] {
  const known = new Set(entries.map(({ key }) => key));
  const laid = week.sessions.flatMap(({ bouts }) => bouts.map(({ key }) => key));
  return [
    ...[...new Set(laid)]
      .filter((key) => !known.has(key))
      .map((key) => `week ${week.week}: nobody asks for ${key}`),
    ...entries.flatMap((entry) => wrongCount(plan, entry, week)),
  ];
}

/** So many days a week are so many; daily is every day, less those taken by the plan. */
function wrongCount(plan: PlanText, { key, dose }: Entry, week: PrintedWeek): string[] {
  const dates = datesOfKey([week], key);
  const { per_week, per_day } = dose;
  if (per_week !== undefined) {
    return dates.length === per_week
      ? []
      : [`week ${week.week}: ${key} ${dates.length} times, not ${per_week}`];
  }
  if (per_day === undefined) return [];
  return datesOf(plan, week.week).flatMap((date) => {
    const isTaken = hasUsualTime(plan, date) && !hasTime(plan, date);
    const wanted = isTaken ? 0 : per_day;
    const count = dates.filter((one) => one === date).length;
    return count === wanted ? [] : [`${date}: ${key} ${count} times, not ${wanted}`];
  });
}

/** Weeks one after the other in which an exercise is done every n days. */
interface Run {
  readonly key: string;
  readonly n: number;
  readonly first: number;
  last: number;
}

const everyOf = ({ dose }: Entry): number | undefined =>
  typeof dose.every === "string" ? Number(dose.every.split(" ")[0]) : undefined;

function runsOf(asked: readonly AskedWeek[]): Run[] {
  const runs: Run[] = [];
  for (const { number, entries } of asked) {
    for (const entry of entries) {
      const n = everyOf(entry);
      if (n === undefined) continue;
      const open = runs.find(
        (run) => run.key === entry.key && run.n === n && run.last === number - 1,
      );
      if (open) open.last = number;
      else runs.push({ key: entry.key, n, first: number, last: number });
    }
  }
  return runs;
}

/**
 * An exercise begins on any of the first n days, and again n days after each time; where that day is
 * taken by the plan, on the next that is open to all that is done every n days with it.
 */
function wrongRun(
  { key, n, first, last }: Run,
  plan: PlanText,
  asked: readonly AskedWeek[],
  weeks: readonly PrintedWeek[],
): string[] {
  const days = Array.from({ length: last - first + 1 }, (_, at) =>
    datesOf(plan, first + at),
  ).flat();
  const dates = datesOfKey(weeks.slice(first - 1, last), key);
  const [start = plan.starts] = days;
  const end = addDays(days.at(-1) ?? start, 1);
  // what was done before the run, with others that keep the same days, is not known here: the first
  // time has to come within n days
  const dues = [addDays(start, n - 1), ...dates.map((date) => addDays(date, n))];
  return dues.flatMap((due, at) => {
    const next = dates[at] ?? end;
    if (at > 0 && next < due && next < end) return [`${key}: again on ${next}, due on ${due}`];
    const late = daysBetween(due, next);
    if (late <= 0) return [];
    const waited = Array.from({ length: late }, (_, day) => addDays(due, day));
    const begins =
      at === 0 ? waited.some((date) => state(date) === "taken") : state(due) === "taken";
    const open = waited.filter((date, day) => (at > 0 || day > 0) && state(date) === "open");
    if (!begins)
      return [`${key}: due on ${due}, comes on ${next === end ? "no day" : next} for no reason`];
    return open.map((date) => `${key}: waits past ${date}, which is open`);
  });

  /** What a date offers all exercises that are done every n days in its week. */
  function state(date: string): "open" | "taken" | "closed" {
    const at = Math.floor(daysBetween(plan.starts, date) / 7);
    const together = (asked[at]?.entries ?? []).filter((entry) => everyOf(entry) === n);
    const offers = together.map((entry) => offer(entry, date, weeks[at]));
    if (offers.includes("closed")) return "closed";
    return offers.includes("taken") ? "taken" : "open";
  }

  function offer(entry: Entry, date: string, week: PrintedWeek | undefined) {
    const minutes = minutesOf(entry.key, week);
    const [left, usual] = [leftMinutes(plan, date), usualMinutes(plan, date)];
    const closed = (part: (typeof PARTS)[number]) => isClosed(entry, date, part, plan);
    if (PARTS.some((part) => left[part] >= minutes && !closed(part))) return "open";
    return PARTS.some((part) => usual[part] >= minutes && (left[part] < minutes || closed(part)))
      ? "taken"
      : "closed";
  }

  /** What a bout takes, from the week itself or any other. */
  function minutesOf(of: string, week: PrintedWeek | undefined): number {
    const bouts = [...(week ? [week] : []), ...weeks].flatMap(({ sessions }) =>
      sessions.flatMap(({ bouts: all }) => all.filter((bout) => bout.key === of)),
    );
    return Math.ceil((bouts[0]?.clock_s ?? 60) / 60);
  }
}
