/** The weeks at a glance: a calendar of real dates with its sessions. */

import type { ScheduledDay, ScheduledWeek, Session } from "../schedule/schedule.ts";
import { addDays } from "../units/dates.ts";
import type { Composing } from "./composing.ts";
import type { Booklet, CalendarDay, CalendarWeek } from "./model.ts";
import type { Writer } from "./numbers.ts";
import { partInDay } from "./part-words.ts";
import { phaseNames } from "./phase-names.ts";

/** One entry a week of the program. */
export function calendar(composing: Composing): CalendarWeek[] {
  const { program, schedule, write } = composing;
  let month = "";
  return schedule.weeks.map((week) => ({
    number: week.number,
    dates: weekDates(week, write),
    phases: phaseNames(program, week.number, write.words),
    days: week.days.map((day) => {
      const newMonth = day.date.slice(0, 7) !== month;
      month = day.date.slice(0, 7);
      return calendarDay(day, newMonth, composing);
    }),
    summary: summary(week, write),
    away: week.away,
  }));
}

/** The first weeks back in which an exercise has fewer sets than it would have, in a sentence. */
export function firstBack({ dosed, write }: Composing): string | undefined {
  const weeks = dosed.weeks.filter(({ bouts }) =>
    bouts.some(({ usualSets }) => usualSets !== undefined),
  );
  if (weeks.length === 0) return undefined;
  const list = write.list(weeks.map(({ week }) => write.number(week)));
  return write.words.say("weeks.first_back", { n: weeks.length, list });
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

function calendarDay(
  day: ScheduledDay,
  newMonth: boolean,
  { program, write }: Composing,
): CalendarDay {
  const { words } = write;
  return {
    date: day.date,
    label: newMonth ? write.shortDate(day.date) : write.dayOfMonth(day.date),
    long: write.longDate(day.date),
    sessions: day.sessions.map((session) => ({
      part: partInDay(session, program.clock, write),
      minutes: words.say("time.short_min", { n: session.minutes }),
      kind: "",
    })),
    notes: [...(day.away ? [words.say("weeks.away")] : []), ...day.events],
  };
}

function summary(week: ScheduledWeek, write: Writer): string {
  if (week.away) return write.words.say("weeks.away_week");
  const sessions = week.days.flatMap((day) => day.sessions);
  const minutes = minutesWords(sessions, write);
  return write.words.say("weeks.summary", { n: sessions.length, minutes });
}

/** How long sessions take as laid out, in minutes: "24", or "18 to 29" where they differ. */
export function minutesWords(sessions: readonly Session[], { words, number }: Writer): string {
  const minutes = sessions.map((session) => session.minutes);
  const [least, most] = [Math.min(...minutes), Math.max(...minutes)];
  if (minutes.length === 0) return number(0);
  return least === most
    ? number(most)
    : words.say("time.span", { least: number(least), most: number(most) });
}
