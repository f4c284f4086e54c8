/** The weekdays on which a client's sessions lie best. */
import type { Weekday } from "../units/day-parts.ts";
import type { Program } from "./program.ts";

/** The client's own, else the clinic's; none where neither says. */
export function preferredDays({ plan, clinic }: Program): readonly Weekday[] {
  const { prefer } = plan.value.week;
  return prefer.length > 0 ? prefer : clinic.week.prefer;
}
