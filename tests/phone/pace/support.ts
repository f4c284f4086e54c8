/** Exercises and runs for the tests of the pace. */
import fc from "fast-check";
import type { SessionBout } from "../../../src/compose/session-model.ts";
import type { Run } from "../../../src/phone/pace/run.ts";
import type { Segment } from "../../../src/phone/pace/segments.ts";

/** An exercise of one plain set of 10, with what a test changes. */
export function bout(changes: Partial<SessionBout> = {}): SessionBout {
  return {
    key: "phase-1/heel-raise",
    card: "heel-raise",
    anchor: "heel-raise",
    title: "Rise up on one leg",
    when: undefined,
    side: "left",
    sideWords: "left leg",
    needsGoodDay: false,
    running: false,
    sets: 1,
    reps: undefined,
    holdS: undefined,
    timeS: undefined,
    distanceM: undefined,
    turns: undefined,
    tempo: undefined,
    first: "lift",
    liftWord: "up",
    lowerWord: "down",
    fastS: 1,
    restS: undefined,
    restRepsS: undefined,
    tissues: [],
    effort: undefined,
    kg: undefined,
    keptClearOf: { before: [], after: [] },
    recoveryS: 86_400,
    dose: [],
    pain: { kind: "monitored", comfortable: 2, during: 5, after: 5 },
    painWords: { rule: "", over: "", after: "", worse: "" },
    ...changes,
  };
}

/** The same repetitions in every set. */
export function reps(sets: number, high: number, low: number = high): SessionBout["reps"] {
  return Array.from({ length: sets }, () => ({ low, high }));
}

/** "lift 1" and the like: kind, repetition and seconds of every segment. */
export function row(segments: readonly Segment[]): string[] {
  return segments.map(({ kind, seconds, rep }) =>
    [kind, rep === undefined ? "" : `#${rep}`, seconds ?? "?"]
      .filter((part) => part !== "")
      .join(" "),
  );
}

/** Milliseconds of all segments that have a length. */
export function lengthMs(segments: readonly Segment[]): number {
  return segments.reduce((sum, { seconds = 0 }) => sum + seconds * 1000, 0);
}

/** A run in words: what it is in, and how. */
export function where({ segments, at, mode }: Run): string {
  const { kind, set, rep } = segments[at] ?? {};
  const how = mode.kind === "paused" ? `paused ${mode.why}` : mode.kind;
  return kind ? `${kind} ${[set, rep].filter(Boolean).join(".")} ${how}` : how;
}

const seconds = fc.integer({ min: 0, max: 90 });
const part = fc.oneof(fc.integer({ min: 0, max: 6 }), fc.constant("X" as const));
const maybe = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: undefined });

/** Exercises of every kind, also such as nobody would ask for. */
export const anyBout: fc.Arbitrary<SessionBout> = fc
  .record({
    sets: fc.integer({ min: 1, max: 4 }),
    side: fc.constantFrom("left" as const, "each" as const, "none" as const),
    running: fc.boolean(),
    range: maybe(fc.tuple(fc.integer({ min: 1, max: 6 }), fc.integer({ min: 0, max: 3 }))),
    holdS: maybe(seconds),
    timeS: maybe(seconds),
    distanceM: maybe(fc.constantFrom(20, 400)),
    tempo: maybe(fc.record({ lower: part, bottom: part, lift: part, top: part })),
    first: fc.constantFrom("lift" as const, "lower" as const),
    fastS: fc.constantFrom(0.5, 1),
    restS: maybe(seconds),
    restRepsS: maybe(fc.integer({ min: 0, max: 12 })),
  })
  .map(({ range, ...rest }) =>
    bout({ ...rest, reps: range && reps(rest.sets, range[0] + range[1], range[0]) }),
  );
