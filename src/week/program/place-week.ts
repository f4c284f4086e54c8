/** Places one week after another: by the pattern where it fits, with the fewest moves where not. */

import { isoDate } from "../search/dates.ts";
import type { FoundWeek, GivenBout, Placement } from "../search/problem.ts";
import type { SolveOptions } from "../search/solve.ts";
import { verifyPlacement } from "../search/verify.ts";
import { runsOut } from "./long-run.ts";
import { circumstances, frequencies, type Patterns, turn, wanderers, wishesOf } from "./pattern.ts";
import { isGone, placeAgain } from "./place-again.ts";
import { boutsBefore, nearTo, onlyFor, type Placed, place } from "./placed.ts";
import type { LayoutFailure } from "./program-types.ts";
import { boutsSeenFrom, type ProgramWeek } from "./program-weeks.ts";

/** How many weeks are placed anew at most for the sake of a later one. */
const WEEKS_BACK = 3;

/** Places one week, and the week before it anew where that is needed; or says why it cannot. */
export function placeWeek(
  weeks: readonly ProgramWeek[],
  placed: Placed[],
  index: number,
  patterns: Patterns,
  options: SolveOptions,
): LayoutFailure | undefined {
  const week = weeks[index];
  if (week === undefined) return undefined;
  if (week.issued !== undefined) {
    const again = placeAgain(weeks, placed, index, options);
    if (again === undefined) {
      return placeWithWeekBefore(weeks, placed, index, week.issued.placement, options);
    }
    placed.push(again);
    return undefined;
  }
  if (week.problem.exercises.length === 0) {
    placed.push({ placement: new Map(), proven: true, expected: undefined });
    return undefined;
  }
  const pattern = patterns.get(turn(week));
  const given = boutsBefore(weeks, placed, index);
  const problem = { ...week.problem, given };
  const twin = placed.findLast((_, i) => isTwin(weeks[i], week));
  const wandering = pattern && wanderers(week, pattern.wishes);
  const followed = wandering?.size === 0 ? pattern : undefined;
  // A week that follows its phase's pattern, or one like it, is as well proven as that is.
  for (const known of [twin, followed]) {
    if (known === undefined) continue;
    const placement = onlyFor(problem, known.placement);
    if (verifyPlacement(problem, placement).length > 0) continue;
    placed.push({ placement, proven: known.proven, expected: pattern?.placement });
    return undefined;
  }
  const near = nearTo(problem, pattern?.placement ?? placed[index - 1]?.placement, wandering);
  const after = boutsAfter(weeks[index + 1], week, patterns);
  const found =
    after.length > 0 ? place({ ...near, given: [...given, ...after] }, options) : "impossible";
  const answer = typeof found === "string" ? place(near, options) : found;
  if (typeof answer !== "string") {
    placed.push({ ...answer, expected: pattern?.placement });
    return undefined;
  }
  return placeWithWeekBefore(weeks, placed, index, pattern?.placement, options);
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
  if (later.length > WEEKS_BACK || isGone(week)) return undefined;
  const after = boutsSeenFrom(next.problem.exercises, first.placement, -1);
  const near = nearTo(week.problem, placed[index]?.placement);
  const given = [...boutsBefore(weeks, placed, index), ...after];
  const found = place({ ...near, given }, options);
  if (typeof found !== "string") return [found, ...later];
  const loose = place({ ...near, given: after }, options);
  if (typeof loose === "string") return undefined;
  return placeBackwards(weeks, placed, index - 1, [loose, ...later], options);
}

/** Where the pattern has next week's bouts, if next week can follow the pattern. */
function boutsAfter(
  next: ProgramWeek | undefined,
  week: ProgramWeek,
  patterns: Patterns,
): GivenBout[] {
  if (next === undefined || next.phase !== week.phase) return [];
  const pattern = patterns.get(turn(next));
  if (pattern === undefined) return [];
  if (wanderers(next, pattern.wishes).size > 0) return [];
  const placement = onlyFor(next.problem, pattern.placement);
  if (verifyPlacement(next.problem, placement).length > 0) return [];
  return boutsSeenFrom(next.problem.exercises, placement, -1);
}

function isTwin(a: ProgramWeek | undefined, b: ProgramWeek): boolean {
  return (
    a !== undefined &&
    a.phase === b.phase &&
    wanderers(a, wishesOf(b)).size === 0 &&
    frequencies(a) === frequencies(b) &&
    circumstances(a) === circumstances(b)
  );
}
