/** Every session as an appointment: when, how long, what is done. */

import type { ProgramExercise } from "../program/program.ts";
import type { Session } from "../schedule/schedule.ts";
import type { Composing } from "./composing.ts";
import { shortDose } from "./dose-words.ts";
import type { PhasePage } from "./exercise-model.ts";
import { startSign } from "./flag-words.ts";
import { sessionRules } from "./pain-words.ts";
import { sessionBout } from "./session-bouts.ts";
import type { BookletSession, ShortVersion } from "./session-model.ts";
import { sideName } from "./side-words.ts";

/** All sessions of the program, first to last; `phases` are the pages that say what a bad day keeps. */
export function bookletSessions(
  composing: Composing,
  phases: readonly PhasePage[],
): BookletSession[] {
  const { program, schedule, write } = composing;
  const { words } = write;
  const exercises = new Map<string, ProgramExercise>(
    program.phases.flatMap((phase) => phase.exercises.map((one) => [one.key, one])),
  );
  return schedule.weeks.flatMap(({ number, days }) =>
    days
      .flatMap((day) => day.sessions)
      .map((session): BookletSession => {
        const { date, part, minutes, bouts } = session;
        return {
          week: number,
          date,
          part,
          minutes,
          title: words.say("session.title", { minutes }),
          exercises: bouts.flatMap((bout) => {
            const exercise = exercises.get(bout.key);
            if (!exercise) return [];
            const dose = shortDose(bout, exercise.card, write);
            const side = sideName(exercise, write);
            const { title } = exercise.card.card;
            const line =
              side === undefined
                ? words.say("session.line", { title, dose })
                : words.say("session.line_side", { title, dose, side });
            const sign = startSign(exercise, program, write);
            return sign === undefined ? line : words.say("session.line_when", { line, sign });
          }),
          bouts: bouts.flatMap((bout) => {
            const exercise = exercises.get(bout.key);
            return exercise ? [sessionBout(bout, exercise, composing)] : [];
          }),
          short: shortVersion(session, phases),
          pain: sessionRules(
            bouts.flatMap((bout) => exercises.get(bout.key) ?? []),
            program.callLevel,
            write,
          ),
        };
      }),
  );
}

/** The short version as the phases' pages say it, never with more sets than the session has. */
function shortVersion(
  { bouts, minutes }: Session,
  phases: readonly PhasePage[],
): ShortVersion | undefined {
  const versions = phases.flatMap(({ badDay }) => (badDay ? [badDay.version] : []));
  const kept = bouts.flatMap((bout) => {
    const sets = versions.flatMap((one) => one.bouts).find(({ key }) => key === bout.key)?.sets;
    return sets === undefined ? [] : [{ key: bout.key, sets: Math.min(sets, bout.sets) }];
  });
  const less = kept.length < bouts.length || kept.some(({ key, sets }) => sets < setsOf(key));
  function setsOf(key: string): number {
    return bouts.find((bout) => bout.key === key)?.sets ?? 0;
  }
  if (kept.length === 0 || !less) return undefined;
  const lengths = versions
    .filter((one) => one.bouts.some(({ key }) => kept.some((bout) => bout.key === key)))
    .map((one) => one.minutes);
  const together = lengths.reduce((sum, length) => sum + length, 0);
  return { minutes: Math.min(together, minutes), bouts: kept };
}
