/** Lays out one week exactly: few sessions, then even spacing, even days and preferred slots. */
import { problemMistakes } from "./check-problem.ts";
import { isSpent, type Tally } from "./counter.ts";
import { bitsOf } from "./day-sets.ts";
import { searchDays } from "./days-search.ts";
import { buildModel } from "./model.ts";
import type { FoundWeek, WeekAnswer, WeekProblem } from "./problem.ts";
import { readScore } from "./score.ts";

/** Nodes of one week's search unless the caller sets another number. */
export const NODE_LIMIT = 600_000;

export interface SolveOptions {
  readonly nodeLimit?: number;
  /** Any placement that keeps to the rules will do, not only the best. */
  readonly any?: boolean;
  /** Its nodes are added here. */
  readonly tally?: Tally;
}

/**
 * The best placement of a week's bouts, proven best; or that there is none, proven too; or
 * `unknown` where the node limit was reached first. The same problem gives the same answer on
 * every machine and in whatever order its exercises are written.
 */
export function solveWeek(problem: WeekProblem, options: SolveOptions = {}): WeekAnswer {
  const mistakes = problemMistakes(problem);
  if (mistakes.length > 0) return { status: "malformed", mistakes, nodes: 0 };
  const counter = { nodes: 0, limit: options.nodeLimit ?? NODE_LIMIT };
  const model = buildModel(problem);
  const best = searchDays(model, counter, options.any ?? false);
  const spent = isSpent(counter);
  if (options.tally !== undefined) options.tally.nodes += counter.nodes;
  if (best === undefined) {
    return spent
      ? { status: "unknown", nodes: counter.limit }
      : { status: "impossible", nodes: counter.nodes };
  }
  const found: FoundWeek = {
    placement: new Map(
      model.exercises.map((one, e) => [one.id, bitsOf(best.slots[e] ?? 0)] as const),
    ),
    objective: {
      ...readScore(best.score),
      evenness: best.evenness,
      fullestDay: best.fullest / 10,
    },
  };
  if (spent && options.any !== true) return { status: "unknown", nodes: counter.limit, found };
  return { status: "solved", nodes: counter.nodes, ...found };
}
