/** One rule for several exercises: what holds for most of them, which of them differ, and which is strictest. */
import type { PainLimits } from "./limits.ts";

/** The rule that most exercises of a program or a session follow. */
export interface GeneralRule<One> {
  readonly limits: PainLimits;
  /** The exercises with other limits, in the order given: each has to be named beside the rule. */
  readonly exceptions: readonly One[];
}

interface Limited {
  readonly pain: PainLimits;
}

/**
 * The limits that most exercises have; between equals, the stricter. Name each exercise once. Without
 * any exercise no pain is allowed.
 */
export function generalRule<One extends Limited>(exercises: readonly One[]): GeneralRule<One> {
  const count = (limits: PainLimits) =>
    exercises.filter(({ pain }) => sameLimits(pain, limits)).length;
  const [limits = NONE] = exercises
    .map(({ pain }) => pain)
    .sort((a, b) => count(b) - count(a) || stricterFirst(a, b));
  return { limits, exceptions: exercises.filter(({ pain }) => !sameLimits(pain, limits)) };
}

/** The exercise whose pain after it is limited most: pain after a session cannot be told apart. */
export function strictestAfter<One extends Limited>(exercises: readonly One[]): One | undefined {
  return [...exercises].sort((a, b) => a.pain.after - b.pain.after)[0];
}

const NONE: PainLimits = { kind: "pain-free", comfortable: 0, during: 0, after: 0 };

function stricterFirst(a: PainLimits, b: PainLimits): number {
  return a.during - b.during || a.after - b.after || a.comfortable - b.comfortable;
}

const sameLimits = (a: PainLimits, b: PainLimits): boolean => stricterFirst(a, b) === 0;
