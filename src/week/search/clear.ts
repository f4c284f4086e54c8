/** Slots closed to an exercise by events and by bouts of the weeks before and after. */
import { minutesApart } from "./hours-apart.ts";
import {
  minutesAt,
  minutesOf,
  SLOTS,
  type Slot,
  slotOf,
  WEEK_MINUTES,
  type WeekEvent,
  type WeekExercise,
  type WeekProblem,
} from "./problem.ts";

/** Why a slot is closed to an exercise: the event and on which side of it the slot lies. */
export interface ClearReason {
  readonly kind: "clear-before" | "clear-after";
  /** Whether the exercise or the event asks for it. */
  readonly asks: "exercise" | "event";
  readonly event: WeekEvent;
  readonly hours: number;
}

/** 21-bit mask of the slots that an exercise must keep clear because of events. */
export function clearedSlots(one: WeekExercise, problem: WeekProblem): number {
  let mask = 0;
  for (let t = 0; t < SLOTS; t++) if (clearReason(one, t, problem) !== undefined) mask |= 1 << t;
  return mask;
}

/** The first event, in the order given, for whose sake a slot is kept clear of an exercise. */
export function clearReason(
  one: WeekExercise,
  t: Slot,
  problem: WeekProblem,
): ClearReason | undefined {
  const { clock } = problem;
  const at = minutesAt(t, clock);
  for (const event of problem.events) {
    const untilEvent = minutesAt(slotOf(event.day, event.part), clock) - at;
    const own = exerciseHours(one, event);
    if (isBefore(untilEvent, own, problem.wraps))
      return { kind: "clear-before", asks: "exercise", event, hours: own };
    const before = isKeptClear(one, event, "before") ? (event.clearBeforeHours ?? 0) : 0;
    if (isBefore(untilEvent, before, problem.wraps))
      return { kind: "clear-before", asks: "event", event, hours: before };
    const after = isKeptClear(one, event, "after") ? (event.clearAfterHours ?? 0) : 0;
    if (isBefore(-untilEvent, after, problem.wraps))
      return { kind: "clear-after", asks: "event", event, hours: after };
  }
  return undefined;
}

/** Hours before an event that the exercise itself asks to keep clear; 0 for none. */
function exerciseHours(one: WeekExercise, event: WeekEvent): number {
  const hours = (one.clearBefore ?? [])
    .filter(({ events }) =>
      events === "any"
        ? true
        : events === "touching"
          ? touches(one, event)
          : events.includes(event.id),
    )
    .map((clearance) => clearance.hours);
  return Math.max(0, ...hours);
}

/** Whether the hours that an event is kept clear on a side mean this exercise. */
function isKeptClear(one: WeekExercise, event: WeekEvent, side: "before" | "after"): boolean {
  if (one.keptClearOf) return one.keptClearOf[side].includes(event.id);
  return one.hard && (event.groups.length === 0 || touches(one, event));
}

function touches(one: WeekExercise, event: WeekEvent): boolean {
  return event.groups.some((group) => one.groups.includes(group));
}

/** Whether something so many minutes ahead is less than these hours ahead. */
function isBefore(until: number, hours: number, wraps: boolean): boolean {
  const ahead = wraps ? ((until % WEEK_MINUTES) + WEEK_MINUTES) % WEEK_MINUTES : until;
  return ahead >= 0 && ahead < minutesOf(hours);
}

/** 21-bit mask of the slots too near a bout that is not to be moved: earlier, or of the week after. */
export function givenSlots(one: WeekExercise, problem: WeekProblem): number {
  let mask = 0;
  for (const given of problem.given ?? []) {
    // Recovery belongs to the earlier of two bouts.
    const recoveryHours = given.slot < SLOTS ? given.recoveryHours : one.recoveryHours;
    const apart = minutesApart(
      { ...one, recoveryHours },
      { ...given, id: given.exercise, recoveryHours },
      problem.groupHours,
    );
    const at = minutesAt(given.slot, problem.clock);
    for (let t = 0; t < SLOTS; t++) {
      if (Math.abs(minutesAt(t, problem.clock) - at) < apart) mask |= 1 << t;
    }
  }
  return mask;
}
