/** A diary's entries as rows and rows as entries: one for the session, then one an exercise. */
import { COLUMN_NAMES, COLUMNS, type ColumnName, type Row, VERSION } from "./columns.ts";
import type { Diary, DiaryEntry, DiaryExercise } from "./entry.ts";

const columnsOf = (subject: (typeof COLUMNS)[ColumnName]["of"]): readonly ColumnName[] =>
  COLUMN_NAMES.filter((name) => COLUMNS[name].of === subject);

const OF_SESSION = columnsOf("session");
/** Of these, what every row of a session says. */
const IN_EVERY_ROW = OF_SESSION.filter((name) => COLUMNS[name].rows === "every");
const OF_EXERCISE = columnsOf("exercise");
const OF_ROW = columnsOf("row");

/** The rows of a diary. One without entries has one row, which says whose it is. */
export function rowsOf(diary: Diary): Row[] {
  const whose = cells(columnsOf("diary"), { ...diary, version: VERSION });
  if (diary.entries.length === 0) return [whose];
  return diary.entries.flatMap((entry) => [
    { ...whose, ...cells([...OF_SESSION, ...OF_ROW], entry) },
    ...entry.exercises.map((exercise) => ({
      ...whose,
      ...cells(IN_EVERY_ROW, entry),
      ...cells([...OF_EXERCISE, ...OF_ROW], exercise),
    })),
  ]);
}

/** The entry of a session's row and its exercises' rows; undefined where a needed cell is empty. */
export function entryOf(session: Row, exercises: readonly Row[]): DiaryEntry | undefined {
  const list = exercises.map((row) => read<DiaryExercise>([...OF_EXERCISE, ...OF_ROW], row));
  const whole = list.filter((exercise) => exercise !== undefined);
  const entry = read<Omit<DiaryEntry, "exercises">>([...OF_SESSION, ...OF_ROW], session);
  if (entry === undefined || whole.length < list.length) return undefined;
  return { ...entry, note: entry.note ?? "", exercises: whole };
}

/** The values of a session or exercise by column; an empty text says nothing. */
export function cells(names: readonly ColumnName[], subject: object): Row {
  const row = names.map((name) => [name, valueAt(subject, COLUMNS[name].path)] as const);
  return Object.fromEntries(row.filter(([, value]) => value !== ""));
}

function valueAt(subject: object, path: readonly string[]): unknown {
  return path.reduce<unknown>(
    (value, field) => (value as Readonly<Record<string, unknown>>)[field],
    subject,
  );
}

/**
 * What the cells of these columns tell of one subject; undefined where one that is needed is empty.
 * `T` is what their paths make together: the columns are its definition.
 */
function read<T>(names: readonly ColumnName[], row: Row): T | undefined {
  const subject: Record<string, unknown> = {};
  for (const name of names) {
    const { path, needed } = COLUMNS[name];
    if (needed && row[name] === undefined) return undefined;
    const [field = "", inner] = path;
    if (inner === undefined) subject[field] = row[name];
    else subject[field] = { ...(subject[field] ?? {}), [inner]: row[name] };
  }
  return subject as T;
}
