/** The weeks at a glance: a calendar of real dates with its sessions. */

import type { ScheduledDay, ScheduledWeek } from "../schedule/schedule.ts";
import { addDays } from "../units/dates.ts";
import type { Composing } from "./composing.ts";
import type { Booklet, CalendarDay, CalendarWeek } from "./model.ts";
import type { Writer } from "./numbers.ts";

/** One entry a week of the program. */
export function calendar(composing: Composing): CalendarWeek[] {
  const { program, schedule, write } = composing;
  let month = "";
  return schedule.weeks.map((week) => ({
    number: week.number,
    dates: weekDates(week, write),
    phases: program.phases
      .filter(({ firstWeek, weeks }) => week.number >= firstWeek && week.number < firstWeek + weeks)
      .map(({ title }) => title),
    days: week.days.map((day) => {
      const newMonth = day.date.slice(0, 7) !== month;
      month = day.date.slice(0, 7);
      return calendarDay(day, newMonth, write);
    }),
    summary: summary(week, write),
  }));
}

/** "30 Nov to 6 Dec". */
export function weekDates(week: ScheduledWeek, write: Writer): string {
  const first = week.days[0]?.date ?? "";
  const last = week.days.at(-1)?.date ?? "";
  return write.words.say("weeks.dates", {
    from: write.shortDate(first),
    to: write.shortDate(last),
  });
}

/** Weekday names for the columns, beginning with the weekday of the first day. */
export function weekdayNames(starts: string, write: Writer): Booklet["weekdays"] {
  return Array.from({ length: 7 }, (_, index) => {
    const date = addDays(starts, index);
    return { short: write.weekday(date, "short"), long: write.weekday(date, "long") };
  });
}

function calendarDay(day: ScheduledDay, newMonth: boolean, write: Writer): CalendarDay {
  const { words } = write;
  return {
    date: day.date,
    label: newMonth ? write.shortDate(day.date) : write.dayOfMonth(day.date),
    long: write.longDate(day.date),
    sessions: day.sessions.map(({ part, minutes }) => ({
      part: words.say(`part.${part}`),
      minutes: words.say("time.short_min", { n: minutes }),
      kind: "",
    })),
    notes: [...(day.away ? [words.say("weeks.away")] : []), ...day.events],
  };
}

function summary(week: ScheduledWeek, write: Writer): string {
  const sessions = week.days.flatMap((day) => day.sessions);
  const longest = Math.max(0, ...sessions.map(({ minutes }) => minutes));
  return write.words.say("weeks.summary", { n: sessions.length, minutes: longest });
}
