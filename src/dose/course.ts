/** The sums of a whole course as a protocol prints them: repetitions, sessions, seconds under tension. */
import type { Clinic } from "../clinic/schema.ts";
import type { DosePart } from "../prescription/fields.ts";
import { sessionsInWeek } from "./frequency.ts";
import { boutSums, totalOf } from "./sums.ts";
import type { Frequency, Range } from "./types.ts";

export interface CourseSums {
  /** Repetitions of one side, all sets and sessions. */
  readonly reps: Range;
  readonly sessions: number;
  /** Seconds under tension of one session in the last week that has the exercise, one side. */
  readonly tensionS: number | undefined;
}

/** One exercise in one week of the course, as stated; week from 1. */
export interface CourseWeek {
  readonly week: number;
  readonly dose: DosePart;
}

/**
 * Sums of one card's doses over a course, in the order of the weeks. A target of a repetition
 * maximum stands for its repetitions where none are stated. Doses without a frequency count no session.
 */
export function courseSums(
  weeks: readonly CourseWeek[],
  dosing: Pick<Clinic["dosing"], "fast_part" | "last_rest">,
): CourseSums {
  let low = 0;
  let high = 0;
  let sessions = 0;
  for (const { week, dose } of weeks) {
    const times = sessionsOf(dose, week);
    const reps = repsOf(dose);
    const total = reps ? totalOf(reps, setsOf(dose)) : { low: 0, high: 0 };
    sessions += times;
    low += total.low * times;
    high += total.high * times;
  }
  const last = weeks.at(-1)?.dose;
  return { reps: { low, high }, sessions, tensionS: last && tensionOf(last, dosing) };
}

/** Whether a printed sum lies within what the table gives. */
export function isWithin(sum: number, { low, high }: Range): boolean {
  return sum >= low && sum <= high;
}

function tensionOf(dose: DosePart, dosing: Pick<Clinic["dosing"], "fast_part" | "last_rest">) {
  const { hold: holdS, time: timeS, distance: distanceM, turns, tempo } = dose;
  const numbers = { reps: repsOf(dose), holdS, timeS, distanceM, turns, tempo };
  return boutSums({ ...numbers, sets: setsOf(dose), sides: 1 }, dosing).tensionS;
}

function repsOf({ reps, target, hold, time, distance, turns }: DosePart) {
  const other = hold ?? time ?? distance ?? turns;
  if (reps || target?.kind !== "rm" || other !== undefined) return reps;
  return [{ low: target.reps, high: target.reps }];
}

function setsOf({ sets, reps }: DosePart): number {
  return reps && reps.length > 1 ? reps.length : (sets ?? 1);
}

function sessionsOf({ per_week, per_day, every }: DosePart, week: number): number {
  const frequency: Frequency | undefined =
    per_week !== undefined
      ? { perWeek: per_week }
      : per_day !== undefined
        ? { perDay: per_day }
        : every === undefined
          ? undefined
          : { everyDays: every };
  return frequency ? sessionsInWeek(frequency, week) : 0;
}
