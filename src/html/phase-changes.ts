/** What changes from a phase to the next one with the same exercises: then its table need not be printed again. */
import type { DoseLine, DoseRow, PhasePage } from "../compose/exercise-model.ts";
import { PARTS, type Part } from "./doses.ts";

/** What is done in another way than in the phase before. */
interface PhaseChange {
  /** Places of its exercises in the phase; undefined for all of them. */
  readonly rows: readonly number[] | undefined;
  /** "Should feel 6 out of 10". */
  readonly says: string;
}

type Doses = Pick<PhasePage, "rows" | "weeks">;

/** With fewer exercises the table is as short. */
const FEWEST_ROWS = 3;

/** With more changes a table is easier to read. */
const MOST_CHANGES = 3;

/**
 * The changes from one phase to the next, where that has the same exercises in the same sets with the same
 * loads, each in one way in all its weeks. Undefined where it has not, or where changes are many.
 */
export function changesSince(before: Doses, phase: Doses): readonly PhaseChange[] | undefined {
  const pairs = phase.rows.map((row, at) => pairOf(before, before.rows[at], phase, row));
  if (pairs.length < FEWEST_ROWS || before.rows.length !== pairs.length) return undefined;
  const known = pairs.filter((pair) => pair !== undefined);
  if (known.length < pairs.length) return undefined;
  const changes = PARTS.flatMap((part) => changesOf(part, known));
  return changes.length <= MOST_CHANGES ? changes : undefined;
}

type Pair = readonly [DoseLine, DoseLine];

/** The one dose of an exercise in both phases. */
function pairOf(
  before: Doses,
  was: DoseRow | undefined,
  phase: Doses,
  row: DoseRow,
): Pair | undefined {
  const [from, to] = [was && onlyDose(was, before), onlyDose(row, phase)];
  const same = was?.anchor === row.anchor && was.side === row.side && was.when === row.when;
  if (!same || from?.work !== to?.work || from?.load !== to?.load) return undefined;
  // what is no longer asked for cannot be said as a change
  return from && to && PARTS.every((part) => from[part] === undefined || to[part] !== undefined)
    ? [from, to]
    : undefined;
}

const onlyDose = ({ doses }: DoseRow, { weeks }: Doses): DoseLine | undefined =>
  doses.length === 1 && doses[0]?.weeks === weeks ? doses[0] : undefined;

function changesOf(part: Part, pairs: readonly Pair[]): PhaseChange[] {
  const rows = new Map<string, number[]>();
  pairs.forEach(([from, to], at) => {
    const says = to[part];
    if (says !== undefined && says !== from[part]) rows.set(says, [...(rows.get(says) ?? []), at]);
  });
  return [...rows].map(([says, all]) => ({
    rows: all.length === pairs.length ? undefined : all,
    says,
  }));
}
