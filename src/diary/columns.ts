/** The columns of a diary's file: the one definition for writing, reading and the reference. */

import { PARTS, type PartOfDay } from "../units/day-parts.ts";
import { WORK_SIDES, type WorkSide } from "../units/side.ts";
import { date, id, instant, type Kind, number, text, whole, word, yesNo } from "./cells.ts";
import { DONE, type Done } from "./entry.ts";

/** Grows when a column goes or changes its meaning; new columns alone do not make a new version. */
export const VERSION = 1;

/** Longest note, in UTF-16 units as a form's maxlength counts them. */
export const LONGEST_NOTE = 2000;

/** Largest file, in bytes, and longest text: far above a diary of a year with three sessions a day. */
export const LARGEST = 2 * 1024 * 1024;

/** Most rows: a year of three sessions a day with eight exercises each has 9,828. */
export const MOST_ROWS = 10_000;

/** Most columns: ours, and whatever somebody may have put beside them. */
export const MOST_COLUMNS = 200;

/** The values of one row by column. */
export interface Cells {
  readonly paulatim_diary: number;
  readonly plan: string;
  readonly client: string;
  readonly booklet: string;
  readonly week: number;
  readonly date: string;
  readonly part: PartOfDay;
  readonly done_on: string;
  readonly exercise: string;
  readonly title: string;
  readonly side: WorkSide;
  readonly done: Done;
  readonly short: boolean;
  readonly sets_planned: number;
  readonly reps_planned: number;
  readonly kg_planned: number;
  readonly sets: number;
  readonly reps: number;
  readonly kg: number;
  readonly effort: number;
  readonly pain_during: number;
  readonly sudden: boolean;
  readonly pain_after: number;
  readonly pain_morning: number;
  readonly worse_morning: boolean;
  readonly note: string;
  readonly written: string;
}

export type ColumnName = keyof Cells;

/** One row; a cell that says nothing is undefined. */
export type Row = { readonly [N in ColumnName]?: Cells[N] | undefined };

/** What a cell tells of: the diary, the session, one of its exercises, or whichever of the two its row is about. */
type Subject = "diary" | "session" | "exercise" | "row";

export interface Column<T> {
  /** The rows in which it may be filled. */
  readonly rows: "every" | "session" | "exercise";
  readonly of: Subject;
  /** The way to its value in a Diary, DiaryEntry or DiaryExercise. */
  readonly path: readonly string[];
  /** Whether it has to be filled there. */
  readonly needed: boolean;
  readonly kind: Kind<T>;
  readonly says: string;
}

const column = <T>(
  rows: Column<T>["rows"],
  of: Subject,
  path: string,
  need: "needed" | "free",
  kind: Kind<T>,
  says: string,
): Column<T> => ({ rows, of, path: path.split("."), needed: need === "needed", kind, says });

const line = text(400);
const score = number(0, 10);
const sets = whole(0, 100);
const reps = whole(0, 1000);
const kg = number(0, 1000);
const parts = word<PartOfDay>(PARTS);
const sides = word<WorkSide>(WORK_SIDES);
const done = word<Done>(DONE);

/** In the order in which they are written. */
export const COLUMNS: { readonly [N in ColumnName]: Column<Cells[N]> } = {
  paulatim_diary: column(
    "every",
    "diary",
    "version",
    "needed",
    whole(VERSION, VERSION),
    "The version of this form.",
  ),
  plan: column("every", "diary", "plan", "needed", id, "The plan's id."),
  client: column(
    "every",
    "diary",
    "client",
    "needed",
    line,
    "The clinic's reference for the client.",
  ),
  booklet: column(
    "every",
    "session",
    "booklet",
    "needed",
    line,
    "Version of the booklet in which it was written.",
  ),
  week: column("every", "session", "week", "needed", whole(1, 520), "Week of the program."),
  date: column("every", "session", "date", "needed", date, "The planned day."),
  part: column("every", "session", "part", "needed", parts, "The planned part of the day."),
  done_on: column(
    "session",
    "session",
    "doneOn",
    "free",
    date,
    "The day on which the session was really done.",
  ),
  exercise: column(
    "exercise",
    "exercise",
    "card",
    "needed",
    id,
    "The card's id. Empty in the row of the session as a whole.",
  ),
  title: column(
    "exercise",
    "exercise",
    "title",
    "needed",
    line,
    "The exercise as the client knows it.",
  ),
  side: column(
    "exercise",
    "exercise",
    "side",
    "needed",
    sides,
    "The side; each: one after the other.",
  ),
  done: column(
    "every",
    "row",
    "done",
    "needed",
    done,
    "Whether it was done: as planned, in part, or not.",
  ),
  short: column(
    "session",
    "session",
    "short",
    "needed",
    yesNo,
    "Whether the short version for a bad day was done.",
  ),
  sets_planned: column("exercise", "exercise", "planned.sets", "free", sets, "Sets planned."),
  reps_planned: column(
    "exercise",
    "exercise",
    "planned.reps",
    "free",
    reps,
    "Repetitions planned in a set.",
  ),
  kg_planned: column(
    "exercise",
    "exercise",
    "planned.kg",
    "free",
    kg,
    "Load planned, in kilograms.",
  ),
  sets: column(
    "exercise",
    "exercise",
    "real.sets",
    "free",
    sets,
    "Sets really done, where not as planned.",
  ),
  reps: column(
    "exercise",
    "exercise",
    "real.reps",
    "free",
    reps,
    "Repetitions really done in a set, where not as planned.",
  ),
  kg: column(
    "exercise",
    "exercise",
    "real.kg",
    "free",
    kg,
    "Load really used, where not as planned.",
  ),
  effort: column(
    "session",
    "session",
    "effort",
    "free",
    score,
    "How hard the session felt: 0 is rest.",
  ),
  pain_during: column(
    "exercise",
    "exercise",
    "pain",
    "free",
    score,
    "Pain during the exercise: 0 is none.",
  ),
  sudden: column(
    "exercise",
    "exercise",
    "sudden",
    "free",
    yesNo,
    "Whether that pain came suddenly.",
  ),
  pain_after: column("session", "session", "painAfter", "free", score, "Pain after the session."),
  pain_morning: column(
    "session",
    "session",
    "painMorning",
    "free",
    score,
    "Pain the next morning.",
  ),
  worse_morning: column(
    "session",
    "session",
    "worseMorning",
    "free",
    yesNo,
    "Whether the next morning was worse than usual.",
  ),
  note: column("session", "session", "note", "free", text(LONGEST_NOTE), "What the client wrote."),
  written: column(
    "every",
    "session",
    "written",
    "needed",
    instant,
    "When the session's entry was last changed.",
  ),
};

export const COLUMN_NAMES = Object.keys(COLUMNS) as readonly ColumnName[];

/** The name as a column of ours, or undefined. */
export const columnNamed = (name: string): ColumnName | undefined =>
  COLUMN_NAMES.find((one) => one === name);
