/** The upper level of the search: a set of days for each exercise, the best first. */
import { type Counter, isSpent, spend } from "./counter.ts";
import { blockedDays, tangledExercises } from "./day-conflicts.ts";
import { countBits } from "./day-sets.ts";
import { dayTable } from "./day-table.ts";
import { dayFrames, sessionsForMinutes, weekMinutes } from "./frames.ts";
import { type Bound, boundOf, type Choice, type ChoiceBound, cheaper } from "./lower-bound.ts";
import type { DayOption, Model } from "./model.ts";
import { partsSearch } from "./parts-search.ts";
import { DAYS, SLOTS } from "./problem.ts";
import { IMPOSSIBLE, SESSION, scoreToBeat, type WeekScore, withoutPreference } from "./score.ts";

/** Nodes spent at most on the question whether half-chosen days can be completed. */
const GLANCE = 60;

export interface Best extends WeekScore {
  /** 21-bit mask of slots, by exercise. */
  readonly slots: Int32Array;
}

/**
 * The best week, or undefined where there is none; nothing is proven where the counter is spent.
 *
 * One state is changed in place, by `take` and back by `give`, since copies of it made the search
 * slower. What holds of it between the two, `chosen` being the exercises whose days are chosen:
 * - `days[e]` are the days of a chosen exercise, 0 of another;
 * - `inDay[d]` are the chosen exercises of a day, `load[d]` their tenths of a minute;
 * - `floor[d]` is what the sessions of a day cost at least with them, from `table`;
 * - `disliked` is the sum over the chosen of what their days count against preference at least;
 * - row k of `closedTo`, k exercises being chosen, holds for each exercise the days those close to it.
 * Set for a whole search: `within` the day sets allowed, `mustUse` the days that need a session,
 * `averageDay` what the fullest day comes to at least, `anyWeek` whether the first week found ends it.
 *
 * @param any stop at the first week found, whether or not it is the best
 */
export function searchDays(model: Model, counter: Counter, any: boolean): Best | undefined {
  const count = model.exercises.length;
  const findParts = partsSearch(model);
  const table = dayTable(model, findParts, counter);
  const days = new Int32Array(count);
  const inDay = new Int32Array(DAYS);
  const load = new Int32Array(DAYS);
  const floor = new Float64Array(DAYS);
  const blocked = blockedDays(model);
  const tangled = tangledExercises(model);
  const closedTo = new Int32Array((count + 1) * count);
  const keepsApart = model.exercises.map((_, e) => closesToItself(model, e));
  const options = model.options.map((list, e) => list.filter((option) => fitsAlone(e, option)));
  const minutesOfWeek = weekMinutes(model, options);
  let chosen = 0;
  let best: Best | undefined;
  let disliked = 0;
  let within = options;
  let mustUse = 0;
  let averageDay = 0;
  let anyWeek = false;
  let glances = 0;
  let cuts = 0;

  /** Whether the bouts of one exercise keep apart from each other on these days. */
  function fitsAlone(e: number, option: DayOption): boolean {
    if (!keepsApart[e]) return true;
    days.fill(0);
    days[e] = option.days;
    const answer = findParts({ days, floor, below: IMPOSSIBLE, any: true, counter });
    days.fill(0);
    return answer !== undefined || isSpent(counter);
  }

  function choose(depth: number, even: number, hardDays: number, tangle = false): void {
    if (depth === count) {
      finish(even);
      return;
    }
    // Choosing days costs about as much as placing a bout of each exercise.
    counter.nodes += count - 1;
    if (!spend(counter)) return;
    const base = depth * count;
    let sum = 0;
    let heaviest = averageDay;
    for (let day = 0; day < DAYS; day++) {
      sum += floor[day] ?? 0;
      heaviest = Math.max(heaviest, load[day] ?? 0);
    }
    const bounds: ChoiceBound[] = [];
    for (let e = 0; e < count; e++) {
      if (isChosen(e)) continue;
      const ways = waysOf(base, e, hardDays, sum, heaviest);
      if (ways.length === 0) return;
      bounds.push(boundOf(e, ways));
    }
    let next: ChoiceBound | undefined;
    if (best === undefined) {
      // Nothing to beat yet: any week will do, and no bound can tell of more.
      next = withFewestWays(bounds);
      if (tangle && !canBeCompleted(0, 0)) return;
    } else {
      const bound = lowerBound(bounds, even, sum, heaviest);
      if (bound.score >= scoreToBeat(best, bound.evenness, bound.fullest)) return;
      next = fewest(bounds, bound);
      if (next !== undefined && tangle && !canBeCompleted(bound.evenness, bound.fullest)) return;
    }
    if (next === undefined) return;
    const isHard = model.exercises[next.e]?.hard === true;
    for (const { option } of next.ways.sort(cheaper)) {
      const before = floor.slice();
      take(base, next.e, option);
      const hard = isHard ? hardDays | option.days : hardDays;
      choose(depth + 1, even + option.evenness, hard, tangled[next.e]);
      give(next.e, option, before);
      if (isSpent(counter) || ((any || anyWeek) && best !== undefined)) return;
    }
  }

  /** What every completion of the days chosen so far comes to at least. */
  function lowerBound(
    bounds: readonly ChoiceBound[],
    even: number,
    now: number,
    heaviest: number,
  ): Bound {
    let sum = now;
    let shift = 0;
    let dislike = 0;
    let evenness = even;
    let fullest = heaviest;
    for (const one of bounds) {
      shift += one.shift;
      dislike += one.dislike;
      evenness += one.evenness;
      fullest = Math.max(fullest, one.fullest);
    }
    sum = Math.max(sum, sessionsForMinutes(floor, model, minutesOfWeek)) + shift;
    for (const one of bounds) sum = Math.max(sum, one.score + shift - one.shift);
    const tens = withoutPreference(sum);
    const exact = tens === withoutPreference(now);
    const score = tens * SESSION + dislike + (exact ? Math.max(disliked, now % SESSION) : disliked);
    return { score, evenness, fullest, heaviest, shift, dislike, now };
  }

  /** Drops the ways that cannot beat the best week known; the exercise with the fewest left. */
  function fewest(bounds: readonly ChoiceBound[], bound: Bound): ChoiceBound | undefined {
    for (const one of bounds) {
      one.ways = one.ways.filter((way) => canBeat(way, one, bound));
      if (one.ways.length === 0) return undefined;
    }
    return withFewestWays(bounds);
  }

  function canBeat(way: Choice, one: ChoiceBound, bound: Bound): boolean {
    const { option } = way;
    const even = bound.evenness - one.evenness + option.evenness;
    const fullest =
      option.evenness === one.evenness
        ? Math.max(bound.fullest, way.fullest)
        : Math.max(bound.heaviest, way.fullest);
    const sum = way.score + bound.shift - one.shift;
    const tens = Math.max(withoutPreference(bound.score), withoutPreference(sum));
    const others = bound.dislike - one.dislike;
    const exact = tens === withoutPreference(way.score);
    const own = disliked + option.dislike;
    const score = tens * SESSION + others + (exact ? Math.max(own, way.score % SESSION) : own);
    return score < scoreToBeat(best, even, fullest);
  }

  /** The day sets still open to an exercise. */
  function waysOf(base: number, e: number, hard: number, sum: number, heaviest: number): Choice[] {
    const ways: Choice[] = [];
    const closed = closedTo[base + e] ?? 0;
    const isHard = model.exercises[e]?.hard === true;
    for (const option of within[e] ?? []) {
      if ((option.days & closed) !== 0) continue;
      if (isHard && model.hardAllowed[hard | option.days] === 0) continue;
      if (!sharesSessions(e, option.days)) continue;
      let score = sum;
      let fullest = heaviest;
      for (let day = 0; day < DAYS; day++) {
        if (((option.days >> day) & 1) === 0) continue;
        const known = floor[day] ?? 0;
        score += table(day, (inDay[day] ?? 0) | (1 << e), known) - known;
        if (score >= IMPOSSIBLE) break;
        fullest = Math.max(fullest, (load[day] ?? 0) + minutesADay(model, e));
      }
      if (score < IMPOSSIBLE) ways.push({ option, score, fullest });
    }
    return ways;
  }

  /** Whether these days go with those of the exercises whose sessions are shared. */
  function sharesSessions(e: number, mine: number): boolean {
    const host = model.sameAs[e] ?? -1;
    if (host >= 0 && isChosen(host) && (mine & ~(days[host] ?? 0)) !== 0) return false;
    for (let f = 0; f < count; f++) {
      if (model.sameAs[f] === e && ((days[f] ?? 0) & ~mine) !== 0) return false;
    }
    return true;
  }

  function isChosen(e: number): boolean {
    return ((chosen >> e) & 1) === 1;
  }

  function canBeCompleted(even: number, fullest: number): boolean {
    glances += 1;
    // Where glances hardly ever cut anything off, most of them are saved.
    if (glances > 100 && cuts * 30 < glances && glances % 16 !== 0) return true;
    const below = scoreToBeat(best, even, fullest);
    const glance = { nodes: 0, limit: GLANCE };
    const answer = findParts({ days, floor, below, any: true, counter: glance });
    counter.nodes += glance.nodes;
    if (answer !== undefined || isSpent(glance)) return true;
    cuts += 1;
    return false;
  }

  function finish(even: number): void {
    let used = 0;
    for (let day = 0; day < DAYS; day++) if (inDay[day] !== 0) used |= 1 << day;
    if ((mustUse & ~used) !== 0) return;
    const fullest = Math.max(0, ...load);
    const below = scoreToBeat(best, even, fullest);
    const answer = findParts({ days, floor, below, any: any || anyWeek, counter });
    if (answer !== undefined) best = { ...answer, evenness: even, fullest };
  }

  function take(base: number, e: number, option: DayOption): void {
    days[e] = option.days;
    chosen |= 1 << e;
    disliked += option.dislike;
    closedTo.copyWithin(base + count, base, base + count);
    for (let day = 0; day < DAYS; day++) {
      if (((option.days >> day) & 1) === 0) continue;
      inDay[day] = (inDay[day] ?? 0) | (1 << e);
      load[day] = (load[day] ?? 0) + minutesADay(model, e);
      floor[day] = table(day, inDay[day] ?? 0, floor[day] ?? 0);
      for (let f = 0; f < count; f++) {
        const i = base + count + f;
        closedTo[i] = (closedTo[i] ?? 0) | (blocked[(e * DAYS + day) * count + f] ?? 0);
      }
    }
  }

  function give(e: number, option: DayOption, before: Float64Array): void {
    days[e] = 0;
    chosen &= ~(1 << e);
    disliked -= option.dislike;
    floor.set(before);
    for (let day = 0; day < DAYS; day++) {
      if (((option.days >> day) & 1) === 0) continue;
      inDay[day] = (inDay[day] ?? 0) & ~(1 << e);
      load[day] = (load[day] ?? 0) - minutesADay(model, e);
    }
  }

  /** Searches among the weeks whose sessions fall on just these days. */
  function searchWithin(days: number): void {
    within = options.map((list) => list.filter((option) => (option.days & ~days) === 0));
    mustUse = days;
    averageDay = Math.ceil(minutesOfWeek / Math.max(1, countBits(days)));
    for (let day = 0; day < DAYS; day++) floor[day] = ((days >> day) & 1) * SESSION;
    choose(0, 0, 0);
  }

  if (options.some((list) => list.length === 0)) return undefined;
  if (model.hardAllowed[0] === 0) return undefined;
  // Any week at all, so that an impossible one is known for it before weeks are compared.
  anyWeek = true;
  choose(0, 0, 0);
  anyWeek = false;
  if (best === undefined || any || isSpent(counter)) return best;
  for (const { days, bound } of dayFrames(model, options)) {
    if (bound.score < scoreToBeat(best, bound.evenness, bound.fullest)) searchWithin(days);
    if (isSpent(counter)) break;
  }
  return best;
}

/** Whether a bout closes any slot to another bout of the same exercise. */
function closesToItself(model: Model, e: number): boolean {
  const count = model.exercises.length;
  for (let t = 0; t < SLOTS; t++) {
    if ((model.forbid[(e * SLOTS + t) * count + e] ?? 0) !== 0) return true;
  }
  return false;
}

function withFewestWays(bounds: readonly ChoiceBound[]): ChoiceBound | undefined {
  let next: ChoiceBound | undefined;
  for (const one of bounds) {
    if (next === undefined || one.ways.length < next.ways.length) next = one;
  }
  return next;
}

function minutesADay(model: Model, e: number): number {
  return (model.length[e] ?? 0) * (model.boutsADay[e] ?? 1);
}
