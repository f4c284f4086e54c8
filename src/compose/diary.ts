/** Diary pages: for each week a table of its sessions, with a place for every planned exercise. */

import type { ScheduledWeek, Session } from "../schedule/schedule.ts";
import { PARTS } from "../units/day-parts.ts";
import { weekDates } from "./calendar.ts";
import type { Composing } from "./composing.ts";
import { shortDose } from "./dose-words.ts";
import type { DiaryDays, DiaryTable, DiaryWeek } from "./model.ts";
import { partName, wallDate } from "./part-words.ts";

/** Sessions side by side in one table; more make a second table. */
const COLUMNS = { standard: 7, large: 3, summary: 7 } as const;

/** One entry a week that has sessions. */
export function diary(composing: Composing): DiaryWeek[] {
  return composing.schedule.weeks.flatMap((week) => {
    const sessions = week.days.flatMap((day) => day.sessions);
    if (sessions.length === 0) return [];
    const many = composing.edition === "large" && sessions.length > 2 * COLUMNS.large;
    const groups = many ? [] : tablesOf(sessions, COLUMNS[composing.edition]);
    return [
      {
        number: week.number,
        dates: weekDates(week, composing.write),
        tables: groups.map((group) => diaryTable(group, composing)),
        days: many ? diaryDays(week, composing) : undefined,
      },
    ];
  });
}

/** Few sessions: one table. Many: one for each part of the day, cut where the page is full. */
function tablesOf(sessions: readonly Session[], columns: number): Session[][] {
  if (sessions.length <= columns) return [[...sessions]];
  const parts = [...new Set(sessions.map(({ part }) => part))];
  return parts.flatMap((part) => {
    const same = sessions.filter((session) => session.part === part);
    return Array.from({ length: Math.ceil(same.length / columns) }, (_, n) =>
      same.slice(n * columns, (n + 1) * columns),
    );
  });
}

/** A row a day: with sixteen points and two sessions a day, tables by exercise would fill a book. */
function diaryDays(week: ScheduledWeek, { program, write }: Composing): DiaryDays {
  const parts = PARTS.filter((part) =>
    week.days.some(({ sessions }) => sessions.some((session) => session.part === part)),
  );
  return {
    parts: parts.map((part) => partName(part, program.clock, write.words)),
    rows: week.days.map(({ date, sessions }) => ({
      day: write.weekday(date, "short"),
      date: write.shortDate(date),
      planned: parts.map((part) => sessions.some((session) => session.part === part)),
    })),
  };
}

function diaryTable(
  sessions: readonly Session[],
  { library, program, write }: Composing,
): DiaryTable {
  const { clock } = program;
  const bouts = new Map(
    sessions.flatMap((session) => session.bouts.map((bout) => [bout.key, bout] as const)),
  );
  return {
    sessions: sessions.map((session) => ({
      day: write.weekday(wallDate(session, clock), "short"),
      date: write.shortDate(wallDate(session, clock)),
      part: partName(session.part, clock, write.words),
    })),
    rows: [...bouts.values()].map((bout) => ({
      exercise: library.cards.get(bout.card)?.card.title ?? bout.card,
      dose: shortDose(bout, write),
      planned: sessions.map((session) => session.bouts.some(({ key }) => key === bout.key)),
    })),
  };
}
