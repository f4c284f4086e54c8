/** Frames for the search: the days that hold sessions, and what a week on them costs at least. */
import { countBits } from "./day-sets.ts";
import type { DayOption, Model } from "./model.ts";
import { DAYS } from "./problem.ts";
import { MOVED, SESSION, type WeekScore } from "./score.ts";

export interface Frame {
  /** 7-bit mask of days. */
  readonly days: number;
  readonly bound: WeekScore;
}

/** All frames that leave each exercise a set of days, the most promising first. */
export function dayFrames(model: Model, options: readonly (readonly DayOption[])[]): Frame[] {
  const minutes = weekMinutes(model, options);
  const frames: Frame[] = [];
  for (let days = 0; days < 1 << DAYS; days++) {
    let even = 0;
    let dislike = 0;
    let moved = 0;
    let fits = true;
    for (const list of options) {
      const first = list.find((option) => (option.days & ~days) === 0);
      if (first === undefined) {
        fits = false;
        break;
      }
      // The list is sorted by evenness.
      even += first.evenness;
      dislike += leastDislike(list, days, first.evenness);
      moved += leastMoved(list, days) * MOVED;
    }
    if (!fits) continue;
    const floor = new Float64Array(DAYS);
    for (let day = 0; day < DAYS; day++) floor[day] = ((days >> day) & 1) * SESSION;
    const score = sessionsForMinutes(floor, model, minutes) + moved + dislike;
    const fullest = Math.ceil(minutes / Math.max(1, countBits(days)));
    frames.push({ days, bound: { score, evenness: even, fullest } });
  }
  return frames.sort(
    (a, b) =>
      Math.floor(a.bound.score / SESSION) - Math.floor(b.bound.score / SESSION) ||
      a.bound.evenness - b.bound.evenness ||
      a.bound.fullest - b.bound.fullest ||
      a.bound.score - b.bound.score ||
      a.days - b.days,
  );
}

function leastDislike(list: readonly DayOption[], days: number, even: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (const option of list) {
    if (option.evenness > even) break;
    if ((option.days & ~days) === 0) least = Math.min(least, option.dislike);
  }
  return least;
}

function leastMoved(list: readonly DayOption[], days: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (const option of list) {
    if ((option.days & ~days) === 0) least = Math.min(least, option.moved);
  }
  return least;
}

/** Tenths of a minute of all bouts of the week. */
export function weekMinutes(model: Model, options: readonly (readonly DayOption[])[]): number {
  return options.reduce((sum, list, e) => {
    const bouts = countBits(list[0]?.days ?? 0) * (model.boutsADay[e] ?? 1);
    return sum + bouts * (model.length[e] ?? 0);
  }, 0);
}

/**
 * The score of as many sessions as the week's minutes need at least, given a floor for each day:
 * each day's sessions are taken to be its roomiest.
 */
export function sessionsForMinutes(floor: Float64Array, model: Model, minutes: number): number {
  const more: number[] = [];
  let room = 0;
  let score = 0;
  for (let day = 0; day < DAYS; day++) {
    const known = floor[day] ?? 0;
    score += known;
    const sessions = Math.floor((known % MOVED) / SESSION);
    const rooms = [...model.room.subarray(3 * day, 3 * day + 3)].sort((a, b) => b - a);
    rooms.forEach((each, i) => {
      if (i < sessions) room += each;
      else more.push(each);
    });
  }
  more.sort((a, b) => b - a);
  for (const each of more) {
    if (room >= minutes) break;
    room += each;
    score += SESSION;
  }
  return score;
}
