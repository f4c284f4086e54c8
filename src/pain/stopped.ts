/** After an exercise was stopped for its pain: what else of that day is left out with it. */
import { isOver } from "./advice.ts";
import type { Felt, FeltSession, Limited } from "./felt.ts";

export interface Loading extends Limited {
  /** The tissues that it loads. */
  readonly tissues: readonly string[];
}

/**
 * The exercise that was stopped on that day for which this one is left out: itself, or one that loads any
 * tissue that this one loads. Any tissue, and not the main one alone: which of two tissues hurts nobody can
 * tell at home, and leaving one exercise too many for a day does no harm (common practice). Undefined where
 * nothing stands against it.
 */
export function stoppedBefore<One extends Loading>(
  bout: One,
  ofDay: readonly FeltSession<One>[],
): One | undefined {
  const stopped = ofDay.flatMap(({ felt, bouts }) => bouts.filter((one) => wasStopped(one, felt)));
  return (
    stopped.find(({ card }) => card === bout.card) ??
    stopped.find(({ tissues }) => tissues.some((one) => bout.tissues.includes(one)))
  );
}

/**
 * Over its limit, or sudden. Where no pain is allowed, the rule is to make the movement smaller first, and to stop
 * where it still hurts: one that was then done as planned was not stopped.
 */
function wasStopped(bout: Loading, { exercises }: Felt): boolean {
  return exercises.some(
    ({ card, pain, done, sudden }) =>
      card === bout.card &&
      (sudden === true ||
        (pain !== undefined &&
          isOver(pain, bout) &&
          !(bout.pain.kind === "pain-free" && done === "yes"))),
  );
}
