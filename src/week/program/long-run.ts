/** Whether recovery lets an exercise be done as often as asked, week after week. */
import { clearedSlots } from "../search/clear.ts";
import { DAYS, dayOf, minutesAt, minutesOf, SLOTS, WEEK_MINUTES } from "../search/problem.ts";
import type { ProgramWeek } from "./program-weeks.ts";

/**
 * True where an exercise, even by itself, cannot have all its bouts in the last of these weeks
 * after those of the weeks before it: four bouts 48 h apart fit into one week but not into each.
 * Each bout is put as early as can be, which leaves most room for the next; so the answer is proof.
 */
export function runsOut(weeks: readonly ProgramWeek[], exercise: string): boolean {
  let free = Number.NEGATIVE_INFINITY;
  let lastDay = Number.NEGATIVE_INFINITY;
  for (const { index, problem } of weeks) {
    const one = problem.exercises.find((each) => each.id === exercise);
    if (one === undefined || !("perWeek" in one.times)) continue;
    const cleared = clearedSlots(one, problem);
    let bouts = 0;
    for (let t = 0; t < SLOTS && bouts < one.times.perWeek; t++) {
      const isOpen = (problem.freeMinutes[t] ?? 0) >= one.minutes && ((cleared >> t) & 1) === 0;
      const at = minutesAt(t, problem.clock) + WEEK_MINUTES * index;
      const day = dayOf(t) + DAYS * index;
      if (!isOpen || at < free || day === lastDay) continue;
      bouts += 1;
      free = at + minutesOf(one.recoveryHours);
      lastDay = day;
    }
    if (bouts < one.times.perWeek) return true;
  }
  return false;
}
