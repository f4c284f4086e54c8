/** The least changes of a plan that make an impossible week possible. */

import { PARTS } from "../../units/day-parts.ts";
import { DAYS, slotOf, type WeekExercise, type WeekProblem } from "../search/problem.ts";
import { solveWeek } from "../search/solve.ts";
import { smallestCollision } from "./collision.ts";
import type { Change, Remedy, RemedyCosts } from "./explain-types.ts";
import { listed, nameOf, slotName, timesWord } from "./requirement-words.ts";
import { weekWithOnly } from "./requirements.ts";

/** Common practice: ask for minutes first, for another evening next, for less work last. */
const DEFAULT_COSTS: RemedyCosts = { openSlot: 3, fiveMinutes: 1, boutLess: 5, hardDay: 4 };

/** Most remedies to name. */
const MOST_REMEDIES = 6;
const MOST_MINUTES = 15;
const MOST_LONGER = 90;
const PAIR_QUESTIONS = 200;
const MOST_FEWER = 3;
const MOST_CHANGES = 6;
const MOST_HARD_DAYS_MORE = 2;

interface Priced {
  readonly change: Change;
  readonly cost: number;
}

/**
 * Changes that were each shown to help, cheapest first: single changes, or pairs where no single
 * one helps, or else one set of changes found collision by collision. Recovery hours and hours kept clear stay as they are.
 */
export function findRemedies(problem: WeekProblem, nodeLimit: number): Remedy[] {
  const costs = DEFAULT_COSTS;
  const singles = allChanges(problem, costs).sort((a, b) => a.cost - b.cost);
  const remedies: Remedy[] = [];
  for (const one of singles) {
    if (remedies.length >= MOST_REMEDIES) break;
    if (isNeedless(one.change, remedies)) continue;
    if (helps(problem, [one.change], nodeLimit)) {
      const change = leastOpening(problem, one.change, nodeLimit);
      remedies.push(remedy([{ ...one, change }], problem));
    }
  }
  if (remedies.length > 0) return remedies;
  const pairs = singles
    .flatMap((a, i) => singles.slice(i + 1).map((b) => [a, b] as const))
    .filter(([a, b]) => !touchesSame(a.change, b.change))
    .map((pair) => ({ pair, cost: pair[0].cost + pair[1].cost }))
    .sort((a, b) => a.cost - b.cost)
    .slice(0, PAIR_QUESTIONS);
  for (const { pair } of pairs) {
    if (remedies.length >= MOST_REMEDIES) break;
    const changes = pair.map((one) => one.change);
    if (helps(problem, changes, nodeLimit)) remedies.push(remedy(pair, problem));
  }
  if (remedies.length > 0) return remedies;
  const several = oneByOne(problem, singles, nodeLimit);
  if (several !== undefined) return [remedy(several, problem)];
  const longer = longerEverywhere(problem, costs, nodeLimit);
  return longer === undefined ? [] : [longer];
}

/** The same more minutes in every open slot, the least that help. */
function longerEverywhere(
  problem: WeekProblem,
  costs: RemedyCosts,
  nodeLimit: number,
): Remedy | undefined {
  const open = problem.freeMinutes.flatMap((free, t) => (free > 0 ? [t] : []));
  for (let minutes = 5; minutes <= MOST_LONGER; minutes += 5) {
    const changes = open.map((t): Change => {
      const part = PARTS[t % 3] ?? "morning";
      return { kind: "more-minutes", day: Math.floor(t / 3), part, minutes };
    });
    if (!helps(problem, changes, nodeLimit)) continue;
    return {
      changes,
      cost: (costs.fiveMinutes * minutes * open.length) / 5,
      sentence: `Allow ${minutes} minutes more each time.`,
    };
  }
  return undefined;
}

/** Mends one collision after the other, each with its cheapest change; not always the least. */
function oneByOne(
  problem: WeekProblem,
  singles: readonly Priced[],
  nodeLimit: number,
): readonly Priced[] | undefined {
  const made: Priced[] = [];
  let changed = problem;
  while (made.length < MOST_CHANGES) {
    const core = weekWithOnly(changed, smallestCollision(changed, nodeLimit));
    const useful = singles.filter((one) => !made.some((m) => touchesSame(m.change, one.change)));
    const found = useful.find((one) => helps(core, [one.change], nodeLimit));
    if (found === undefined) return undefined;
    made.push(found);
    changed = withChange(changed, found.change);
    if (helps(changed, [], nodeLimit)) return made;
  }
  return undefined;
}

/** The problem with changes made. */
export function withChanges(problem: WeekProblem, changes: readonly Change[]): WeekProblem {
  let changed = problem;
  for (const change of changes) changed = withChange(changed, change);
  return changed;
}

function withChange(problem: WeekProblem, change: Change): WeekProblem {
  switch (change.kind) {
    case "hard-day-more":
      return { ...problem, maxHardDaysInRow: change.days };
    case "bout-less":
      return {
        ...problem,
        exercises: problem.exercises.flatMap((one): WeekExercise[] =>
          one.id === change.exercise ? fewer(one, change.times) : [one],
        ),
      };
    default: {
      const slot = slotOf(change.day, change.part);
      const freeMinutes = problem.freeMinutes.map((free, t) =>
        t === slot ? free + change.minutes : free,
      );
      return { ...problem, freeMinutes };
    }
  }
}

function fewer(one: WeekExercise, times: number): WeekExercise[] {
  if ("perDay" in one.times) return [{ ...one, times: { perDay: times } }];
  return [{ ...one, times: { perWeek: times } }];
}

function allChanges(problem: WeekProblem, costs: RemedyCosts): Priced[] {
  const changes: Priced[] = [];
  const minutes = Math.max(...problem.freeMinutes, ...problem.exercises.map((one) => one.minutes));
  const usual = PARTS.map((_, part) =>
    problem.freeMinutes.some((free, t) => free > 0 && t % 3 === part),
  );
  for (let day = 0; day < DAYS; day++) {
    PARTS.forEach((part, i) => {
      const free = problem.freeMinutes[3 * day + i] ?? 0;
      if (free === 0) {
        // A part of the day in which the client never has time is asked for last.
        const cost = costs.openSlot + (usual[i] ? 0 : 0.5);
        changes.push({ change: { kind: "open-slot", day, part, minutes }, cost });
        return;
      }
      for (let more = 5; more <= MOST_MINUTES; more += 5) {
        const cost = (costs.fiveMinutes * more) / 5;
        changes.push({ change: { kind: "more-minutes", day, part, minutes: more }, cost });
      }
    });
  }
  for (const one of problem.exercises) {
    const now =
      "perWeek" in one.times ? one.times.perWeek : "perDay" in one.times ? one.times.perDay : 0;
    for (let less = 1; less <= MOST_FEWER && now - less >= 1; less++) {
      const change: Change = { kind: "bout-less", exercise: one.id, times: now - less };
      changes.push({ change, cost: costs.boutLess * less });
    }
  }
  if (problem.maxHardDaysInRow !== undefined) {
    for (let more = 1; more <= MOST_HARD_DAYS_MORE; more++) {
      const days = problem.maxHardDaysInRow + more;
      changes.push({ change: { kind: "hard-day-more", days }, cost: costs.hardDay * more });
    }
  }
  return changes;
}

/** A slot opened for no more minutes than help, in steps of five. */
function leastOpening(problem: WeekProblem, change: Change, nodeLimit: number): Change {
  if (change.kind !== "open-slot") return change;
  const spare = problem.changeoverMinutes ?? 0;
  for (let minutes = 5; minutes + spare < change.minutes; minutes += 5) {
    const less: Change = { ...change, minutes: minutes + spare };
    if (helps(problem, [less], nodeLimit)) return less;
  }
  return change;
}

function helps(problem: WeekProblem, changes: readonly Change[], nodeLimit: number): boolean {
  const { previous: _, aim: _aim, ...rest } = withChanges(problem, changes);
  return solveWeek(rest, { nodeLimit, any: true }).status === "solved";
}

/** More of a change of which less was already enough. */
function isNeedless(change: Change, remedies: readonly Remedy[]): boolean {
  return remedies.some(({ changes }) => changes.some((known) => touchesSame(known, change)));
}

/** Whether two changes are of the same thing, and differ only in how much. */
function touchesSame(a: Change, b: Change): boolean {
  if (a.kind !== b.kind) return false;
  if (a.kind === "bout-less" && b.kind === "bout-less") return a.exercise === b.exercise;
  if (a.kind === "more-minutes" && b.kind === "more-minutes") {
    return a.day === b.day && a.part === b.part;
  }
  return a.kind === "hard-day-more";
}

function remedy(priced: readonly Priced[], problem: WeekProblem): Remedy {
  const changes = priced.map((one) => one.change);
  const words = listed(changes.map((change) => changeWords(change, problem)));
  return {
    changes,
    cost: priced.reduce((sum, one) => sum + one.cost, 0),
    sentence: `${words.charAt(0).toUpperCase()}${words.slice(1)}.`,
  };
}

function changeWords(change: Change, problem: WeekProblem): string {
  switch (change.kind) {
    case "open-slot":
      return `open ${slotName(change.day, change.part, problem.firstWeekday)} for ${Math.ceil(change.minutes - (problem.changeoverMinutes ?? 0))} minutes`;
    case "more-minutes":
      return `allow ${change.minutes} minutes more on ${slotName(change.day, change.part, problem.firstWeekday)}`;
    case "hard-day-more":
      return `allow ${change.days} hard days in a row`;
    default: {
      const one = problem.exercises.find((each) => each.id === change.exercise);
      const often = one !== undefined && "perDay" in one.times ? "a day" : "a week";
      return `do ${one === undefined ? change.exercise : nameOf(one)} ${timesWord(change.times)} ${often}`;
    }
  }
}
