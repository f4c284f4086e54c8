/** What can be wrong with a diary that is read: plain data, for the phone's words and the desk's faults alike. */
import type { CellProblemCode } from "./cells.ts";
import type { ColumnName } from "./columns.ts";

export interface DiaryProblem {
  readonly code: DiaryProblemCode;
  /** Line of the file, or number of the scanned text, from 1. */
  readonly line: number;
  /** The character in that line, from 1. */
  readonly position: number;
  readonly column: ColumnName | undefined;
  /** What the words about it need: the value found, the one expected, how many. */
  readonly values: Readonly<Record<string, string | number>>;
}

export type DiaryProblemCode =
  | FileProblemCode
  | "other-client"
  // a row
  | "quotes-broken"
  | "row-short"
  | "row-long"
  | "session-twice"
  | "session-missing"
  // a cell
  | CellProblemCode
  | "value-missing"
  | "value-misplaced"
  | "value-differs"
  | ScanProblemCode;

/** The whole file. */
export type FileProblemCode =
  | "too-large"
  | "not-text"
  | "not-a-diary"
  | "newer-version"
  | "column-missing"
  | "column-twice"
  | "too-many-rows"
  | "no-rows"
  | "more";

/** Scanned codes. */
export type ScanProblemCode =
  | "code-unknown"
  | "code-newer"
  | "code-cut"
  | "code-part"
  | "code-differs"
  | "codes-missing"
  | "codes-mixed"
  | "codes-damaged";

/** No more are told at once: after these the file is of no use anyway. */
const MOST = 100;

/** In the order of the file; what is beyond the first hundred is counted. */
export function inOrderOfPlace(problems: readonly DiaryProblem[]): readonly DiaryProblem[] {
  const sorted = [...problems].sort((a, b) => a.line - b.line || a.position - b.position);
  const last = sorted[MOST - 1];
  if (last === undefined || sorted.length === MOST) return sorted;
  const n = sorted.length - MOST;
  return [...sorted.slice(0, MOST), { ...last, code: "more", column: undefined, values: { n } }];
}

/** A problem of a whole file. */
export function ofFile(
  code: DiaryProblemCode,
  values: DiaryProblem["values"] = {},
  line = 1,
): DiaryProblem {
  return { code, line, position: 1, column: undefined, values };
}

/** What stands in a cell, short enough to be told. */
export const shown = (text: string): string => {
  const characters = [...text.slice(0, 200)];
  return characters.length > 60 ? `${characters.slice(0, 60).join("")}…` : text;
};
