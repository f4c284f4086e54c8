/** Changes that let a program be laid out, as edits of the plan it was made from. */
import type { Edit, Value } from "../edits/edit.ts";
import type { Plan } from "../plan/schema.ts";
import { serialiseDose } from "../prescription/serialise.ts";
import type { Program } from "../program/program.ts";
import { WEEKDAYS } from "../units/day-parts.ts";
import { spansOf, weekSpanText } from "../units/week-span.ts";
import { timesInAWeek } from "../week/explain/apply.ts";
import type { Change } from "../week/explain/explain-types.ts";
import type {
  ProgramTimes,
  ProgramWeeks,
  ProgramExercise as WeekExercise,
} from "../week/program/program-types.ts";

/** Whether the plan has one place for the changes: more free time has none beside a rota or other weeks. */
export function canBeWritten(changes: readonly Change[], { week }: Plan): boolean {
  const isUsual = week.rota === undefined && week.other_weeks.length === 0;
  return isUsual || !changes.some(({ kind }) => kind === "open-slot" || kind === "more-minutes");
}

/** Edits of the plan that state the changes. A dose is only ever lowered, and somebody has to say why. */
export function editsOf(
  changes: readonly Change[],
  program: Program,
  statement: ProgramWeeks,
): Edit[] {
  return changes.flatMap((change) => editsOfOne(change, program, statement));
}

function editsOfOne(change: Change, program: Program, statement: ProgramWeeks): Edit[] {
  switch (change.kind) {
    case "open-slot":
    case "more-minutes": {
      const day = WEEKDAYS[change.weekday] ?? "mon";
      const { free } = program.plan.value.week;
      const now = Math.floor((free[day]?.[change.part] ?? 0) / 60);
      const minutes = change.kind === "more-minutes" ? now + change.minutes : change.minutes;
      const path = ["week", "free", day, change.part];
      return [{ kind: "set", path, value: `${minutes} min` }];
    }
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
