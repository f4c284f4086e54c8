/** From a repetition maximum to a share of 1RM: by the clinic's formula, or by a printed table. */
import type { Clinic } from "../clinic/schema.ts";
import { FORMULAS, type FormulaName, oneRmFactor } from "./one-rm.ts";

type RmTableName = Exclude<Clinic["dosing"]["rm_to_load"], "same-formula">;

interface RmTable {
  readonly name: string;
  readonly source: string;
  /** Repetitions and percent of 1RM, in the order printed. */
  readonly rows: readonly (readonly [reps: number, percent: number])[];
}

/**
 * Two printed forms of the NSCA table. They disagree from 11 repetitions on: the chart has no row
 * for 11 and 70 % at 12; the textbook has 70 % at 11 and 67 % at 12 (its rows from 11 up are from
 * memory). Neither prints 13 or 14.
 */
const RM_TABLES: Readonly<Record<RmTableName, RmTable>> = {
  "nsca-chart": {
    name: "NSCA training load chart",
    source: "NSCA training load chart, as printed",
    rows: [
      [1, 100],
      [2, 95],
      [3, 93],
      [4, 90],
      [5, 87],
      [6, 85],
      [7, 83],
      [8, 80],
      [9, 77],
      [10, 75],
      [12, 70],
    ],
  },
  "nsca-textbook": {
    name: "NSCA textbook table",
    source:
      "Essentials of Strength Training and Conditioning (NSCA); rows from 11 repetitions up from memory",
    rows: [
      [1, 100],
      [2, 95],
      [3, 93],
      [4, 90],
      [5, 87],
      [6, 85],
      [7, 83],
      [8, 80],
      [9, 77],
      [10, 75],
      [11, 70],
      [12, 67],
      [15, 65],
    ],
  },
};

export interface RmShare {
  /** Share of 1RM, 0 to 1. */
  readonly share: number;
  /** How it was found, in a sentence. */
  readonly says: string;
  readonly source: string;
}

/**
 * The share of 1RM that can be lifted `reps` times and no more.
 * `same-formula`: one divided by the formula's factor. A table: the printed row; between two rows
 * on a straight line between them; beyond its last row by the formula, but never more than that
 * row. Undefined where the formula has no value.
 */
export function rmShare(
  method: Clinic["dosing"]["rm_to_load"],
  formula: FormulaName,
  reps: number,
): RmShare | undefined {
  const factor = oneRmFactor(formula, reps);
  const { name, says, source } = FORMULAS[formula];
  if (method === "same-formula") {
    if (factor === undefined) return undefined;
    return { share: 1 / factor, says: `by the ${name} formula, ${says}, read backwards`, source };
  }
  const table = RM_TABLES[method];
  const printed = readTable(table, reps);
  if (printed !== undefined) return printed;
  const [lastReps, lastPercent] = table.rows.at(-1) ?? [1, 100];
  if (factor === undefined) return undefined;
  return {
    share: Math.min(1 / factor, lastPercent / 100),
    says: `the ${table.name} ends at ${lastReps} repetitions; beyond it by the ${name} formula, never more than its last row`,
    source: `${table.source}; ${source}`,
  };
}

function readTable(table: RmTable, reps: number): RmShare | undefined {
  const { name, rows, source } = table;
  for (const [index, [at, percent]] of rows.entries()) {
    if (at === reps) return { share: percent / 100, says: `printed in the ${name}`, source };
    const before = rows[index - 1];
    if (at > reps && before) {
      const [from, above] = before;
      const share = (above + ((percent - above) * (reps - from)) / (at - from)) / 100;
      const says = `between the rows ${from} and ${at} of the ${name}, on a straight line`;
      return { share, says, source };
    }
  }
  return undefined;
}
