/** Where repetitions and sets begin and end in a row of segments, and which of them need the client. */
import type { Segment, SegmentKind } from "./segments.ts";

/** Work longer than this goes on where it was left; shorter work is done again from its beginning. */
const LONG_WORK_S = 60;

const MOVES: ReadonlySet<SegmentKind> = new Set([
  "lift",
  "top",
  "lower",
  "bottom",
  "hold",
  "reps",
  "work",
  "run",
]);

/** Whether the client works in it; else they rest, walk, turn round or get ready. */
export function isWork({ kind }: Segment): boolean {
  return MOVES.has(kind);
}

/** Whether it lies inside a set: work, and the rests between repetitions. */
export function isInSet(segment: Segment): boolean {
  return isWork(segment) || segment.rep !== undefined;
}

/**
 * Whether it must not begin unseen: timed work, and the getting ready for it. Runs and walks, done
 * with the phone in a pocket, and rests go on by the clock; what ends by the client's word waits anyway.
 */
export function needsClient({ kind, seconds }: Segment): boolean {
  return seconds !== undefined && (kind === "ready" || (kind !== "run" && MOVES.has(kind)));
}

/** Whether it is counted in again after a pause. */
export function isCountedIn(segment: Segment): boolean {
  return segment.seconds !== undefined && isWork(segment);
}

/** Whether an interruption costs the client this repetition; else it goes on where it was left. */
export function startsAgain(segment: Segment): boolean {
  return needsClient(segment) && (segment.seconds ?? 0) <= LONG_WORK_S;
}

/** Index of the first segment of the repetition, or of the segment itself where it has none. */
export function repetitionStart(segments: readonly Segment[], at: number): number {
  const segment = segments[at];
  if (!segment || segment.rep === undefined || !isWork(segment)) return at;
  let start = at;
  for (; start > 0; start -= 1) {
    const before = segments[start - 1];
    if (!before || !isWork(before) || !sameSet(before, segment) || before.rep !== segment.rep)
      break;
  }
  return start;
}

/** Index after the last segment of the set, on this side, that the segment lies in. */
export function setEnd(segments: readonly Segment[], at: number): number {
  const segment = segments[at];
  const end = segments.findIndex(
    (other, index) => index > at && !(segment && isInSet(other) && sameSet(other, segment)),
  );
  return end === -1 ? segments.length : end;
}

/** Index of the getting ready, or where there is none of the first work, of the set that the segment lies in. */
export function setStart(segments: readonly Segment[], at: number): number {
  const segment = segments[at];
  const start = segments.findIndex(
    (other) =>
      segment !== undefined &&
      (other.kind === "ready" || isInSet(other)) &&
      sameSet(other, segment),
  );
  return start === -1 ? at : start;
}

/** Whether two segments are of the same set on the same side. */
export function sameSet(one: Segment, other: Segment): boolean {
  return one.set === other.set && one.side === other.side;
}
