/** Reads the numbers of an exported diary, with a reader of CSV that is not the program's own. */
import Papa from "papaparse";

/** Columns with what a client taps as a number, or as yes or no. */
export const NUMBERS = [
  "effort",
  "pain_during",
  "sudden",
  "pain_after",
  "pain_morning",
  "worse_morning",
] as const;
export type NumberColumn = (typeof NUMBERS)[number];

/** A row of the file: one exercise, or a session as a whole. */
export interface SheetRow {
  /** Day and part of the day, and the card. */
  readonly id: string;
  readonly date: string;
  readonly part: string;
  readonly card: string;
  readonly title: string;
  readonly done: string;
  /** What differed from the plan: sets, repetitions and weight. */
  readonly real: string;
  /** The day on which it was done; of a session that was not, the planned one. */
  readonly day: string;
  readonly booklet: string;
  readonly numbers: Readonly<Partial<Record<NumberColumn, number>>>;
}

export type Sheet = ReadonlyMap<string, SheetRow>;

/** Rows by their text: of a diary that is written anew, few have changed. */
const known = new Map<string, SheetRow | undefined>();
const MOST_KNOWN = 20_000;

let names: readonly string[] = [];

/** The rows of a file whose cells hold no line breaks. */
export function sheetOf(text: string): Sheet {
  const [head = "", ...lines] = text.replace(/^\uFEFF/, "").split("\r\n");
  names = head.split(",");
  if (known.size > MOST_KNOWN) known.clear();
  const rows = lines.flatMap((line) => {
    if (!known.has(line)) known.set(line, line === "" ? undefined : rowOf(line));
    return known.get(line) ?? [];
  });
  return new Map(rows.map((row) => [row.id, row]));
}

function rowOf(line: string): SheetRow | undefined {
  const { data, errors } = Papa.parse<string[]>(line, { delimiter: "," });
  const [cells = []] = data;
  if (errors.length > 0 || cells.length !== names.length)
    throw new Error(`cannot be read as CSV: ${line}`);
  const cell = (name: string) => cells[names.indexOf(name)] ?? "";
  if (cell("date") === "") return undefined;
  const numbers: Partial<Record<NumberColumn, number>> = {};
  for (const name of NUMBERS) {
    const text = cell(name);
    if (text !== "") numbers[name] = text === "yes" ? 1 : text === "no" ? 0 : Number(text);
  }
  const [date, part, card] = [cell("date"), cell("part"), cell("exercise")];
  return {
    id: `${date} ${part} ${card}`,
    date,
    part,
    card,
    title: cell("title"),
    done: cell("done"),
    real: `${cell("sets")} ${cell("reps")} ${cell("kg")}`,
    day: cell("done_on") || date,
    booklet: cell("booklet"),
    numbers,
  };
}

/** A number that one file has and the other has not. */
export interface Difference {
  readonly row: SheetRow;
  readonly column: NumberColumn;
  readonly had: number | undefined;
  readonly has: number | undefined;
}

/** Exercises of which something was told, and what of it is told no more or otherwise. */
export function retold(before: Sheet, after: Sheet): SheetRow[] {
  return [...before.values()].filter((row) => {
    const { card, done, real, numbers } = row;
    const told =
      done !== "no" ||
      real.trim() !== "" ||
      [numbers.pain_during, numbers.sudden].some((one) => one !== undefined);
    const now = after.get(row.id);
    return card !== "" && told && (now?.done !== done || now.real !== real);
  });
}

export function differences(before: Sheet, after: Sheet): Difference[] {
  const found: Difference[] = [];
  for (const id of new Set([...before.keys(), ...after.keys()])) {
    const [old, now] = [before.get(id), after.get(id)];
    const row = now ?? old;
    if (old === now || row === undefined) continue;
    for (const column of NUMBERS) {
      const [had, has] = [old?.numbers[column], now?.numbers[column]];
      if (had !== has) found.push({ row, column, had, has });
    }
  }
  return found;
}
