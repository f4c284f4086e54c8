/** The requirements of a week one by one, and the same week with some of them dropped. */

import { SLOTS, type WeekExercise, type WeekProblem } from "../search/problem.ts";
import type { Requirement } from "./explain-types.ts";
import * as say from "./requirement-words.ts";

/** Minutes that stand for no limit. */
const UNLIMITED = 24 * 60;

/** All requirements, in the order in which the search for a collision tries to do without them. */
export function requirementsOf(problem: WeekProblem): Requirement[] {
  const list: Requirement[] = [];
  const { exercises, events, origins } = problem;
  if ((problem.given ?? []).length > 0) {
    list.push({ kind: "week-before", sentence: say.weekBefore() });
  }
  for (const one of exercises) {
    if ((one.after ?? []).length > 0) {
      list.push(ofExercise("after", one, one.origins?.after, say.after(one, exercises)));
    }
    if (one.sameSessionAs !== undefined) {
      const sentence = say.sameSession(one, exercises);
      list.push(ofExercise("same-session", one, one.origins?.sameSession, sentence));
    }
  }
  for (const event of events) {
    if ((event.clearBeforeHours ?? 0) === 0 && (event.clearAfterHours ?? 0) === 0) continue;
    const amount = event.clearBeforeHours ?? event.clearAfterHours ?? 0;
    const sentence = say.eventClear(event, exercises, problem.firstWeekday);
    if (sentence === undefined) continue;
    list.push({ kind: "event-clear", event: event.id, amount, origin: event.origin, sentence });
  }
  for (const one of exercises) {
    const clear = (one.clearBefore ?? []).filter((each) => each.hours > 0);
    if (clear.length === 0) continue;
    const amount = Math.max(...clear.map((each) => each.hours));
    const sentence = say.clearBefore(one, problem);
    list.push({ ...ofExercise("clear-before", one, one.origins?.clearBefore, sentence), amount });
  }
  for (const [group, hours] of Object.entries(problem.groupHours)) {
    const hard = exercises.filter((one) => one.hard && one.groups.includes(group));
    if (hard.length === 0 || hours <= 0) continue;
    const sentence = say.groupHours(group, hours);
    const origin = origins?.groupHours?.[group];
    list.push({ kind: "group-hours", group, amount: hours, origin, sentence });
  }
  if (problem.maxHardDaysInRow !== undefined) {
    const amount = problem.maxHardDaysInRow;
    const sentence = say.hardDays(amount, events, problem.firstWeekday);
    list.push({ kind: "hard-days", amount, origin: origins?.maxHardDaysInRow, sentence });
  }
  for (const one of exercises) {
    list.push({
      ...ofExercise("times", one, one.origins?.times, say.times(one, problem.firstWeekday)),
      amount: say.amountOf(one.times),
    });
  }
  for (const one of exercises) {
    if (one.recoveryHours <= 0) continue;
    const sentence = say.recovery(one);
    const amount = one.recoveryHours;
    list.push({ ...ofExercise("recovery", one, one.origins?.recovery, sentence), amount });
  }
  const minutes = Math.max(...problem.freeMinutes);
  const open = problem.freeMinutes.flatMap((free, slot) => (free > 0 ? [slot] : []));
  const origin = origins?.freeMinutes;
  list.push({
    kind: "session-minutes",
    amount: minutes,
    origin,
    sentence: say.sessionMinutes(problem),
  });
  const sentence = say.openSlots(open, problem.firstWeekday);
  list.push({ kind: "open-slots", slots: open, origin, sentence });
  return list;
}

function ofExercise(
  kind: Requirement["kind"],
  one: WeekExercise,
  origin: unknown,
  sentence: string,
): Requirement {
  return { kind, exercise: one.id, origin: origin ?? one.origins?.all, sentence };
}

/** The week with only the requirements given. An exercise without its times is left out. */
export function weekWithOnly(problem: WeekProblem, kept: readonly Requirement[]): WeekProblem {
  const has = (kind: Requirement["kind"], exercise?: string): boolean =>
    kept.some((one) => one.kind === kind && one.exercise === exercise);
  const hasEvent = (id: string) =>
    kept.some((one) => one.kind === "event-clear" && one.event === id);
  const exercises = problem.exercises.filter((one) => has("times", one.id));
  const isHere = (id: string) => exercises.some((one) => one.id === id);
  const { maxHardDaysInRow, given, previous: _, aim: _aim, ...rest } = problem;
  return {
    ...rest,
    freeMinutes: minutesWith(problem.freeMinutes, has("open-slots"), has("session-minutes")),
    exercises: exercises.map((one) => {
      const { sameSessionAs, after, clearBefore, preferredSlots: _slots, ...bare } = one;
      return {
        ...bare,
        recoveryHours: has("recovery", one.id) ? one.recoveryHours : 0,
        ...(has("clear-before", one.id) && clearBefore !== undefined ? { clearBefore } : {}),
        ...(has("after", one.id) ? { after: (after ?? []).filter(isHere) } : {}),
        ...(has("same-session", one.id) && sameSessionAs !== undefined && isHere(sameSessionAs)
          ? { sameSessionAs }
          : {}),
      };
    }),
    events: problem.events.map(({ clearBeforeHours, clearAfterHours, ...event }) => ({
      ...event,
      ...(hasEvent(event.id) && clearBeforeHours !== undefined ? { clearBeforeHours } : {}),
      ...(hasEvent(event.id) && clearAfterHours !== undefined ? { clearAfterHours } : {}),
    })),
    groupHours: Object.fromEntries(
      Object.entries(problem.groupHours).filter(([group]) =>
        kept.some((one) => one.kind === "group-hours" && one.group === group),
      ),
    ),
    ...(maxHardDaysInRow !== undefined && has("hard-days") ? { maxHardDaysInRow } : {}),
    ...(given !== undefined && has("week-before") ? { given } : {}),
  };
}

/**
 * Without `open-slots` a closed slot is as roomy as the week's roomiest, without `session-minutes`
 * every open slot is without limit.
 */
function minutesWith(free: readonly number[], open: boolean, limited: boolean): number[] {
  const most = Math.max(...free);
  return Array.from({ length: SLOTS }, (_, t) => {
    const minutes = free[t] ?? 0;
    const given = minutes > 0 || open ? minutes : most;
    if (limited) return given;
    return minutes > 0 || !open ? UNLIMITED : 0;
  });
}
