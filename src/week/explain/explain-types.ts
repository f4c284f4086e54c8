/** What collides in a week that cannot be laid out, and what would help, as data and as sentences. */
import type { PartOfDay } from "../../units/day-parts.ts";
import type { ProgramTimes } from "../program/program-types.ts";
import type { Origin, Slot } from "../search/problem.ts";

/** One wish or rule of the plan that takes part in a collision. */
export interface Requirement {
  readonly kind:
    | "open-slots"
    | "session-minutes"
    | "times"
    | "recovery"
    | "clear-before"
    | "event-clear"
    | "same-session"
    | "after"
    | "group-hours"
    | "hard-days"
    | "week-before";
  /** The exercise it belongs to. */
  readonly exercise?: string;
  readonly group?: string;
  readonly event?: string;
  /** Times, hours, minutes or days, as the kind says. */
  readonly amount?: number;
  /** The open slots, for `open-slots`. */
  readonly slots?: readonly Slot[];
  readonly origin?: Origin;
  /** One sentence a clinician would say. */
  readonly sentence: string;
}

/**
 * One change that a plan can state. Free time is changed in the client's usual week, so on every
 * date of that weekday which is not taken; doses in the weeks named, counted from 0.
 */
export type Change =
  /** A part of a weekday without free time gets so many minutes. Weekdays count from 0, Monday. */
  | {
      readonly kind: "open-slot";
      readonly weekday: number;
      readonly part: PartOfDay;
      readonly minutes: number;
    }
  /** A part of a weekday that has free time gets so many minutes more. */
  | {
      readonly kind: "more-minutes";
      readonly weekday: number;
      readonly part: PartOfDay;
      readonly minutes: number;
    }
  | {
      readonly kind: "fewer-sets";
      readonly exercise: string;
      readonly sets: number;
      readonly weeks: readonly number[];
    }
  | {
      readonly kind: "less-often";
      readonly exercise: string;
      readonly times: ProgramTimes;
      readonly weeks: readonly number[];
    };

/** Changes that, made together, let the whole program be laid out: it was done to see. */
export interface Remedy {
  readonly changes: readonly Change[];
  /** By the table in `costs.ts`. */
  readonly cost: number;
  readonly sentence: string;
}

/** Why a program has no place in the client's weeks, and what would help. */
export interface Explanation {
  /** Requirements of the first week without a place that cannot hold together; empty if not known. */
  readonly collision: readonly Requirement[];
  /** The least remedies, all of one cost; empty where no single change and no pair helps. */
  readonly least: readonly Remedy[];
  /** Besides: the least of the other kind (time, or doses), or more than two changes where there are no less. */
  readonly larger: readonly Remedy[];
  /** Whether all singles and pairs up to that cost were tried before the search came to its limit. */
  readonly complete: boolean;
}
