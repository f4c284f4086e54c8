/** Puts the phases of a course on the weeks of the calendar, where weeks away move or leave out some of it. */
import type { ProgramExercise, ProgramPhase } from "./program.ts";

/**
 * The phases on the calendar: a phase with a week away in it stretches over that week, which has no
 * doses. `left`: exercises of which nothing remains, since all their weeks are left out.
 *
 * @param phases by weeks of the course
 * @param calendar the week of the course in each week of the calendar, from `courseCalendar`
 */
export function onCalendar(
  phases: readonly ProgramPhase[],
  calendar: readonly (number | undefined)[],
): { readonly phases: ProgramPhase[]; readonly left: ProgramExercise[] } {
  const left: ProgramExercise[] = [];
  const placed = phases.flatMap((phase): ProgramPhase[] => {
    const weekAt = (week: number | undefined) => (week === undefined ? -1 : week - phase.firstWeek);
    const isIn = (week: number | undefined) => {
      const at = weekAt(week);
      return at >= 0 && at < phase.weeks;
    };
    const from = calendar.findIndex(isIn);
    const to = calendar.findLastIndex(isIn);
    const weeks = from < 0 ? [] : calendar.slice(from, to + 1);
    const exercises = phase.exercises.flatMap((exercise) => {
      const doses = weeks.map((week) => exercise.doses[weekAt(week)]);
      if (doses.some((dose) => dose !== undefined)) return [{ ...exercise, doses }];
      left.push(exercise);
      return [];
    });
    if (from < 0) return [];
    return [{ ...phase, firstWeek: from + 1, weeks: weeks.length, exercises }];
  });
  return { phases: placed, left };
}
