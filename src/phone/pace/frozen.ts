/** A run as it is stored at every change, and taken up again after the page was loaded anew. */
import { checksum } from "../../diary/checksum.ts";
import type { Mode, Passed, PauseReason, Run } from "./run.ts";
import type { Segment } from "./segments.ts";

/** A run without its segments, which follow from the exercise; plain values for JSON. */
export interface FrozenRun {
  /** Stands for the segments: a run is never taken up with others than its own. */
  readonly of: string;
  readonly at: number;
  readonly mode: Mode;
  readonly awayMs?: number;
  readonly passed: readonly Passed[];
}

export function frozen({ segments, at, mode, awayMs, passed }: Run): FrozenRun {
  return {
    of: fingerprint(segments),
    at,
    mode,
    passed,
    ...(awayMs !== undefined && { awayMs }),
  };
}

/** The run as it was frozen; undefined where what was stored is broken or belongs to other segments. */
export function thawed(stored: unknown, segments: readonly Segment[]): Run | undefined {
  if (!isObject(stored) || stored.of !== fingerprint(segments)) return undefined;
  const { at, awayMs } = stored;
  const mode = modeOf(stored.mode);
  const passed = passedOf(stored.passed);
  if (!isCount(at) || at > segments.length || passed?.length !== at || !mode) return undefined;
  if ((mode.kind === "over") !== (at === segments.length)) return undefined;
  if (awayMs !== undefined && !isNumber(awayMs)) return undefined;
  return { segments, at, mode, awayMs, passed };
}

/** The checksum of all segments, and their number. */
const fingerprint = (segments: readonly Segment[]): string =>
  `${segments.length}-${checksum(new TextEncoder().encode(JSON.stringify(segments)))}`;

const REASONS: readonly PauseReason[] = ["client", "interrupted", "waiting"];

function modeOf(value: unknown): Mode | undefined {
  if (!isObject(value)) return undefined;
  const { kind, sinceMs, untilMs, elapsedMs, atMs, why } = value;
  if (kind === "going" && isNumber(sinceMs)) return { kind, sinceMs };
  if (kind === "over" && isNumber(atMs)) return { kind, atMs };
  if (!isNumber(elapsedMs)) return undefined;
  if (kind === "count-in" && isNumber(untilMs)) return { kind, untilMs, elapsedMs };
  const reason = REASONS.find((each) => each === why);
  return kind === "paused" && reason ? { kind, elapsedMs, why: reason } : undefined;
}

function passedOf(value: unknown): readonly Passed[] | undefined {
  if (!Array.isArray(value)) return undefined;
  const passed: Passed[] = [];
  for (const each of value) {
    if (!isObject(each)) return undefined;
    const { ms, whole, reps, unseen } = each;
    if (!isNumber(ms) || typeof whole !== "boolean") return undefined;
    if (reps !== undefined && !isNumber(reps)) return undefined;
    const unknown = unseen === true && { unseen: true as const };
    passed.push({ ms, whole, ...(reps !== undefined && { reps }), ...unknown });
  }
  return passed;
}

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

const isNumber = (value: unknown): value is number =>
  typeof value === "number" && Number.isFinite(value);

const isCount = (value: unknown): value is number => Number.isInteger(value) && Number(value) >= 0;
