/** How long work and rest take: a repetition, a set, a bout, a session. */
import type { Clinic } from "../clinic/schema.ts";
import type { Tempo } from "../units/quantities.ts";
import { ceilTo, tidy } from "../units/rounding.ts";
import type { Bout } from "./types.ts";

/**
 * Seconds a repetition without a stated tempo counts in the session clock: 2 s up and 2 s down, the
 * slow end of what Ratamess 2009 (Med Sci Sports Exerc 41:687) gives. It never counts as tension.
 */
export const PLAIN_REPETITION_S = 4;
export const PLAIN_REPETITION_SOURCE =
  "Ratamess 2009, Med Sci Sports Exerc 41:687: 1–2 s up and 1–2 s down";

/** Metres a second that a distance without a stated speed counts: slow walking, common practice. */
const PLAIN_SPEED = 1;

/** The work of one set on one side. Times in seconds, lengths in metres, speed in metres a second. */
export interface SetOfWork {
  readonly reps?: number | undefined;
  readonly holdS?: number | undefined;
  readonly timeS?: number | undefined;
  readonly distanceM?: number | undefined;
  readonly tempo?: Tempo | undefined;
  readonly speed?: number | undefined;
}

/** The work of the first `sets` sets of a bout, at the top of its ranges. */
export function workOfSets(bout: Bout, sets: number): SetOfWork[] {
  const { holdS, timeS, distanceM, tempo } = bout;
  const speed = metresPerSecond(bout.load.kmH);
  return Array.from({ length: sets }, (_, index) => ({
    reps: bout.reps?.[index]?.high,
    holdS,
    timeS,
    distanceM,
    tempo,
    speed,
  }));
}

/** A speed in km/h as metres a second. */
export function metresPerSecond(kmH: number | undefined): number | undefined {
  return kmH === undefined ? undefined : kmH / 3.6;
}

/** Seconds of one repetition: the four parts of the tempo together, X counting as `fastPart`. */
export function repetitionSeconds(tempo: Tempo, fastPart: number): number {
  const parts = [tempo.lower, tempo.bottom, tempo.lift, tempo.top];
  return parts.reduce<number>((sum, part) => sum + (part === "X" ? fastPart : part), 0);
}

/**
 * Seconds under tension of a set: its time; or repetitions × (tempo + hold); or the hold alone.
 * Undefined for repetitions with neither tempo nor hold, and for distances.
 */
export function setTension(set: SetOfWork, fastPart: number): number | undefined {
  if (set.timeS !== undefined) return set.timeS;
  if (set.tempo === undefined && set.holdS === undefined) return undefined;
  if (set.reps === undefined) return set.holdS;
  const moving = set.tempo === undefined ? 0 : repetitionSeconds(set.tempo, fastPart);
  return tidy(set.reps * (moving + (set.holdS ?? 0)));
}

/** Seconds a set takes, without rests; where nothing says so, by the plain repetition and speed above. */
export function setSeconds(set: SetOfWork, fastPart: number): number {
  const tension = setTension(set, fastPart);
  if (set.distanceM !== undefined && set.timeS === undefined) {
    const each =
      set.distanceM / (set.speed !== undefined && set.speed > 0 ? set.speed : PLAIN_SPEED);
    return ceilTo(each * (set.reps ?? 1), 1);
  }
  return tension ?? (set.reps ?? 0) * PLAIN_REPETITION_S;
}

export interface BoutOfWork {
  /** One entry a set. */
  readonly sets: readonly SetOfWork[];
  readonly sides: 1 | 2;
  readonly restS: number;
  readonly restRepsS: number;
}

/**
 * Seconds of a bout. Both sides: each set on one side and then on the other, and then the rest.
 * `lastRest` says whether the rest after the last set, and after the last repetition of a set,
 * counts as well.
 */
export function boutClock(
  bout: BoutOfWork,
  dosing: Pick<Clinic["dosing"], "fast_part" | "last_rest">,
): number {
  const open = dosing.last_rest ? 0 : 1;
  let seconds = Math.max(0, bout.sets.length - open) * bout.restS;
  for (const set of bout.sets) {
    const rests = Math.max(0, (set.reps ?? 1) - open) * bout.restRepsS;
    seconds += bout.sides * (setSeconds(set, dosing.fast_part) + rests);
  }
  return tidy(seconds);
}

/** Seconds of a session: its bouts, and a changeover between each and the next. */
export function sessionClock(clocks: readonly number[], changeoverS: number): number {
  const work = clocks.reduce((sum, clock) => sum + clock, 0);
  return tidy(work + Math.max(0, clocks.length - 1) * changeoverS);
}
