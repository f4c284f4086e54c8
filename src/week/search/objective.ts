/** What a placement comes to, counted from the problem alone. */
import { evenness } from "./day-sets.ts";
import { DAYS, dayOf, type Objective, type Placement, type WeekProblem } from "./problem.ts";

/** The objective of a placement, whether or not it keeps to the rules. */
export function objectiveOf(problem: WeekProblem, placement: Placement): Objective {
  const sessions = new Set<number>();
  const minutes = new Array<number>(DAYS).fill(0);
  let even = 0;
  let moved = 0;
  let disliked = 0;
  for (const one of problem.exercises) {
    const before = problem.previous?.get(one.id);
    let days = 0;
    for (const t of placement.get(one.id) ?? []) {
      sessions.add(t);
      days |= 1 << dayOf(t);
      minutes[dayOf(t)] = (minutes[dayOf(t)] ?? 0) + one.minutes;
      if (before !== undefined && !before.includes(t)) moved += 1;
      if (one.preferredSlots !== undefined && !one.preferredSlots.includes(t)) disliked += 1;
    }
    if ("perWeek" in one.times) even += evenness(days);
  }
  return {
    moved: problem.aim === "repair" ? moved : 0,
    sessions: sessions.size,
    evenness: even,
    fullestDay: Math.round(Math.max(...minutes) * 10) / 10,
    preference: disliked + moved,
  };
}
