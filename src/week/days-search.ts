/** The upper level of the search: a set of days for each exercise, the best first. */
import { type Counter, isSpent, spend } from "./counter.ts";
import { dayTable } from "./day-table.ts";
import type { DayOption, Model } from "./model.ts";
import { partsSearch } from "./parts-search.ts";
import { DAYS, SLOTS } from "./problem.ts";
import {
  IMPOSSIBLE,
  MOVED,
  SESSION,
  scoreToBeat,
  type WeekScore,
  withoutPreference,
} from "./score.ts";

/** Nodes spent at most on the question whether half-chosen days can be completed. */
const GLANCE = 60;

export interface Best extends WeekScore {
  /** 21-bit mask of slots, by exercise. */
  readonly slots: Int32Array;
}

/** One way to choose the days of one exercise, with what it leads to at least. */
interface Choice {
  readonly option: DayOption;
  readonly score: number;
  readonly fullest: number;
}

/**
 * The best week, or undefined where there is none; nothing is proven where the counter is spent.
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
  const closedTo = new Int32Array((count + 1) * count);
  const options = model.options.map((list, e) => list.filter((option) => fitsAlone(e, option)));
  let chosen = 0;
  const leastShift = model.exercises.map((_, e) => leastScore(model, e));
  let best: Best | undefined;
  let disliked = 0;

  /** Whether the bouts of one exercise keep apart from each other on these days. */
  function fitsAlone(e: number, option: DayOption): boolean {
    days.fill(0);
    days[e] = option.days;
    const answer = findParts({ days, floor, below: IMPOSSIBLE, any: true, counter });
    days.fill(0);
    return answer !== undefined || isSpent(counter);
  }

  function choose(depth: number, even: number, hardDays: number): void {
    if (depth === count) {
      finish(even);
      return;
    }
    if (!spend(counter)) return;
    const base = depth * count;
    let sum = 0;
    let heaviest = 0;
    for (let day = 0; day < DAYS; day++) {
      sum += floor[day] ?? 0;
      heaviest = Math.max(heaviest, load[day] ?? 0);
    }
    let restEven = 0;
    let restScore = 0;
    for (let e = 0; e < count; e++) if (!isChosen(e)) restScore += leastShift[e] ?? 0;
    let bound = sum + restScore;
    let fullest = heaviest;
    let dislike = 0;
    let next = -1;
    let choices: Choice[] = [];
    for (let e = 0; e < count; e++) {
      if (isChosen(e)) continue;
      const ways = waysOf(base, e, hardDays, sum, heaviest);
      if (ways.length === 0) return;
      let leastWay = IMPOSSIBLE;
      let leastFull = Number.POSITIVE_INFINITY;
      let leastEven = Number.POSITIVE_INFINITY;
      let leastDislike = Number.POSITIVE_INFINITY;
      for (const way of ways) {
        leastWay = Math.min(leastWay, way.score);
        leastFull = Math.min(leastFull, way.fullest);
        leastEven = Math.min(leastEven, way.option.evenness);
        leastDislike = Math.min(leastDislike, way.option.dislike);
      }
      dislike += leastDislike;
      restEven += leastEven;
      bound = Math.max(bound, leastWay + restScore - (leastShift[e] ?? 0));
      fullest = Math.max(fullest, leastFull);
      if (next < 0 || ways.length < choices.length) {
        next = e;
        choices = ways;
      }
    }
    const score = withoutPreference(bound) * SESSION + disliked + dislike;
    if (score >= scoreToBeat(best, even + restEven, fullest)) return;
    if (depth > 1 && !canBeCompleted(even + restEven, fullest)) return;
    choices.sort(
      (a, b) =>
        withoutPreference(a.score) - withoutPreference(b.score) ||
        a.option.evenness - b.option.evenness ||
        a.fullest - b.fullest ||
        a.score - b.score ||
        a.option.days - b.option.days,
    );
    for (const { option } of choices) {
      const hard = model.exercises[next]?.hard ? hardDays | option.days : hardDays;
      const before = floor.slice();
      take(base, next, option);
      choose(depth + 1, even + option.evenness, hard);
      give(next, option, before);
      if (isSpent(counter) || (any && best !== undefined)) return;
    }
  }

  /** The day sets still open to an exercise. */
  function waysOf(base: number, e: number, hard: number, sum: number, heaviest: number): Choice[] {
    const ways: Choice[] = [];
    const closed = closedTo[base + e] ?? 0;
    const isHard = model.exercises[e]?.hard === true;
    for (const option of options[e] ?? []) {
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
    const below = scoreToBeat(best, even, fullest);
    const glance = { nodes: 0, limit: GLANCE };
    const answer = findParts({ days, floor, below, any: true, counter: glance });
    counter.nodes += glance.nodes;
    return answer !== undefined || isSpent(glance);
  }

  function finish(even: number): void {
    const fullest = Math.max(...load);
    const below = scoreToBeat(best, even, fullest);
    const answer = findParts({ days, floor, below, any, counter });
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

  if (options.some((list) => list.length === 0)) return undefined;
  if (model.hardAllowed[0] === 0) return undefined;
  choose(0, 0, 0);
  return best;
}

function minutesADay(model: Model, e: number): number {
  return (model.length[e] ?? 0) * (model.boutsADay[e] ?? 1);
}

/** `[(e * 7 + day) * E + f]`: days closed to f, whatever the part, once e is done on a day. */
function blockedDays(model: Model): Int32Array {
  const count = model.exercises.length;
  const blocked = new Int32Array(count * DAYS * count);
  for (let e = 0; e < count; e++) {
    for (let f = 0; f < count; f++) {
      if (e === f) continue;
      for (let day = 0; day < DAYS; day++) {
        let open = 0;
        for (let t = 3 * day; t < 3 * day + 3; t++) {
          if ((((model.domain[e] ?? 0) >> t) & 1) === 0) continue;
          open |= (model.domain[f] ?? 0) & ~(model.forbid[(e * SLOTS + t) * count + f] ?? 0);
        }
        let closed = 0;
        for (let other = 0; other < DAYS; other++) {
          if (other !== day && ((open >> (3 * other)) & 7) === 0) closed |= 1 << other;
        }
        blocked[(e * DAYS + day) * count + f] = closed;
      }
    }
  }
  return blocked;
}

/** A score of moved bouts that an exercise has at least, wherever it lies. */
function leastScore(model: Model, e: number): number {
  const first = model.options[e]?.[0];
  if (first === undefined) return 0;
  let bouts = 0;
  for (let rest = first.days; rest !== 0; rest &= rest - 1) bouts += model.boutsADay[e] ?? 1;
  let kept = 0;
  for (let t = 0; t < SLOTS; t++) {
    const open = (((model.domain[e] ?? 0) >> t) & 1) === 1;
    if (open && model.shift[e * SLOTS + t] === 0) kept += 1;
  }
  return Math.max(0, bouts - kept) * MOVED;
}
