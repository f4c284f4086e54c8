/** What can be changed in a plan, by how much, and at what cost. */
import { minutesInPart } from "../../units/clock.ts";
import type { PartOfDay } from "../../units/day-parts.ts";
import type { ProgramExercise, ProgramTimes, ProgramWeeks } from "../program/program-types.ts";
import { isTaken, timesInAWeek, usualMinutes, weeklyParts } from "./apply.ts";
import { COSTS, MOST_MORE_MINUTES, STEP_MINUTES } from "./costs.ts";
import type { Change } from "./explain-types.ts";

export interface Priced {
  readonly change: Change;
  readonly cost: number;
}

/** One thing that can be changed; its steps, the cheapest first. Of each only one is taken. */
export type Lever = readonly [Priced, ...Priced[]];

/**
 * Everything that can be changed. Doses change in every week that has the exercise; slots are
 * opened for as long as can be.
 */
export function leversOf(program: ProgramWeeks): Lever[] {
  return [...timeLevers(program), ...doseLevers(program)];
}

function timeLevers(program: ProgramWeeks): Lever[] {
  const parts = weeklyParts(program);
  const spare = program.changeoverMinutes ?? 0;
  const longest = Math.max(
    ...program.days.flatMap((day) => Object.values(usualMinutes(day))),
    ...program.phases.flatMap(({ weeks }) =>
      weeks.flatMap(({ exercises }) => exercises.map(({ minutes }) => minutes + spare)),
    ),
  );
  const usual = (part: PartOfDay) =>
    parts.some(
      (each) => each.part === part && each.days.some((day) => usualMinutes(day)[part] > 0),
    );
  return parts.flatMap(({ weekday, part, days }): Lever[] => {
    const levers: Lever[] = [];
    const room = minutesInPart(program.clock, part);
    const wanted = Math.ceil((longest - spare) / STEP_MINUTES) * STEP_MINUTES;
    const minutes = Math.min(wanted, room);
    if (minutes > 0 && days.some((day) => usualMinutes(day)[part] === 0 && !isTaken(day, part))) {
      const cost = usual(part) ? COSTS.openSlot : COSTS.openUnusualSlot;
      levers.push([{ change: { kind: "open-slot", weekday, part, minutes }, cost }]);
    }
    const now = Math.max(...days.map((day) => usualMinutes(day)[part])) - spare;
    const steps: Priced[] = [];
    for (let more = STEP_MINUTES; more <= MOST_MORE_MINUTES; more += STEP_MINUTES) {
      if (now <= 0 || now + more > room) break;
      const cost = (COSTS.fiveMinutes * more) / STEP_MINUTES;
      steps.push({ change: { kind: "more-minutes", weekday, part, minutes: more }, cost });
    }
    return [...levers, ...asLever(steps)];
  });
}

function doseLevers(program: ProgramWeeks): Lever[] {
  const weeks = program.phases.flatMap((phase) => phase.weeks);
  const ids = [...new Set(weeks.flatMap(({ exercises }) => exercises.map(({ id }) => id)))];
  return ids.flatMap((exercise) => {
    const found = weeks.map(({ exercises }) => exercises.find(({ id }) => id === exercise));
    const within = found.flatMap((one, week) => (one === undefined ? [] : [week]));
    const all = found.filter((one) => one !== undefined);
    const often = lessOften(all).map(
      (times, step): Priced => ({
        change: { kind: "less-often", exercise, times, weeks: within },
        cost: COSTS.timeLess * (step + 1),
      }),
    );
    const most = Math.max(...all.map((one) => one.minutesBySets?.length ?? 0));
    const sets = Array.from({ length: most }, (_, step): Priced => {
      const change: Change = { kind: "fewer-sets", exercise, sets: most - step, weeks: within };
      return { change, cost: COSTS.setLess * (step + 1) };
    });
    return [...asLever(sets), ...asLever(often)];
  });
}

/** The next ways down from the most frequent that any week asks for. */
function lessOften(all: readonly ProgramExercise[]): ProgramTimes[] {
  const most = all.reduce<ProgramTimes>(
    (best, { times }) => (timesInAWeek(times) > timesInAWeek(best) ? times : best),
    { perWeek: 1 },
  );
  const ways: ProgramTimes[] = [];
  if ("perDay" in most) for (let n = most.perDay - 1; n >= 1; n--) ways.push({ perDay: n });
  const from = Math.min(7, Math.ceil(timesInAWeek(most)));
  for (let n = from - 1; n >= 1; n--) ways.push({ perWeek: n });
  return ways;
}

const asLever = ([first, ...rest]: readonly Priced[]): Lever[] =>
  first === undefined ? [] : [[first, ...rest]];
