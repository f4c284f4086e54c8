/** Changes that let a program be laid out, as edits of the plan it was made from. */
import { sayList } from "../dose/findings.ts";
import type { Edit, Path, Value } from "../edits/edit.ts";
import type { Plan } from "../plan/schema.ts";
import { serialiseDose } from "../prescription/serialise.ts";
import { freeDay } from "../program/free-time.ts";
import type { Program } from "../program/program.ts";
import { addDays, weekdayOf } from "../units/dates.ts";
import { type PartOfDay, WEEKDAYS } from "../units/day-parts.ts";
import { spansOf, weekSpanText } from "../units/week-span.ts";
import { timesInAWeek } from "../week/explain/apply.ts";
import type { Change } from "../week/explain/explain-types.ts";
import type {
  ProgramTimes,
  ProgramWeeks,
  ProgramExercise as WeekExercise,
} from "../week/program/program-types.ts";

type TimeChange = Extract<Change, { kind: "open-slot" | "more-minutes" }>;

/** Edits of the plan that state the changes. A dose is only ever lowered, and somebody has to say why. */
export function editsOf(
  changes: readonly Change[],
  program: Program,
  statement: ProgramWeeks,
): Edit[] {
  const isTime = (change: Change): change is TimeChange =>
    change.kind === "open-slot" || change.kind === "more-minutes";
  return [
    ...freeTime(changes.filter(isTime), program),
    ...changes.flatMap((change) => (isTime(change) ? [] : doseEdits(change, program, statement))),
  ];
}

/**
 * The changes made one after the other in each place of the plan. Where weekdays share one, as the days
 * of a rota do, it gets the most that one of them asks for.
 */
function freeTime(changes: readonly TimeChange[], program: Program): Edit[] {
  const most = new Map<string, FreePlace>();
  for (const { weekday, part } of changes) {
    const same = changes.filter((one) => one.weekday === weekday && one.part === part);
    for (const { path, minutes: now } of placesOf(weekday, part, program)) {
      const minutes = same.reduce((sum, change) => {
        if (change.kind === "open-slot") return sum > 0 ? sum : change.minutes;
        return sum > 0 ? sum + change.minutes : 0;
      }, now);
      const known = most.get(path.join("/"))?.minutes ?? now;
      if (minutes > known) most.set(path.join("/"), { path, minutes });
    }
  }
  return [...most.values()].map(({ path, minutes }) => ({
    kind: "set",
    path,
    value: `${minutes} min`,
  }));
}

function doseEdits(
  change: Exclude<Change, TimeChange>,
  program: Program,
  statement: ProgramWeeks,
): Edit[] {
  switch (change.kind) {
    case "fewer-sets":
      return redoses(change, program, statement, { sets: change.sets }, (one) => {
        return one.minutesBySets?.[change.sets - 1] !== undefined;
      });
    case "less-often":
      return redoses(change, program, statement, frequencyForm(change.times), (one) => {
        return timesInAWeek(change.times) < timesInAWeek(one.times);
      });
  }
}

/** Free time of a part of a weekday, as far as the plan says it of one of the program's days. */
interface FreePlace {
  readonly path: Path;
  readonly minutes: number;
}

/** Every place of the plan that says how much time a part of a weekday has: the usual week, others, a rota. */
function placesOf(weekday: number, part: PartOfDay, { plan, weeks }: Program): FreePlace[] {
  const day = WEEKDAYS[weekday] ?? "mon";
  const places = new Map<string, FreePlace>();
  for (let at = 0; at < 7 * weeks; at += 1) {
    const date = addDays(plan.value.starts, at);
    if (weekdayOf(date) !== weekday) continue;
    const { parts, path } = freeDay(plan.value, date);
    const whole = isOfRota(path) ? [...path, part] : [...path, day, part];
    places.set(whole.join("/"), { path: whole, minutes: Math.floor((parts[part] ?? 0) / 60) });
  }
  return [...places.values()];
}

const isOfRota = (path: Path): boolean => path[1] === "rota";

/**
 * Where edits write free time, where that is not the usual week alone: a rota has it for all its days of
 * work or off. Undefined where there is nothing to say.
 */
export function whereWritten(edits: readonly Edit[], { week }: Plan): string | undefined {
  const named = edits.flatMap(({ path }): string[] => {
    if (path[0] !== "week") return [];
    if (path[1] === "other_weeks") {
      const from = week.other_weeks[Number(path[2])]?.from ?? "";
      return [`the other weeks from ${from} on`];
    }
    if (!isOfRota(path)) return ["the usual week"];
    return [path[2] === "free_off" ? "every day off of the rota" : "every day of work of the rota"];
  });
  const places = [...new Set(named)];
  return places.every((place) => place === "the usual week")
    ? undefined
    : `This is written for ${sayList(places)}.`;
}

/** A dose of the plan for each run of weeks of the exercise's phase in which it is less than now. */
function redoses(
  { exercise: key, weeks }: { readonly exercise: string; readonly weeks: readonly number[] },
  program: Program,
  statement: ProgramWeeks,
  dose: Readonly<Record<string, Value>>,
  isLess: (one: WeekExercise) => boolean,
): Edit[] {
  const stated = statement.phases.flatMap((phase) => phase.weeks);
  const phase = program.phases.find(({ exercises }) => exercises.some((one) => one.key === key));
  const exercise = phase?.exercises.find((one) => one.key === key);
  if (phase === undefined || exercise === undefined) return [];
  const meant = weeks.filter((week) =>
    stated[week]?.exercises.some((one) => one.id === key && isLess(one)),
  );
  const reps = exercise.doses.flatMap((one) => one?.dose.reps ?? []);
  const isList = exercise.doses.some((one) => (one?.dose.reps?.length ?? 0) > 1);
  // so many repetitions for each set in turn would not go with another number of sets
  const form = isList && dose.sets !== undefined ? alike(reps[0]) : {};
  const ofPhase = meant.flatMap((week) => {
    const course = program.courseWeeks[week];
    return course === undefined ? [] : [course - phase.courseWeek + 1];
  });
  return spansOf(ofPhase).map((span) => ({
    kind: "append",
    path: ["redose"],
    value: {
      card: exercise.card.card.id,
      phase: phase.id,
      weeks: weekSpanText(span),
      why: null,
      dose: { ...dose, ...form },
    },
  }));
}

function alike(reps: { readonly low: number; readonly high: number } | undefined) {
  return reps === undefined ? {} : (serialiseDose({ reps: [reps] }) as Record<string, Value>);
}

function frequencyForm(times: ProgramTimes): Readonly<Record<string, Value>> {
  if ("perWeek" in times) return { per_week: times.perWeek };
  return "perDay" in times ? { per_day: times.perDay } : { every: `${times.everyDays} days` };
}
