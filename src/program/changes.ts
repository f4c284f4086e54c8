/** Applies what a plan leaves out, swaps, adds and doses anew to one phase of its protocol. */

import type { Plan } from "../plan/schema.ts";
import type { DosePart } from "../prescription/fields.ts";
import type { DoseLayer } from "../prescription/merge.ts";
import type { Protocol, ProtocolExercise } from "../protocols/schema.ts";
import type { Path, Read, Source } from "../read/source.ts";
import type { WeekSpan } from "../units/quantities.ts";
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
  readonly inWeek: (week: number) => boolean;
  /** Layers for a week of the phase, given what the protocol states in it. */
  readonly layers: (stated: DosePart, week: number) => DoseLayer[];
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
        inWeek: () => true,
        layers: (stated, week) => [
          protocolLayer(protocol.source, path, exercise, stated, week),
          ...swapLayer,
          ...redosed(plan, card, phase.id, week),
        ],
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
        inWeek: (week) => within(week, add.weeks),
        layers: (_stated, week) => [
          layer(plan.source, ["add", at, "dose"], add.dose),
          ...redosed(plan, add.card, phase.id, week),
        ],
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
  span === undefined || (week >= span.first && week <= span.last);

function layer(source: Source, path: Path, part: DosePart): DoseLayer {
  return { by: "plan", part, placeOf: (field) => source.at([...path, field]) };
}

/** What the protocol states in a week: its table's row for the week wins over its dose for all weeks. */
function protocolLayer(
  source: Source,
  path: Path,
  exercise: ProtocolExercise,
  stated: DosePart,
  week: number,
): DoseLayer {
  const key = Object.keys(exercise.weeks ?? {}).find((span) => {
    const [first = 1, last = first] = span.split("-").map(Number);
    return within(week, { first, last });
  });
  return {
    by: "protocol",
    part: stated,
    placeOf: (field) => {
      if (key !== undefined && exercise.weeks?.[key]?.[field] !== undefined) {
        return source.at([...path, "weeks", key, field]);
      }
      if (exercise.dose[field] !== undefined) return source.at([...path, "dose", field]);
      return source.at([...path, exercise.rule ? "rule" : "card"]);
    },
  };
}
