/** A run with the time at which it was stored, as one text. */
import type { Clock } from "./clock.ts";
import { frozen, thawed } from "./frozen.ts";
import type { Run } from "./run.ts";
import type { Segment } from "./segments.ts";

/** A run as it was at an instant of its clock, and the wall clock then; in milliseconds. */
export interface StoredRun extends Pick<Clock, "ms" | "wallMs"> {
  readonly run: Run;
}

export function storedText({ ms, wallMs, run }: StoredRun): string {
  return JSON.stringify({ ms, wallMs, run: frozen(run) });
}

/** Undefined where the text is broken or belongs to another exercise. */
export function readStored(text: string, segments: readonly Segment[]): StoredRun | undefined {
  try {
    const { ms, wallMs, run: stored } = JSON.parse(text) ?? {};
    const run = thawed(stored, segments);
    return run && Number.isFinite(ms) && Number.isFinite(wallMs) ? { ms, wallMs, run } : undefined;
  } catch {
    return undefined;
  }
}
