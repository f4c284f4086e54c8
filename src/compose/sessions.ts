/** Every session as an appointment: when, how long, what is done. */
import type { ProgramExercise } from "../plan/program.ts";
import type { Composing } from "./compose.ts";
import { shortDose } from "./dose-words.ts";
import type { BookletSession } from "./model.ts";
import { sideName } from "./side-words.ts";

/** All sessions of the program, first to last. */
export function bookletSessions({ program, schedule, write }: Composing): BookletSession[] {
  const { words } = write;
  const { id, week } = program.plan.value;
  const exercises = new Map<string, ProgramExercise>(
    program.phases.flatMap((phase) => phase.exercises.map((one) => [one.key, one])),
  );
  const limits = program.phases[0]?.exercises[0]?.pain;
  const kind = limits?.kind ?? "pain-free";
  const pain = words.say(`session.pain.${kind}`, { during: write.number(limits?.during ?? 0) });
  return schedule.weeks.flatMap(({ number, days }) =>
    days
      .flatMap((day) => day.sessions)
      .map(
        ({ date, part, minutes, bouts }, index): BookletSession => ({
          id: `${id}-week-${number}-session-${index + 1}`,
          date,
          start: week.hours[part],
          minutes,
          title: words.say("session.title", { minutes }),
          exercises: bouts.flatMap((bout) => {
            const exercise = exercises.get(bout.key);
            if (!exercise) return [];
            const dose = shortDose(bout, write);
            const side = sideName(exercise, write);
            const { title } = exercise.card.card;
            return side === undefined
              ? words.say("session.line", { title, dose })
              : words.say("session.line_side", { title, dose, side });
          }),
          pain,
        }),
      ),
  );
}
