/** What a screen shows of a run at an instant. Times in milliseconds. */
import { doneSoFar, type SetDone } from "./done.ts";
import { elapsedMs, type Mode, type PauseReason, type Run } from "./run.ts";
import type { Segment } from "./segments.ts";

export interface View {
  readonly mode: Mode["kind"];
  /** Why it stands still. */
  readonly why: PauseReason | undefined;
  /** What the client is in, or will go on with; undefined once it is over. */
  readonly segment: Segment | undefined;
  readonly next: Segment | undefined;
  /** Of the segment: how much is done, and how much is left; undefined where the client ends it. */
  readonly elapsedMs: number;
  readonly leftMs: number | undefined;
  /** Until the work goes on after a pause; 0 where nothing is counted in. */
  readonly countInMs: number;
  readonly done: readonly SetDone[];
}

export function viewOf(run: Run, nowMs: number): View {
  const { mode, segments, at } = run;
  const segment = segments[at];
  const elapsed = elapsedMs(run, nowMs);
  const whole = segment?.seconds === undefined ? undefined : segment.seconds * 1000;
  return {
    mode: mode.kind,
    why: mode.kind === "paused" ? mode.why : undefined,
    segment,
    next: segments[at + 1],
    elapsedMs: whole === undefined ? elapsed : Math.min(whole, elapsed),
    leftMs: whole === undefined ? undefined : Math.max(0, whole - elapsed),
    countInMs: mode.kind === "count-in" ? Math.max(0, mode.untilMs - nowMs) : 0,
    done: doneSoFar(run),
  };
}
