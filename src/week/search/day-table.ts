/** The least score of one day for each set of exercises done on it, worked out when asked for. */
import type { Counter } from "./counter.ts";
import type { Model } from "./model.ts";
import type { PartsSearch } from "./parts-search.ts";
import { DAYS } from "./problem.ts";
import { IMPOSSIBLE } from "./score.ts";

/**
 * A table to look the score up in: day, bit mask of exercises, and a score that it is known not to
 * fall below. IMPOSSIBLE where they do not fit on that day, whatever the other days hold.
 */
export function dayTable(
  model: Model,
  findParts: PartsSearch,
  counter: Counter,
): (day: number, set: number, known: number) => number {
  const known = knownScores(model.exercises.length);
  const days = new Int32Array(model.exercises.length);
  const floor = new Float64Array(DAYS);
  return (day, set, atLeast) => {
    const key = set * DAYS + day;
    const found = known.get(key);
    if (found >= 0) return found;
    for (let e = 0; e < days.length; e++) days[e] = ((set >> e) & 1) << day;
    floor.fill(0);
    floor[day] = atLeast;
    const answer = findParts({ days, floor, below: IMPOSSIBLE, any: false, counter });
    const score = answer?.score ?? IMPOSSIBLE;
    known.set(key, score);
    return score;
  };
}

/** Scores by key, −1 where not known yet; a plain array unless that would be large. */
function knownScores(exercises: number) {
  if (exercises > 13) {
    const scores = new Map<number, number>();
    return {
      get: (key: number): number => scores.get(key) ?? -1,
      set: (key: number, score: number) => {
        scores.set(key, score);
      },
    };
  }
  const scores = new Float64Array(DAYS << exercises).fill(-1);
  return {
    get: (key: number): number => scores[key] ?? -1,
    set: (key: number, score: number) => {
      scores[key] = score;
    },
  };
}
