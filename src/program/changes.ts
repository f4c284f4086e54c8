/** Applies what a plan leaves out, swaps, adds and doses anew to one phase of its protocol. */

import type { ChangeKind, Plan } from "../plan/schema.ts";
import type { DosePart } from "../prescription/fields.ts";
import type { DoseLayer } from "../prescription/merge.ts";
import type { Protocol, ProtocolExercise } from "../protocols/schema.ts";
import { weeklyLayers } from "../protocols/weekly-layers.ts";
import type { Path, Read, Source } from "../read/source.ts";
import { inSpan } from "../units/week-span.ts";
import type { CoursePhase } from "./course.ts";
import type { ProgramExercise } from "./program.ts";

/** An exercise of a phase as named by protocol or plan, with the layers of its dose above the card's own. */
export interface Named {
  readonly card: string;
  readonly why: string | undefined;
  readonly main: boolean;
  readonly when: string | undefined;
  readonly origin: ProgramExercise["origin"];
  readonly because: string | undefined;
  /** Where it is named: the file, and the way to the card's id in it. */
  readonly source: Source;
  readonly path: Path;
  /** The protocol's exercise that it is, or stands in for. */
  readonly protocol: { readonly exercise: ProtocolExercise } | undefined;
  /** Layers for a week of the phase, from 1; undefined in weeks without the exercise. */
  readonly layers: (week: number) => readonly DoseLayer[] | undefined;
}

/** Whether a change of a plan is for a week of a phase, counted from 1. */
export const changes = (
  { phase, weeks }: Pick<Plan[ChangeKind][number], "phase" | "weeks">,
  id: string,
  week: number,
): boolean => (phase === undefined || phase === id) && (weeks === undefined || inSpan(week, weeks));

/**
 * The exercises of a phase in the order of a session: the protocol's, changed, then the added ones. What is
 * added to the course, and not to one phase, is done once in weeks of several phases: in the one that began last.
 */
export function changedExercises(
  plan: Read<Plan>,
  protocol: Read<Protocol>,
  course: readonly CoursePhase[],
  coursePhase: CoursePhase,
): Named[] {
  const { phase, at: phaseAt, follows } = coursePhase;
  const kept = phase.exercises.flatMap((exercise, at) =>
    standIns(plan, exercise, phase.id, follows.length).map((swapAt): Named => {
      const path: Path = ["phases", phaseAt, "exercises", at];
      const swap = swapAt === undefined ? undefined : plan.value.swap[swapAt];
      const card = swap?.to ?? exercise.card;
      const weekly = weeklyLayers(exercise, phase.weeks, protocol.source, path);
      return {
        card,
        why: swap ? undefined : exercise.why,
        main: exercise.main,
        when: exercise.when,
        origin: swap ? "swap" : "protocol",
        because: swap?.why,
        source: swap ? plan.source : protocol.source,
        path: swap ? ["swap", swapAt ?? 0, "to"] : [...path, "card"],
        protocol: { exercise },
        layers: (week) => {
          const stated = weekly[(follows[week - 1] ?? 0) - 1];
          const done = doneIn(plan.value, exercise.card, phase.id, week);
          if (!stated || done === "left-out" || cardOf(plan.value, exercise, done) !== card) {
            return undefined;
          }
          const dose = done === undefined ? undefined : plan.value.swap[done]?.dose;
          const own =
            dose && done !== undefined ? [layer(plan.source, ["swap", done, "dose"], dose)] : [];
          return [stated, ...own, ...redosed(plan, card, phase.id, week)];
        },
      };
    }),
  );
  const added = plan.value.add.flatMap((add, at): Named[] => {
    if (add.phase !== undefined && add.phase !== phase.id) return [];
    return [
      {
        card: add.card,
        why: undefined,
        main: false,
        when: undefined,
        origin: "add",
        because: add.why,
        source: plan.source,
        path: ["add", at, "card"],
        protocol: undefined,
        layers: (week) =>
          changes(add, phase.id, week) && !isLater(add, course, coursePhase, week)
            ? [
                layer(plan.source, ["add", at, "dose"], add.dose),
                ...redosed(plan, add.card, phase.id, week),
              ]
            : undefined,
      },
    ];
  });
  return [...kept, ...added];
}

/** Whether an addition to the whole course is done in this week in a phase that began later. */
function isLater(
  add: Plan["add"][number],
  course: readonly CoursePhase[],
  { at, firstWeek }: CoursePhase,
  week: number,
): boolean {
  const courseWeek = firstWeek + week - 1;
  return course.some((other) => {
    const inOther = courseWeek - other.firstWeek + 1;
    const began = other.firstWeek - firstWeek || other.at - at;
    return (
      began > 0 && inOther >= 1 && inOther <= other.printed && changes(add, other.phase.id, inOther)
    );
  });
}

/**
 * What becomes of a protocol's card in a week of a phase: left out, swapped (the position of the swap,
 * the first where several hold), or done as it is (undefined).
 */
function doneIn(
  plan: Plan,
  card: string,
  phase: string,
  week: number,
): "left-out" | number | undefined {
  const holds = (change: Plan["leave_out" | "swap"][number]) =>
    change.card === card && changes(change, phase, week);
  if (plan.leave_out.some(holds)) return "left-out";
  const at = plan.swap.findIndex(holds);
  return at < 0 ? undefined : at;
}

const cardOf = (plan: Plan, { card }: ProtocolExercise, swapAt: number | undefined) =>
  swapAt === undefined ? card : plan.swap[swapAt]?.to;

/** The protocol's own card (undefined) and the swaps that stand for it in some week of a phase, each card once. */
function standIns(
  { value: plan }: Read<Plan>,
  exercise: ProtocolExercise,
  phase: string,
  weeks: number,
): (number | undefined)[] {
  const byCard = new Map<string | undefined, number | undefined>();
  for (let week = 1; week <= weeks; week++) {
    const done = doneIn(plan, exercise.card, phase, week);
    if (done === "left-out") continue;
    const card = cardOf(plan, exercise, done);
    if (!byCard.has(card)) byCard.set(card, done);
  }
  return [...byCard.values()];
}

function redosed(plan: Read<Plan>, card: string, phase: string, week: number): DoseLayer[] {
  return plan.value.redose.flatMap((change, at) =>
    change.card === card && changes(change, phase, week)
      ? [layer(plan.source, ["redose", at, "dose"], change.dose)]
      : [],
  );
}

function layer(source: Source, path: Path, part: DosePart): DoseLayer {
  return { by: "plan", part, placeOf: (field) => source.at([...path, field]) };
}
