/** A protocol's exercise week by week: from its table, or from a rule that leads from a start to a goal. */
import { readWeekSpan, spansOf, type WeekSpan } from "../units/week-span.ts";
import type { DosePart } from "./fields.ts";
import { mergeDose } from "./merge.ts";
import { followRule } from "./rule.ts";
import { saysWork } from "./shape-problem.ts";

/** A row of a table: what is different in its weeks, or that they are without the exercise. */
type Row = DosePart | "none";

/** What an exercise of a protocol states: the same in every week, and over it a table or a rule. */
export interface WeeklyStatement {
  /** What holds in every week. */
  readonly dose: DosePart;
  /** Rows by the weeks they fill, counted from the phase's first: "1", "2-3". */
  readonly weeks?: Readonly<Record<string, Row>> | undefined;
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
  /**
   * gap: weeks without a row, in which the dose for every week is not complete; overlap: weeks filled
   * twice; outside: after the phase; never: no week has the exercise; both: a table and a rule.
   */
  readonly kind: "gap" | "overlap" | "outside" | "never" | "both";
  readonly key: string | undefined;
  readonly weeks: WeekSpan;
  /** Where it stands, from the exercise: ["weeks", "2-3"]. */
  readonly path: readonly string[];
}

export interface Expanded {
  /** One entry a week of the phase; undefined in weeks without the exercise, and in a gap. */
  readonly doses: readonly (DosePart | undefined)[];
  /** The key of the row that holds in each week; undefined where there is none. */
  readonly rows: readonly (string | undefined)[];
  readonly problems: readonly WeekProblem[];
}

/**
 * The dose a protocol states for an exercise in each of the phase's weeks: what holds in every week
 * (`dose`), and over it the week's row or the rule. A row `none` leaves its weeks without the
 * exercise. In weeks without a row the dose holds alone, where it is complete; where it is not they
 * are a gap. Overlapping rows: the first in order of weeks holds.
 */
export function expandWeeks(exercise: WeeklyStatement, phaseWeeks: number): Expanded {
  const { dose, weeks, rule } = exercise;
  const rows = Array.from({ length: phaseWeeks }, () => undefined);
  if (weeks === undefined && rule === undefined) {
    return { doses: rows.map(() => dose), rows, problems: [] };
  }
  if (weeks === undefined && rule !== undefined) {
    const start = mergeDose(dose, rule.from);
    const options = { easierEvery: rule.easier_every, loadStep: rule.load_step };
    const doses = followRule(start, mergeDose(start, rule.to), phaseWeeks, options);
    return { doses, rows, problems: [] };
  }
  const whole = { first: 1, last: phaseWeeks };
  const both: WeekProblem[] =
    rule === undefined ? [] : [{ kind: "both", key: undefined, weeks: whole, path: ["rule"] }];
  const table = fillTable(weeks ?? {}, phaseWeeks);
  const complete = isComplete(dose);
  const doses = table.rows.map((key): DosePart | undefined => {
    const row = key === undefined ? undefined : weeks?.[key];
    if (row === undefined) return complete ? dose : undefined;
    return row === "none" ? undefined : mergeDose(dose, row);
  });
  const empty = complete
    ? []
    : table.rows.flatMap((key, index) => (key === undefined ? [index + 1] : []));
  const gaps = spansOf(empty).map(
    (span): WeekProblem => ({ kind: "gap", key: undefined, weeks: span, path: ["weeks"] }),
  );
  const never: WeekProblem[] =
    gaps.length > 0 || doses.some((one) => one !== undefined)
      ? []
      : [{ kind: "never", key: undefined, weeks: whole, path: ["weeks"] }];
  return { doses, rows: table.rows, problems: [...both, ...table.problems, ...gaps, ...never] };
}

/** Whether a dose can stand alone: how many sets, what a set is, and how often. */
function isComplete(dose: DosePart): boolean {
  const often = dose.per_week ?? dose.per_day ?? dose.every;
  return dose.sets !== undefined && often !== undefined && saysWork(dose);
}

/** The key of the row that fills each week. */
function fillTable(table: Readonly<Record<string, Row>>, phaseWeeks: number) {
  const rows: (string | undefined)[] = Array.from({ length: phaseWeeks }, () => undefined);
  const problems: WeekProblem[] = [];
  const ordered = Object.keys(table)
    .flatMap((key) => {
      const span = readWeekSpan(key);
      return span ? [{ key, span }] : [];
    })
    .sort((a, b) => a.span.first - b.span.first || a.span.last - b.span.last);
  for (const { key, span } of ordered) {
    const twice: number[] = [];
    for (let week = span.first; week <= Math.min(span.last, phaseWeeks); week += 1) {
      if (rows[week - 1] === undefined) rows[week - 1] = key;
      else twice.push(week);
    }
    const path = ["weeks", key];
    for (const weeks of spansOf(twice)) problems.push({ kind: "overlap", key, weeks, path });
    if (span.last > phaseWeeks) {
      const weeks = { first: Math.max(span.first, phaseWeeks + 1), last: span.last };
      problems.push({ kind: "outside", key, weeks, path });
    }
  }
  return { rows, problems };
}
