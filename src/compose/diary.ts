/** Diary pages: a row a day with a box for each of its sessions, and room for what is asked of them. */

import { asksWeight } from "../diary/questions.ts";
import type { Bout } from "../dose/types.ts";
import { exercisesOf } from "../program/exercises.ts";
import type { ScheduledWeek, Session } from "../schedule/schedule.ts";
import { PARTS } from "../units/day-parts.ts";
import { weekDates } from "./calendar.ts";
import type { Composing } from "./composing.ts";
import { shortDose } from "./dose-words.ts";
import { startSign } from "./flag-words.ts";
import type { DiaryPart, DiaryRow, DiaryWeek } from "./model.ts";
import { partName, wallDate } from "./part-words.ts";
import { phaseNames } from "./phase-names.ts";

/** Weeks with sessions that follow each other in the same phases, each run with a table of its own. */
export function diary(composing: Composing): DiaryPart[] {
  const { program, schedule, write } = composing;
  const runs: { phases: string[]; weeks: ScheduledWeek[] }[] = [];
  for (const week of schedule.weeks) {
    if (sessionsOf(week).length === 0) continue;
    const phases = phaseNames(program, week.number, write.words);
    const run = runs.at(-1);
    if (run && run.phases.join("\n") === phases.join("\n")) run.weeks.push(week);
    else runs.push({ phases, weeks: [week] });
  }
  const parts = runs.map(({ phases, weeks }) => diaryPart(phases, weeks, composing));
  return parts.map((part, at) => ({
    ...part,
    groups: sameText(part.groups, parts[at - 1]?.groups) ? [] : part.groups,
  }));
}

const sessionsOf = ({ days }: ScheduledWeek): Session[] => days.flatMap((day) => day.sessions);
const sameText = (a: object, b: object | undefined): boolean =>
  JSON.stringify(a) === JSON.stringify(b);

function diaryPart(
  phases: readonly string[],
  weeks: readonly ScheduledWeek[],
  composing: Composing,
): DiaryPart {
  const { program, write } = composing;
  const sessions = weeks.flatMap(sessionsOf);
  const words = exerciseWords(composing);
  const bouts = onePerKey(sessions.flatMap((session) => session.bouts));
  const parts = PARTS.filter((part) => sessions.some((session) => session.part === part));
  const weighted = bouts.filter(({ load }) => asksWeight(load)).map(words.numberOf);
  const columns = { parts, weights: ascending(weighted) };
  const rows = weeks.map((week) => rowsOf(week, columns, words, composing));
  const whole = weeks.map((week) => numbersIn(sessionsOf(week), words));
  const which = rows.some((all, at) =>
    all.some(({ exercises }) => exercises.length < (whole[at]?.length ?? 0)),
  );
  return {
    phases,
    parts: parts.map((part) => partName(part, program.clock, write.words)),
    weights: columns.weights,
    which,
    groups: bySign(bouts, ({ key }) => words.signOf(key)).map(({ sign, items }) => ({
      when: sign,
      exercises: ascending(items.map(words.numberOf)).map((number) => ({
        number,
        title: words.titles[number - 1] ?? "",
      })),
    })),
    weeks: asBefore(
      weeks.map((week, at) => ({
        number: week.number,
        dates: weekDates(week, write),
        as: undefined,
        doses: dosesOf(week, words),
        rows: rows[at] ?? [],
      })),
    ),
  };
}

/** A week whose doses are those of the week above it says so in their place. */
function asBefore(weeks: readonly DiaryWeek[]): DiaryWeek[] {
  return weeks.map((week, at) => {
    const before = weeks[at - 1];
    return before && sameText(before.doses, week.doses)
      ? { ...week, as: before.number, doses: [] }
      : week;
  });
}

type ExerciseWords = ReturnType<typeof exerciseWords>;

/** What exercises are called, the numbers of their pages, and the signs without which they are not begun. */
function exerciseWords({ program, write }: Composing) {
  const all = exercisesOf(program);
  const numbers = new Map(all.map(({ card }, at) => [card.card.id, at + 1]));
  const every = program.phases.flatMap((phase) => phase.exercises);
  const signs = new Map(every.map((one) => [one.key, startSign(one, program, write)]));
  const cards = new Map(every.map(({ key, card }) => [key, card]));
  return {
    titles: all.map(({ card }) => card.card.title),
    numberOf: ({ card }: Pick<Bout, "card">): number => numbers.get(card) ?? 0,
    signOf: (key: string): string | undefined => signs.get(key),
    doseOf(bout: Bout): string {
      const card = cards.get(bout.key);
      return card ? shortDose(bout, card, write) : "";
    },
  };
}

const onePerKey = (bouts: readonly Bout[]): Bout[] => [
  ...new Map(bouts.map((bout) => [bout.key, bout])).values(),
];

const ascending = (numbers: readonly number[]): number[] =>
  [...new Set(numbers)].sort((a, b) => a - b);

const numbersIn = (sessions: readonly Session[], { numberOf }: ExerciseWords): number[] =>
  ascending(sessions.flatMap(({ bouts }) => bouts.map(numberOf)));

/** Items that wait for the same sign together, each group in the items' order; those that wait for none first. */
function bySign<Item>(items: readonly Item[], signOf: (item: Item) => string | undefined) {
  const groups = new Map<string | undefined, Item[]>([[undefined, []]]);
  for (const item of items) groups.set(signOf(item), [...(groups.get(signOf(item)) ?? []), item]);
  return [...groups].map(([sign, all]) => ({ sign, items: all })).filter((one) => one.items.length);
}

/** The short dose of every exercise of the week, by the numbers of their pages. */
function dosesOf(week: ScheduledWeek, words: ExerciseWords): DiaryWeek["doses"] {
  return onePerKey(sessionsOf(week).flatMap(({ bouts }) => bouts))
    .map((bout) => ({ number: words.numberOf(bout), dose: words.doseOf(bout) }))
    .sort((a, b) => a.number - b.number);
}

/**
 * A day's sessions with the same exercises share a row: pain is asked for once a day. Others have a row
 * each, and the last of the day asks for the next morning.
 */
function rowsOf(
  { days }: ScheduledWeek,
  columns: { readonly parts: readonly Session["part"][]; readonly weights: readonly number[] },
  words: ExerciseWords,
  { program, write }: Composing,
): DiaryRow[] {
  return days.flatMap(({ sessions }) => {
    const together: Session[][] = [];
    for (const session of sessions) {
      const open = together.find(([first]) => first && isAlike(first, session));
      if (open) open.push(session);
      else together.push([session]);
    }
    return together.map((all, at) => {
      const date = wallDate(all[0] as Session, program.clock);
      const weighted = all.flatMap(({ bouts }) => bouts.filter(({ load }) => asksWeight(load)));
      const asked = new Set(weighted.map(words.numberOf));
      return {
        day: write.weekday(date, "short"),
        date: write.shortDate(date),
        exercises: numbersIn(all, words),
        ticks: columns.parts.map((part) => all.some((session) => session.part === part)),
        weights: columns.weights.map((number) => asked.has(number)),
        morning: at === together.length - 1,
      };
    });
  });

  function isAlike(a: Session, b: Session): boolean {
    const keys = ({ bouts }: Session) => bouts.map(({ key }) => key).sort();
    const date = (one: Session) => wallDate(one, program.clock);
    return date(a) === date(b) && sameText(keys(a), keys(b));
  }
}
