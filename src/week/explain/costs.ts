/** What each change of a plan costs: the table by which remedies are compared. */
import type { Change } from "./explain-types.ts";

/**
 * Common practice: ask the client for minutes first, for another time of the week next, and only
 * then for less work; a set less before a session less.
 *
 * | change | cost |
 * | --- | --- |
 * | more minutes in a part of a day that has free time, every week | 1 for each 5 minutes, 15 at most |
 * | another part of a day opened, every week, for as many minutes as help, but no longer than the longest free time or bout of the program | 3 |
 * | the same in a part of the day that has no free time on any weekday | 4 |
 * | a set less in each session, in the weeks that need it | 4 for each set |
 * | an exercise done less often, in the weeks that need it | 5 for each time a week, or time a day |
 *
 * Two changes cost the sum of both. Never offered: less than once a week, a shorter recovery or clearance, another limit
 * of the clinic, a part of a day that is taken or that runs into the next or past the client's day, an exercise left out.
 */
export const COSTS = {
  fiveMinutes: 1,
  openSlot: 3,
  openUnusualSlot: 4,
  setLess: 4,
  timeLess: 5,
} as const;

/** Minutes are asked for in such steps. */
export const STEP_MINUTES = 5;
/** More minutes than these are not asked for in one part of a day that has free time. */
export const MOST_MORE_MINUTES = 15;

/** Whether a change asks for the client's time; otherwise it takes from the dose. */
export function asksForTime({ kind }: Change): boolean {
  return kind === "open-slot" || kind === "more-minutes";
}
