/** What of an exercise is worth a sentence to somebody who listens: its phases, not every part of a repetition. */
import { isInSet } from "./places.ts";
import type { Segment } from "./segments.ts";
import type { View } from "./view.ts";

export interface Phase {
  /** Two views with the same name are in one phase. */
  readonly name: string;
  readonly kind: "paused" | "ready" | "set" | "over" | Segment["kind"];
}

/** In seconds: a part of a set that lasts as long has a sentence to itself; no published value, it takes 3 to 4 to hear. */
const LONG_S = 10;

/**
 * The phase that the client is in. The short parts of a set, with the rests between its repetitions, are one;
 * so are a change of sides and the getting ready that follows it.
 */
export function phaseOf({ mode, why, segment }: View): Phase {
  if (segment === undefined) return { name: "over", kind: "over" };
  const { kind, set, side, rep, seconds = LONG_S } = segment;
  const place = `${set} ${side}`;
  if (mode === "paused") return { name: `paused ${why}`, kind: "paused" };
  if (mode === "count-in") return { name: `count-in ${place}`, kind: "ready" };
  if (isInSet(segment) && seconds < LONG_S) return { name: `set ${place}`, kind: "set" };
  const told = kind === "ready" && side === "right" ? "other-side" : kind;
  return { name: `${told} ${place} ${rep}`, kind: told };
}
