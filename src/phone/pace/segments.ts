/** One exercise as a row of timed parts: what the client does from the first count to the last set. */
import type { SessionBout } from "../../compose/session-model.ts";
import { shapeOf } from "../../prescription/shape.ts";

export type SegmentKind =
  | "ready"
  | "lift"
  | "top"
  | "lower"
  | "bottom"
  | "hold"
  | "reps"
  | "work"
  | "walk"
  | "run"
  | "easy"
  | "rest"
  | "rest-reps"
  | "other-side";

/** A part of an exercise in which the client does one thing. */
export interface Segment {
  readonly kind: SegmentKind;
  /** Undefined where it ends when the client says so: repetitions without a tempo, distances. */
  readonly seconds: number | undefined;
  /** The set it belongs to, from 1; for a rest, the set before it. */
  readonly set: number;
  readonly sets: number;
  /** Which repetition or turn of the set, from 1; undefined where none is told apart. */
  readonly rep: number | undefined;
  /** Repetitions of the set: the top of the range, and the low end that is enough. */
  readonly reps: number | undefined;
  readonly enough: number | undefined;
  /** Where both sides are worked in turn, the left first; for a change of sides, the side to come. */
  readonly side: "left" | "right" | undefined;
}

/** Seconds to turn round before the other side is counted in; common practice. */
const TURN_S = 5;

/**
 * The parts of the first `sets` sets of a bout, in order; none of them has no length. Repetitions
 * count at the top of their range.
 *
 * They last as long as `boutClock` says of the bout (its last rests not counted), apart from:
 * `readyS` seconds of getting ready before the first set and before each right side; 5 seconds to
 * change sides; and rests shorter than `readyS`, which are made as long. Longer rests end in the
 * getting ready. A run is counted in once: its walks lead straight into the next run.
 * What ends when the client says so has no length here, whatever the clock assumes. The easy part
 * of a turn belongs to its set, also after the last.
 */
export function segmentsOf(
  bout: SessionBout,
  sets: number = bout.sets,
  { readyS = 5 }: { readonly readyS?: number } = {},
): readonly Segment[] {
  const sides = bout.side === "each" ? (["left", "right"] as const) : [undefined];
  const segments: Segment[] = [];
  for (let set = 1; set <= sets; set += 1) {
    const place = { set, sets, rep: undefined, side: undefined, ...repetitions(bout, set) };
    if (set > 1) segments.push(restBefore(bout, place, readyS));
    for (const side of sides) {
      const here = { ...place, side };
      if (side === "right") segments.push({ ...here, kind: "other-side", seconds: TURN_S });
      const counted = set === 1 || side === "right" || !bout.running;
      if (counted) segments.push({ ...here, kind: "ready", seconds: readyS });
      segments.push(...setOf(bout, here));
    }
  }
  return segments.filter(hasLength);
}

type Part = Pick<Segment, "kind" | "seconds">;
type Place = Omit<Segment, keyof Part>;

const hasLength = ({ seconds }: Part): boolean => seconds === undefined || seconds > 0;

/** The repetitions of a set; where fewer sets are stated the last one counts on. */
function repetitions({ reps, turns }: SessionBout, set: number): Pick<Segment, "reps" | "enough"> {
  if (turns) return { reps: turns.times, enough: turns.times };
  const stated = reps?.[set - 1] ?? reps?.at(-1);
  return { reps: stated?.high, enough: stated?.low };
}

/** The rest before a set, without the getting ready that ends it. */
function restBefore(bout: SessionBout, place: Place, readyS: number): Segment {
  const restS = bout.restS ?? 0;
  const before = { ...place, set: place.set - 1, ...repetitions(bout, place.set - 1) };
  return bout.running
    ? { ...before, kind: "walk", seconds: restS }
    : { ...before, kind: "rest", seconds: restS - readyS };
}

/** The work of a set on one side. */
function setOf(bout: SessionBout, place: Place): Segment[] {
  const work = bout.running ? "run" : "work";
  const shape = shapeOf(bout);
  if (!shape) return [{ ...place, kind: "reps", seconds: undefined }];
  switch (shape.kind) {
    case "time":
      return [{ ...place, kind: work, seconds: shape.timeS }];
    case "turns": {
      const { work: workS, easy, times } = shape.turns;
      const turn: readonly Part[] = [
        { kind: work, seconds: workS },
        { kind: bout.running ? "walk" : "easy", seconds: easy },
      ];
      return Array.from({ length: times }, (_, index) =>
        parts(turn, { ...place, rep: index + 1 }),
      ).flat();
    }
    case "distance":
      return counted(bout, [{ kind: work, seconds: undefined }], true, place);
    case "holds":
    case "repetitions": {
      const paced = pacedParts(bout, place.reps).filter(hasLength);
      return paced.length > 0
        ? counted(bout, paced, true, place)
        : counted(bout, [{ kind: "reps", seconds: undefined }], (bout.restRepsS ?? 0) > 0, place);
    }
  }
}

/** The repetitions of a set with the rests between them; one part where they are not told apart. */
function counted(
  { running, restRepsS = 0 }: SessionBout,
  each: readonly Part[],
  toldApart: boolean,
  place: Place,
): Segment[] {
  const { reps } = place;
  if (reps === undefined || !toldApart) return parts(each, place);
  const rest = { kind: running ? "walk" : "rest-reps", seconds: restRepsS } as const;
  return Array.from({ length: reps }, (_, index) => {
    const here = { ...place, rep: index + 1 };
    return parts([...each, ...(here.rep === reps ? [] : [rest])], here);
  }).flat();
}

const parts = (row: readonly Part[], place: Place): Segment[] =>
  row.map((part) => ({ ...place, ...part }));

/**
 * The parts of one repetition. A hold comes where the first movement ends: at the top where the
 * lift is first, at the bottom where the lowering is. Without repetitions only the hold counts, as
 * in `setTension`.
 */
function pacedParts(
  { tempo, holdS, fastS, first }: SessionBout,
  reps: number | undefined,
): readonly Part[] {
  const hold: Part = { kind: "hold", seconds: holdS ?? 0 };
  if (!tempo || (reps === undefined && holdS !== undefined)) return [hold];
  const part = (kind: "lift" | "top" | "lower" | "bottom"): Part => {
    const seconds = tempo[kind];
    return { kind, seconds: seconds === "X" ? fastS : seconds };
  };
  return first === "lift"
    ? [part("lift"), part("top"), hold, part("lower"), part("bottom")]
    : [part("lower"), part("bottom"), hold, part("lift"), part("top")];
}
