/** Why a program has no place in the client's weeks: the wishes that collide, and what would help. */

import type { LayoutFailure, ProgramWeeks } from "../program/program-types.ts";
import type { WeekProblem } from "../search/problem.ts";
import { changesSentence } from "./change-words.ts";
import { smallestCollision } from "./collision.ts";
import { asksForTime } from "./costs.ts";
import type { Explanation, Remedy, Requirement } from "./explain-types.ts";
import { largerRemedy, longerEverywhere } from "./larger.ts";
import { type Found, leastRemedies } from "./least.ts";
import { type Lever, leversOf } from "./levers.ts";
import { Trial } from "./trial.ts";

/** Nodes for each question asked of the search for a collision. */
const COLLISION_LIMIT = 30_000;

/**
 * For a program that could not be laid out. The collision is a set of requirements that cannot
 * hold together while, as far as the search could prove, any one fewer could. Every remedy was
 * checked by laying the whole program out with it.
 */
export function explainProgram(program: ProgramWeeks, failure: LayoutFailure): Explanation {
  const trial = new Trial(program, failure);
  const levers = leversOf(program);
  const { least, other, complete } = leastRemedies(trial, levers);
  const more = moreThanTwo(trial, levers, [...least, ...other]);
  const inWords = ({ changes, cost }: Found): Remedy => ({
    changes,
    cost,
    sentence: changesSentence(changes, program),
  });
  return {
    collision: collisionOf(failure),
    least: least.map(inWords),
    larger: [...other, ...(more === undefined ? [] : [more])].map(inWords),
    complete,
  };
}

/** More changes together, where one or two do not help, or help only by taking from the doses. */
function moreThanTwo(
  trial: Trial,
  levers: readonly Lever[],
  found: readonly Found[],
): Found | undefined {
  if (found.length === 0) return largerRemedy(trial, levers);
  const asks = found.some(({ changes }) => changes.some(asksForTime));
  return asks ? undefined : longerEverywhere(trial);
}

function collisionOf(failure: LayoutFailure): Requirement[] {
  // Where the search came to its limit it is not known that anything collides.
  if (failure.status === "unknown" && failure.because === "node-limit") return [];
  const { problem } = failure;
  return smallestCollision(problem, COLLISION_LIMIT).sort(byExercise(problem));
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
