/** Lays out a whole program, week after week, on real dates. */

import { problemMistakes } from "../search/check-problem.ts";
import type { Tally } from "../search/counter.ts";
import { DAYS, type Placement } from "../search/problem.ts";
import type { SolveOptions } from "../search/solve.ts";
import { programMistakes } from "./check-program.ts";
import { laidWeek } from "./laid-week.ts";
import { type Pattern, phasePattern, turn } from "./pattern.ts";
import { placeWeek } from "./place-week.ts";
import { boutsBefore, type Placed } from "./placed.ts";
import type { LaidWeek, LayoutFailure, LayoutResult, ProgramWeeks } from "./program-types.ts";
import { boutsSeenFrom, type ProgramWeek, programWeeks } from "./program-weeks.ts";

/**
 * Lays out every week of a program: one pattern for each phase, and weeks that differ from it
 * repaired with the fewest moved bouts. Recovery holds across the end of the week and from phase
 * to phase. What the client already has stays where it can. The first week that cannot be laid out
 * ends the work: the answer says which, and holds its problem.
 *
 * @param tally counts the nodes searched, for a caller who asks more than once
 */
export function layOutProgram(program: ProgramWeeks, tally?: Tally): LayoutResult {
  const mistakes = programMistakes(program);
  if (mistakes.length > 0) return { status: "malformed", mistakes };
  const weekly = programWeeks(program, 0).flatMap(({ problem }) => problemMistakes(problem));
  if (weekly.length > 0) {
    const once = new Map(weekly.map((mistake) => [mistake.sentence, mistake]));
    return { status: "malformed", mistakes: [...once.values()] };
  }
  const first = layOutFrom(program, 0, tally);
  if (first.status === "laid-out") return first;
  // What is done every n days may begin on another day of the course.
  for (let offset = 1; offset < longestInterval(program); offset++) {
    const later = layOutFrom(program, offset, tally);
    if (later.status === "laid-out") return later;
  }
  return first;
}

function layOutFrom(program: ProgramWeeks, offset: number, tally?: Tally): LayoutResult {
  const weeks = programWeeks(program, offset);
  const options: SolveOptions = {
    ...(program.nodeLimit === undefined ? {} : { nodeLimit: program.nodeLimit }),
    ...(tally === undefined ? {} : { tally }),
  };
  const placed: Placed[] = [];
  // One pattern for each phase; where something is done every second day, one for each turn.
  let patterns = new Map<string, Pattern | undefined>();
  let last: Placement | undefined;
  let stop: LayoutFailure | undefined;
  for (const [index, week] of weeks.entries()) {
    const phase = weeks.slice(index).filter((each) => each.phase === week.phase && !isEmpty(each));
    if (weeks[index - 1]?.phase !== week.phase) patterns = new Map();
    if (week.issued === undefined && !isEmpty(week) && !patterns.has(turn(week))) {
      const alike = phase.filter((each) => turn(each) === turn(week));
      const other = [...patterns.values()].at(-1);
      const before = boutsBefore(weeks, placed, index);
      const between =
        other === undefined ? [] : boutsSeenFrom(week.problem.exercises, other.placement, -1);
      const near = last ?? placed[index - 1]?.placement;
      const found = phasePattern(alike, before, between, near, options);
      patterns.set(turn(week), found);
      last = found?.placement ?? last;
    }
    stop = placeWeek(weeks, placed, index, patterns, options);
    if (stop !== undefined) break;
  }
  const laid = placed.map((one, index): LaidWeek | undefined => {
    const week = weeks[index];
    const days = program.days.slice(DAYS * index, DAYS * (index + 1));
    return week && laidWeek(week, one, days);
  });
  const done = laid.filter((week) => week !== undefined);
  return stop === undefined ? { status: "laid-out", weeks: done } : { ...stop, weeks: done };
}

/** A week without exercises has no pattern, and is none. */
const isEmpty = ({ problem }: ProgramWeek): boolean => problem.exercises.length === 0;

function longestInterval(program: ProgramWeeks): number {
  let longest = 1;
  for (const { weeks } of program.phases) {
    for (const { exercises } of weeks) {
      for (const { times } of exercises) {
        if ("everyDays" in times) longest = Math.max(longest, times.everyDays);
      }
    }
  }
  return longest;
}
