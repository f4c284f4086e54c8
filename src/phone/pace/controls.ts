/** What the client does to a run: pause, go on, back, skip, done; and what leaving the page does. */
import {
  isInSet,
  isWork,
  needsClient,
  repetitionStart,
  sameSet,
  setEnd,
  setStart,
} from "./places.ts";
import { advance, elapsedMs, enter, goOn, type Passed, type Run, standStill } from "./run.ts";
import type { Segment } from "./segments.ts";

/** Pressed within this time of a beginning, back goes to what was before it. */
const BACK_MS = 2000;

/** After a longer absence interrupted work waits until the client says that they are in place. */
const LONG_ABSENCE_MS = 120_000;

/** Stops the clock. Short work will be done again from the beginning of its repetition. */
export function pause(run: Run, nowMs: number): Run {
  return standStill(advance(run, nowMs), nowMs, "client");
}

/** Goes on after a pause; work after a count of three seconds. */
export function resume(run: Run, nowMs: number): Run {
  return goOn(run, nowMs);
}

/**
 * Goes back to the beginning of the repetition, or within two seconds of that to the one before
 * it; from a rest, a change of sides or the end, to the set before it. What is done again is no longer
 * counted as done. A paused run stays paused.
 */
export function back(run: Run, nowMs: number): Run {
  const now = advance(run, nowMs);
  if (now.segments.length === 0) return now;
  const at = Math.max(0, backTarget(now, nowMs));
  const still: Run = {
    ...now,
    at,
    passed: now.passed.slice(0, at),
    mode: { kind: "paused", elapsedMs: 0, why: "client" },
  };
  return now.mode.kind === "paused" ? still : goOn(still, nowMs);
}

/**
 * Leaves out the rest of what is under way: of a rest or a count, that alone; of a set, all of it
 * on this side. A paused run stays paused.
 */
export function skip(run: Run, nowMs: number): Run {
  const now = advance(run, nowMs);
  const segment = now.segments[now.at];
  if (!segment) return now;
  const passed: Passed = { ms: elapsedMs(now, nowMs), whole: false };
  const end = isWork(segment) ? setEnd(now.segments, now.at) : now.at + 1;
  const next = leap(now, end, passed, nowMs);
  return now.mode.kind === "paused" && next.mode.kind === "going"
    ? { ...next, mode: { kind: "paused", elapsedMs: 0, why: "client" } }
    : next;
}

/** The client has done what has no length of its own; changes nothing where the clock counts. */
export function partDone(run: Run, nowMs: number): Run {
  const now = advance(run, nowMs);
  const segment = now.segments[now.at];
  if (!segment || segment.seconds !== undefined) return now;
  return leap(now, now.at + 1, { ms: elapsedMs(now, nowMs), whole: true }, nowMs);
}

/**
 * The client ends the set on this side. Repetitions that were done to their end count, and all of
 * a set that is not paced; `reps` states them in place of that. Changes nothing outside a set.
 */
export function setDone(run: Run, nowMs: number, reps?: number): Run {
  const now = advance(run, nowMs);
  const segment = now.segments[now.at];
  if (!segment || !isInSet(segment)) return now;
  const whole = segment.seconds === undefined && segment.rep === undefined;
  const passed = { ms: elapsedMs(now, nowMs), whole, ...(reps !== undefined && { reps }) };
  return leap(now, setEnd(now.segments, now.at), passed, nowMs);
}

/** From now on nobody sees the page: work that needs the client stops, all else goes on by the clock. */
export function left(run: Run, nowMs: number): Run {
  const now = advance(run, nowMs);
  if (now.awayMs !== undefined) return now;
  const away = { ...now, awayMs: nowMs };
  const segment = away.segments[away.at];
  return segment && needsClient(segment) ? standStill(away, nowMs, "interrupted") : away;
}

/**
 * The page is seen again. Interrupted work is counted in by itself after a short absence; after a
 * long one, and where a rest ended unseen, it waits for the client.
 */
export function returned(run: Run, nowMs: number): Run {
  const { awayMs = nowMs, ...now } = advance(run, nowMs);
  const seen = { ...now, awayMs: undefined };
  const interrupted = seen.mode.kind === "paused" && seen.mode.why === "interrupted";
  return interrupted && nowMs - awayMs <= LONG_ABSENCE_MS ? goOn(seen, nowMs) : seen;
}

/** A stored run in a page that was loaded anew: as after an absence, but all work waits for the client. */
export function reopened(run: Run, storedMs: number, nowMs: number): Run {
  return { ...advance(left(run, storedMs), nowMs), awayMs: undefined };
}

/** The run at a later segment: this one passed as stated, those between not done. */
function leap(run: Run, to: number, passed: Passed, nowMs: number): Run {
  const between = Array.from({ length: to - run.at - 1 }, () => ({ ms: 0, whole: false }));
  return enter({ ...run, passed: [...run.passed, passed, ...between] }, to, nowMs);
}

function backTarget(run: Run, nowMs: number): number {
  const { segments, at } = run;
  const segment = segments[at];
  if (!segment || (!isWork(segment) && segment.kind !== "ready")) return startOf(segments, at - 1);
  const start = repetitionStart(segments, at);
  const sinceStart = run.passed.slice(start).reduce((sum, { ms }) => sum + ms, 0);
  const early = run.mode.kind === "count-in" || sinceStart + elapsedMs(run, nowMs) < BACK_MS;
  if (!early || start === 0) return start;
  return before(segments, start);
}

/** Where what is before a rest begins: its repetition, or with the last of a set all of it. */
function startOf(segments: readonly Segment[], at: number): number {
  const rest = segments[at + 1];
  return rest?.rep !== undefined ? repetitionStart(segments, at) : setStart(segments, at);
}

/** Where what is before a repetition or a count begins: a repetition, a rest, or a set without a rest after it. */
function before(segments: readonly Segment[], start: number): number {
  const [earlier, current] = segments.slice(start - 1);
  if (!earlier || !current) return 0;
  if (isInSet(earlier) && !sameSet(earlier, current)) return setStart(segments, start - 1);
  const betweenReps = !isWork(earlier) && earlier.rep !== undefined;
  return betweenReps ? startOf(segments, start - 2) : repetitionStart(segments, start - 1);
}
