/** Applies what a plan leaves out, swaps, adds and doses anew to one phase of its protocol. */

import type { Plan } from "../plan/schema.ts";
import type { DosePart } from "../prescription/fields.ts";
import type { DoseLayer } from "../prescription/merge.ts";
import type { Protocol, ProtocolExercise } from "../protocols/schema.ts";
import { weeklyLayers } from "../protocols/weekly-layers.ts";
import type { Path, Read, Source } from "../read/source.ts";
import { inSpan, type WeekSpan } from "../units/week-span.ts";
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
  readonly protocol: { readonly exercise: ProtocolExercise } | undefined;
  /** Layers for a week of the phase, from 1; undefined in weeks without the exercise. */
  readonly layers: (week: number) => readonly DoseLayer[] | undefined;
}

/** The exercises of a phase in the order of a session: the protocol's, changed, then the added ones. */
export function changedExercises(
  plan: Read<Plan>,
  protocol: Read<Protocol>,
  phaseAt: number,
): Named[] {
  const phase = protocol.value.phases[phaseAt];
  if (!phase) return [];
  const kept = phase.exercises.flatMap((exercise, at): Named[] => {
    if (plan.value.leave_out.some(({ card }) => card === exercise.card)) return [];
    const path: Path = ["phases", phaseAt, "exercises", at];
    const swapAt = plan.value.swap.findIndex(({ card }) => card === exercise.card);
    const swap = plan.value.swap[swapAt];
    const card = swap?.to ?? exercise.card;
    const weekly = weeklyLayers(exercise, phase.weeks, protocol.source, path);
    const swapLayer: DoseLayer[] = swap?.dose
      ? [layer(plan.source, ["swap", swapAt, "dose"], swap.dose)]
      : [];
    return [
      {
        card,
        why: swap ? undefined : exercise.why,
        main: exercise.main,
        when: exercise.when,
        origin: swap ? "swap" : "protocol",
        because: swap?.why,
        source: swap ? plan.source : protocol.source,
        path: swap ? ["swap", swapAt, "to"] : [...path, "card"],
        protocol: { exercise },
        layers: (week) => {
          const stated = weekly[week - 1];
          return stated && [stated, ...swapLayer, ...redosed(plan, card, phase.id, week)];
        },
      },
    ];
  });
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
          within(week, add.weeks)
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

function redosed(plan: Read<Plan>, card: string, phase: string, week: number): DoseLayer[] {
  return plan.value.redose.flatMap((change, at) =>
    change.card === card &&
    (change.phase === undefined || change.phase === phase) &&
    within(week, change.weeks)
      ? [layer(plan.source, ["redose", at, "dose"], change.dose)]
      : [],
  );
}

const within = (week: number, span: WeekSpan | undefined): boolean =>
  span === undefined || inSpan(week, span);

function layer(source: Source, path: Path, part: DosePart): DoseLayer {
  return { by: "plan", part, placeOf: (field) => source.at([...path, field]) };
}
