/** Whether a program can be read as weeks at all, before anything is laid out. */
import { orderCircle } from "../search/check-problem.ts";
import { dayNumber } from "../search/dates.ts";
import { DAYS, type Mistake } from "../search/problem.ts";
import type { ProgramWeeks } from "./program-types.ts";

/** Everything that is wrong with the statement of a program; empty for one to be laid out. */
export function programMistakes(program: ProgramWeeks): Mistake[] {
  const mistakes: Mistake[] = [];
  const weeks = program.phases.flatMap((phase) => phase.weeks);
  if (dayNumber(program.firstDate) === undefined) {
    mistakes.push(wrongDate(`The program begins on “${program.firstDate}”, which is no date.`));
  }
  for (const event of program.events) {
    if (dayNumber(event.date) !== undefined) continue;
    mistakes.push(wrongDate(`The ${event.name} is on “${event.date}”, which is no date.`));
  }
  if (program.days.length !== DAYS * weeks.length) {
    const sentence = `A program of ${weeks.length} weeks needs the free minutes of ${DAYS * weeks.length} dates, not of ${program.days.length}.`;
    mistakes.push({ kind: "wrong-number", sentence });
  }
  const known = new Set(weeks.flatMap((week) => week.exercises.map((one) => one.id)));
  const events = new Set(program.events.map((event) => event.id));
  const told = new Set<string>();
  for (const { exercises } of weeks) {
    for (const one of exercises) {
      if (told.has(one.id)) continue;
      const unknown = [one.sameSessionAs, ...(one.after ?? [])].filter(
        (id) => id !== undefined && !known.has(id),
      );
      const missing = (one.clearBefore ?? []).flatMap((each) =>
        typeof each.events === "string" ? [] : each.events.filter((id) => !events.has(id)),
      );
      const name = one.name ?? one.id;
      const found: Mistake[] = [
        ...unknown.map((id) => ({
          kind: "unknown-exercise" as const,
          exercise: one.id,
          sentence: `${name} names “${id}”, which is not in the program.`,
        })),
        ...missing.map((id) => ({
          kind: "unknown-event" as const,
          exercise: one.id,
          sentence: `${name} names the event “${id}”, which is not there.`,
        })),
      ];
      if (found.length > 0) told.add(one.id);
      mistakes.push(...found);
    }
    const circle = orderCircle(exercises.map((one) => ({ ...one, times: { perWeek: 1 } })));
    if (circle !== undefined && !told.has(circle.id)) {
      told.add(circle.id);
      const sentence = `${circle.name ?? circle.id} comes after itself, by way of the others.`;
      mistakes.push({ kind: "order-circle", exercise: circle.id, sentence });
    }
  }
  return mistakes;
}

function wrongDate(sentence: string): Mistake {
  return { kind: "wrong-date", sentence };
}
