/** The kinds of cells of a diary's file: how each is written, read again, and described. */
import { isDate } from "../units/dates.ts";

/** What can be wrong with a cell. */
export type CellProblemCode = "value-wrong" | "date-rewritten" | "text-long";

export interface Kind<T> {
  /** What may stand in the cell, for the reference. */
  readonly values: string;
  /** Whether blanks mean nothing: in a client's text they may be meant. */
  readonly plain: boolean;
  readonly write: (value: T) => string;
  /** `comma`: numbers may have a decimal comma, as in files that spreadsheets separate by semicolons. */
  readonly read: (cell: string, comma: boolean) => CellReading<T>;
}

export type CellReading<T> = { readonly value: T } | { readonly wrong: CellProblemCode };

const WRONG = { wrong: "value-wrong" } as const;

/** A text of a client or clinic, at most `longest` UTF-16 units; a longer one is cut when written. */
export function text(longest: number): Kind<string> {
  return {
    values: `text, at most ${longest.toLocaleString("en-GB")} characters`,
    plain: false,
    write: (value) => guarded(guardedInside(fitted(wellFormed(value), longest))),
    read: (cell) => {
      const value = unguardedInside(unguarded(cell));
      return value.length > longest ? { wrong: "text-long" } : { value };
    },
  };
}

/** The id of a plan or card. */
export const id: Kind<string> = plain(
  "an id: small letters, digits and hyphens",
  (value) => value,
  (cell) =>
    /^[a-z0-9]+(?:-[a-z0-9]+)*$/.test(cell) && cell.length <= 80 ? { value: cell } : WRONG,
);

/** One of a few words; capitals do not matter. */
export function word<W extends string>(known: readonly W[]): Kind<W> {
  return plain(
    known.join(", "),
    (value) => value,
    (cell) => {
      const value = known.find((one) => one === cell.toLowerCase());
      return value === undefined ? WRONG : { value };
    },
  );
}

export const yesNo: Kind<boolean> = plain(
  "yes, no",
  (value) => (value ? "yes" : "no"),
  (cell) => {
    const small = cell.toLowerCase();
    return small === "yes" || small === "no" ? { value: small === "yes" } : WRONG;
  },
);

export const whole = (from: number, to: number): Kind<number> =>
  numeric(
    from === to ? String(to) : `a whole number from ${from} to ${to.toLocaleString("en-GB")}`,
    from,
    to,
    Number.isInteger,
  );

export const number = (from: number, to: number): Kind<number> =>
  numeric(`a number from ${from} to ${to.toLocaleString("en-GB")}`, from, to, Number.isFinite);

function numeric(
  values: string,
  from: number,
  to: number,
  fits: (value: number) => boolean,
): Kind<number> {
  return plain(values, String, (cell, comma) => {
    const dotted = comma ? cell.replace(/^(\d+),(\d+)$/, "$1.$2") : cell;
    const value = /^\d+(?:\.\d+)?$/.test(dotted) ? Number(dotted) : Number.NaN;
    return fits(value) && value >= from && value <= to ? { value } : WRONG;
  });
}

/** A day. What a spreadsheet has made of one (1/12/2026, 46357) has lost which day was meant. */
export const date: Kind<string> = plain(
  "a date, YYYY-MM-DD",
  (value) => value,
  (cell) => {
    if (isDate(cell)) return { value: cell };
    const own = /^\d{4}-\d{2}-\d{2}$/.test(cell) || !/\d/.test(cell);
    return own ? WRONG : { wrong: "date-rewritten" };
  },
);

/** An instant to the second, in UTC. */
export const instant: Kind<string> = plain(
  "an instant in UTC, YYYY-MM-DDThh:mm:ssZ",
  (value) => value,
  (cell) => {
    const own = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}Z$/.test(cell);
    if (own && isInstant(cell)) return { value: cell };
    return own || !/\d/.test(cell) ? WRONG : { wrong: "date-rewritten" };
  },
);

function isInstant(cell: string): boolean {
  const time = Date.parse(cell);
  return !Number.isNaN(time) && new Date(time).toISOString() === cell.replace("Z", ".000Z");
}

function plain<T>(values: string, write: Kind<T>["write"], read: Kind<T>["read"]): Kind<T> {
  return { values, plain: true, write, read: (cell, comma) => read(cell.trim(), comma) };
}

/**
 * What a spreadsheet would run as a formula, whatever apostrophes or blanks come before it
 * (OWASP, CSV injection): = + - @ and their wide forms, and a first tab or line break.
 */
const FORMULA = /^'*(?:\s*[=+\-@＝＋－＠]|[\t\r\n])/;

/** With one apostrophe more before what would be a formula: exactly one, so that it can be taken off again. */
const guarded = (value: string): string => (FORMULA.test(value) ? `'${value}` : value);

const unguarded = (cell: string): string =>
  cell.startsWith("'") && FORMULA.test(cell) ? cell.slice(1) : cell;

/** What begins a cell for a reader that splits at semicolons or tabs, as spreadsheets of many languages do. */
const CELL_ENDS = /([;\t\r\n])/;

/** What such a reader would run in the cell that begins here, whatever quotation marks it takes off before. */
const INSIDE = /^['"\s]*[=+\-@＝＋－＠]/;

/** The same within a text: an apostrophe more where another reader begins a cell with a formula. */
const guardedInside = (value: string): string =>
  afterEnds(value, (piece) => (INSIDE.test(piece) ? `'${piece}` : piece));

const unguardedInside = (cell: string): string =>
  afterEnds(cell, (piece) =>
    piece.startsWith("'") && INSIDE.test(piece) ? piece.slice(1) : piece,
  );

/** Changes the pieces of a text that come after what ends a cell elsewhere. */
function afterEnds(text: string, change: (piece: string) => string): string {
  const [first = "", ...others] = text.split(CELL_ENDS);
  // pieces and what parts them take turns
  return first + others.map((one, at) => (at % 2 === 0 ? one : change(one))).join("");
}

/** Half a character cannot be written as UTF-8. */
const wellFormed = (value: string): string => value.replace(/\p{Surrogate}/gu, "\uFFFD");

/** Cut between characters, with … in place of the rest. */
function fitted(value: string, longest: number): string {
  if (value.length <= longest) return value;
  return `${value.slice(0, longest - 1).replace(/[\uD800-\uDBFF]$/, "")}…`;
}
