/** Why a week cannot be laid out: the wishes that collide, and the least changes that would help. */

import type { WeekProblem } from "../search/problem.ts";
import { smallestCollision } from "./collision.ts";
import type { Remedy, Requirement } from "./explain-types.ts";
import { findRemedies } from "./remedies.ts";

/** Nodes for each question asked of the search. */
const EXPLAIN_LIMIT = 30_000;

/**
 * For a week known to be impossible. The collision is a set of requirements that cannot hold
 * together while, as far as the search could prove, any one fewer could. Recovery hours and hours
 * kept clear are never among the changes offered.
 */
export function explainWeek(problem: WeekProblem): {
  collision: Requirement[];
  remedies: Remedy[];
} {
  return {
    collision: smallestCollision(problem, EXPLAIN_LIMIT).sort(byExercise(problem)),
    remedies: findRemedies(problem, EXPLAIN_LIMIT),
  };
}

/** Exercises first, each with its own requirements together, then the rules of the week. */
function byExercise(problem: WeekProblem) {
  const rank = (one: Requirement) => {
    const index = problem.exercises.findIndex((each) => each.id === one.exercise);
    return index < 0 ? problem.exercises.length : index;
  };
  const last = (one: Requirement) => (one.kind === "times" ? 0 : one.kind === "open-slots" ? 2 : 1);
  return (a: Requirement, b: Requirement) => rank(a) - rank(b) || last(a) - last(b);
}
