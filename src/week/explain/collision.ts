/** The smallest set of requirements of an impossible week that cannot hold together. */

import type { WeekProblem } from "../search/problem.ts";
import { solveWeek } from "../search/solve.ts";
import type { Requirement } from "./explain-types.ts";
import { requirementsOf, weekWithOnly } from "./requirements.ts";

/**
 * A set of requirements that collide while, as far as the search could prove within so many nodes,
 * any one fewer would not. Two orders of dropping them are tried and the smaller set is taken.
 */
export function smallestCollision(problem: WeekProblem, nodeLimit: number): Requirement[] {
  const all = requirementsOf(problem);
  const forwards = filter(problem, all, nodeLimit);
  const backwards = filter(problem, [...all].reverse(), nodeLimit);
  const smallest = backwards.length < forwards.length ? backwards : forwards;
  return all.filter((one) => smallest.includes(one)).reverse();
}

/** Deletion filter: drops each requirement in turn, for good where the rest still collide. */
function filter(
  problem: WeekProblem,
  requirements: readonly Requirement[],
  nodeLimit: number,
): readonly Requirement[] {
  let kept = requirements;
  // First the open slots as one requirement, with their minutes.
  const slots = (one: Requirement) => one.kind === "open-slots" || one.kind === "session-minutes";
  const without = kept.filter((one) => !slots(one));
  if (collides(problem, without, nodeLimit)) kept = without;
  for (const one of requirements) {
    if (!kept.includes(one)) continue;
    const fewer = kept.filter((other) => other !== one && !belongsTo(other, one));
    if (collides(problem, fewer, nodeLimit)) kept = fewer;
  }
  return kept;
}

/** What says nothing once an exercise is left out. */
function belongsTo(other: Requirement, one: Requirement): boolean {
  return one.kind === "times" && other.exercise === one.exercise;
}

function collides(problem: WeekProblem, kept: readonly Requirement[], nodeLimit: number): boolean {
  const answer = solveWeek(weekWithOnly(problem, kept), { nodeLimit, any: true });
  return answer.status === "impossible";
}
