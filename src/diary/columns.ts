/** The columns of a diary's file: the one definition for writing, reading and the reference. */

import type { PartOfDay } from "../units/day-parts.ts";
import type { WorkSide } from "../units/side.ts";
import { date, id, instant, type Kind, number, text, whole, word, yesNo } from "./cells.ts";
import type { Done } from "./entry.ts";

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
  readonly pain_after: number;
  readonly pain_morning: number;
  readonly worse_morning: boolean;
  readonly note: string;
  readonly written: string;
}

export type ColumnName = keyof Cells;

/** One row; a cell that says nothing is undefined. */
export type Row = { readonly [N in ColumnName]?: Cells[N] | undefined };

export interface Column<T> {
  /** The rows in which it may be filled. */
  readonly rows: "every" | "session" | "exercise";
  /** Whether it has to be filled there. */
  readonly needed: boolean;
  readonly kind: Kind<T>;
  readonly says: string;
}

const column = <T>(
  rows: Column<T>["rows"],
  need: "needed" | "free",
  kind: Kind<T>,
  says: string,
): Column<T> => ({ rows, needed: need === "needed", kind, says });

const line = text(400);
const score = number(0, 10);
const sets = whole(0, 100);
const reps = whole(0, 1000);
const kg = number(0, 1000);
const parts = word<PartOfDay>({ morning: true, midday: true, evening: true });
const sides = word<WorkSide>({ left: true, right: true, each: true, both: true, none: true });
const done = word<Done>({ yes: true, part: true, no: true });

/** In the order in which they are written. */
export const COLUMNS: { readonly [N in ColumnName]: Column<Cells[N]> } = {
  paulatim_diary: column("every", "needed", whole(VERSION, VERSION), "The version of this form."),
  plan: column("every", "needed", id, "The plan's id."),
  client: column("every", "needed", line, "The clinic's reference for the client."),
  booklet: column("every", "needed", line, "Version of the booklet in which it was written."),
  week: column("every", "needed", whole(1, 520), "Week of the program."),
  date: column("every", "needed", date, "The planned day."),
  part: column("every", "needed", parts, "The planned part of the day."),
  done_on: column("session", "free", date, "The day on which the session was really done."),
  exercise: column(
    "exercise",
    "needed",
    id,
    "The card's id. Empty in the row of the session as a whole.",
  ),
  title: column("exercise", "needed", line, "The exercise as the client knows it."),
  side: column("exercise", "needed", sides, "The side; each: one after the other."),
  done: column("every", "needed", done, "Whether it was done: as planned, in part, or not."),
  short: column("session", "needed", yesNo, "Whether the short version for a bad day was done."),
  sets_planned: column("exercise", "free", sets, "Sets planned."),
  reps_planned: column("exercise", "free", reps, "Repetitions planned in a set."),
  kg_planned: column("exercise", "free", kg, "Load planned, in kilograms."),
  sets: column("exercise", "free", sets, "Sets really done, where not as planned."),
  reps: column("exercise", "free", reps, "Repetitions really done in a set, where not as planned."),
  kg: column("exercise", "free", kg, "Load really used, where not as planned."),
  effort: column("session", "free", score, "How hard the session felt: 0 is rest."),
  pain_during: column("exercise", "free", score, "Pain during the exercise: 0 is none."),
  pain_after: column("session", "free", score, "Pain after the session."),
  pain_morning: column("session", "free", score, "Pain the next morning."),
  worse_morning: column("session", "free", yesNo, "Whether the next morning was worse than usual."),
  note: column("session", "free", text(LONGEST_NOTE), "What the client wrote."),
  written: column("every", "needed", instant, "When the session's entry was last changed."),
};

export const COLUMN_NAMES = Object.keys(COLUMNS) as readonly ColumnName[];

/** The name as a column of ours, or undefined. */
export const columnNamed = (name: string): ColumnName | undefined =>
  COLUMN_NAMES.find((one) => one === name);
