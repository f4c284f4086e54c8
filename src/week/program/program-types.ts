/** A whole program to be laid out on real dates, and its layout. */
import type { DayClock } from "../../units/clock.ts";
import type { PartOfDay } from "../../units/day-parts.ts";
import type {
  Clearance,
  GivenBout,
  Mistake,
  Objective,
  Origin,
  Slot,
  WeekExercise,
  WeekProblem,
} from "../search/problem.ts";

/** How often, as a plan says it; days are worked out from the dates of the program. */
export type ProgramTimes =
  | { readonly perWeek: number }
  | { readonly perDay: number }
  | { readonly everyDays: number };

/** One exercise in one week of a phase. */
export interface ProgramExercise
  extends Omit<WeekExercise, "times" | "preferredSlots" | "clearBefore"> {
  readonly times: ProgramTimes;
  readonly clearBefore?: readonly Clearance[];
  /** Preferred slots of the program's week: day 0 is the weekday of the first date. */
  readonly preferredSlots?: readonly Slot[];
  /** Minutes of a bout with 1, 2, … sets, up to one set fewer than it has; for what could be changed. */
  readonly minutesBySets?: readonly number[];
}

export interface PhaseWeeks {
  readonly id: string;
  readonly weeks: readonly { readonly exercises: readonly ProgramExercise[] }[];
}

/** One date of the program. */
export interface ProgramDay {
  /** Free minutes by part of the day; 0 is closed. */
  readonly free: Readonly<Record<PartOfDay, number>>;
  /** Minutes in the client's usual week, without what happens on this date; as `free` where not given. */
  readonly usual?: Readonly<Record<PartOfDay, number>>;
  /** Parts that cannot be had at all on this date: away, taken by an event. */
  readonly taken?: readonly PartOfDay[];
  /** Why a day is closed or shorter than others: "holiday", "night shift". */
  readonly why?: string;
  readonly origin?: Origin;
}

export interface DatedEvent {
  readonly id: string;
  readonly name: string;
  /** ISO date. */
  readonly date: string;
  readonly part: PartOfDay;
  readonly hard: boolean;
  readonly groups: readonly string[];
  readonly clearBeforeHours?: number;
  readonly clearAfterHours?: number;
  /** As in `WeekEvent`. */
  readonly statesWork?: boolean;
  readonly origin?: Origin;
}

/** A session as an earlier booklet gave it to the client. */
export interface IssuedSession {
  /** ISO date. */
  readonly date: string;
  readonly part: PartOfDay;
  readonly bouts: readonly Omit<GivenBout, "slot">[];
}

export interface ProgramWeeks {
  /** ISO date of the first day of the first week; any weekday. */
  readonly firstDate: string;
  /** When the parts of the client's day begin. */
  readonly clock: DayClock;
  readonly phases: readonly PhaseWeeks[];
  /** One entry a date from `firstDate` on: seven for each week of the phases. */
  readonly days: readonly ProgramDay[];
  /** Events; those up to a week before or after the program count too. An id may repeat by date. */
  readonly events: readonly DatedEvent[];
  /** Group to the hours between hard bouts of it. */
  readonly groupHours: Readonly<Record<string, number>>;
  readonly maxHardDaysInRow?: number;
  /** As in `WeekProblem`. */
  readonly changeoverMinutes?: number;
  readonly origins?: {
    readonly freeMinutes?: Origin;
    readonly groupHours?: Readonly<Record<string, Origin>>;
    readonly maxHardDaysInRow?: Origin;
  };
  /**
   * What the client already has. Days before `today` stay as they were issued; of the others as few
   * bouts as possible lie elsewhere than they were issued.
   */
  readonly issued?: { readonly today: string; readonly sessions: readonly IssuedSession[] };
  /** Nodes of the search for one week; a fixed number, so that every machine gives one answer. */
  readonly nodeLimit?: number;
}

export interface LaidBout {
  readonly exercise: string;
  readonly minutes: number;
}

/** One session: bouts in the order in which they are done. */
export interface LaidSession {
  readonly date: string;
  readonly part: PartOfDay;
  readonly minutes: number;
  readonly hard: boolean;
  readonly bouts: readonly LaidBout[];
}

/** A bout of a week that lies elsewhere than in the phase's pattern, or than it was issued. */
export interface MovedBout {
  readonly exercise: string;
  /** Where it would have lain; not given for a bout more than before. */
  readonly from?: { readonly date: string; readonly part: PartOfDay };
  readonly to: { readonly date: string; readonly part: PartOfDay };
}

/** Why exercises were kept off a date. */
export interface AvoidedDay {
  readonly date: string;
  readonly exercises: readonly string[];
  readonly reason:
    | {
        readonly kind: "clear-before" | "clear-after";
        readonly event: { readonly name: string; readonly date: string };
      }
    | { readonly kind: "closed"; readonly why?: string }
    | { readonly kind: "too-short"; readonly minutes: number };
  /** "clear of Saturday's match" and the like. */
  readonly sentence: string;
}

/** A date of an every-n-days exercise that had to wait for the next open day. */
export interface SlippedDay {
  readonly exercise: string;
  readonly date: string;
  readonly to?: string;
}

/** Bouts of an exercise for which a week of which some days are gone has no room. */
export interface LostBouts {
  readonly exercise: string;
  readonly bouts: number;
}

/** Bouts that days taken cost an exercise in a week; below 0 where one comes that waited before. */
export interface TakenBouts {
  readonly exercise: string;
  readonly bouts: number;
}

export interface LaidWeek {
  /** Week of the program, from 0. */
  readonly week: number;
  readonly phase: string;
  readonly firstDate: string;
  readonly sessions: readonly LaidSession[];
  readonly objective: Objective;
  /** Whether it is proven that no better week exists; false where the node limit came first. */
  readonly proven: boolean;
  /** Empty where the week follows the phase's pattern, or lies as it was issued. */
  readonly moved: readonly MovedBout[];
  readonly avoided: readonly AvoidedDay[];
  readonly slipped: readonly SlippedDay[];
  readonly lost: readonly LostBouts[];
  readonly taken: readonly TakenBouts[];
}

export type LayoutResult =
  | { readonly status: "laid-out"; readonly weeks: readonly LaidWeek[] }
  | {
      readonly status: "impossible";
      readonly week: number;
      readonly phase: string;
      readonly firstDate: string;
      /** The week that has no answer; beside bouts of the week before where those are in the way. */
      readonly problem: WeekProblem;
      /** The weeks that were laid out before it. */
      readonly weeks: readonly LaidWeek[];
    }
  | {
      readonly status: "unknown";
      readonly week: number;
      readonly phase: string;
      readonly firstDate: string;
      /** The node limit was reached, or a week that fits alone found no fit beside its neighbour. */
      readonly because: "node-limit" | "week-before";
      readonly problem: WeekProblem;
      readonly weeks: readonly LaidWeek[];
    }
  | { readonly status: "malformed"; readonly mistakes: readonly Mistake[] };

/** A program without a place for all its sessions, and its first week without one. */
export type LayoutFailure = Exclude<LayoutResult, { status: "laid-out" | "malformed" }>;
