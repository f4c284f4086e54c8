/** Which sounds, touches and words fall between two instants of a run. */
import { isWork, needsClient, repetitionStart } from "./places.ts";
import type { Run } from "./run.ts";
import { type SayKey, spokenAtStart } from "./say.ts";
import type { Segment } from "./segments.ts";
import { TONES, type ToneName } from "./tones.ts";

export interface Cue {
  /** When it is due, in milliseconds of the run's clock. */
  readonly at: number;
  readonly tone: ToneName;
  /** On, off, on …, in milliseconds; empty where it is not felt. */
  readonly vibration: readonly number[];
  /** What is said: the key of a word, or a number. */
  readonly say: SayKey | number | undefined;
}

/** Seconds counted down before something begins. */
const COUNT_S = 3;

/** Work up to this long ticks every second; longer work only counts down its end. */
const TICKED_S = 5;

/** Rests from this long on say when this much is left. */
const SOON_S = 10;
const SOON_FROM_S = 20;

/** From these lengths on the middle is said. */
const HALFWAY_FROM_S: Readonly<Partial<Record<Segment["kind"], number>>> = {
  hold: 30,
  work: 60,
  run: 120,
  rest: 90,
  walk: 90,
  easy: 90,
};

/**
 * The cues from one instant up to, but not with, another, in order: what will come if the client
 * lets the run go on. Windows that follow each other give every cue once.
 */
export function cuesBetween(run: Run, fromMs: number, toMs: number): readonly Cue[] {
  const cues: Cue[] = [];
  const { mode, segments } = run;
  if (mode.kind === "paused") return [];
  if (mode.kind === "over") return within([cue(mode.atMs, "finish", "pace.say.finished")]);
  if (mode.kind === "count-in") cues.push(...countdown(mode.untilMs, true));
  let start = mode.kind === "count-in" ? mode.untilMs - mode.elapsedMs : mode.sinceMs;
  for (let at = run.at; start < toMs; at += 1) {
    const segment = segments[at];
    if (!segment) {
      cues.push(cue(start, "finish", "pace.say.finished"));
      break;
    }
    if (at > run.at && run.awayMs !== undefined && needsClient(segment)) {
      cues.push(cue(start, "call", "pace.say.your-turn"));
      break;
    }
    const shown = at === run.at && mode.kind === "count-in" ? mode.untilMs : start;
    cues.push(startCue(segments, at, shown));
    if (segment.seconds === undefined) break;
    const inside = cuesInside(segment, segments[at + 1], start);
    cues.push(...inside.filter((each) => each.at > shown));
    start += segment.seconds * 1000;
  }
  return within(cues);

  function within(all: readonly Cue[]): readonly Cue[] {
    return all
      .filter(({ at }) => at >= fromMs && at < toMs)
      .sort((one, other) => one.at - other.at);
  }
}

const START: Readonly<Record<Segment["kind"], ToneName>> = {
  ready: "ready",
  lift: "lift",
  top: "pause",
  lower: "lower",
  bottom: "pause",
  hold: "hold",
  reps: "go",
  work: "go",
  walk: "ease",
  run: "go",
  easy: "ease",
  rest: "rest",
  "rest-reps": "pause",
  "other-side": "turn",
};

function startCue(segments: readonly Segment[], at: number, atMs: number): Cue {
  const segment = segments[at];
  if (!segment) return cue(atMs, "finish", "pace.say.finished");
  return cue(atMs, START[segment.kind], spokenAtStart(segments, at, repetitionStart(segments, at)));
}

/** The cues between a segment's beginning and its end. */
function cuesInside(segment: Segment, next: Segment | undefined, startMs: number): Cue[] {
  const { kind, seconds = 0 } = segment;
  const end = startMs + seconds * 1000;
  const cues: Cue[] = [];
  if (kind === "rest" || kind === "walk" || kind === "easy") {
    const gap = seconds + (next?.kind === "ready" ? (next.seconds ?? 0) : 0);
    const soon = startMs + (gap - SOON_S) * 1000;
    if (gap >= SOON_FROM_S && soon < end) cues.push(cue(soon, "soon", "pace.say.soon"));
  }
  const half = HALFWAY_FROM_S[kind];
  if (half !== undefined && seconds >= half) {
    cues.push(cue(startMs + seconds * 500, "soon", "pace.say.halfway"));
  }
  if (kind === "ready") cues.push(...countdown(end, true));
  else if (isWork(segment) && seconds <= TICKED_S) cues.push(...ticks(startMs, end));
  else if (kind !== "other-side" && next?.kind !== "ready") cues.push(...countdown(end, false));
  return cues.filter(({ at }) => at > startMs);
}

function countdown(endMs: number, spoken: boolean): Cue[] {
  return Array.from({ length: COUNT_S }, (_, index) => {
    const left = COUNT_S - index;
    return cue(endMs - left * 1000, "count", spoken ? left : undefined);
  });
}

function ticks(startMs: number, endMs: number): Cue[] {
  const cues: Cue[] = [];
  for (let at = startMs + 1000; at < endMs; at += 1000) cues.push(cue(at, "tick", undefined));
  return cues;
}

function cue(at: number, tone: ToneName, say: Cue["say"]): Cue {
  return { at, tone, vibration: TONES[tone].vibration, say };
}
