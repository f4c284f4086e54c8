/** A dosed program as the layout takes it: its weeks, the client's days, and what each exercise asks of them. */

import { clockOf } from "../dose/short-session.ts";
import type { Bout, DosedProgram } from "../dose/types.ts";
import type { Plan } from "../plan/schema.ts";
import { countOf } from "../prescription/shape.ts";
import { isAway, takenParts } from "../program/away.ts";
import { freeDay } from "../program/free-time.ts";
import { hardness } from "../program/hardness.ts";
import { phasesIn } from "../program/phase-weeks.ts";
import { preferredDays } from "../program/preferred-days.ts";
import type { Program, ProgramExercise } from "../program/program.ts";
import { minutesToNext } from "../units/clock.ts";
import { addDays, weekdayOf } from "../units/dates.ts";
import { PARTS, type PartOfDay, WEEKDAYS } from "../units/day-parts.ts";
import type {
  PhaseWeeks,
  ProgramDay,
  ProgramWeeks,
  ProgramExercise as WeekBout,
} from "../week/program/program-types.ts";
import { datedEvents } from "./client-days.ts";
import { keptClearOf } from "./event-clear.ts";
import { groupHours, isHard } from "./spacing.ts";

/** The client's weeks as the layout needs them. */
export function weekStatement(program: Program, dosed: DosedProgram): ProgramWeeks {
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
    const taken = takenParts(plan, date);
    const { parts, path } = freeDay(plan, date);
    const usual = (part: PartOfDay) => {
      const seconds = Math.min(parts[part] ?? 0, 60 * minutesToNext(program.clock, part));
      // a session of n bouts has n − 1 changeovers; each bout is stated with one, so the slot gets one more
      return seconds > 0 ? Math.floor(seconds / 60) + changeover : 0;
    };
    const minutes = (part: PartOfDay) => (away || taken.has(part) ? 0 : usual(part));
    const ofParts = (count: (part: PartOfDay) => number) => ({
      morning: count("morning"),
      midday: count("midday"),
      evening: count("evening"),
    });
    const why = away ? "away" : [...taken.values()][0];
    return {
      free: ofParts(minutes),
      usual: ofParts(usual),
      taken: PARTS.filter((part) => away || taken.has(part)),
      origin: source.at(path),
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
    const here = new Set(bouts.map(({ key }) => key));
    const stated = bouts.flatMap((bout) => {
      const exercise = exercises.get(bout.key);
      return exercise ? [weekBout(bout, exercise, here, program, changeover)] : [];
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
  here: ReadonlySet<string>,
  program: Program,
  changeover: number,
): WeekBout {
  const plan = program.plan.value;
  const { card } = exercise.card;
  const sameSessionAs = exercise.sameSessionAs.find((key) => here.has(key));
  const liked = hardness(card, bout.effort).hard ? daysOff(plan, bout.week) : [];
  const days = liked.length > 0 ? liked : likedDays(program);
  const prefer = days.flatMap((day) => PARTS.map((_, part) => 3 * day + part));
  return {
    id: bout.key,
    name: `“${card.title}”`,
    movement: card.id,
    minutes: bout.minutes + changeover,
    minutesBySets: minutesBySets(bout, program, changeover),
    times: bout.frequency,
    recoveryHours: card.recovery / 3600,
    hard: isHard(exercise),
    keptClearOf: keptClearOf(exercise, bout.effort, program),
    groups: card.tissues,
    ...(prefer.length > 0 ? { preferredSlots: prefer } : {}),
    ...(sameSessionAs === undefined ? {} : { sameSessionAs }),
    ...(exercise.after.length > 0 ? { after: exercise.after } : {}),
    origins: { all: exercise.place },
  };
}

/** The days of every week that are liked best, from 0, the plan's first weekday. */
const likedDays = (program: Program): number[] =>
  preferredDays(program).map(
    (day) => (WEEKDAYS.indexOf(day) - weekdayOf(program.plan.value.starts) + 7) % 7,
  );

/** The days off in a week, from 1, where the client likes hard exercises on them; days from 0. */
function daysOff(plan: Plan, week: number): number[] {
  if (plan.week.rota?.hard_on_days_off !== true) return [];
  const days = Array.from({ length: 7 }, (_, day) => day);
  return days.filter((day) => freeDay(plan, addDays(plan.starts, 7 * (week - 1) + day)).off);
}

/** Minutes with fewer sets; none where the sets differ from each other. */
function minutesBySets(bout: Bout, program: Program, changeover: number): number[] {
  const alike = bout.reps === undefined || countOf(bout.reps).kind !== "each";
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
  return bouts.map(({ after = [], ...bout }) => {
    const strength = bout.hard && trains(bout) === "strength";
    const first = strength ? fresh.filter((id) => !comesAfter(id, bout.id, bouts)) : [];
    const before = [...new Set([...after, ...first])].filter((id) => here.has(id));
    return {
      ...bout,
      ...(before.length > 0 ? { after: before } : {}),
    };
  });
}

/** Whether an exercise is asked to come after another, by way of others too. */
function comesAfter(id: string, other: string, bouts: readonly WeekBout[]): boolean {
  const after = bouts.find((bout) => bout.id === id)?.after ?? [];
  return (
    after.includes(other) || after.some((next) => next !== id && comesAfter(next, other, bouts))
  );
}

const FRESH: readonly string[] = ["running", "power", "balance"];
