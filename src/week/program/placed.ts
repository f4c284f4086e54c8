/** A week with its placement, and what every way to place a week is made of. */
import {
  dayOf,
  type FoundWeek,
  type GivenBout,
  type Placement,
  SLOTS,
  type WeekProblem,
} from "../search/problem.ts";
import { type SolveOptions, solveWeek } from "../search/solve.ts";
import { verifyPlacement } from "../search/verify.ts";
import type { LostBouts } from "./program-types.ts";
import { boutsSeenFrom, type ProgramWeek } from "./program-weeks.ts";

/** A week that has its placement. */
export interface Placed {
  readonly placement: Placement;
  readonly proven: boolean;
  /** Where the phase's pattern has the bouts, or where they were issued. */
  readonly expected: Placement | undefined;
  /** Bouts that what is left of a week begun has no room for. */
  readonly lost?: readonly LostBouts[];
}

/** The best placement known, checked once more against the problem. */
export function place(
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

/** The bouts of the week before, as that week was placed; those of days gone as they were issued. */
export function boutsBefore(
  weeks: readonly ProgramWeek[],
  placed: readonly Placed[],
  index: number,
): GivenBout[] {
  const earlier = weeks[index - 1];
  const last = placed[index - 1];
  if (earlier === undefined || last === undefined) return [];
  return boutsOf(earlier, last.placement).map((bout) => ({ ...bout, slot: bout.slot - SLOTS }));
}

/** All bouts of a placed week, by its own slots. */
function boutsOf({ problem, issued }: ProgramWeek, placement: Placement): GivenBout[] {
  const gone = issued?.gone ?? 0;
  const isPast = ({ slot }: GivenBout) => dayOf(slot) < gone;
  const now = boutsSeenFrom(problem.exercises, placement, 0);
  return [...(issued?.bouts ?? []).filter(isPast), ...now.filter((bout) => !isPast(bout))];
}

/**
 * The problem with the fewest moved bouts as its first aim. `wandering`: exercises that like other slots
 * than the pattern's; they have no place to stay near.
 */
export function nearTo(
  problem: WeekProblem,
  pattern: Placement | undefined,
  wandering: ReadonlySet<string> = new Set(),
): WeekProblem {
  if (pattern === undefined) return problem;
  const previous = new Map([...pattern].filter(([id]) => !wandering.has(id)));
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

export function onlyFor(problem: WeekProblem, placement: Placement): Placement {
  return new Map(problem.exercises.map((one) => [one.id, placement.get(one.id) ?? []]));
}
