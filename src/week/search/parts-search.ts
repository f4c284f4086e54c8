/** The lower level of the search: days are chosen; find the parts of the day. */
import { type Counter, spend } from "./counter.ts";
import { countBits } from "./day-sets.ts";
import type { Model } from "./model.ts";
import { DAYS, SLOTS } from "./problem.ts";
import { IMPOSSIBLE, MOVED, SESSION } from "./score.ts";

export interface PartsAnswer {
  readonly score: number;
  /** 21-bit mask of slots, by exercise. */
  readonly slots: Int32Array;
}

/** Sets of parts of one day, by how many parts. */
const PART_SETS: readonly (readonly number[])[] = [[], [1, 2, 4], [3, 5, 6], [7]];

/** A search that can be run again and again on one model. */
export type PartsSearch = (asked: {
  /** 7-bit mask of days by exercise; 0 leaves the exercise out. */
  readonly days: Int32Array;
  /** A score that each day's sessions are known not to fall below. */
  readonly floor: Float64Array;
  /** Only better scores are of interest. */
  readonly below: number;
  /** Any answer will do, not only the best. */
  readonly any: boolean;
  readonly counter: Counter;
}) => PartsAnswer | undefined;

/**
 * Prepares the search. The answer is undefined where there is none below the score asked for, or
 * where the counter ran out, which the caller must look at.
 *
 * Its state is the week half placed. What holds whenever `place` is entered, k bouts being placed:
 * - the first `left` entries of `pendingE` and `pendingDay` are an exercise and its day still to place;
 *   those placed stand behind them, each swapped back when it is taken away;
 * - `placed[e]` holds the slots of an exercise so far, `room[t]` the tenths of a minute left in a slot,
 *   `used[t]` the bouts in it;
 * - row k of `allowed` holds the slots that those placed leave to each exercise, row k of `required`
 *   the slots that an exercise has to take, since one that shares its sessions lies there;
 * - `dayScore[d]` is what the bouts placed on a day cost, and `sum` the sum over days of that or of
 *   `floor[d]`, whichever is more: no completion costs less;
 * - `best`, where there is one, costs `bound`; otherwise `bound` is the score asked for.
 * Nothing is kept from one run to the next: every run begins by setting all of it.
 */
export function partsSearch(model: Model): PartsSearch {
  const count = model.exercises.length;
  const { forbid, length, sameAs } = model;
  const riders = model.exercises.map((_, e) => [...sameAs.keys()].filter((f) => sameAs[f] === e));
  const partSets = model.exercises.map((_, e) => possiblePartSets(model, e));
  const depths = count * DAYS + 1;
  const allowed = new Int32Array(depths * count);
  const required = new Int32Array(depths * count);
  const placed = new Int32Array(count);
  const room = new Int32Array(SLOTS);
  const dayScore = new Float64Array(DAYS);
  const used = new Int32Array(SLOTS);
  const pendingE: number[] = [];
  const pendingDay: number[] = [];

  return ({ days, floor, below, any, counter }) => {
    pendingE.length = 0;
    pendingDay.length = 0;
    for (let e = 0; e < count; e++) {
      for (let day = 0; day < DAYS; day++) {
        if ((((days[e] ?? 0) >> day) & 1) === 0) continue;
        pendingE.push(e);
        pendingDay.push(day);
      }
    }
    allowed.set(model.domain, 0);
    required.fill(0, 0, count);
    placed.fill(0);
    room.set(model.room);
    dayScore.fill(0);
    used.fill(0);
    let total = 0;
    for (let day = 0; day < DAYS; day++) total += floor[day] ?? 0;
    const least = total;
    let best: PartsAnswer | undefined;
    let bound = below;
    let stop = false;

    /** Places the bouts still pending, `left` of them, at the front of the lists. */
    function place(depth: number, left: number, sum: number): void {
      if (left === 0) {
        best = { score: sum, slots: placed.slice() };
        bound = sum;
        stop = any || sum <= least;
        return;
      }
      if (!spend(counter)) {
        stop = true;
        return;
      }
      const chosen = tightest(depth, left);
      if (chosen < 0) return;
      const e = pendingE[chosen] ?? 0;
      const day = pendingDay[chosen] ?? 0;
      swap(chosen, left - 1);
      const base = depth * count;
      const now = dayScore[day] ?? 0;
      const low = floor[day] ?? 0;
      const without = sum - Math.max(now, low);
      for (const { set, score } of optionsOf(base, e, day, now)) {
        const next = without + Math.max(score, low);
        if (next >= bound) continue;
        dayScore[day] = score;
        put(base, e, day, set);
        place(depth + 1, left - 1, next);
        take(e, day, set);
        dayScore[day] = now;
        if (stop) break;
      }
      swap(chosen, left - 1);
    }

    /** The pending bout with the fewest possibilities; −1 where one has none. */
    function tightest(depth: number, left: number): number {
      const base = depth * count;
      let chosen = -1;
      let fewest = 99;
      for (let i = 0; i < left; i++) {
        const e = pendingE[i] ?? 0;
        const day = pendingDay[i] ?? 0;
        const free = freeParts(base, e, day);
        const must = ((required[base + e] ?? 0) >> (3 * day)) & 7;
        let possible = 0;
        for (const set of partSets[e] ?? []) {
          if ((set & ~free) === 0 && (must & ~set) === 0) possible += 1;
        }
        if (possible === 0) return -1;
        if (possible < fewest) {
          fewest = possible;
          chosen = i;
        }
      }
      return chosen;
    }

    function freeParts(base: number, e: number, day: number): number {
      let free = ((allowed[base + e] ?? 0) >> (3 * day)) & 7;
      const minutes = length[e] ?? 0;
      for (let part = 0; part < 3; part++) {
        if ((room[3 * day + part] ?? 0) < minutes) free &= ~(1 << part);
      }
      return free;
    }

    /** Possibilities of one bout, cheapest first, with the day's score that each leads to. */
    function optionsOf(base: number, e: number, day: number, now: number) {
      const free = freeParts(base, e, day);
      const must = ((required[base + e] ?? 0) >> (3 * day)) & 7;
      const options: { set: number; score: number; roomy: number }[] = [];
      for (const set of partSets[e] ?? []) {
        if ((set & ~free) !== 0 || (must & ~set) !== 0) continue;
        let score = now;
        let roomy = 0;
        for (let part = 0; part < 3; part++) {
          if (((set >> part) & 1) === 0) continue;
          const t = 3 * day + part;
          score += (model.shift[e * SLOTS + t] ?? 0) * MOVED + (model.dislike[e * SLOTS + t] ?? 0);
          if ((used[t] ?? 0) === 0) score += SESSION;
          roomy += room[t] ?? 0;
        }
        options.push({ set, score, roomy });
      }
      return options.sort((a, b) => a.score - b.score || b.roomy - a.roomy || a.set - b.set);
    }

    function put(base: number, e: number, day: number, set: number): void {
      const next = base + count;
      allowed.copyWithin(next, base, next);
      required.copyWithin(next, base, next);
      const dayMask = 7 << (3 * day);
      const slots = set << (3 * day);
      for (let part = 0; part < 3; part++) {
        if (((set >> part) & 1) === 0) continue;
        const t = 3 * day + part;
        room[t] = (room[t] ?? 0) - (length[e] ?? 0);
        used[t] = (used[t] ?? 0) + 1;
        const row = (e * SLOTS + t) * count;
        for (let f = 0; f < count; f++) {
          allowed[next + f] = (allowed[next + f] ?? 0) & ~(forbid[row + f] ?? 0);
        }
      }
      placed[e] = (placed[e] ?? 0) | slots;
      for (const rider of riders[e] ?? []) {
        allowed[next + rider] = (allowed[next + rider] ?? 0) & (~dayMask | slots);
      }
      const host = sameAs[e] ?? -1;
      if (host >= 0) required[next + host] = (required[next + host] ?? 0) | slots;
    }

    function take(e: number, day: number, set: number): void {
      for (let part = 0; part < 3; part++) {
        if (((set >> part) & 1) === 0) continue;
        const t = 3 * day + part;
        room[t] = (room[t] ?? 0) + (length[e] ?? 0);
        used[t] = (used[t] ?? 0) - 1;
      }
      placed[e] = (placed[e] ?? 0) & ~(set << (3 * day));
    }

    if (total < Math.min(bound, IMPOSSIBLE)) place(0, pendingE.length, total);
    return best;
  };

  function swap(i: number, j: number): void {
    const e = pendingE[i] ?? 0;
    const day = pendingDay[i] ?? 0;
    pendingE[i] = pendingE[j] ?? 0;
    pendingDay[i] = pendingDay[j] ?? 0;
    pendingE[j] = e;
    pendingDay[j] = day;
  }
}

/** Sets of parts of one day that an exercise's own recovery allows. */
function possiblePartSets(model: Model, e: number): number[] {
  const count = model.exercises.length;
  return (PART_SETS[model.boutsADay[e] ?? 1] ?? []).filter((set) => {
    if (countBits(set) === 1) return true;
    for (let part = 0; part < 3; part++) {
      if (((set >> part) & 1) === 1) {
        const closed = model.forbid[(e * SLOTS + part) * count + e] ?? 0;
        if ((closed & set) !== 0) return false;
      }
    }
    return true;
  });
}
