/** Which sets of days with hard bouts keep to the most hard days in a row. */
import { isDated } from "./day-sets.ts";
import { DAYS, dayOf, type WeekProblem } from "./problem.ts";

/** By 7-bit mask of days with hard bouts: 1 where no more than the allowed days are in a row. */
export function hardDaysAllowed(problem: WeekProblem): Uint8Array {
  const most = problem.maxHardDaysInRow;
  const allowed = new Uint8Array(1 << DAYS).fill(1);
  if (most === undefined) return allowed;
  const fixed = fixedHardDays(problem);
  const around = problem.wraps && !problem.exercises.some((one) => one.hard && isDated(one.times));
  for (let mask = 0; mask < allowed.length; mask++) {
    allowed[mask] = longestRun(mask, fixed, around) > most ? 0 : 1;
  }
  return allowed;
}

/** Days, also of the weeks before and after, that are hard whatever is chosen. */
function fixedHardDays(problem: WeekProblem): ReadonlySet<number> {
  return new Set([
    ...problem.events.filter((event) => event.hard).map((event) => event.day),
    ...(problem.given ?? []).filter((bout) => bout.hard).map((bout) => dayOf(bout.slot)),
  ]);
}

/** Most hard days in a row that touch the week; a week hard on every day has no end where it wraps. */
function longestRun(mask: number, fixed: ReadonlySet<number>, around: boolean): number {
  const isHard = (day: number): boolean => {
    const inWeek = ((day % DAYS) + DAYS) % DAYS;
    if (fixed.has(day) || (around && fixed.has(inWeek))) return true;
    return (around || day === inWeek) && ((mask >> inWeek) & 1) === 1;
  };
  let longest = 0;
  let run = 0;
  for (let day = -DAYS; day < 2 * DAYS; day++) {
    run = isHard(day) ? run + 1 : 0;
    // A run that ended before the week began is past mending and not this week's concern.
    if (day >= 0 && day - run < DAYS - 1) longest = Math.max(longest, run);
  }
  return longest;
}
