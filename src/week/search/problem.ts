/** One week to be laid out: its free minutes, exercises, events and rules, and the answer's form. */
import { DAY_MINUTES, type DayClock } from "../../units/clock.ts";
import { PARTS, type PartOfDay } from "../../units/day-parts.ts";

export const DAYS = 7;
export const SLOTS = 21;
export const WEEK_MINUTES = DAYS * DAY_MINUTES;

/**
 * A slot of the week: 3 · day + part, where day 0 is the first day of the phase's week (whatever
 * weekday that is) and parts count 0, 1, 2. Slots below 0 lie in the week before, from 21 on in
 * the week after.
 */
export type Slot = number;

/** How often: on `perWeek` days; so many bouts on each day; every n days; on given days. */
export type Times =
  | { readonly perWeek: number }
  /** On these days; on each day with free time where no days are given. */
  | { readonly perDay: number; readonly days?: readonly number[] }
  /** `firstDay` is the first day of this week on which it falls, 0 to everyDays − 1. */
  | { readonly everyDays: number; readonly firstDay: number }
  /** `every`: they come of counting so many days on from one to the next, for sentences only. */
  | { readonly onDays: readonly number[]; readonly every?: number };

/** What the caller wants back with a requirement, such as the place in the plan file. */
export type Origin = unknown;

export interface Clearance {
  /** Hours before the event, start to start, in which no bout begins; exactly as many are enough. */
  readonly hours: number;
  /** Events that load one of the exercise's groups, every event, or the events with these ids. */
  readonly events: "touching" | "any" | readonly string[];
}

export interface WeekExercise {
  readonly id: string;
  /** What a person calls it, for sentences; the id where there is none. */
  readonly name?: string;
  /**
   * What is done and has to recover; the id where not given. Exercises of one movement, such as a card
   * that two phases have in one week, keep its recovery between them and share no session.
   */
  readonly movement?: string;
  /** Minutes of one bout; counted in tenths, rounded up. */
  readonly minutes: number;
  readonly times: Times;
  /** Hours from one bout of it to the next, start to start; 0 for none. */
  readonly recoveryHours: number;
  /** A hard bout counts for hours between hard bouts of a group and for hard days in a row. */
  readonly hard: boolean;
  /** Tissue groups that it loads. */
  readonly groups: readonly string[];
  readonly clearBefore?: readonly Clearance[];
  /**
   * Ids of the events whose clear hours before and after them mean it. Where not given: every event, of a
   * hard bout that loads its groups, or of any hard bout where it has none.
   */
  readonly keptClearOf?: {
    readonly before: readonly string[];
    readonly after: readonly string[];
  };
  /** Each bout lies in a session that holds a bout of this exercise. */
  readonly sameSessionAs?: string;
  /**
   * Exercises that come before it: inside a session, and, where both are done once a day, in no
   * later session of the same day.
   */
  readonly after?: readonly string[];
  /** Slots that the client or the clinic likes best; all slots alike where not given. */
  readonly preferredSlots?: readonly Slot[];
  /** Where its requirements come from; `all` stands for those not named. */
  readonly origins?: {
    readonly all?: Origin;
    readonly times?: Origin;
    readonly minutes?: Origin;
    readonly recovery?: Origin;
    readonly clearBefore?: Origin;
    readonly sameSession?: Origin;
    readonly after?: Origin;
  };
}

export interface WeekEvent {
  readonly id: string;
  /** What a person calls it: "match", "long run". */
  readonly name: string;
  /** Day 0 to 6; below 0 or from 7 on for an event of the week before or after. */
  readonly day: number;
  readonly part: PartOfDay;
  readonly hard: boolean;
  readonly groups: readonly string[];
  /** Hours before it without the bouts that are kept clear of it. */
  readonly clearBeforeHours?: number;
  /** Hours after it without such bouts. */
  readonly clearAfterHours?: number;
  /** Whether it says itself which work these hours mean, hard or not. */
  readonly statesWork?: boolean;
  readonly origin?: Origin;
}

/**
 * A bout that is not to be moved: of the week before (slot below 0), of the week after (slot 21 and
 * more), or of a day of this week that is gone, before every slot that is free.
 */
export interface GivenBout {
  readonly exercise: string;
  /** As in `WeekExercise`. */
  readonly movement?: string;
  readonly slot: Slot;
  readonly hard: boolean;
  readonly groups: readonly string[];
  /** Hours until the next bout of the same movement, as it was prescribed then. */
  readonly recoveryHours: number;
}

/** Exercise id to the slots of its bouts, ascending. */
export type Placement = ReadonlyMap<string, readonly Slot[]>;

export interface WeekProblem {
  /** When the parts of the client's day begin: all hours between bouts and events are counted by it. */
  readonly clock: DayClock;
  /** Free minutes of the 21 slots; 0 is a closed slot. */
  readonly freeMinutes: readonly number[];
  readonly exercises: readonly WeekExercise[];
  readonly events: readonly WeekEvent[];
  /** Group to the hours between hard bouts of it, start to start, in different sessions. */
  readonly groupHours: Readonly<Record<string, number>>;
  /** Most days in a row with a hard bout or a hard event. */
  readonly maxHardDaysInRow?: number;
  /**
   * Minutes from one exercise to the next, where each exercise's minutes hold one changeover and
   * each slot's free minutes one more than there is: sentences leave it out.
   */
  readonly changeoverMinutes?: number;
  /** Where the bouts lay before, to stay stable. */
  readonly previous?: Placement;
  /** A weekly pattern that repeats (hours wrap over 168 h), or a week that stands alone. */
  readonly wraps: boolean;
  /** Bouts just before and just after the week. */
  readonly given?: readonly GivenBout[];
  /**
   * `pattern`: sessions, evenness, fullest day, preference. `repair`: the same after the number of
   * bouts that do not lie where `previous` has them.
   */
  readonly aim?: "pattern" | "repair";
  /** Weekday of day 0 (0 is Monday), for sentences only; Monday where not given. */
  readonly firstWeekday?: number;
  readonly origins?: {
    readonly freeMinutes?: Origin;
    readonly groupHours?: Readonly<Record<string, Origin>>;
    readonly maxHardDaysInRow?: Origin;
  };
}

export interface Objective {
  /** Bouts off their previous slot, counted only when repairing; otherwise 0. */
  readonly moved: number;
  /** Separate sessions in the week. */
  readonly sessions: number;
  /** Σ over exercises of (Σ gaps² − least possible) / 2, gaps in days around the week. */
  readonly evenness: number;
  /** Minutes of the fullest day. */
  readonly fullestDay: number;
  /** Bouts off preferred slots plus bouts off their previous slot. */
  readonly preference: number;
}

export interface FoundWeek {
  readonly placement: Placement;
  readonly objective: Objective;
}

export type WeekAnswer =
  | ({ readonly status: "solved"; readonly nodes: number } & FoundWeek)
  | { readonly status: "impossible"; readonly nodes: number }
  /**
   * The node limit was reached before an answer was proven. A placement found until then keeps to
   * every rule, but a better one may exist.
   */
  | { readonly status: "unknown"; readonly nodes: number; readonly found?: FoundWeek }
  /** The statement contradicts itself; nothing was searched. */
  | { readonly status: "malformed"; readonly mistakes: readonly Mistake[]; readonly nodes: 0 };

export interface Mistake {
  readonly kind:
    | "duplicate-id"
    | "unknown-exercise"
    | "unknown-event"
    | "order-circle"
    | "wrong-number"
    | "wrong-date";
  readonly exercise?: string;
  readonly sentence: string;
}

/** The slot of a day and part. */
export function slotOf(day: number, part: PartOfDay): Slot {
  return 3 * day + PARTS.indexOf(part);
}

/** The day of a slot; negative in the week before. */
export function dayOf(slot: Slot): number {
  return Math.floor(slot / 3);
}

/** The part of the day of a slot, also outside the week. */
export function partOf(slot: Slot): PartOfDay {
  return PARTS[(((slot % 3) + 3) % 3) as 0 | 1 | 2];
}

/** Minutes from midnight of day 0 to the start of a slot, by the client's clock. */
export function minutesAt(slot: Slot, clock: DayClock): number {
  return DAY_MINUTES * dayOf(slot) + clock[partOf(slot)];
}

/** Minutes between two slots, start to start; around the week where it wraps. */
export function minutesBetween(a: Slot, b: Slot, clock: DayClock, wraps: boolean): number {
  const minutes = Math.abs(minutesAt(a, clock) - minutesAt(b, clock));
  return wraps
    ? Math.min(minutes % WEEK_MINUTES, WEEK_MINUTES - (minutes % WEEK_MINUTES))
    : minutes;
}

/** Whole minutes that a number of hours asks for, rounded up: 20 s more are a minute more. */
export function minutesOf(hours: number): number {
  return Math.ceil(hours * 60 - 1e-6);
}

/** What an exercise or a bout of it has to recover from. */
export function movementOf(one: { readonly id: string; readonly movement?: string }): string {
  return one.movement ?? one.id;
}
