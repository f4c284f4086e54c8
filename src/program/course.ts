/** The phases of a plan's course on the weeks of the course, before weeks away move any of them. */

import { Fault, type WithFaults } from "../faults/fault.ts";
import type { Plan } from "../plan/schema.ts";
import type { Protocol, ProtocolPhase } from "../protocols/schema.ts";
import type { Path, Read } from "../read/source.ts";
import { nearest } from "../read/validate.ts";
import { counted } from "../units/counted.ts";

export interface CoursePhase {
  readonly phase: ProtocolPhase;
  /** Its place among the protocol's phases. */
  readonly at: number;
  /** Week of the course in which it begins, from 1; phases may overlap. */
  readonly firstWeek: number;
  /** For each of its weeks in this plan's course, the week of the protocol's phase whose doses it has. */
  readonly follows: readonly number[];
  /** How many of them are printed: fewer, or none, where the plan ends sooner. */
  readonly printed: number;
}

/**
 * The phases in the protocol's order, those that the plan ends before included. A phase that the plan
 * extends has a week of it some times more, after itself; phases that begin later in the course move.
 *
 * Faults (wrong-value): more weeks than the course has, an extension of what is not there; as a warning,
 * one past the most weeks that the protocol states.
 */
export function coursePhases(
  plan: Read<Plan>,
  protocol: Read<Protocol>,
): WithFaults<readonly CoursePhase[]> {
  const { weeks: wanted, extend } = plan.value;
  const { id, phases } = protocol.value;
  const begins = stated(phases);
  const more = phases.map((_, at) => extraWeeks(plan.value, protocol.value, at));
  const course = phases.map((phase, at): CoursePhase => {
    const moved = more
      .filter((_, other) => other < at && (begins[other] ?? 1) < (begins[at] ?? 1))
      .reduce((sum, weeks) => sum + weeks.length, 0);
    const firstWeek = (begins[at] ?? 1) + moved;
    const own = Array.from({ length: phase.weeks }, (_, index) => index + 1);
    const follows = [...own, ...(more[at] ?? [])].sort((a, b) => a - b);
    const left = wanted === undefined ? follows.length : wanted - firstWeek + 1;
    const printed = Math.max(0, Math.min(follows.length, left));
    return { phase, at, firstWeek, follows, printed };
  });

  const faults: Fault[] = extend.flatMap((one, at) => {
    const found = course.find(({ phase }) => phase.id === one.phase);
    if (!found) {
      const ids = phases.map((phase) => phase.id);
      const near = nearest(one.phase, ids);
      const hint = near ? `Did you mean ${near}?` : `There are: ${ids.join(", ")}.`;
      return [fault(["extend", at, "phase"], `There is no phase ${one.phase} in ${id}.`, hint)];
    }
    const { weeks, range } = found.phase;
    if (one.repeat_week !== undefined && one.repeat_week > weeks) {
      return [
        fault(
          ["extend", at, "repeat_week"],
          `${one.phase} has ${counted(weeks, "week")}, and no week ${one.repeat_week} to repeat.`,
          "Name one of its weeks, counted from its first, or leave repeat_week out for the last.",
        ),
      ];
    }
    const last = extend.findLastIndex(({ phase }) => phase === one.phase) === at;
    if (!last || range === undefined || found.follows.length <= range.last) return [];
    return [
      fault(
        ["extend", at, "weeks"],
        `${one.phase} takes ${counted(found.follows.length, "week")} with this; ${id} plans at most ${range.last}.`,
        "See whether the client should move on, or needs another course.",
        "warning",
      ),
    ];
  });
  const last = lastWeek(course);
  if (wanted !== undefined && wanted > last) {
    const phase = course.at(-1)?.phase.id ?? "ID";
    faults.push(
      fault(
        ["weeks"],
        `weeks asks for ${wanted}, and the course has ${last}.`,
        `Repeat a week of a phase with extend: [{ phase: ${phase}, weeks: ${wanted - last}, why: … }], or leave weeks out.`,
      ),
    );
  }
  return { value: course, faults };

  function fault(path: Path, message: string, hint: string, level?: "warning"): Fault {
    const place = plan.source.at(path);
    const frame = plan.source.frame(place);
    return new Fault("wrong-value", message, { place, frame, hint, ...(level && { level }) });
  }
}

/** The weeks of the course in which the protocol's phases begin, as it states them. */
function stated(phases: readonly ProtocolPhase[]): number[] {
  let next = 1;
  return phases.map((phase) => {
    const first = phase.from_week ?? next;
    next = first + phase.weeks;
    return first;
  });
}

/** The weeks of a phase that the plan adds, each by the week whose doses it has. */
function extraWeeks({ extend }: Plan, { phases }: Protocol, at: number): number[] {
  const phase = phases[at];
  return extend
    .filter((one) => one.phase === phase?.id)
    .flatMap(({ weeks, repeat_week }) =>
      Array.from({ length: weeks }, () => repeat_week ?? phase?.weeks ?? 1),
    );
}

/** The last week of the course, from 1. */
export const lastWeek = (phases: readonly CoursePhase[]): number =>
  Math.max(0, ...phases.map(({ firstWeek, follows }) => firstWeek + follows.length - 1));

/** The last week of the course that is printed, from 1. */
export const lastPrinted = (phases: readonly CoursePhase[]): number =>
  Math.max(
    0,
    ...phases.map(({ firstWeek, printed }) => (printed > 0 ? firstWeek + printed - 1 : 0)),
  );
