/** The calendar of the weeks, in groups of weeks that share their phases. */
import type { Booklet, CalendarDay, CalendarWeek } from "../compose/model.ts";

/**
 * Weeks that follow each other in the same phases.
 *
 * Minutes stand in the days, unless days hold several sessions that are all equally long: then the
 * week's own line says so, and the days stay short.
 */
export function calendarView({ weeks }: Pick<Booklet, "weeks">) {
  const groups: { phases: readonly string[]; weeks: ReturnType<typeof weekView>[] }[] = [];
  const minutes = !weeks.some(crowded);
  for (const week of weeks) {
    const last = groups.at(-1);
    const view = weekView(week, minutes || !even(week));
    if (last !== undefined && last.phases.join("\n") === week.phases.join("\n")) {
      last.weeks.push(view);
    } else {
      groups.push({ phases: week.phases, weeks: [view] });
    }
  }
  return groups;
}

function weekView(week: CalendarWeek, minutes: boolean) {
  return { ...week, days: week.days.map((day) => dayView(day, minutes)) };
}

function dayView(day: CalendarDay, minutes: boolean) {
  const kind = day.sessions.length > 0 ? "busy" : day.notes.length > 0 ? "other" : "free";
  return { ...day, kind, sessions: day.sessions.map((session) => ({ ...session, show: minutes })) };
}

function crowded(week: CalendarWeek): boolean {
  return week.days.some(({ sessions }) => sessions.length > 1);
}

function even(week: CalendarWeek): boolean {
  return new Set(week.days.flatMap(({ sessions }) => sessions.map((s) => s.minutes))).size <= 1;
}
