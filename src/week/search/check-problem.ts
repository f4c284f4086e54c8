/** Whether a week's problem contradicts itself before anything is searched. */
import { DAYS, type Mistake, SLOTS, type WeekExercise, type WeekProblem } from "./problem.ts";

/** Everything that is wrong with the statement; empty for a problem that can be searched. */
export function problemMistakes(problem: WeekProblem): Mistake[] {
  const ids = new Set(problem.exercises.map((one) => one.id));
  const events = new Set(problem.events.map((event) => event.id));
  const mistakes: Mistake[] = [];
  if (problem.exercises.length > 30) {
    mistakes.push({ kind: "wrong-number", sentence: "A week holds at most 30 exercises." });
  }
  if (
    problem.freeMinutes.length !== SLOTS ||
    problem.freeMinutes.some((free) => !Number.isFinite(free) || free < 0)
  ) {
    mistakes.push({
      kind: "wrong-number",
      sentence: "Free minutes are 21 numbers, three for each day, none below 0.",
    });
  }
  const seen = new Set<string>();
  for (const one of problem.exercises) {
    if (seen.has(one.id)) {
      mistakes.push(mistake("duplicate-id", one, "is named twice in one week"));
    }
    seen.add(one.id);
    mistakes.push(...numberMistakes(one));
    for (const other of [...(one.after ?? []), ...optional(one.sameSessionAs)]) {
      if (!ids.has(other)) {
        mistakes.push(
          mistake("unknown-exercise", one, `names “${other}”, which is not in the week`),
        );
      }
    }
    for (const { events: named } of one.clearBefore ?? []) {
      if (typeof named === "string") continue;
      for (const id of named.filter((event) => !events.has(event))) {
        mistakes.push(mistake("unknown-event", one, `names the event “${id}”, which is not there`));
      }
    }
  }
  const circle = orderCircle(problem.exercises);
  if (circle !== undefined) {
    mistakes.push(mistake("order-circle", circle, "comes after itself, by way of the others"));
  }
  return mistakes;
}

function numberMistakes(one: WeekExercise): Mistake[] {
  const wrong: string[] = [];
  if (!(one.minutes > 0 && Number.isFinite(one.minutes))) wrong.push("its minutes");
  if (!(one.recoveryHours >= 0 && Number.isFinite(one.recoveryHours))) wrong.push("its recovery");
  if (!timesAreRight(one.times)) wrong.push("how often it is done");
  return wrong.map((what) => mistake("wrong-number", one, `has a number that cannot be: ${what}`));
}

function timesAreRight(times: WeekExercise["times"]): boolean {
  if ("perWeek" in times) return isWhole(times.perWeek, 1, DAYS);
  if ("perDay" in times) {
    return isWhole(times.perDay, 1, 3) && (times.days ?? []).every((day) => isWhole(day, 0, 6));
  }
  if ("onDays" in times) return times.onDays.every((day) => isWhole(day, 0, DAYS - 1));
  return isWhole(times.everyDays, 1, 365) && isWhole(times.firstDay, 0, times.everyDays - 1);
}

function isWhole(value: number, least: number, most: number): boolean {
  return Number.isInteger(value) && value >= least && value <= most;
}

/** An exercise that comes after itself, by way of others; undefined where there is none. */
export function orderCircle(exercises: readonly WeekExercise[]): WeekExercise | undefined {
  const byId = new Map(exercises.map((one) => [one.id, one]));
  const reaches = (from: WeekExercise, goal: string, seen: Set<string>): boolean =>
    (from.after ?? []).some((id) => {
      if (id === goal) return true;
      const next = byId.get(id);
      if (next === undefined || seen.has(id)) return false;
      seen.add(id);
      return reaches(next, goal, seen);
    });
  return exercises.find((one) => reaches(one, one.id, new Set()));
}

function mistake(kind: Mistake["kind"], one: WeekExercise, what: string): Mistake {
  return { kind, exercise: one.id, sentence: `${one.name ?? one.id} ${what}.` };
}

function optional<T>(value: T | undefined): T[] {
  return value === undefined ? [] : [value];
}
