/** What a set of a dose is: one of five shapes, for every surface that says or counts it. */
import type { Tempo } from "../units/quantities.ts";
import type { Repetitions, Turns } from "./fields.ts";

/** The numbers that say what a set is, as a bout has them. Times in seconds, lengths in metres. */
export interface SetNumbers<Reps = Repetitions> {
  readonly reps?: Reps | undefined;
  readonly holdS?: number | undefined;
  readonly timeS?: number | undefined;
  readonly distanceM?: number | undefined;
  readonly turns?: Turns | undefined;
  readonly tempo?: Tempo | undefined;
}

/**
 * The five things that a set can be. `Reps`: repetitions of all sets, or those of one.
 *
 * - repetitions, at a tempo if one is stated;
 * - holds: one, or as many as there are repetitions, each moved into and out of at the tempo;
 * - a time;
 * - a distance: once, or as often as there are repetitions;
 * - turns of two: work and easy, so many times.
 */
export type Shape<Reps = Repetitions> =
  | { readonly kind: "repetitions"; readonly reps: Reps; readonly tempo: Tempo | undefined }
  | {
      readonly kind: "holds";
      readonly holdS: number;
      readonly reps: Reps | undefined;
      readonly tempo: Tempo | undefined;
    }
  | { readonly kind: "time"; readonly timeS: number }
  | { readonly kind: "distance"; readonly distanceM: number; readonly reps: Reps | undefined }
  | { readonly kind: "turns"; readonly turns: Turns };

/** The shape of a set; undefined where nothing says what a set is. */
export function shapeOf<Reps>(numbers: SetNumbers<Reps>): Shape<Reps> | undefined {
  const { reps, holdS, timeS, distanceM, turns, tempo } = numbers;
  if (turns !== undefined) return { kind: "turns", turns };
  if (timeS !== undefined) return { kind: "time", timeS };
  if (distanceM !== undefined) return { kind: "distance", distanceM, reps };
  if (holdS !== undefined) return { kind: "holds", holdS, reps, tempo };
  return reps === undefined ? undefined : { kind: "repetitions", reps, tempo };
}

/** How often something is done in each set: the same number or range in all, or one a set. */
export type Count =
  | { readonly kind: "number"; readonly n: number }
  | { readonly kind: "range"; readonly low: number; readonly high: number }
  | { readonly kind: "each"; readonly sets: Repetitions };

/** Repetitions as one number or range where all sets have the same. */
export function countOf(reps: Repetitions): Count {
  const [first = { low: 1, high: 1 }] = reps;
  const alike = reps.every(({ low, high }) => low === first.low && high === first.high);
  if (!alike) return { kind: "each", sets: reps };
  return first.low === first.high
    ? { kind: "number", n: first.low }
    : { kind: "range", low: first.low, high: first.high };
}

/** How often a hold or a distance comes in each set; undefined where it is once. */
export function countIfMany(reps: Repetitions | undefined): Count | undefined {
  const count = reps && countOf(reps);
  return count?.kind === "number" && count.n === 1 ? undefined : count;
}
