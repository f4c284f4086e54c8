/** Where the client is in an exercise, as plain values, and how time moves it on. Times in milliseconds. */
import { isCountedIn, isWork, needsClient, repetitionStart, startsAgain } from "./places.ts";
import type { Segment } from "./segments.ts";

/** From going on after a pause to the work. */
export const COUNT_IN_MS = 3000;

/**
 * Why it stands still: the client asked for it; the page was hidden in the middle of work
 * (interrupted); or what passes by itself, such as a rest, ended unseen (waiting).
 */
export type PauseReason = "client" | "interrupted" | "waiting";

export type Mode =
  /** The segment began at `sinceMs`, or would have, had nothing interrupted it. */
  | { readonly kind: "going"; readonly sinceMs: number }
  /** At `untilMs` it goes on, `elapsedMs` of it being done. */
  | { readonly kind: "count-in"; readonly untilMs: number; readonly elapsedMs: number }
  | { readonly kind: "paused"; readonly elapsedMs: number; readonly why: PauseReason }
  | { readonly kind: "over"; readonly atMs: number };

/** What became of a segment: how long it was, and whether it was done to its end. */
export interface Passed {
  readonly ms: number;
  readonly whole: boolean;
  /** Work that ended by the clock while nobody saw the page: whether it was done, only the client knows. */
  readonly unseen?: true;
  /** Repetitions of the whole set, where the client said them. */
  readonly reps?: number;
}

export interface Run {
  readonly segments: readonly Segment[];
  /** Index of the segment that the client is in; the number of segments once it is over. */
  readonly at: number;
  readonly mode: Mode;
  /** Since when nobody sees the page; undefined while somebody may. */
  readonly awayMs: number | undefined;
  /** One entry for each segment before `at`. */
  readonly passed: readonly Passed[];
}

/** Starts an exercise; over at once where there is nothing to do. */
export function begin(segments: readonly Segment[], nowMs: number): Run {
  const fresh: Run = { segments, at: 0, mode: going(nowMs), awayMs: undefined, passed: [] };
  return enter(fresh, 0, nowMs);
}

/**
 * The run at an instant. Every segment begins exactly where the one before it ended, however late
 * this is called; several may have passed. While nobody sees the page it stops before timed work.
 */
export function advance(run: Run, nowMs: number): Run {
  let current = run;
  for (;;) {
    const later = step(current, nowMs);
    if (later === current) return run === current ? run : current;
    current = later;
  }
}

/** When the run next changes by itself; undefined where it waits for the client. */
export function nextChangeMs({ segments, at, mode }: Run): number | undefined {
  if (mode.kind === "count-in") return mode.untilMs;
  const seconds = segments[at]?.seconds;
  if (mode.kind !== "going" || seconds === undefined) return undefined;
  return mode.sinceMs + seconds * 1000;
}

function step(run: Run, nowMs: number): Run {
  const end = nextChangeMs(run);
  if (end === undefined || nowMs < end) return run;
  if (run.mode.kind === "count-in") return { ...run, mode: going(end - run.mode.elapsedMs) };
  const segment = run.segments[run.at];
  const ms = (segment?.seconds ?? 0) * 1000;
  const unseen = run.awayMs !== undefined && segment !== undefined && isWork(segment);
  const passed: Passed = { ms, whole: true, ...(unseen && { unseen }) };
  return enter({ ...run, passed: [...run.passed, passed] }, run.at + 1, end);
}

/** The run from the beginning of a segment, or over where there is none. */
export function enter(run: Run, at: number, nowMs: number): Run {
  const segment = run.segments[at];
  if (!segment) return { ...run, at: run.segments.length, mode: { kind: "over", atMs: nowMs } };
  const unseen = run.awayMs !== undefined && needsClient(segment);
  return { ...run, at, mode: unseen ? paused(0, "waiting") : going(nowMs) };
}

/** A paused run going on; counted in where that is work. */
export function goOn(run: Run, nowMs: number): Run {
  const segment = run.segments[run.at];
  if (run.mode.kind !== "paused" || !segment) return run;
  const { elapsedMs } = run.mode;
  const mode: Mode = isCountedIn(segment)
    ? { kind: "count-in", untilMs: nowMs + COUNT_IN_MS, elapsedMs }
    : going(nowMs - elapsedMs);
  return { ...run, mode };
}

/** The run standing still: short work at the beginning of its repetition, all else where it is. */
export function standStill(run: Run, nowMs: number, why: PauseReason): Run {
  if (run.mode.kind !== "going" && run.mode.kind !== "count-in") return run;
  const segment = run.segments[run.at];
  if (!segment || !startsAgain(segment)) {
    return { ...run, mode: paused(elapsedMs(run, nowMs), why) };
  }
  const at = repetitionStart(run.segments, run.at);
  return { ...run, at, passed: run.passed.slice(0, at), mode: paused(0, why) };
}

/** Milliseconds of the current segment that are done. */
export function elapsedMs({ mode }: Run, nowMs: number): number {
  if (mode.kind === "going") return Math.max(0, nowMs - mode.sinceMs);
  return mode.kind === "over" ? 0 : mode.elapsedMs;
}

const going = (sinceMs: number): Mode => ({ kind: "going", sinceMs });
const paused = (elapsedMs: number, why: PauseReason): Mode => ({ kind: "paused", elapsedMs, why });
