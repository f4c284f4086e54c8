/** Lays a program out again with changes made to it, to see whether they help. */

import { layOutProgram } from "../program/program.ts";
import type { LayoutFailure, LayoutResult, ProgramWeeks } from "../program/program-types.ts";
import { programWeeks } from "../program/program-weeks.ts";
import type { Tally } from "../search/counter.ts";
import { dayNumber, isoDate } from "../search/dates.ts";
import { DAYS, type WeekProblem } from "../search/problem.ts";
import { solveWeek } from "../search/solve.ts";
import { withChanges } from "./apply.ts";
import { asksForTime } from "./costs.ts";
import type { Change } from "./explain-types.ts";

/** Nodes for one question about one week. */
const WEEK_LIMIT = 30_000;
/** Nodes for all questions about one program together, and layouts; then the answer is incomplete. */
const ALL_NODES = 2_000_000;
const MOST_LAYOUTS = 250;
/** Doses are changed in so many single weeks at most; where more need it, wherever they stand. */
const MOST_SINGLE_WEEKS = 3;

/**
 * The questions asked about one program. Every answer "helps" was given by laying the whole
 * program out as it is always laid out. Weeks known to have no place even standing alone are asked
 * first, since a change that leaves one of them without a place cannot help.
 */
export class Trial {
  readonly program: ProgramWeeks;
  readonly #tally: Tally = { nodes: 0 };
  /** Weeks of the unchanged program that have no place even standing alone. */
  readonly #hardWeeks = new Set<number>();
  /** What layouts gave, by their changes as a text. */
  readonly #known = new Map<string, LayoutResult>();

  constructor(program: ProgramWeeks, failure: LayoutFailure) {
    this.program = program;
    this.#known.set("[]", failure);
    this.#learn(failure);
  }

  /** Whether the limit ended the questions, so that "helps not" is not certain any more. */
  get isSpent(): boolean {
    return this.#tally.nodes > ALL_NODES || this.#known.size > MOST_LAYOUTS;
  }

  /** False where the changes leave a week without a place, whatever the other weeks hold. */
  canHelp(changes: readonly Change[]): boolean {
    return [...this.#hardWeeks].every((week) =>
      this.weekAlone(changes, week).some((problem) => this.mayFit(problem)),
    );
  }

  /** Whether the whole program is laid out with exactly these changes. */
  fits(changes: readonly Change[]): boolean {
    return this.layOut(changes).status === "laid-out";
  }

  /** Whether a week has a place, or may have one as far as so many nodes could tell. */
  mayFit(problem: WeekProblem): boolean {
    const options = { nodeLimit: WEEK_LIMIT, any: true, tally: this.#tally };
    return solveWeek(problem, options).status !== "impossible";
  }

  /**
   * The changes with which the whole program is laid out, doses changed only in the weeks that
   * turned out to need it; undefined where they do not help.
   */
  helps(changes: readonly Change[]): readonly Change[] | undefined {
    const weeks: number[] = [];
    for (;;) {
      const scoped = within(changes, weeks);
      const result = this.layOut(scoped);
      if (result.status === "laid-out") return scoped;
      if (result.status === "malformed" || changes.every(asksForTime)) return undefined;
      if (weeks.includes(result.week) || weeks.length === MOST_SINGLE_WEEKS) break;
      weeks.push(result.week);
    }
    return this.fits(changes) ? changes : undefined;
  }

  /** The whole program laid out with the changes; the same question is worked out once. */
  layOut(changes: readonly Change[]): LayoutResult {
    const key = JSON.stringify(changes);
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    const result = layOutProgram(withChanges(this.program, changes), this.#tally);
    this.#known.set(key, result);
    if (result.status === "impossible") this.#learn(result);
    return result;
  }

  /**
   * A week as it stands alone with the changes made: one problem, or one for each day on which
   * what is done every n days could begin.
   */
  weekAlone(changes: readonly Change[], week: number): WeekProblem[] {
    const changed = withChanges(this.program, changes);
    const counts = changed.phases
      .flatMap((phase) => phase.weeks)
      .flatMap(({ exercises }) =>
        exercises.flatMap(({ times }) => ("everyDays" in times ? [times.everyDays] : [])),
      );
    const longest = Math.max(0, ...counts);
    const problems =
      longest > 0
        ? Array.from({ length: longest }, (_, offset) => programWeeks(changed, offset)[week])
        : programWeeks(onlyWeek(changed, week), 0);
    return problems.flatMap((one) => (one === undefined ? [] : [one.problem]));
  }

  #learn(failure: LayoutFailure): void {
    if (failure.status !== "impossible") return;
    const fits = this.weekAlone([], failure.week).some((problem) => this.mayFit(problem));
    if (!fits) this.#hardWeeks.add(failure.week);
  }
}

/** Doses changed in these weeks only; what is left without any week is dropped. */
function within(changes: readonly Change[], weeks: readonly number[]): Change[] {
  return changes.flatMap((change): Change[] => {
    if (!("weeks" in change)) return [change];
    const meant = change.weeks.filter((week) => weeks.includes(week));
    return meant.length > 0 ? [{ ...change, weeks: meant }] : [];
  });
}

/** One week of a program as a program. */
function onlyWeek(program: ProgramWeeks, week: number): ProgramWeeks {
  const first = dayNumber(program.firstDate) ?? 0;
  const weeks = program.phases.flatMap((phase) => phase.weeks.slice());
  return {
    ...program,
    firstDate: isoDate(first + DAYS * week),
    phases: [{ id: "", weeks: weeks.slice(week, week + 1) }],
    days: program.days.slice(DAYS * week, DAYS * (week + 1)),
  };
}
