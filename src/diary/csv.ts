/**
 * A diary as a CSV file (RFC 4180) and back: what the client's phone writes is what the desk reads.
 *
 * Reading forgives what mail programs and spreadsheets do to such a file, and nothing else. It
 * never guesses, and leaves out a session of which it cannot read all.
 */
import {
  COLUMN_NAMES,
  COLUMNS,
  type ColumnName,
  columnNamed,
  LARGEST,
  MOST_COLUMNS,
  MOST_ROWS,
  type Row,
  VERSION,
} from "./columns.ts";
import { byPlan, type Diary, type DiaryEntry, sessionKey } from "./entry.ts";
import { type DiaryProblem, inOrderOfPlace, ofFile, shown } from "./problem.ts";
import { type LocatedRow, readRow } from "./read-row.ts";
import { entryOf, rowsOf } from "./rows.ts";
import { readSheet, type Sheet } from "./sheet.ts";

/** What could be read, and what is wrong; no diary where not even its client is known. */
export interface ReadDiary {
  readonly diary: Diary | undefined;
  readonly problems: readonly DiaryProblem[];
}

/** By which spreadsheets know that a file is UTF-8. */
const MARK = "\uFEFF";

/** The file's text. Two diaries that say the same give the same text. */
export function diaryCsv(diary: Diary): string {
  const { plan, client, entries } = diary;
  const body =
    entries.length === 0
      ? linesOf(diary)
      : entries.map((entry) => linesOfEntry({ plan, client, entries: [entry] }, entry)).join("");
  return MARK + lineOf(COLUMN_NAMES) + body;
}

/** What was written of an entry: of a long diary that is written anew, one entry has changed. */
const written = new WeakMap<DiaryEntry, { readonly whose: string; readonly lines: string }>();

function linesOfEntry(alone: Diary, entry: DiaryEntry): string {
  const whose = `${alone.plan} ${alone.client}`;
  const before = written.get(entry);
  if (before?.whose === whose) return before.lines;
  const lines = linesOf(alone);
  written.set(entry, { whose, lines });
  return lines;
}

const linesOf = (diary: Diary): string =>
  rowsOf(diary)
    .map((row) => lineOf(COLUMN_NAMES.map((name) => cellOf(name, row))))
    .join("");

const lineOf = (cells: readonly string[]): string => `${cells.map(inMarks).join(",")}\r\n`;

/** A cell in quotation marks where it needs them, and also where blanks at its ends might get lost. */
function inMarks(cell: string): string {
  return /[",\r\n]|^\s|\s$/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}

function cellOf<N extends ColumnName>(name: N, row: Row): string {
  const value = row[name];
  return value === undefined ? "" : COLUMNS[name].kind.write(value);
}

/**
 * The diary in a file's text, with every problem. Sessions of which a row has a problem are left
 * out; there is no diary where the columns are not ours or the client is not one and the same.
 */
export function readDiary(text: string): ReadDiary {
  if (text.length > LARGEST) return none([ofFile("too-large")]);
  const sheet = readSheet(text.startsWith(MARK) ? text.slice(1) : text, COLUMN_NAMES);
  const unfit = wrongForm(sheet);
  if (unfit.length > 0) return none(unfit);
  const rows = sheet.rows.map((row) => readRow(sheet, row));
  const ofRows = rows.flatMap((row) => row.problems);
  const whose = clientOf(rows);
  if ("other" in whose) return none([...ofRows, whose.other]);
  const sessions = gathered(rows);
  const ofSessions = sessions.flatMap(sessionProblems).filter(isNews(sessions));
  const problems = [...ofRows, ...ofSessions];
  const { plan, client } = whose;
  if (plan === undefined || client === undefined) return none(problems);
  const entries = sessions.flatMap((session) => soundEntry(session) ?? []).sort(byPlan);
  return { diary: { plan, client, entries }, problems: inOrderOfPlace(problems) };
}

const none = (problems: readonly DiaryProblem[]): ReadDiary => ({
  diary: undefined,
  problems: inOrderOfPlace(problems),
});

/** Why the file as a whole is none that can be read. */
function wrongForm(sheet: Sheet): DiaryProblem[] {
  const { header, rows } = sheet;
  const version = header.indexOf("paulatim_diary");
  if (version < 0 || header.length > MOST_COLUMNS) return [ofFile("not-a-diary")];
  const newer = rows.find((row) => Number(row.cells[version]) > VERSION);
  if (newer) {
    const values = { found: shown(newer.cells[version] ?? ""), known: VERSION };
    const place = sheet.placeOf(newer, version);
    return [{ code: "newer-version", ...place, column: "paulatim_diary", values }];
  }
  const odd = (code: "column-missing" | "column-twice") => (column: ColumnName) => ({
    ...ofFile(code),
    column,
  });
  const wrong = [
    ...COLUMN_NAMES.filter((name) => !header.includes(name)).map(odd("column-missing")),
    ...header
      .filter((name, at) => header.indexOf(name) < at)
      .flatMap((name) => columnNamed(name) ?? [])
      .map(odd("column-twice")),
  ];
  if (rows.length === 0) return [...wrong, ofFile("no-rows")];
  if (rows.length > MOST_ROWS)
    return [...wrong, ofFile("too-many-rows", { found: rows.length, most: MOST_ROWS })];
  return wrong;
}

type Whose =
  | { readonly plan: string | undefined; readonly client: string | undefined }
  | { readonly other: DiaryProblem };

/** The one client and plan of all rows; the first row of another one. */
function clientOf(rows: readonly LocatedRow[]): Whose {
  const named = rows.filter(({ row }) => row.plan !== undefined && row.client !== undefined);
  const { plan, client } = named[0]?.row ?? {};
  const other = named.find(({ row }) => row.plan !== plan || row.client !== client);
  if (!other) return { plan, client };
  const column = other.row.client === client ? "plan" : "client";
  const values = {
    found: shown(other.row[column] ?? ""),
    first: shown((column === "plan" ? plan : client) ?? ""),
  };
  return { other: other.problem("other-client", column, values) };
}

/** The rows of one planned session. */
interface SessionRows {
  readonly key: string;
  readonly sessions: LocatedRow[];
  readonly exercises: LocatedRow[];
}

/**
 * Rows by session. An exercise whose day cannot be read is taken to belong to the row above it, and
 * so is a row that is not whole: better a session too many left out than one half read.
 */
function gathered(rows: readonly LocatedRow[]): SessionRows[] {
  const found = new Map<string, SessionRows>();
  let key = "";
  for (const [n, located] of rows.entries()) {
    if (located.empty) continue;
    const { date, part } = located.row;
    if (date !== undefined && part !== undefined) key = sessionKey({ date, part });
    else if (located.whole && !located.ofExercise) key = `row ${n}`;
    const session = found.get(key) ?? { key, sessions: [], exercises: [] };
    (located.ofExercise ? session.exercises : session.sessions).push(located);
    found.set(key, session);
  }
  return [...found.values()];
}

/** What is wrong among the rows of a session, each of which may be sound alone. */
function sessionProblems({ key, sessions, exercises }: SessionRows): DiaryProblem[] {
  const [first, second] = sessions.filter(isSound);
  const sound = exercises.filter(isSound);
  const values = { session: key };
  if (second) return [second.problem("session-twice", "date", values)];
  if (!first) {
    const lost = sessions.length === 0 ? sound[0] : undefined;
    return lost ? [lost.problem("session-missing", "date", values)] : [];
  }
  return sound.flatMap((exercise) =>
    (["booklet", "week", "written"] as const)
      .filter((name) => exercise.row[name] !== first.row[name])
      .map((name) =>
        exercise.problem("value-differs", name, {
          found: cellOf(name, exercise.row),
          first: cellOf(name, first.row),
        }),
      ),
  );
}

/** A session without its row is no news where such a row has lost its day and was told. */
function isNews(sessions: readonly SessionRows[]): (problem: DiaryProblem) => boolean {
  const lost = sessions.some((session) =>
    session.sessions.some(({ row }) => row.date === undefined || row.part === undefined),
  );
  return ({ code }) => !lost || code !== "session-missing";
}

/** The entry of a session without any problem. */
function soundEntry(rows: SessionRows): DiaryEntry | undefined {
  const { sessions, exercises } = rows;
  const [session] = sessions;
  if (session === undefined || sessions.length > 1) return undefined;
  if (!sessions.every(isSound) || !exercises.every(isSound)) return undefined;
  if (sessionProblems(rows).length > 0) return undefined;
  return entryOf(
    session.row,
    exercises.map(({ row }) => row),
  );
}

const isSound = ({ problems }: LocatedRow): boolean => problems.length === 0;
