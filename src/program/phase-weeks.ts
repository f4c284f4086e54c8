/** Which phases a week of the course belongs to: the one answer that pages, calendar, layout and JSON share. */
import { inSpan, type WeekSpan } from "../units/week-span.ts";
import { openFlags } from "./flags.ts";
import type { Program, ProgramPhase } from "./program.ts";

/**
 * The weeks of the course in which this client is in the phase: from the first to the last week with
 * one of its exercises. A protocol may open a phase earlier than its table begins, and a plan may end
 * sooner or leave exercises out. Undefined where no week has any.
 */
export function weeksOfPhase({ firstWeek, exercises }: ProgramPhase): WeekSpan | undefined {
  const weeks = exercises.flatMap(({ doses }) =>
    doses.flatMap((dose, index) => (dose === undefined ? [] : [firstWeek + index])),
  );
  return weeks.length === 0 ? undefined : { first: Math.min(...weeks), last: Math.max(...weeks) };
}

/** The weeks of the course from the first to the last in which a card is done; undefined where none is. */
export function weeksOfCard({ phases }: Pick<Program, "phases">, id: string): WeekSpan | undefined {
  const spans = phases.flatMap((phase) => {
    const exercises = phase.exercises.filter(({ card }) => card.card.id === id);
    return weeksOfPhase({ ...phase, exercises }) ?? [];
  });
  if (spans.length === 0) return undefined;
  return {
    first: Math.min(...spans.map(({ first }) => first)),
    last: Math.max(...spans.map(({ last }) => last)),
  };
}

/** The weeks in which a card is done, in their order, each once. */
export function doneWeeks({ phases }: Pick<Program, "phases">, id: string): number[] {
  const weeks = phases.flatMap(({ firstWeek, exercises }) =>
    exercises
      .filter(({ card }) => card.card.id === id)
      .flatMap(({ doses }) =>
        doses.flatMap((dose, index) => (dose === undefined ? [] : [firstWeek + index])),
      ),
  );
  return [...new Set(weeks)].sort((a, b) => a - b);
}

/** Whether the client is in the phase in a week of the course. */
export function isInPhase(phase: ProgramPhase, week: number): boolean {
  const span = weeksOfPhase(phase);
  return span !== undefined && inSpan(week, span);
}

/** The phases of a week of the course, in their order. */
export const phasesIn = ({ phases }: Pick<Program, "phases">, week: number): ProgramPhase[] =>
  phases.filter((phase) => isInPhase(phase, week));

/**
 * The health flags that may hold while a card is done; of a card that is done only in place of others,
 * those that may hold in any week.
 */
export function flagsOfCard(
  program: Pick<Program, "phases" | "flags" | "weeks">,
  id: string,
): string[] {
  const weeks = doneWeeks(program, id);
  const all = Array.from({ length: program.weeks }, (_, index) => index + 1);
  return openFlags(program.flags, weeks.length > 0 ? weeks : all);
}
