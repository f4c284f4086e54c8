/** Sorts the parts of doses into what always holds and what changes from row to row. */
import type { DoseLine, DoseRow, ExercisePage, PhasePage } from "../compose/exercise-model.ts";

/** A row of a dose table: the words that change, side by side with the weeks they hold in. */
interface DoseCells {
  readonly weeks: string;
  readonly work: string;
  readonly load: string;
  /** Pace, rest, effort and how often, where they change; else empty. */
  readonly how: readonly string[];
}

interface DoseRowView {
  readonly exercise: string;
  readonly anchor: string;
  readonly number: string;
  readonly side: string | undefined;
  /** The sign that has to be there first. */
  readonly when: string | undefined;
  /** What holds in every row. */
  readonly common: readonly string[];
  /** Whether there is anything that holds in every row, or a sign. */
  readonly more: boolean;
  readonly lines: readonly DoseCells[];
}

/** A table with only the columns it needs. */
interface DoseTableView<Group> {
  readonly groups: readonly Group[];
  readonly hasLoad: boolean;
  readonly hasHow: boolean;
  readonly columns: number;
  /** Whether the words of a dose are too long to stay on one line: the columns after them would be cut off. */
  readonly long: boolean;
}

/** The most letters of "3 sets of 10 holds, 10 seconds each" with which a row is not broken. */
const ONE_LINE = 36;

/** How a set is done, and how often. */
export const PARTS = ["pace", "rest", "effort", "often"] as const;

/**
 * The doses of a phase. What is the same for all of several exercises, or for most of many, is said once
 * above the table. Where no dose changes in its weeks, an exercise is one row, with a line under it for what
 * else there is to say.
 */
export function phaseDoses(
  { rows, weeks }: Pick<PhasePage, "rows" | "weeks">,
  numbers: ReadonlyMap<string, number>,
) {
  const lines = rows.flatMap(({ doses }) => doses);
  const [first] = lines;
  const shared = new Set(
    PARTS.filter((part) => rows.length > 1 && first?.[part] !== undefined && isLevel(lines, part)),
  );
  const flat = rows.every(({ doses }) => doses.length === 1 && doses[0]?.weeks === weeks);
  const most = flat ? saidOfMost(rows, shared) : undefined;
  const groups = rows.map((row, at) => {
    const above = most?.rows.includes(at) ? most.parts.map(({ part }) => part) : [];
    const view = doseRowView(row, numbers.get(row.anchor), new Set([...shared, ...above]));
    // a row by itself has its side and its load under it
    const under = flat && (row.side !== undefined || view.lines.some(({ load }) => load !== ""));
    return { ...view, more: view.more || under };
  });
  return { ...doseTable(groups), flat, shared: first ? said(first, shared) : [], most };
}

/** Fewer exercises than these are as quickly read one by one, and so is one thing that holds for these few. */
const NAMED_TOGETHER = 3;

/** What holds for more than half of the exercises, if they are many: their places, and what is said of them. */
interface OfMost {
  readonly rows: readonly number[];
  readonly parts: readonly { readonly part: Part; readonly says: string }[];
}

/** Of several such groups of exercises the one of which most is said: lists that differ a little confuse. */
function saidOfMost(rows: readonly DoseRow[], shared: ReadonlySet<Part>): OfMost | undefined {
  const groups = new Map<string, { rows: number[]; parts: { part: Part; says: string }[] }>();
  for (const part of PARTS.filter((one) => !shared.has(one))) {
    const values = new Set(rows.flatMap(({ doses: [dose] }) => dose?.[part] ?? []));
    for (const says of values) {
      const all = rows.flatMap(({ doses: [dose] }, at) => (dose?.[part] === says ? [at] : []));
      const group = groups.get(all.join()) ?? { rows: all, parts: [] };
      group.parts.push({ part, says });
      groups.set(all.join(), group);
    }
  }
  const saved = (one: OfMost) => one.rows.length * one.parts.length;
  return [...groups.values()]
    .filter((one) => one.rows.length >= NAMED_TOGETHER && one.rows.length > rows.length / 2)
    .filter((one) => saved(one) > NAMED_TOGETHER)
    .sort((a, b) => saved(b) - saved(a))[0];
}

/** An exercise of a phase; what is the same in all its rows is said once, what is `shared` nowhere. */
function doseRowView(
  row: DoseRow,
  number: number | undefined,
  shared: ReadonlySet<Part>,
): DoseRowView {
  const changing = changingParts(row.doses);
  const [first] = row.doses;
  const common = PARTS.filter((part) => !changing.has(part) && !shared.has(part));
  const always = first === undefined ? [] : said(first, new Set(common));
  return {
    exercise: row.exercise,
    anchor: row.anchor,
    number: number === undefined ? "" : String(number),
    side: row.side,
    when: row.when,
    common: always,
    more: always.length > 0 || row.when !== undefined,
    lines: row.doses.map((dose) => cells(dose, changing)),
  };
}

/** The columns that rows of exercises need. */
function doseTable<Group extends { readonly lines: readonly DoseCells[] }>(
  groups: readonly Group[],
): DoseTableView<Group> {
  const lines = groups.flatMap((group) => group.lines);
  const hasLoad = lines.some(({ load }) => load !== "");
  const hasHow = lines.some(({ how }) => how.length > 0);
  const long = lines.some(({ work }) => work.length > ONE_LINE);
  return { groups, hasLoad, hasHow, columns: 2 + Number(hasLoad) + Number(hasHow), long };
}

/**
 * The doses of an exercise's own page, a group a phase. Where phases differ in the sign to start, each
 * group is headed by its phase: else a group without a sign would seem to wait for the one above.
 */
export function exerciseDoses({ phases }: Pick<ExercisePage, "phases">) {
  const differ = phases.some(({ when }) => when !== undefined);
  const changing = changingParts(phases.flatMap(({ doses }) => doses));
  return doseTable(
    phases.map(({ title, doses, when }) => ({
      phase: differ ? title : undefined,
      when,
      lines: doses.map((dose) => cells(dose, changing)),
    })),
  );
}

export type Part = (typeof PARTS)[number];

function changingParts(doses: readonly DoseLine[]): ReadonlySet<Part> {
  return new Set(PARTS.filter((part) => !isLevel(doses, part)));
}

const isLevel = (doses: readonly DoseLine[], part: Part): boolean =>
  new Set(doses.map((dose) => dose[part])).size <= 1;

function cells(dose: DoseLine, changing: ReadonlySet<Part>): DoseCells {
  return { weeks: dose.weeks, work: dose.work, load: dose.load ?? "", how: said(dose, changing) };
}

function said(dose: DoseLine, parts: ReadonlySet<Part>): readonly string[] {
  return PARTS.filter((part) => parts.has(part)).flatMap((part) => dose[part] ?? []);
}
