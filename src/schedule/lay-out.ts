/** Lays a dosed program out in the client's real week, and says in the plan's own terms when that cannot be done. */

import { clockOf } from "../dose/short-session.ts";
import type { Bout, DosedProgram } from "../dose/types.ts";
import { Fault, type Place, type WithFaults } from "../faults/fault.ts";
import type { Plan } from "../plan/schema.ts";
import { phasesIn } from "../program/phase-weeks.ts";
import { preferredDays } from "../program/preferred-days.ts";
import type { Program, ProgramExercise } from "../program/program.ts";
import { minutesToNext } from "../units/clock.ts";
import { addDays, weekdayOf } from "../units/dates.ts";
import { PARTS, type PartOfDay, WEEKDAYS } from "../units/day-parts.ts";
import { explainProgram } from "../week/explain/explain.ts";
import { failureSentence, helpSentence } from "../week/explain/explanation-words.ts";
import { layOutProgram } from "../week/program/program.ts";
import type {
  DatedEvent,
  LaidSession,
  LaidWeek,
  LayoutResult,
  PhaseWeeks,
  ProgramDay,
  ProgramWeeks,
  ProgramExercise as WeekBout,
} from "../week/program/program-types.ts";
import { type Issued, issuedBouts } from "./issued-bouts.ts";
import type { KeptClear, Schedule, ScheduledDay, Session } from "./schedule.ts";

/** From this recovery time on, a bout counts as hard: one a day at most, and kept clear of events. Common practice. */
const HARD_RECOVERY_S = 36 * 3600;

/**
 * The schedule, or undefined where the week is impossible. Where the client already has one, days that
 * are gone stay as they were issued, and of the others as little moves as can.
 *
 * Faults: week-impossible, week-unknown; bouts-lost, a warning.
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
  if (result.status !== "laid-out") {
    return { value: undefined, faults: [failure(result, statement, program)] };
  }
  const sessions = new Map<string, Session[]>();
  result.weeks.forEach((week) => {
    for (const laid of week.sessions) {
      const session = sessionOf(laid, dosed, week.week + 1);
      sessions.set(laid.date, [...(sessions.get(laid.date) ?? []), session]);
    }
  });
  const lost = result.weeks.flatMap((week) => lostBouts(week, program));
  return { value: scheduleOf(program, statement, sessions, result), faults: lost };
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

/** The client's weeks as the layout needs them. */
function weekStatement(program: Program, dosed: DosedProgram): ProgramWeeks {
  const plan = program.plan.value;
  const { source } = program.plan;
  const exercises = new Map(
    program.phases.flatMap((phase) => phase.exercises.map((one) => [one.key, one] as const)),
  );
  const changeover = Math.ceil(dosed.changeoverS / 60);
  return {
    firstDate: plan.starts,
    clock: program.clock,
    phases: phaseRuns(program, dosed, exercises, changeover),
    days: Array.from({ length: program.weeks * 7 }, (_, index) =>
      dayOf(addDays(plan.starts, index)),
    ),
    events: datedEvents(program),
    groupHours: groupHours(program),
    changeoverMinutes: changeover,
    ...(program.clinic.week.hard_days_in_row === undefined
      ? {}
      : { maxHardDaysInRow: program.clinic.week.hard_days_in_row }),
    origins: { freeMinutes: source.at(["week", "free"]) },
  };

  function dayOf(date: string): ProgramDay {
    const away = isAway(plan, date);
    const blocked = blockedParts(plan, date);
    const free = plan.week.free[WEEKDAYS[weekdayOf(date)] ?? "mon"];
    const usual = (part: PartOfDay) => {
      const seconds = Math.min(free?.[part] ?? 0, 60 * minutesToNext(program.clock, part));
      // a session of n bouts has n − 1 changeovers; each bout is stated with one, so the slot gets one more
      return seconds > 0 ? Math.floor(seconds / 60) + changeover : 0;
    };
    const minutes = (part: PartOfDay) => (away || blocked.has(part) ? 0 : usual(part));
    const ofParts = (count: (part: PartOfDay) => number) => ({
      morning: count("morning"),
      midday: count("midday"),
      evening: count("evening"),
    });
    const why = away ? "away" : [...blocked.values()][0];
    return {
      free: ofParts(minutes),
      usual: ofParts(usual),
      taken: PARTS.filter((part) => away || takenParts(plan, date).has(part)),
      origin: source.at(["week", "free"]),
      ...(why === undefined ? {} : { why }),
    };
  }
}

/** Runs of weeks in which the same phases are active: each keeps one pattern. */
function phaseRuns(
  program: Program,
  dosed: DosedProgram,
  exercises: ReadonlyMap<string, ProgramExercise>,
  changeover: number,
): PhaseWeeks[] {
  const runs: { id: string; weeks: { exercises: WeekBout[] }[] }[] = [];
  for (const { week, bouts } of dosed.weeks) {
    const id = phasesIn(program, week)
      .map((phase) => phase.id)
      .join(" + ");
    const stated = bouts.flatMap((bout) => {
      const exercise = exercises.get(bout.key);
      return exercise ? [weekBout(bout, exercise, program, changeover)] : [];
    });
    const open = runs.at(-1);
    if (open && open.id === id) open.weeks.push({ exercises: inOrder(stated, exercises) });
    else runs.push({ id, weeks: [{ exercises: inOrder(stated, exercises) }] });
  }
  return runs;
}

function weekBout(
  bout: Bout,
  exercise: ProgramExercise,
  program: Program,
  changeover: number,
): WeekBout {
  const plan = program.plan.value;
  const { card } = exercise.card;
  const prefer = preferredDays(program).flatMap((day) => {
    const offset = (WEEKDAYS.indexOf(day) - weekdayOf(plan.starts) + 7) % 7;
    return PARTS.map((_, part) => 3 * offset + part);
  });
  return {
    id: bout.key,
    name: card.title,
    movement: card.id,
    minutes: bout.minutes + changeover,
    minutesBySets: minutesBySets(bout, program, changeover),
    times: bout.frequency,
    recoveryHours: card.recovery / 3600,
    hard: isHard(exercise),
    groups: card.tissues,
    ...(prefer.length > 0 ? { preferredSlots: prefer } : {}),
    ...(exercise.sameSessionAs === undefined ? {} : { sameSessionAs: exercise.sameSessionAs }),
    ...(exercise.after.length > 0 ? { after: exercise.after } : {}),
    origins: { all: exercise.place },
  };
}

/** Minutes with fewer sets; none where the sets differ from each other. */
function minutesBySets(bout: Bout, program: Program, changeover: number): number[] {
  const [first] = bout.reps ?? [];
  const alike = (bout.reps ?? []).every(
    (reps) => reps.low === first?.low && reps.high === first.high,
  );
  return Array.from({ length: alike ? bout.sets - 1 : 0 }, (_, less) => {
    const seconds = clockOf(bout, less + 1, program.clinic.dosing);
    return Math.ceil(seconds / 60) + changeover;
  });
}

/** Running drills, jumps and balance come before heavy strength, while the client is fresh. Common practice. */
function inOrder(
  bouts: readonly WeekBout[],
  exercises: ReadonlyMap<string, ProgramExercise>,
): WeekBout[] {
  const trains = ({ id }: WeekBout) => exercises.get(id)?.card.card.trains ?? "";
  const here = new Set(bouts.map(({ id }) => id));
  const fresh = bouts.filter((bout) => FRESH.includes(trains(bout))).map(({ id }) => id);
  return bouts.map(({ after = [], sameSessionAs, ...bout }) => {
    const strength = bout.hard && trains(bout) === "strength";
    const before = [...new Set([...after, ...(strength ? fresh : [])])].filter((id) =>
      here.has(id),
    );
    return {
      ...bout,
      ...(before.length > 0 ? { after: before } : {}),
      ...(sameSessionAs !== undefined && here.has(sameSessionAs) ? { sameSessionAs } : {}),
    };
  });
}

const FRESH: readonly string[] = ["running", "power", "balance"];

const isHard = ({ card }: ProgramExercise): boolean => card.card.recovery >= HARD_RECOVERY_S;

/** Hours between hard bouts of one main tissue in different sessions: the least recovery of its cards. */
function groupHours(program: Program): Record<string, number> {
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

/** Events on their dates, from a week before the program to a week after it. */
function datedEvents(program: Program): DatedEvent[] {
  const plan = program.plan.value;
  const first = addDays(plan.starts, -7);
  const days = program.weeks * 7 + 14;
  return plan.week.events.flatMap((event, at) => {
    const dates =
      event.on ??
      Array.from({ length: days }, (_, index) => addDays(first, index)).filter(
        (date) => WEEKDAYS[weekdayOf(date)] === event.day,
      );
    return dates
      .filter((date) => date >= first && date < addDays(first, days))
      .map((date) => ({
        id: `event-${at}`,
        name: event.what,
        date,
        part: event.part,
        hard: event.hard,
        groups: event.tissues,
        origin: program.plan.source.at(["week", "events", at]),
        ...(event.clear_before === undefined
          ? {}
          : { clearBeforeHours: event.clear_before / 3600 }),
      }));
  });
}

function blockedParts(plan: Plan, date: string): Map<PartOfDay, string> {
  const weekday = WEEKDAYS[weekdayOf(date)];
  return new Map(
    plan.week.events
      .filter(({ blocks, day, on }) => blocks && (day === weekday || on?.includes(date)))
      .map(({ part, what }) => [part, what] as const),
  );
}

/** Parts of a day in which an event leaves no session: one that blocks it, or a hard one. */
function takenParts(plan: Plan, date: string): Set<PartOfDay> {
  const weekday = WEEKDAYS[weekdayOf(date)];
  return new Set(
    plan.week.events
      .filter(({ day, on }) => day === weekday || on?.includes(date))
      .filter(({ blocks, hard }) => blocks || hard)
      .map(({ part }) => part),
  );
}

function isAway(plan: Plan, date: string): boolean {
  return plan.week.away.some((away) =>
    typeof away === "string" ? away === date : date >= away.from && date <= away.to,
  );
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
  return { weeks, kept: keptClear(result) };
}

/** Events for which days were kept free, each once for its weekday. */
function keptClear(result: Extract<LayoutResult, { status: "laid-out" }>): KeptClear[] {
  const kept = new Map<string, KeptClear>();
  for (const { reason } of result.weeks.flatMap((week) => week.avoided)) {
    if (reason.kind !== "clear-before" && reason.kind !== "clear-after") continue;
    const weekday = weekdayOf(reason.event.date);
    kept.set(`${reason.event.name} ${weekday}`, { event: reason.event.name, weekday });
  }
  return [...kept.values()];
}

/** Why the program cannot be laid out: what collides in its first week without a place, and what would help. */
function failure(
  result: Exclude<LayoutResult, { status: "laid-out" }>,
  statement: ProgramWeeks,
  program: Program,
): Fault {
  const { source } = program.plan;
  const place = source.at(["week", "free"]);
  if (result.status === "malformed") {
    const says = result.mistakes.map(({ sentence }) => sentence).join(" ");
    return new Fault("week-impossible", `The week cannot be laid out. ${says}`, { place });
  }
  const explained = explainProgram(statement, result);
  const collision = explained.collision.map(
    ({ sentence, origin }) => `- ${sentence}${whereIs(origin)}`,
  );
  return new Fault(
    result.status === "unknown" ? "week-unknown" : "week-impossible",
    [failureSentence(result), ...collision].join("\n"),
    { place, frame: source.frame(place), hint: helpSentence(explained) },
  );
}

function whereIs(origin: unknown): string {
  const place = origin as Partial<Place> | undefined;
  return place?.file === undefined ? "" : ` (${place.file}:${place.line})`;
}
