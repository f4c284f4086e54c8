/** Reads one row of a diary's file cell by cell, with every problem of it. */
import {
  type Cells,
  COLUMN_NAMES,
  COLUMNS,
  type ColumnName,
  columnNamed,
  type Row,
} from "./columns.ts";
import { type DiaryProblem, type DiaryProblemCode, shown } from "./problem.ts";
import type { Sheet, SheetRow } from "./sheet.ts";

export interface LocatedRow {
  /** What could be read of it. */
  readonly row: Row;
  /** Whether it is about an exercise, not the session as a whole. */
  readonly ofExercise: boolean;
  /** Whether it only says whose diary it is. */
  readonly empty: boolean;
  /** Whether it has as many cells as it should. */
  readonly whole: boolean;
  readonly problems: readonly DiaryProblem[];
  /** A problem of this row, in a column or as a whole. */
  readonly problem: (
    code: DiaryProblemCode,
    column?: ColumnName,
    values?: DiaryProblem["values"],
  ) => DiaryProblem;
}

/** Columns that say whose diary a row belongs to. */
const WHOSE: readonly ColumnName[] = ["paulatim_diary", "plan", "client"];

/** The row's values by column, as far as they can be read. */
export function readRow(sheet: Sheet, line: SheetRow): LocatedRow {
  const at = (name: ColumnName) => sheet.header.indexOf(name);
  const cellOf = (name: ColumnName) => line.cells[at(name)] ?? "";
  const problem: LocatedRow["problem"] = (code, column, values = {}) => ({
    code,
    ...sheet.placeOf(line, column && at(column)),
    column,
    values,
  });
  const said = new Set(COLUMN_NAMES.filter((name) => !isBlank(name, cellOf(name))));
  const ofExercise = said.has("exercise");
  const empty = said.size <= WHOSE.length && WHOSE.every((name) => said.has(name));
  const row: { -readonly [N in ColumnName]?: Cells[N] } = {};
  const found: DiaryProblem[] = [];
  const fill = <N extends ColumnName>(name: N) => {
    const reading = COLUMNS[name].kind.read(cellOf(name), sheet.comma);
    if ("value" in reading) row[name] = reading.value;
    else found.push(problem(reading.wrong, name, { found: shown(cellOf(name)) }));
  };
  for (const name of said) fill(name);
  const shape = shapeProblem(sheet, line);
  const located = { row, ofExercise, whole: shape === undefined, problem };
  if (shape) return { ...located, empty: false, problems: [problem(shape)] };
  if (!empty) {
    for (const name of COLUMN_NAMES) {
      const fault = misfit(name, said.has(name), ofExercise);
      if (fault) found.push(problem(fault, name, { found: shown(cellOf(name)) }));
    }
  }
  return { ...located, empty, problems: found };
}

/** Blanks alone say nothing but in a text that a client may have written so. */
const isBlank = (name: ColumnName, cell: string): boolean =>
  (COLUMNS[name].kind.plain ? cell.trim() : cell) === "";

/** What is wrong with the row as a whole: then its cells may stand in other columns than theirs. */
function shapeProblem(sheet: Sheet, { cells, broken }: SheetRow): DiaryProblemCode | undefined {
  if (broken) return "quotes-broken";
  if (cells.slice(sheet.header.length).some((cell) => cell.trim() !== "")) return "row-long";
  const lost = sheet.header.slice(cells.length).some((name) => columnNamed(name) !== undefined);
  return lost ? "row-short" : undefined;
}

/** A cell that is empty but needed, or filled in a row of the other kind. */
function misfit(
  name: ColumnName,
  said: boolean,
  ofExercise: boolean,
): DiaryProblemCode | undefined {
  const { rows, needed } = COLUMNS[name];
  const belongs = rows === "every" || (rows === "exercise") === ofExercise;
  if (said && !belongs) return "value-misplaced";
  return !said && belongs && needed ? "value-missing" : undefined;
}
