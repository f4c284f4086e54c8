/** What a bad day keeps of a phase's sessions, in words: a short version, or nothing. */

import { shortSession } from "../dose/short-session.ts";
import type { Bout } from "../dose/types.ts";
import { isInPhase } from "../program/phase-weeks.ts";
import type { ProgramExercise, ProgramPhase } from "../program/program.ts";
import type { Session } from "../schedule/schedule.ts";
import type { Composing } from "./composing.ts";
import type { BadDay } from "./exercise-model.ts";

/**
 * What to do when there is little time or strength; undefined where the whole session is short enough, or
 * has nothing for a bad day.
 */
export function badDay(phase: ProgramPhase, composing: Composing): BadDay | undefined {
  const { program, dosed, write } = composing;
  const { words } = write;
  const { clinic, plan } = program;
  const bouts = longestWeek(phase, composing);
  const items = bouts.flatMap((bout) => {
    const exercise = phase.exercises.find(({ key }) => key === bout.key);
    if (!exercise?.main || needsGoodDay(exercise)) return [];
    const { trains, tissues } = exercise.card.card;
    return [{ bout, stimulus: `${trains} ${tissues[0]}` }];
  });
  const limit = plan.value.week.few_minutes ?? clinic.limits.short_session;
  const partOnly = phase.exercises.some(
    (exercise) => needsGoodDay(exercise) && bouts.some(({ key }) => key === exercise.key),
  );
  const short = shortSession(items, limit, dosed.changeoverS, clinic.dosing, partOnly);
  if (!short) return undefined;
  return {
    length: words.say("bad_day.length", { minutes: short.minutes }),
    version: short,
    exercises: short.bouts.map(({ key, sets }) => {
      const title = phase.exercises.find((one) => one.key === key)?.card.card.title ?? key;
      return words.say("bad_day.line", { title, sets });
    }),
  };
}

/**
 * What to do with the sessions of a phase of which no short version keeps anything, and that have work
 * for a good day only: to leave them out. Undefined where there are none. `versions`: of all phases.
 */
export function leaveOutWords(
  phase: ProgramPhase,
  versions: readonly (BadDay | undefined)[],
  { schedule, write }: Composing,
): string | undefined {
  const hard = new Set(phase.exercises.filter(needsGoodDay).map(({ key }) => key));
  const kept = new Set(versions.flatMap((one) => one?.version.bouts.map(({ key }) => key) ?? []));
  const has = (keys: ReadonlySet<string>, { bouts }: Session) =>
    bouts.some(({ key }) => keys.has(key));
  const sessions = schedule.weeks
    .flatMap(({ days }) => days)
    .flatMap((day) => day.sessions)
    .filter((session) => has(hard, session));
  const without = sessions.filter((session) => !has(kept, session));
  if (without.length === 0) return undefined;
  return without.length < sessions.length
    ? write.words.say("bad_day.leave_out_some")
    : write.words.say("bad_day.leave_out");
}

/** From this demand on, of 10, an exercise is among the hardest of its region. */
const HARDEST_DEMAND = 8;

/**
 * Whether an exercise is nothing for a bad day: what is quick (power, running at speed), and the hardest
 * of a region, such as a full lowering from the knees. Common practice.
 */
export function needsGoodDay({ card: { card } }: Pick<ProgramExercise, "card">): boolean {
  return card.trains === "power" || card.load.kind === "speed" || card.demand >= HARDEST_DEMAND;
}

/** The bouts of the phase's week that takes longest: what fits then fits in every week. */
function longestWeek(phase: ProgramPhase, { dosed }: Composing): readonly Bout[] {
  const weeks = dosed.weeks
    .filter(({ week }) => isInPhase(phase, week))
    .map(({ bouts }) => bouts.filter((bout) => bout.phase === phase.id));
  const clock = (bouts: readonly Bout[]) => bouts.reduce((sum, bout) => sum + bout.clockS, 0);
  return [...weeks].sort((a, b) => clock(b) - clock(a))[0] ?? [];
}
