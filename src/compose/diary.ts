/** Diary pages: for each week a table of its sessions, with a place for every planned exercise. */

import type { ScheduledWeek, Session } from "../schedule/schedule.ts";
import { PARTS } from "../units/day-parts.ts";
import { weekDates } from "./calendar.ts";
import type { Composing } from "./composing.ts";
import { shortDose } from "./dose-words.ts";
import { startSign } from "./flag-words.ts";
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
function diaryDays(week: ScheduledWeek, composing: Composing): DiaryDays {
  const { program, write } = composing;
  const { signOf, titleOf } = exerciseWords(composing);
  const bouts = week.days.flatMap(({ sessions }) => sessions.flatMap((session) => session.bouts));
  const keys = new Map(bouts.map(({ key, card }) => [key, card]));
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
    waits: bySign([...keys], ([key]) => signOf(key)).flatMap(({ sign, items }) =>
      sign === undefined ? [] : [{ sign, exercises: items.map(([, card]) => titleOf(card)) }],
    ),
  };
}

/** Items that wait for the same sign together, each group in the items' order; those that wait for none first. */
function bySign<Item>(items: readonly Item[], signOf: (item: Item) => string | undefined) {
  const groups = new Map<string | undefined, Item[]>([[undefined, []]]);
  for (const item of items) groups.set(signOf(item), [...(groups.get(signOf(item)) ?? []), item]);
  return [...groups].map(([sign, all]) => ({ sign, items: all })).filter((one) => one.items.length);
}

/** What an exercise is called, and the sign without which it is not begun. */
function exerciseWords({ library, program, write }: Composing) {
  const exercises = program.phases.flatMap((phase) => phase.exercises);
  const signs = new Map(exercises.map((one) => [one.key, startSign(one, program, write)]));
  return {
    titleOf: (card: string): string => library.cards.get(card)?.card.title ?? card,
    signOf: (key: string): string | undefined => signs.get(key),
  };
}

function diaryTable(sessions: readonly Session[], composing: Composing): DiaryTable {
  const { program, write } = composing;
  const { clock } = program;
  const { signOf, titleOf } = exerciseWords(composing);
  const bouts = new Map(
    sessions.flatMap((session) => session.bouts.map((bout) => [bout.key, bout] as const)),
  );
  return {
    sessions: sessions.map((session) => ({
      day: write.weekday(wallDate(session, clock), "short"),
      date: write.shortDate(wallDate(session, clock)),
      part: partName(session.part, clock, write.words),
    })),
    groups: bySign([...bouts.values()], ({ key }) => signOf(key)).map(({ sign, items }) => ({
      when: sign,
      rows: items.map((bout) => ({
        exercise: titleOf(bout.card),
        dose: shortDose(bout, write),
        planned: sessions.map((session) => session.bouts.some(({ key }) => key === bout.key)),
      })),
    })),
  };
}
