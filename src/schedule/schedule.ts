/** A program laid out on real dates: which session comes when, and what is done in it. */

import type { Bout } from "../dose/types.ts";
import type { PartOfDay } from "../units/day-parts.ts";

export interface Schedule {
  readonly weeks: readonly ScheduledWeek[];
  /** Days that were kept free of hard work, and what for. */
  readonly kept: readonly KeptClear[];
}

export interface ScheduledWeek {
  /** Week of the course, from 1. */
  readonly number: number;
  /** Whether the client is away for the whole of it: a week without sessions. */
  readonly away: boolean;
  /** Whether it is a first week back after more than a week away. */
  readonly eased: boolean;
  /** Seven days, the first being the weekday on which the plan starts. */
  readonly days: readonly ScheduledDay[];
}

export interface ScheduledDay {
  /** YYYY-MM-DD. */
  readonly date: string;
  readonly away: boolean;
  /** Names of the client's own events on this day. */
  readonly events: readonly string[];
  readonly sessions: readonly Session[];
}

export interface Session {
  readonly date: string;
  readonly part: PartOfDay;
  /** Whole minutes with rests and changeovers, rounded up. */
  readonly minutes: number;
  /** In the order of the session. */
  readonly bouts: readonly Bout[];
}

export interface KeptClear {
  readonly event: string;
  /** Weekday of the event, from 0, Monday. */
  readonly weekday: number;
  /** Whether hard work is kept away before it or after it. */
  readonly side: "before" | "after";
  /** The titles of what is kept away, where the plan says which work is meant; else it is hard work. */
  readonly only: readonly string[] | undefined;
}
