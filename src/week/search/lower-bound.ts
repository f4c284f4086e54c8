/** What the days still to be chosen lead to at least. */
import type { DayOption } from "./model.ts";
import { IMPOSSIBLE, MOVED, type WeekScore, withoutPreference } from "./score.ts";

/** One way to choose the days of one exercise, with what it leads to at least. */
export interface Choice {
  readonly option: DayOption;
  readonly score: number;
  readonly fullest: number;
}

/** The ways still open to one exercise and what they lead to at least. */
export interface ChoiceBound {
  readonly e: number;
  ways: Choice[];
  readonly score: number;
  readonly shift: number;
  /** Of its evenest ways. */
  readonly evenness: number;
  readonly fullest: number;
  readonly dislike: number;
}

export interface Bound extends WeekScore {
  readonly heaviest: number;
  readonly shift: number;
  readonly dislike: number;
  readonly now: number;
}

/** The boundOf of one exercise over the ways still open to it. */
export function boundOf(e: number, ways: Choice[]): ChoiceBound {
  let moved = Number.POSITIVE_INFINITY;
  let score = IMPOSSIBLE;
  let evenness = Number.POSITIVE_INFINITY;
  for (const way of ways) {
    score = Math.min(score, way.score);
    evenness = Math.min(evenness, way.option.evenness);
    moved = Math.min(moved, way.option.moved);
  }
  let fullest = Number.POSITIVE_INFINITY;
  let dislike = Number.POSITIVE_INFINITY;
  for (const way of ways) {
    if (way.option.evenness > evenness) continue;
    fullest = Math.min(fullest, way.fullest);
    dislike = Math.min(dislike, way.option.dislike);
  }
  return { e, ways, score, shift: moved * MOVED, evenness, fullest, dislike };
}

/** The order in which ways are tried. */
export function cheaper(a: Choice, b: Choice): number {
  return (
    withoutPreference(a.score) - withoutPreference(b.score) ||
    a.option.evenness - b.option.evenness ||
    a.fullest - b.fullest ||
    a.score - b.score ||
    a.option.days - b.option.days
  );
}
