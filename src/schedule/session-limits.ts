/** Warns of sessions that hold more exercises, or take longer, than the clinic's limits, as they are laid out. */
import { DoseContext } from "../dose/context.ts";
import { sessionClock } from "../dose/time.ts";
import type { Bout, DosedProgram } from "../dose/types.ts";
import type { Fault } from "../faults/fault.ts";
import type { Program } from "../program/program.ts";
import { showTime } from "../units/rounding.ts";
import type { Schedule } from "./schedule.ts";

/**
 * session-crowded and session-long, warnings, each once with the weeks it holds in. What a session holds is
 * known once it is laid out: exercises of one week may lie on different days.
 */
export function sessionFaults(
  program: Program,
  { changeoverS }: DosedProgram,
  schedule: Schedule,
): Fault[] {
  const context = new DoseContext(program, undefined);
  const seconds = (bouts: readonly Bout[]) =>
    sessionClock(
      bouts.map(({ clockS }) => clockS),
      changeoverS,
    );
  for (const { number, days } of schedule.weeks) {
    const sessions = days.flatMap((day) => day.sessions.map(({ bouts }) => bouts));
    const fullest = most(sessions, ({ length }) => length);
    if (fullest) crowded(context, fullest, number);
    const longest = most(sessions, seconds);
    if (longest) long(context, longest, seconds(longest), number);
  }
  return context.findings.faults((place) => context.frameOf(place));
}

function crowded(context: DoseContext, bouts: readonly Bout[], week: number): void {
  const limit = context.program.clinic.limits.exercises_per_session;
  if (bouts.length <= limit) return;
  context.findings.add(
    {
      code: "session-crowded",
      cause: "",
      level: "warning",
      weight: bouts.length,
      place: () => context.placeOf(bouts[limit]),
      say: (weeks) =>
        `A session holds up to ${bouts.length} exercises (${weeks}); the clinic's limit is ${limit} (two to four: Bachmann 2018, Phys Rehab Kur Med 28:20).`,
      hint: "Leave out what matters least, or spread the exercises over different days.",
    },
    week,
  );
}

function long(context: DoseContext, bouts: readonly Bout[], seconds: number, week: number): void {
  const limit = context.program.clinic.limits.session;
  if (seconds <= limit) return;
  context.findings.add(
    {
      code: "session-long",
      cause: "",
      level: "warning",
      weight: seconds,
      place: () => context.placeOf(most(bouts, ({ clockS }) => clockS)),
      say: (weeks) =>
        `A session takes up to ${showTime(Math.ceil(seconds / 60) * 60)} (${weeks}); the clinic's limit is ${showTime(limit)}.`,
      hint: "Leave out an exercise, shorten rests, or spread the exercises over different days.",
    },
    week,
  );
}

/** The one with the highest number, the first of equals. */
function most<T>(all: readonly T[], of: (one: T) => number): T | undefined {
  return all.reduce<T | undefined>(
    (best, one) => (best === undefined || of(one) > of(best) ? one : best),
    undefined,
  );
}
