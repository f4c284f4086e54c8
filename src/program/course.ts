/** The phases of a plan's course on the weeks of the course, before weeks away move any of them. */
import type { Plan } from "../plan/schema.ts";
import type { Protocol, ProtocolPhase } from "../protocols/schema.ts";

export interface CoursePhase {
  readonly phase: ProtocolPhase;
  /** Its place among the protocol's phases. */
  readonly at: number;
  /** Week of the course in which it begins, from 1; phases may overlap. */
  readonly firstWeek: number;
  /** Its weeks in this plan's course. */
  readonly weeks: number;
  /** How many of them are printed: fewer, or none, where the plan ends sooner. */
  readonly printed: number;
}

/** The phases in the protocol's order, those that the plan ends before included. */
export function coursePhases(plan: Plan, protocol: Protocol): CoursePhase[] {
  let nextWeek = 1;
  return protocol.phases.map((phase, at) => {
    const firstWeek = phase.from_week ?? nextWeek;
    nextWeek = firstWeek + phase.weeks;
    const left = plan.weeks === undefined ? phase.weeks : plan.weeks - firstWeek + 1;
    const printed = Math.max(0, Math.min(phase.weeks, left));
    return { phase, at, firstWeek, weeks: phase.weeks, printed };
  });
}

/** The last of some weeks of the course that its phases come to; 0 where there is none. */
export const lastWeek = (phases: readonly CoursePhase[], which: "weeks" | "printed"): number =>
  Math.max(
    0,
    ...phases
      .filter((phase) => phase[which] > 0)
      .map((phase) => phase.firstWeek + phase[which] - 1),
  );
