/** Lays a dosed program out in the client's real week, and says in the plan's own terms when that cannot be done. */

import { QUALITIES } from "../cards/schema.ts";
import type { DosedProgram } from "../dose/types.ts";
import { Fault, type Place, type WithFaults } from "../faults/fault.ts";
import { isAway } from "../program/away.ts";
import { HARD_RECOVERY_S } from "../program/hardness.ts";
import type { Program } from "../program/program.ts";
import { addDays, weekdayOf } from "../units/dates.ts";
import { explainProgram } from "../week/explain/explain.ts";
import { failureSentence, helpGroups, helpSentence } from "../week/explain/explanation-words.ts";
import { layOutProgram } from "../week/program/program.ts";
import type {
  LaidSession,
  LaidWeek,
  LayoutFailure,
  LayoutResult,
  ProgramWeeks,
} from "../week/program/program-types.ts";
import type { Mistake } from "../week/search/problem.ts";
import { datesOutside } from "./client-days.ts";
import { eventsNear, unknownClearOf } from "./event-clear.ts";
import { type Issued, issuedBouts } from "./issued-bouts.ts";
import { layoutWarnings } from "./layout-warnings.ts";
import { editsOf, whereWritten } from "./remedy-edits.ts";
import type { KeptClear, Schedule, ScheduledDay, Session } from "./schedule.ts";
import { weekStatement } from "./week-statement.ts";

/**
 * The schedule, or undefined where the week is impossible. Where the client already has one, days that
 * are gone stay as they were issued, and of the others as little moves as can.
 *
 * Faults: week-impossible, week-unknown, week-contradiction, wrong-value; warnings: date-outside, events-near,
 * bouts-lost, week-not-proven, days-wait, sessions-taken, days-off-missed.
 */
export function layOut(
  program: Program,
  dosed: DosedProgram,
  issued?: Issued,
): WithFaults<Schedule | undefined> {
  const isHard = (hours: number) => 3600 * hours >= HARD_RECOVERY_S;
  const statement: ProgramWeeks = {
    ...weekStatement(program, dosed),
    ...(issued ? { issued: issuedBouts(issued, program, dosed, isHard) } : {}),
  };
  const result = layOutProgram(statement);
  const outside = [
    ...datesOutside(program),
    ...eventsNear(program),
    ...unknownClearOf(program, QUALITIES),
  ];
  switch (result.status) {
    case "laid-out": {
      const lost = result.weeks.flatMap((week) => lostBouts(week, program));
      const schedule = scheduleOf(program, statement, datedSessions(result.weeks, dosed), result);
      const warnings = layoutWarnings(result.weeks, program, dosed);
      return { value: schedule, faults: [...outside, ...lost, ...warnings] };
    }
    case "impossible":
      return { value: undefined, faults: [...outside, failure("week-impossible", result)] };
    case "unknown":
      return { value: undefined, faults: [...outside, failure("week-unknown", result)] };
    case "malformed":
      return { value: undefined, faults: [...outside, ...result.mistakes.map(contradiction)] };
  }

  /** What collides in the first week without a place, and what would help. */
  function failure(code: "week-impossible" | "week-unknown", result: LayoutFailure): Fault {
    const { source } = program.plan;
    const place = source.at(["week", "free"]);
    const explained = explainProgram(statement, result);
    const collision = explained.collision.map(
      ({ sentence, origin }) => `- ${sentence}${whereIs(origin)}`,
    );
    return new Fault(code, [failureSentence(result), ...collision].join("\n"), {
      place,
      frame: source.frame(place),
      hint: helpSentence(explained),
      remedies: helpGroups(explained).flatMap(({ lead, remedies }) =>
        remedies.map(({ sentence, changes }) => {
          const edits = editsOf(changes, program, statement);
          const where = whereWritten(edits, program.plan.value);
          return { lead, sentence: where ? `${sentence} ${where}` : sentence, edits };
        }),
      ),
    });
  }

  /** A statement that contradicts itself, where its exercise is named. */
  function contradiction({ exercise, sentence }: Mistake): Fault {
    const all = program.phases.flatMap((phase) => phase.exercises);
    const place = all.find(({ key }) => key === exercise)?.place ?? program.plan.source.at();
    return new Fault("week-contradiction", `The week cannot be stated: ${sentence}`, {
      place,
      hint: "No free time would help: mend what the exercise asks for.",
    });
  }
}

function datedSessions(weeks: readonly LaidWeek[], dosed: DosedProgram): Map<string, Session[]> {
  const sessions = new Map<string, Session[]>();
  for (const week of weeks) {
    for (const laid of week.sessions) {
      const session = sessionOf(laid, dosed, week.week + 1);
      sessions.set(laid.date, [...(sessions.get(laid.date) ?? []), session]);
    }
  }
  return sessions;
}

/** Told, for the booklet says how often each exercise is done. */
function lostBouts({ week, lost }: LaidWeek, program: Program): Fault[] {
  if (lost.length === 0) return [];
  const exercises = program.phases.flatMap((phase) => phase.exercises);
  const named = lost.map(({ exercise, bouts }) => {
    const title = exercises.find(({ key }) => key === exercise)?.card.card.title ?? exercise;
    return `“${title}” ${bouts === 1 ? "once" : `${bouts} times`}`;
  });
  const place = program.plan.source.at(["week", "free"]);
  return [
    new Fault(
      "bouts-lost",
      `What is left of week ${week + 1} has no room for all of it. Not in it: ${named.join(", ")}.`,
      {
        level: "warning",
        place,
        hint: "The days that are gone stay as they were issued. Free more time, or tell the client.",
      },
    ),
  ];
}

function sessionOf(laid: LaidSession, dosed: DosedProgram, week: number): Session {
  const all = dosed.weeks[week - 1]?.bouts ?? [];
  const bouts = laid.bouts.flatMap(({ exercise }) => all.filter(({ key }) => key === exercise));
  const seconds =
    bouts.reduce((sum, bout) => sum + bout.clockS, 0) +
    Math.max(0, bouts.length - 1) * dosed.changeoverS;
  return { date: laid.date, part: laid.part, minutes: Math.ceil(seconds / 60), bouts };
}

function scheduleOf(
  program: Program,
  statement: ProgramWeeks,
  sessions: ReadonlyMap<string, readonly Session[]>,
  result: Extract<LayoutResult, { status: "laid-out" }>,
): Schedule {
  const plan = program.plan.value;
  const weeks = Array.from({ length: program.weeks }, (_, week) => ({
    number: week + 1,
    away: program.awayWeeks.includes(week + 1),
    eased: program.easedWeeks.includes(week + 1),
    days: Array.from({ length: 7 }, (_, day): ScheduledDay => {
      const date = addDays(plan.starts, week * 7 + day);
      return {
        date,
        away: isAway(plan, date),
        events: statement.events.filter((event) => event.date === date).map(({ name }) => name),
        sessions: sessions.get(date) ?? [],
      };
    }),
  }));
  return { weeks, kept: keptClear(result, statement, program) };
}

/** Events before or after which days were kept free, each once for its weekday and side. */
function keptClear(
  result: Extract<LayoutResult, { status: "laid-out" }>,
  { events }: ProgramWeeks,
  program: Program,
): KeptClear[] {
  const titles = new Map(
    program.phases.flatMap((phase) =>
      phase.exercises.map(({ key, card }) => [key, card.card.title] as const),
    ),
  );
  const kept = new Map<string, KeptClear>();
  for (const { reason, exercises } of result.weeks.flatMap((week) => week.avoided)) {
    if (reason.kind !== "clear-before" && reason.kind !== "clear-after") continue;
    const weekday = weekdayOf(reason.event.date);
    const side = reason.kind === "clear-before" ? "before" : "after";
    const event = reason.event.name;
    const stated = events.some(
      ({ name, date, statesWork }) =>
        statesWork === true && name === event && date === reason.event.date,
    );
    const key = `${side} ${event} ${weekday}`;
    const here = exercises.flatMap((id) => titles.get(id) ?? []);
    const only = stated ? [...new Set([...(kept.get(key)?.only ?? []), ...here])] : undefined;
    kept.set(key, { event, weekday, side, only });
  }
  return [...kept.values()];
}

function whereIs(origin: unknown): string {
  const place = origin as Partial<Place> | undefined;
  return place?.file === undefined ? "" : ` (${place.file}:${place.line})`;
}
