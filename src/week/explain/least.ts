/** The least changes that let a program be laid out, over single changes and pairs together. */

import { asksForTime, STEP_MINUTES } from "./costs.ts";
import type { Change } from "./explain-types.ts";
import type { Lever, Priced } from "./levers.ts";
import { Reach } from "./reach.ts";
import type { Trial } from "./trial.ts";

/** Changes made together, and their cost. */
export interface Found {
  readonly changes: readonly Change[];
  readonly cost: number;
}

export interface LeastFound {
  /** All of one cost, the least; at most so many as are named. */
  readonly least: readonly Found[];
  /** The least that asks only for time, or takes only from doses, where the least are all of the other kind. */
  readonly other: readonly Found[];
  /** Whether everything up to that cost was tried. */
  readonly complete: boolean;
}

/** Most remedies of the least cost to name. */
const MOST_NAMED = 4;

/** One or two steps of different levers. */
interface Candidate {
  readonly steps: readonly Priced[];
  /** Numbers of their levers. */
  readonly levers: readonly number[];
  readonly cost: number;
  readonly minutes: number;
}

/**
 * Goes through singles and pairs by cost and asks of each whether it helps. One that only adds to
 * a remedy already found is left out.
 */
export function leastRemedies(trial: Trial, levers: readonly Lever[]): LeastFound {
  const candidates = allCandidates(levers);
  const reach = new Reach(trial, levers);
  const found: (Found & { readonly levers: readonly number[] })[] = [];
  const named = () => found.filter(({ cost }) => cost === found[0]?.cost).length;
  for (const candidate of candidates) {
    const { cost, steps, levers: pulled } = candidate;
    const dearer = found[0] !== undefined && cost > found[0].cost;
    if (dearer && !isOfMissingKind(steps, found)) continue;
    if (!dearer && named() >= MOST_NAMED) continue;
    if (found.some((known) => known.levers.every((lever) => pulled.includes(lever)))) continue;
    if (trial.isSpent) return { ...bySize(found), complete: false };
    if (!reach.isEnough(pulled)) continue;
    const changes = steps.map(({ change }) => change);
    if (!trial.canHelp(changes)) continue;
    const helping = trial.helps(changes);
    if (helping === undefined) continue;
    found.push({ changes: shortOpenings(trial, helping), cost, levers: pulled });
  }
  return { ...bySize(found), complete: !trial.isSpent };
}

function bySize(found: readonly Found[]): Pick<LeastFound, "least" | "other"> {
  const cost = found[0]?.cost;
  const plain = found.map(({ changes, cost }) => ({ changes, cost }));
  return {
    least: plain.filter((one) => one.cost === cost),
    other: plain.filter((one) => one.cost !== cost),
  };
}

/** Whether all steps are of one kind, time or doses, of which nothing was found yet. */
function isOfMissingKind(steps: readonly Priced[], found: readonly Found[]): boolean {
  return [true, false].some(
    (kind) =>
      steps.every(({ change }) => asksForTime(change) === kind) &&
      !found.some(({ changes }) => changes.every((change) => asksForTime(change) === kind)),
  );
}

/** By cost, then the fewest changes, the fewest minutes, and the order of the levers. */
function allCandidates(levers: readonly Lever[]): Candidate[] {
  const singles = levers.flatMap((lever, at) => lever.map((step) => candidate([[step, at]])));
  const pairs = levers.flatMap((first, a) =>
    levers.slice(a + 1).flatMap((second, i) =>
      first.flatMap((one) =>
        second.map((other) =>
          candidate([
            [one, a],
            [other, a + 1 + i],
          ]),
        ),
      ),
    ),
  );
  return [...singles, ...pairs].sort(
    (a, b) => a.cost - b.cost || a.steps.length - b.steps.length || a.minutes - b.minutes,
  );
}

function candidate(parts: readonly (readonly [Priced, number])[]): Candidate {
  const steps = parts.map(([step]) => step);
  return {
    steps,
    levers: parts.map(([, lever]) => lever),
    cost: steps.reduce((sum, { cost }) => sum + cost, 0),
    minutes: steps.reduce((sum, { change }) => sum + ("minutes" in change ? change.minutes : 0), 0),
  };
}

/** Each slot that is opened, opened for no more minutes than help. */
export function shortOpenings(trial: Trial, changes: readonly Change[]): readonly Change[] {
  let shortest = changes;
  changes.forEach((change, index) => {
    if (change.kind !== "open-slot") return;
    for (let minutes = STEP_MINUTES; minutes < change.minutes; minutes += STEP_MINUTES) {
      const shorter = shortest.map((one, i) => (i === index ? { ...change, minutes } : one));
      if (!trial.canHelp(shorter)) continue;
      if (!trial.fits(shorter)) continue;
      shortest = shorter;
      break;
    }
  });
  return shortest;
}
