/** A diary's entries as rows and rows as entries: one for the session, then one an exercise. */
import { type Row, VERSION } from "./columns.ts";
import type { Amount, Diary, DiaryEntry, DiaryExercise } from "./entry.ts";

/** The rows of a diary. One without entries has one row, which says whose it is. */
export function rowsOf({ plan, client, entries }: Diary): Row[] {
  const whose = { paulatim_diary: VERSION, plan, client };
  if (entries.length === 0) return [whose];
  return entries.flatMap((entry) => {
    const session = { ...whose, ...sessionOf(entry) };
    return [
      { ...session, ...sessionCells(entry) },
      ...entry.exercises.map((exercise) => ({ ...session, ...exerciseCells(exercise) })),
    ];
  });
}

/** What every row of a session says. */
const sessionOf = ({ booklet, week, date, part, written }: DiaryEntry) => ({
  booklet,
  week,
  date,
  part,
  written,
});

const sessionCells = (entry: DiaryEntry): Row => ({
  done_on: entry.doneOn,
  done: entry.done,
  short: entry.short,
  effort: entry.effort,
  pain_after: entry.painAfter,
  pain_morning: entry.painMorning,
  worse_morning: entry.worseMorning,
  note: entry.note === "" ? undefined : entry.note,
});

const exerciseCells = ({ card, title, side, done, planned, real, pain }: DiaryExercise): Row => ({
  exercise: card,
  title,
  side,
  done,
  sets_planned: planned.sets,
  reps_planned: planned.reps,
  kg_planned: planned.kg,
  sets: real.sets,
  reps: real.reps,
  kg: real.kg,
  pain_during: pain,
});

/** The entry of a session's row and its exercises' rows; undefined where a needed cell is empty. */
export function entryOf(session: Row, exercises: readonly Row[]): DiaryEntry | undefined {
  const { booklet, week, date, part, written, done, short } = session;
  const list = exercises.map(exerciseOf);
  const whole = list.filter((exercise) => exercise !== undefined);
  if (booklet === undefined || week === undefined || date === undefined || part === undefined)
    return undefined;
  if (written === undefined || done === undefined || short === undefined) return undefined;
  if (whole.length < list.length) return undefined;
  return {
    date,
    part,
    week,
    booklet,
    done,
    doneOn: session.done_on,
    short,
    effort: session.effort,
    painAfter: session.pain_after,
    painMorning: session.pain_morning,
    worseMorning: session.worse_morning,
    note: session.note ?? "",
    exercises: whole,
    written,
  };
}

function exerciseOf(row: Row): DiaryExercise | undefined {
  const { exercise: card, title, side, done } = row;
  if (card === undefined || title === undefined || side === undefined || done === undefined)
    return undefined;
  return {
    card,
    title,
    side,
    done,
    planned: amount(row.sets_planned, row.reps_planned, row.kg_planned),
    real: amount(row.sets, row.reps, row.kg),
    pain: row.pain_during,
  };
}

const amount = (sets: Amount["sets"], reps: Amount["reps"], kg: Amount["kg"]): Amount => ({
  sets,
  reps,
  kg,
});
