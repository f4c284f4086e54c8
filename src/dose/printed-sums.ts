/** The sums of a protocol's table, and whether they agree with those its source prints. */
import { cardLayer } from "../cards/dose-layer.ts";
import type { Library } from "../cards/library.ts";
import { clinicSchema } from "../clinic/schema.ts";
import { Fault } from "../faults/fault.ts";
import { mergeLayers } from "../prescription/merge.ts";
import type { Protocol } from "../protocols/schema.ts";
import { weeklyLayers } from "../protocols/weekly-layers.ts";
import type { Read } from "../read/source.ts";
import { type CourseSums, courseSums, isWithin } from "./course.ts";

/** Repetitions, sessions and seconds under tension of one card over a whole protocol, on one side. */
function protocolSums(protocol: Read<Protocol>, library: Library, cardId: string): CourseSums {
  const card = library.cards.get(cardId);
  const own = card && cardLayer(card);
  let nextWeek = 1;
  const weeks = protocol.value.phases.flatMap((phase, phaseAt) => {
    const firstWeek = phase.from_week ?? nextWeek;
    nextWeek = firstWeek + phase.weeks;
    return phase.exercises.flatMap((exercise, at) => {
      if (exercise.card !== cardId) return [];
      const path = ["phases", phaseAt, "exercises", at];
      const weekly = weeklyLayers(exercise, phase.weeks, protocol.source, path);
      return weekly.flatMap((layer, index) => {
        const dose = layer && mergeLayers(own ? [own, layer] : [layer]);
        return dose ? [{ week: firstWeek + index, dose: dose.dose }] : [];
      });
    });
  });
  return courseSums(weeks, clinicDefaults().dosing);
}

/** Faults: sum-differs. A printed sum has to lie within what the table's ranges give. */
export function sumFaults(protocol: Read<Protocol>, library: Library): Fault[] {
  return Object.entries(protocol.value.expect).flatMap(([card, expected]) => {
    const { reps, sessions, tensionS } = protocolSums(protocol, library, card);
    const checks = [
      { field: "reps", got: reps, unit: "repetitions" },
      { field: "sessions", got: { low: sessions, high: sessions }, unit: "sessions" },
      {
        field: "tension",
        got: { low: tensionS ?? 0, high: tensionS ?? 0 },
        unit: "seconds under tension",
      },
    ] as const;
    return checks.flatMap(({ field, got, unit }) => {
      const printed = expected[field];
      if (printed === undefined || isWithin(printed, got)) return [];
      const range = got.low === got.high ? `${got.low}` : `${got.low} to ${got.high}`;
      const place = protocol.source.at(["expect", card, field]);
      return new Fault(
        "sum-differs",
        `${card}: the table gives ${range} ${unit}, the source ${printed}.`,
        {
          place,
          frame: protocol.source.frame(place),
          hint: "Check the weeks against the source.",
        },
      );
    });
  });
}

/** A protocol belongs to no clinic: its sums are taken with the settings a clinic starts with. */
function clinicDefaults() {
  const text = "…";
  return clinicSchema.parse({
    name: text,
    phone: text,
    hours: text,
    out_of_hours: text,
    emergency: text,
  });
}
