/** A placed week in the form the booklet and the calendar take: dates, sessions, what moved. */

import { isoDate, placeOf } from "../search/dates.ts";
import { isDated } from "../search/day-sets.ts";
import { objectiveOf } from "../search/objective.ts";
import { type Placement, SLOTS, type WeekProblem } from "../search/problem.ts";
import { avoidedDays } from "./avoided.ts";
import type { Placed } from "./placed.ts";
import type { LaidSession, LaidWeek, MovedBout, ProgramDay } from "./program-types.ts";
import type { ProgramWeek } from "./program-weeks.ts";
import { sessionOrder } from "./session-order.ts";

/** @param days the seven dates of the week */
export function laidWeek(
  week: ProgramWeek,
  { placement, expected, proven, lost = [] }: Placed,
  days: readonly ProgramDay[],
): LaidWeek {
  const { problem, start } = week;
  const programStart = start - 7 * week.index;
  return {
    week: week.index,
    phase: week.phase,
    firstDate: isoDate(start),
    sessions: sessionsOf(problem, placement, start),
    objective: objectiveOf(problem, placement),
    proven,
    moved: expected === undefined ? [] : movedBouts(problem, placement, expected, start),
    avoided: avoidedDays(
      problem,
      placement,
      start,
      days.map((day) => day.why),
    ),
    slipped: week.slipped.map(({ exercise, day, to }) => ({
      exercise,
      date: isoDate(programStart + day),
      ...(to === undefined ? {} : { to: isoDate(programStart + to) }),
    })),
    lost,
    taken: week.taken,
  };
}

function sessionsOf(problem: WeekProblem, placement: Placement, start: number): LaidSession[] {
  const sessions: LaidSession[] = [];
  for (let slot = 0; slot < SLOTS; slot++) {
    const here = problem.exercises.filter((one) => (placement.get(one.id) ?? []).includes(slot));
    if (here.length === 0) continue;
    const minutes = here.reduce((sum, one) => sum + one.minutes, 0);
    sessions.push({
      ...placeOf(slot, start),
      minutes: Math.round(minutes * 10) / 10,
      hard: here.some((one) => one.hard),
      bouts: sessionOrder(here).map((one) => ({ exercise: one.id, minutes: one.minutes })),
    });
  }
  return sessions;
}

function movedBouts(
  problem: WeekProblem,
  placement: Placement,
  expected: Placement,
  start: number,
): MovedBout[] {
  return problem.exercises.flatMap((one) => {
    const before = expected.get(one.id);
    if (before === undefined || isDated(one.times)) return [];
    const now = placement.get(one.id) ?? [];
    const left = before.filter((slot) => !now.includes(slot));
    return now
      .filter((slot) => !before.includes(slot))
      .map((slot, i) => {
        const from = left[i];
        const to = placeOf(slot, start);
        return {
          exercise: one.id,
          ...(from === undefined ? {} : { from: placeOf(from, start) }),
          to,
        };
      });
  });
}
