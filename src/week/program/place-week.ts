/** Places one week after another: by the pattern where it fits, with the fewest moves where not. */

import { isoDate } from "../search/dates.ts";
import type { FoundWeek, GivenBout, Placement, WeekProblem } from "../search/problem.ts";
import { type SolveOptions, solveWeek } from "../search/solve.ts";
import { verifyPlacement } from "../search/verify.ts";
import { runsOut } from "./long-run.ts";
import { circumstances, frequencies, turn } from "./pattern.ts";
import type { LayoutFailure } from "./program-types.ts";
import { boutsSeenFrom, type ProgramWeek } from "./program-weeks.ts";

/** A week that has its placement. */
export interface Placed {
  readonly placement: Placement;
  readonly proven: boolean;
  /** Where the phase's pattern has the bouts. */
  readonly expected: Placement | undefined;
}

/** How many weeks are placed anew at most for the sake of a later one. */
const WEEKS_BACK = 3;

/** Places one week, and the week before it anew where that is needed; or says why it cannot. */
export function placeWeek(
  weeks: readonly ProgramWeek[],
  placed: Placed[],
  index: number,
  patterns: ReadonlyMap<string, Placement | undefined>,
  options: SolveOptions,
): LayoutFailure | undefined {
  const week = weeks[index];
  if (week === undefined) return undefined;
  const pattern = patterns.get(turn(week));
  const given = boutsBefore(weeks, placed, index);
  const problem = { ...week.problem, given };
  const twin = placed.findLast((_, i) => isTwin(weeks[i], week));
  // A week that follows its phase's pattern is what was asked for; nothing is left to prove.
  for (const known of [twin?.placement, pattern]) {
    if (known === undefined) continue;
    const placement = onlyFor(problem, known);
    if (verifyPlacement(problem, placement).length > 0) continue;
    placed.push({ placement, proven: true, expected: pattern });
    return undefined;
  }
  const near = nearTo(problem, pattern ?? placed[index - 1]?.placement);
  const after = boutsAfter(weeks[index + 1], week, patterns);
  const found =
    after.length > 0 ? place({ ...near, given: [...given, ...after] }, options) : "impossible";
  const answer = typeof found === "string" ? place(near, options) : found;
  if (typeof answer !== "string") {
    placed.push({ ...answer, expected: pattern });
    return undefined;
  }
  return placeWithWeekBefore(weeks, placed, index, pattern, options);
}

/** Where a week has no place after the week before: places it first and those before it anew. */
function placeWithWeekBefore(
  weeks: readonly ProgramWeek[],
  placed: Placed[],
  index: number,
  pattern: Placement | undefined,
  options: SolveOptions,
): LayoutFailure | undefined {
  const week = weeks[index];
  if (week === undefined) return undefined;
  const where = { week: index, phase: week.phase, firstDate: isoDate(week.start), weeks: [] };
  const alone = place(nearTo(week.problem, pattern), options);
  const { problem } = week;
  if (alone === "impossible") return { status: "impossible", ...where, problem };
  if (alone === "unknown") return { status: "unknown", ...where, because: "node-limit", problem };
  const chain = placeBackwards(weeks, placed, index - 1, [alone], options);
  if (chain === undefined) {
    const beside = { ...problem, given: boutsBefore(weeks, placed, index) };
    const soFar = weeks.slice(0, index + 1);
    if (problem.exercises.some((one) => runsOut(soFar, one.id))) {
      return { status: "impossible", ...where, problem: beside };
    }
    return { status: "unknown", ...where, because: "week-before", problem: beside };
  }
  const from = index - chain.length + 1;
  const expected = [...placed.slice(from).map((each) => each.expected), pattern];
  placed.splice(
    from,
    placed.length - from,
    ...chain.map((each, i) => ({ ...each, expected: expected[i] })),
  );
  return undefined;
}

/**
 * Places the weeks up to `index` anew so that they go with the weeks after them, `later`, going
 * back as few weeks as needed. Gives those placed anew and then the later ones.
 */
function placeBackwards(
  weeks: readonly ProgramWeek[],
  placed: readonly Placed[],
  index: number,
  later: readonly (FoundWeek & { proven: boolean })[],
  options: SolveOptions,
): readonly (FoundWeek & { proven: boolean })[] | undefined {
  const week = weeks[index];
  const next = weeks[index + 1];
  const first = later[0];
  if (week === undefined || next === undefined || first === undefined) return undefined;
  if (later.length > WEEKS_BACK) return undefined;
  const after = boutsSeenFrom(next.problem.exercises, first.placement, -1);
  const near = nearTo(week.problem, placed[index]?.placement);
  const given = [...boutsBefore(weeks, placed, index), ...after];
  const found = place({ ...near, given }, options);
  if (typeof found !== "string") return [found, ...later];
  const loose = place({ ...near, given: after }, options);
  if (typeof loose === "string") return undefined;
  return placeBackwards(weeks, placed, index - 1, [loose, ...later], options);
}

/** The best placement known, checked once more against the problem. */
function place(
  problem: WeekProblem,
  options: SolveOptions,
): (FoundWeek & { proven: boolean }) | "impossible" | "unknown" {
  const answer = solveWeek(problem, options);
  if (answer.status === "impossible") return "impossible";
  const found =
    answer.status === "solved" ? answer : answer.status === "unknown" ? answer.found : undefined;
  if (found === undefined) return "unknown";
  const broken = verifyPlacement(problem, found.placement)[0];
  if (broken !== undefined)
    throw new Error(`A week was laid out against a rule: ${broken.sentence}`);
  return { ...found, proven: answer.status === "solved" };
}

/** The bouts of the week before, as that week was placed. */
export function boutsBefore(
  weeks: readonly ProgramWeek[],
  placed: readonly Placed[],
  index: number,
): GivenBout[] {
  const earlier = weeks[index - 1];
  const last = placed[index - 1];
  if (earlier === undefined || last === undefined) return [];
  return boutsSeenFrom(earlier.problem.exercises, last.placement, 1);
}

/** Where the pattern has next week's bouts, if next week can follow the pattern. */
function boutsAfter(
  next: ProgramWeek | undefined,
  week: ProgramWeek,
  patterns: ReadonlyMap<string, Placement | undefined>,
): GivenBout[] {
  if (next === undefined || next.phase !== week.phase) return [];
  const pattern = patterns.get(turn(next));
  if (pattern === undefined) return [];
  const placement = onlyFor(next.problem, pattern);
  if (verifyPlacement(next.problem, placement).length > 0) return [];
  return boutsSeenFrom(next.problem.exercises, placement, -1);
}

/** The problem with the fewest moved bouts as its first aim. */
function nearTo(problem: WeekProblem, pattern: Placement | undefined): WeekProblem {
  if (pattern === undefined) return problem;
  const previous = new Map(pattern);
  for (const one of problem.exercises) {
    // What is done on dates keeps its part of the day; its days are not a matter of choice.
    const part = (pattern.get(one.id)?.[0] ?? -1) % 3;
    if ("onDays" in one.times && part >= 0) {
      previous.set(
        one.id,
        one.times.onDays.map((day) => 3 * day + part),
      );
    }
  }
  return { ...problem, previous, aim: "repair" };
}

function onlyFor(problem: WeekProblem, placement: Placement): Placement {
  return new Map(problem.exercises.map((one) => [one.id, placement.get(one.id) ?? []]));
}

function isTwin(a: ProgramWeek | undefined, b: ProgramWeek): boolean {
  return (
    a !== undefined &&
    a.phase === b.phase &&
    frequencies(a) === frequencies(b) &&
    circumstances(a) === circumstances(b)
  );
}
