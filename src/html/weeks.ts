/** The calendar of the weeks, in groups of weeks that share their phases. */
import type { Booklet, CalendarDay, CalendarWeek } from "../compose/model.ts";

/** The longest word for a part of the day that fits a day's column in full size. */
const LONGEST_PART = 8;

/**
 * Weeks that follow each other in the same phases, and how the calendar saves room.
 *
 * What all weeks of a group have in common is said once, at its head. Minutes stand in the days,
 * unless days hold several sessions that are all equally long. Where the days tell the minutes,
 * the weeks need not. A week away always says so, at the head where it is a group of its own.
 */
export function calendarView({ weeks }: Pick<Booklet, "weeks">) {
  const minutes = !weeks.some(crowded);
  const groups = runs(weeks).map((run) => {
    const [first] = run;
    const together = run.every(({ away }) => away) ? run : run.filter(({ away }) => !away);
    const ofAll = new Set(together.map(({ summary }) => summary));
    const shared = ofAll.size === 1;
    const [common = ""] = ofAll;
    return {
      phases: first?.phases ?? [],
      summary: shared ? common : "",
      weeks: run.map((week) => {
        const show = minutes || !even(week);
        const said = together.includes(week) && (shared || (show && !week.away));
        const summary = said ? "" : week.summary;
        return { ...week, summary, days: week.days.map((day) => dayView(day, show)) };
      }),
    };
  });
  const parts = weeks.flatMap(({ days }) => days.flatMap(({ sessions }) => sessions));
  return { groups, tight: parts.some(({ part }) => part.length > LONGEST_PART) };
}

function runs(weeks: readonly CalendarWeek[]): CalendarWeek[][] {
  const found: CalendarWeek[][] = [];
  for (const week of weeks) {
    const run = found.at(-1);
    if (run?.at(0)?.phases.join("\n") === week.phases.join("\n")) run?.push(week);
    else found.push([week]);
  }
  return found;
}

function dayView(day: CalendarDay, minutes: boolean) {
  const other = day.notes.length > 0 ? "other" : "free";
  const kind = day.sessions.length > 0 ? "busy" : other;
  return { ...day, kind, sessions: day.sessions.map((session) => ({ ...session, show: minutes })) };
}

function crowded(week: CalendarWeek): boolean {
  return week.days.some(({ sessions }) => sessions.length > 1);
}

function even(week: CalendarWeek): boolean {
  return new Set(week.days.flatMap(({ sessions }) => sessions.map((s) => s.minutes))).size <= 1;
}
