/** How long work and rest take: a repetition, a set, a bout, a session. */
import type { Clinic } from "../clinic/schema.ts";
import { type SetNumbers, shapeOf } from "../prescription/shape.ts";
import type { Tempo } from "../units/quantities.ts";
import { ceilTo, tidy } from "../units/rounding.ts";

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
export interface SetOfWork extends SetNumbers<number> {
  readonly speed?: number | undefined;
}

/** The work of the first `sets` sets, at the top of ranges. Where fewer are stated the last counts on. */
export function workOfSets(
  { reps, holdS, timeS, distanceM, turns, tempo }: SetNumbers,
  sets: number,
  speed: number | undefined,
): SetOfWork[] {
  return Array.from({ length: sets }, (_, index) => {
    const each = (reps?.[index] ?? reps?.at(-1))?.high;
    return { reps: each, holdS, timeS, distanceM, turns, tempo, speed };
  });
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
 * Seconds under tension of a set: its time; the work of its turns; repetitions × (tempo + hold); or
 * the hold alone. Undefined for repetitions with neither tempo nor hold, and for distances.
 */
export function setTension(set: SetOfWork, fastPart: number): number | undefined {
  const shape = shapeOf(set);
  if (!shape) return undefined;
  switch (shape.kind) {
    case "time":
      return shape.timeS;
    case "turns":
      return tidy(shape.turns.times * shape.turns.work);
    case "distance":
      return undefined;
    case "holds":
      return shape.reps === undefined
        ? shape.holdS
        : tidy(shape.reps * (moving(shape.tempo, fastPart) + shape.holdS));
    case "repetitions":
      return shape.tempo === undefined
        ? undefined
        : tidy(shape.reps * moving(shape.tempo, fastPart));
  }
}

const moving = (tempo: Tempo | undefined, fastPart: number): number =>
  tempo === undefined ? 0 : repetitionSeconds(tempo, fastPart);

/**
 * Seconds of work of a set, without rests and without the easy part of turns; where nothing says so,
 * by the plain repetition and speed above.
 */
export function setSeconds(set: SetOfWork, fastPart: number): number {
  const shape = shapeOf(set);
  if (shape?.kind === "distance") {
    const each =
      shape.distanceM / (set.speed !== undefined && set.speed > 0 ? set.speed : PLAIN_SPEED);
    return ceilTo(each * (shape.reps ?? 1), 1);
  }
  return setTension(set, fastPart) ?? (set.reps ?? 0) * PLAIN_REPETITION_S;
}

/** Seconds in a set that are not work: rests between repetitions, and the easy part of every turn. */
function setRests(set: SetOfWork, restRepsS: number, lastRest: boolean): number {
  const shape = shapeOf(set);
  if (!shape) return 0;
  switch (shape.kind) {
    case "turns":
      return shape.turns.times * shape.turns.easy;
    case "time":
      return 0;
    case "distance":
    case "holds":
    case "repetitions":
      return Math.max(0, (shape.reps ?? 1) - (lastRest ? 0 : 1)) * restRepsS;
  }
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
    const rests = setRests(set, bout.restRepsS, dosing.last_rest);
    seconds += bout.sides * (setSeconds(set, dosing.fast_part) + rests);
  }
  return tidy(seconds);
}

/** Seconds of a session: its bouts, and a changeover between each and the next. */
export function sessionClock(clocks: readonly number[], changeoverS: number): number {
  const work = clocks.reduce((sum, clock) => sum + clock, 0);
  return tidy(work + Math.max(0, clocks.length - 1) * changeoverS);
}
