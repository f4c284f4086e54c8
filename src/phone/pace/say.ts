/** What is said of an exercise: few words, and those early on; later only the count goes on. */
import type { Segment } from "./segments.ts";

/** Keys of the words; the caller has the words of the language and of the exercise. */
export type SayKey =
  | "pace.say.ready"
  | "pace.say.left"
  | "pace.say.right"
  | "pace.say.last-set"
  | "pace.say.last-set-left"
  | "pace.say.lift"
  | "pace.say.lower"
  | "pace.say.hold"
  | "pace.say.go"
  | "pace.say.run"
  | "pace.say.walk"
  | "pace.say.easy"
  | "pace.say.rest"
  | "pace.say.last-one"
  | "pace.say.enough"
  | "pace.say.halfway"
  | "pace.say.soon"
  | "pace.say.your-turn"
  | "pace.say.finished";

/** Movements are named in the first repetitions of a set; after them the client knows the order. */
const NAMED_REPETITIONS = 2;

/** Parts that are so long, and so unlike what comes before, that they are named every time. */
const ALWAYS_NAMED: ReadonlySet<Segment["kind"]> = new Set(["run", "walk", "easy"]);

/** A shorter part, or repetition, is over before its word is. */
const LEAST_SPOKEN_S = 2;

/** Sets of fewer repetitions do not say which is the last. */
const LAST_FROM = 3;

const WORDS: Readonly<Partial<Record<Segment["kind"], SayKey>>> = {
  lift: "pace.say.lift",
  lower: "pace.say.lower",
  hold: "pace.say.hold",
  reps: "pace.say.go",
  work: "pace.say.go",
  run: "pace.say.run",
  walk: "pace.say.walk",
  easy: "pace.say.easy",
  rest: "pace.say.rest",
  "other-side": "pace.say.right",
};

/** What is said when a segment begins; `first`: index of the first segment of its repetition. */
export function spokenAtStart(
  segments: readonly Segment[],
  at: number,
  first: number,
): SayKey | number | undefined {
  const segment = segments[at];
  if (!segment) return undefined;
  if (segment.kind === "ready") return spokenBefore(segment);
  const { rep, seconds } = segment;
  if (rep === undefined) return WORDS[segment.kind];
  const long = seconds === undefined || seconds >= LEAST_SPOKEN_S;
  const named = rep <= NAMED_REPETITIONS || ALWAYS_NAMED.has(segment.kind);
  const name = long && named ? WORDS[segment.kind] : undefined;
  return name ?? (at === first ? countOf(segments, first, rep) : undefined);
}

/** The last set is said once, the side wherever there are two, and nothing right after a change of sides. */
function spokenBefore({ set, sets, side }: Segment): SayKey | undefined {
  if (side === "right") return undefined;
  if (sets > 1 && set === sets) return side ? "pace.say.last-set-left" : "pace.say.last-set";
  return side ? "pace.say.left" : "pace.say.ready";
}

/** The repetition's number, or what is special about it. */
function countOf(
  segments: readonly Segment[],
  first: number,
  rep: number,
): SayKey | number | undefined {
  const { reps = 0, enough = reps, kind } = segments[first] ?? {};
  if (kind === "rest-reps" || kind === "walk" || kind === "easy") return undefined;
  if (rep === reps && reps >= LAST_FROM) return "pace.say.last-one";
  if (rep === enough + 1) return "pace.say.enough";
  return repetitionSeconds(segments, first) >= LEAST_SPOKEN_S ? rep : undefined;
}

/** Seconds of a repetition; infinite where the client ends a part of it. */
function repetitionSeconds(segments: readonly Segment[], first: number): number {
  const start = segments[first];
  let seconds = 0;
  for (const segment of segments.slice(first)) {
    if (segment.rep !== start?.rep || segment.set !== start?.set) break;
    seconds += segment.seconds ?? Number.POSITIVE_INFINITY;
  }
  return seconds;
}
