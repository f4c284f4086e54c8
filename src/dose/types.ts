/** The computed program: every number of every bout, and how each came about. */

import type { Repetitions, Turns } from "../prescription/fields.ts";
import type { Tempo } from "../units/quantities.ts";
import type { WorkSide } from "../units/side.ts";

/** A number, or the two ends of a range; equal where there is no range. */
export interface Range {
  readonly low: number;
  readonly high: number;
}

/** How often: days a week, times a day on every day, or every so many days. */
export type Frequency =
  | { readonly perWeek: number }
  | { readonly perDay: number }
  | { readonly everyDays: number };

/** One step on the way to a number, in a sentence for a clinician. */
export interface ProvenanceStep {
  readonly step:
    | "measure"
    | "formula"
    | "target"
    | "equipment"
    | "rounding"
    | "limit"
    | "stated"
    | "sum";
  readonly says: string;
  /** The number as it stands after this step, rounded for reading. */
  readonly value?: number;
  readonly unit?: string;
  /** A citation, or the place of the statement as file:line. */
  readonly source?: string;
}

/** The numbers of a bout that have a provenance, by the names of the machine form. */
export type ProvenanceNumber =
  | "sets"
  | "reps"
  | "hold_s"
  | "time_s"
  | "distance_m"
  | "turns"
  | "tempo"
  | "rest_s"
  | "rest_reps_s"
  | "effort"
  | "frequency"
  | "load_kg"
  | "next_load_kg"
  | "reps_total"
  | "kg_total"
  | "tension_s"
  | "clock_s"
  | "minutes";

/**
 * Only the numbers that the bout has; `load_kg` also explains a band, a speed or a load left to feel.
 * `next_load_kg`: the load to come, should the target be beaten.
 */
export type Provenance = Readonly<Partial<Record<ProvenanceNumber, readonly ProvenanceStep[]>>>;

/** What makes an exercise hard in one bout. Masses in kilograms, rounded down. */
export interface BoutLoad {
  readonly kind: "none" | "body" | "weight" | "band" | "speed";
  /** The weight to take; undefined where it is left to feel or could not be computed. 0: body alone. */
  readonly kg?: number | undefined;
  /** Whether the weight or band comes on top of the body's own weight. */
  readonly addedTo?: "body" | undefined;
  /** The equipment's word, such as backpack, that makes the load. */
  readonly equipment?: string | undefined;
  /** The load aimed at, without the body's share, before the equipment; never negative. */
  readonly targetKg?: number | undefined;
  /** The load moved: kg and the body's share together. */
  readonly systemKg?: number | undefined;
  /** The next load the equipment makes, and how much more that is, as a share of systemKg or kg. */
  readonly nextKg?: number | undefined;
  readonly nextStep?: number | undefined;
  /** Band level, 1 to 8. */
  readonly level?: number | undefined;
  /** Speed that is not to be passed, in kilometres an hour, rounded down to a tenth. */
  readonly kmH?: number | undefined;
  /** The slower end of the speed, where a range is stated. */
  readonly slowKmH?: number | undefined;
  /** The share of the client's best speed that is asked for; low equals high unless a range is stated. */
  readonly share?: Range | undefined;
  /** Seconds for the distance once, rounded up; never faster than asked for. */
  readonly eachS?: Range | undefined;
  /** Whether the seconds count from a running start, since a top speed was measured and no time from standing. */
  readonly runningStart?: boolean | undefined;
  /** Whether the clinician speaks of pace, in minutes a kilometre. */
  readonly asPace?: boolean | undefined;
  /** The load in words where there is no number: "a weight that feels 6 out of 10". */
  readonly words?: string | undefined;
}

/** A load and how it came about. */
export interface Loaded {
  readonly load: BoutLoad;
  readonly provenance: readonly ProvenanceStep[];
  /** How the next load comes about, should the target be beaten; only where there is a load to change. */
  readonly next?: readonly ProvenanceStep[] | undefined;
}

/** What follows from the numbers of a bout. */
export interface BoutSums {
  /** Repetitions of the session on one side. */
  readonly repsTotal: Range | undefined;
  /** Repetitions (top of the range) × kg, one side, without the body's share. */
  readonly kgTotal: number | undefined;
  /** Seconds under tension of the session on one side, top of the range; undefined without tempo, hold or time. */
  readonly tensionS: number | undefined;
  /** Seconds of work of the session on one side without any rest, top of the range; where nothing says so, assumed. */
  readonly workS: number;
  /** Seconds the bout takes, both sides and rests, without the way to the next exercise. */
  readonly clockS: number;
  /** clockS in whole minutes, rounded up, for the layout of the week. */
  readonly minutes: number;
  readonly provenance: Provenance;
}

/** One exercise in one session, the same for every session of its week. Times in seconds. */
export interface Bout extends BoutSums {
  /** Week of the course, from 1. */
  readonly week: number;
  /** Week of the phase, from 1. */
  readonly weekOfPhase: number;
  /** The phase's id. */
  readonly phase: string;
  /** The exercise's key: phase id, a slash, card id. */
  readonly key: string;
  /** The card's id. */
  readonly card: string;
  readonly side: WorkSide;
  /** 2 where both sides are worked in turn (side each), else 1. */
  readonly sides: 1 | 2;
  readonly main: boolean;
  readonly sets: number;
  /** The sets it would have, where they are fewer in a first week back after a break. */
  readonly usualSets?: number;
  /** One entry a set, for each side; undefined where sets are timed or held only. */
  readonly reps: Repetitions | undefined;
  /** How long each repetition is held; where there are no repetitions, each set. */
  readonly holdS: number | undefined;
  /** How long a set lasts. */
  readonly timeS: number | undefined;
  /** How far a set (or, with repetitions, a repetition) goes, in metres. */
  readonly distanceM: number | undefined;
  /** Work and easy in turn in a set. */
  readonly turns: Turns | undefined;
  readonly tempo: Tempo | undefined;
  readonly restS: number | undefined;
  readonly restRepsS: number | undefined;
  /** 0 to 10. */
  readonly effort: number | undefined;
  readonly frequency: Frequency;
  /** Sessions in this week. */
  readonly sessions: number;
  readonly load: BoutLoad;
}

/** Sums of a week, all sessions and both sides, as planned before real dates are known. */
export interface WeekTotals {
  readonly reps: Range;
  readonly kg: number;
  /** Whole minutes, rounded up, with rests and changeovers. */
  readonly minutes: number;
  /** The most sessions of any exercise. */
  readonly sessions: number;
  /** The most exercises that one session holds. */
  readonly exercises: number;
  /** Seconds of the longest session. */
  readonly sessionS: number;
}

export interface DosedWeek {
  /** Week of the course, from 1. */
  readonly week: number;
  /** In the order of phases and of the exercises in them. */
  readonly bouts: readonly Bout[];
  readonly totals: WeekTotals;
}

export interface DosedProgram {
  /** One entry for each week of the course, in order, also where a week is empty. */
  readonly weeks: readonly DosedWeek[];
  /** Seconds from one exercise to the next, that the session clock counts. */
  readonly changeoverS: number;
}
