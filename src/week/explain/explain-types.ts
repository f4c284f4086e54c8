/** What collides in a week that cannot be laid out, and what would help, as data and as sentences. */
import type { PartOfDay } from "../../units/day-parts.ts";
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

/** One change of the plan, such as five more minutes on one evening. */
export type Change =
  | {
      readonly kind: "open-slot";
      readonly day: number;
      readonly part: PartOfDay;
      readonly minutes: number;
    }
  | {
      readonly kind: "more-minutes";
      readonly day: number;
      readonly part: PartOfDay;
      readonly minutes: number;
    }
  | { readonly kind: "bout-less"; readonly exercise: string; readonly times: number }
  | { readonly kind: "hard-day-more"; readonly days: number };

/** Changes that, made together, let the week be laid out. */
export interface Remedy {
  readonly changes: readonly Change[];
  readonly cost: number;
  readonly sentence: string;
}

/** What each change costs; smaller is offered first. */
export interface RemedyCosts {
  readonly openSlot: number;
  /** For each five minutes. */
  readonly fiveMinutes: number;
  readonly boutLess: number;
  readonly hardDay: number;
}
