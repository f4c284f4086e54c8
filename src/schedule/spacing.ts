/** What keeps bouts apart, as the layout has it, for whoever does one at another time than it was laid out. */
import { HARD_RECOVERY_S } from "../program/hardness.ts";
import type { Program, ProgramExercise } from "../program/program.ts";
import type { PartOfDay } from "../units/day-parts.ts";
import { datedEvents } from "./client-days.ts";

export interface Spacing {
  /** Hours between hard bouts of one tissue in different sessions. */
  readonly groupHours: Readonly<Record<string, number>>;
  /** Events of the client's week that some bouts are kept clear of. */
  readonly events: readonly KeptEvent[];
}

export interface KeptEvent {
  /** By which bouts name it. */
  readonly id: string;
  readonly what: string;
  readonly part: PartOfDay;
  readonly dates: readonly string[];
  readonly clearBeforeHours: number;
  readonly clearAfterHours: number;
}

export function spacingOf(program: Program): Spacing {
  const dated = datedEvents(program);
  const ids = [...new Set(dated.map(({ id }) => id))];
  const events = ids.flatMap((id): KeptEvent[] => {
    const all = dated.filter((one) => one.id === id);
    const [first] = all;
    if (first === undefined) return [];
    const { name: what, part, clearBeforeHours = 0, clearAfterHours = 0 } = first;
    if (clearBeforeHours === 0 && clearAfterHours === 0) return [];
    return [
      { id, what, part, dates: all.map(({ date }) => date), clearBeforeHours, clearAfterHours },
    ];
  });
  return { groupHours: groupHours(program), events };
}

/** What rests more than a day: it is spaced from other such work on the same tissue, and counts for hard days in a row. */
export const isHard = ({ card }: ProgramExercise): boolean => card.card.recovery >= HARD_RECOVERY_S;

/** Hours between hard bouts of one main tissue in different sessions: the least recovery of its cards. */
export function groupHours(program: Program): Record<string, number> {
  const hours: Record<string, number> = {};
  for (const exercise of program.phases.flatMap((phase) => phase.exercises)) {
    const tissue = exercise.card.card.tissues[0];
    if (tissue === undefined || !isHard(exercise)) continue;
    hours[tissue] = Math.min(
      hours[tissue] ?? Number.POSITIVE_INFINITY,
      exercise.card.card.recovery / 3600,
    );
  }
  return hours;
}
