/** What of an exercise has been done so far, set by set, for the diary. */
import { isInSet, isWork, sameSet } from "./places.ts";
import type { Passed, Run } from "./run.ts";
import type { Segment } from "./segments.ts";

export interface SetDone {
  readonly set: number;
  readonly side: Segment["side"];
  /** Repetitions done to their end, or as the client said; undefined where none are told apart. */
  readonly reps: number | undefined;
  /** Seconds of work, without rests and without what was broken off and done again. */
  readonly seconds: number;
  /** Whether all of it was done: every part to its end, and no fewer repetitions than are enough. */
  readonly whole: boolean;
  /** Whether any of its work went by unseen, so that only the client knows whether it was done. */
  readonly unseen: boolean;
}

/** The sets begun so far, in order, each side an entry; a part that is still under way counts for nothing. */
export function doneSoFar({ segments, passed }: Run): readonly SetDone[] {
  const sets: Item[][] = [];
  for (const [index, segment] of segments.entries()) {
    if (!isInSet(segment)) continue;
    const open = sets.at(-1);
    const item = { segment, passed: passed[index] };
    if (open?.[0] && sameSet(open[0].segment, segment)) open.push(item);
    else sets.push([item]);
  }
  return sets.filter(([first]) => first?.passed !== undefined).map(setDoneOf);
}

interface Item {
  readonly segment: Segment;
  readonly passed: Passed | undefined;
}

function setDoneOf(items: readonly Item[]): SetDone {
  const work = items.filter(({ segment }) => isWork(segment));
  const first = work[0]?.segment;
  const said = items.find(({ passed }) => passed?.reps !== undefined)?.passed?.reps;
  const reps = said ?? countReps(work);
  const finished = work.every(({ passed }) => passed?.whole === true);
  const ms = work.reduce((sum, { passed }) => sum + (passed?.ms ?? 0), 0);
  return {
    set: first?.set ?? 0,
    side: first?.side,
    reps,
    seconds: ms / 1000,
    whole: reps === undefined || first?.enough === undefined ? finished : reps >= first.enough,
    unseen: work.some(({ passed }) => passed?.unseen === true),
  };
}

/** Repetitions all of whose parts were done to their end; undefined where a set is timed or held as one. */
function countReps(work: readonly Item[]): number | undefined {
  const first = work[0];
  if (!first) return undefined;
  if (first.segment.kind === "reps" && first.segment.rep === undefined) {
    return first.passed?.whole === true ? first.segment.reps : 0;
  }
  if (first.segment.rep === undefined) return undefined;
  const all = new Set(work.map(({ segment }) => segment.rep));
  for (const { segment, passed } of work) {
    if (passed?.whole !== true) all.delete(segment.rep);
  }
  return all.size;
}
