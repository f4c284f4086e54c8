/** A protocol's exercise week by week: from its table, or from a rule that leads from a start to a goal. */
import type { WeekSpan } from "../units/quantities.ts";
import type { DosePart } from "./fields.ts";
import { followRule } from "./rule.ts";

/** What an exercise of a protocol states: the same in every week, and over it a table or a rule. */
export interface WeeklyStatement {
  /** What holds in every week. */
  readonly dose: DosePart;
  /** Rows by the weeks they fill, counted from the phase's first: "1", "2-3". */
  readonly weeks?: Readonly<Record<string, DosePart>> | undefined;
  readonly rule?:
    | {
        readonly from: DosePart;
        readonly to: DosePart;
        readonly load_step?: number | undefined;
        readonly easier_every?: number | undefined;
      }
    | undefined;
}

/** What is wrong with a week table: `key` is the row as written; a gap has none. */
export interface WeekProblem {
  /** gap: weeks without a row; overlap: weeks filled twice; outside: after the phase; both: a table and a rule. */
  readonly kind: "gap" | "overlap" | "outside" | "both";
  readonly key: string | undefined;
  readonly weeks: WeekSpan;
  /** Where it stands, from the exercise: ["weeks", "2-3"]. */
  readonly path: readonly string[];
}

export interface Expanded {
  /** One entry a week of the phase; undefined where the table leaves a week out. */
  readonly doses: readonly (DosePart | undefined)[];
  readonly problems: readonly WeekProblem[];
}

/**
 * The dose a protocol states for an exercise in each of the phase's weeks: what holds in every week
 * (`dose`), and over it the week's row or the rule. Overlapping rows: the first in order of weeks holds.
 */
export function expandWeeks(exercise: WeeklyStatement, phaseWeeks: number): Expanded {
  const { dose, weeks, rule } = exercise;
  if (weeks === undefined && rule === undefined) {
    return { doses: Array.from({ length: phaseWeeks }, () => dose), problems: [] };
  }
  if (weeks === undefined && rule !== undefined) {
    const start = mergeDose(dose, rule.from);
    const options = { easierEvery: rule.easier_every, loadStep: rule.load_step };
    return {
      doses: followRule(start, mergeDose(start, rule.to), phaseWeeks, options),
      problems: [],
    };
  }
  const both: WeekProblem[] =
    rule === undefined
      ? []
      : [{ kind: "both", key: undefined, weeks: { first: 1, last: phaseWeeks }, path: ["rule"] }];
  const table = fillTable(weeks ?? {}, phaseWeeks);
  return {
    doses: table.rows.map((row) => (row === undefined ? undefined : mergeDose(dose, row))),
    problems: [...both, ...table.problems],
  };
}

const OFTEN = ["per_week", "per_day", "every"] as const;

/**
 * One part of a dose over another, field by field. A part that says how often replaces whatever the
 * other said of it, so that "twice a day" never stands beside "three days a week".
 */
export function mergeDose<T extends DosePart>(base: T, over: DosePart): T {
  const merged: T = { ...base };
  if (OFTEN.some((field) => over[field] !== undefined)) {
    for (const field of OFTEN) delete merged[field];
  }
  for (const [field, value] of Object.entries(over)) {
    if (value !== undefined) Object.assign(merged, { [field]: value });
  }
  return merged;
}

function fillTable(table: Readonly<Record<string, DosePart>>, phaseWeeks: number) {
  const rows: (DosePart | undefined)[] = Array.from({ length: phaseWeeks }, () => undefined);
  const problems: WeekProblem[] = [];
  const ordered = Object.entries(table)
    .map(([key, part]) => ({ key, part, span: spanOf(key) }))
    .sort((a, b) => a.span.first - b.span.first || a.span.last - b.span.last);
  for (const { key, part, span } of ordered) {
    const twice: number[] = [];
    for (let week = span.first; week <= Math.min(span.last, phaseWeeks); week += 1) {
      if (rows[week - 1] === undefined) rows[week - 1] = part;
      else twice.push(week);
    }
    const path = ["weeks", key];
    for (const weeks of spansOf(twice)) problems.push({ kind: "overlap", key, weeks, path });
    if (span.last > phaseWeeks) {
      const weeks = { first: Math.max(span.first, phaseWeeks + 1), last: span.last };
      problems.push({ kind: "outside", key, weeks, path });
    }
  }
  const empty = rows.flatMap((row, index) => (row === undefined ? [index + 1] : []));
  for (const weeks of spansOf(empty)) {
    problems.push({ kind: "gap", key: undefined, weeks, path: ["weeks"] });
  }
  return { rows, problems };
}

/** First and last week of a row's key, "3" or "2-5"; a key written backwards counts as read backwards. */
function spanOf(key: string): WeekSpan {
  const [first = 1, last = first] = key.split("-").map(Number);
  return { first: Math.min(first, last), last: Math.max(first, last) };
}

/** Runs of weeks that follow one another: [1, 2, 3, 6] is 1 to 3, and 6. */
export function spansOf(weeks: readonly number[]): WeekSpan[] {
  const spans: { first: number; last: number }[] = [];
  for (const week of [...new Set(weeks)].sort((a, b) => a - b)) {
    const open = spans.at(-1);
    if (open && open.last === week - 1) open.last = week;
    else spans.push({ first: week, last: week });
  }
  return spans;
}
