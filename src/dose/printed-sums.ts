/** The sums of a protocol's table, and whether they agree with those its source prints. */
import type { Library } from "../cards/library.ts";
import { clinicSchema } from "../clinic/schema.ts";
import { Fault } from "../faults/fault.ts";
import { mergeDose } from "../prescription/merge.ts";
import { expandWeeks } from "../prescription/week-table.ts";
import type { Protocol } from "../protocols/schema.ts";
import type { Read } from "../read/source.ts";
import { type CourseSums, courseSums, isWithin } from "./course.ts";

/** Repetitions, sessions and seconds under tension of one card over a whole protocol, on one side. */
function protocolSums(protocol: Protocol, library: Library, cardId: string): CourseSums {
  const own = library.cards.get(cardId)?.card.dose ?? {};
  let nextWeek = 1;
  const weeks = protocol.phases.flatMap((phase) => {
    const firstWeek = phase.from_week ?? nextWeek;
    nextWeek = firstWeek + phase.weeks;
    return phase.exercises
      .filter(({ card }) => card === cardId)
      .flatMap((exercise) => expandWeeks(exercise, phase.weeks).doses)
      .flatMap((part, index) => {
        const layers = [own, ...(part ? [part] : [])];
        const dose = mergeDose(
          layers.map((layer) => ({ by: "protocol", part: layer, placeOf: nowhere })),
        );
        return part && dose ? [{ week: firstWeek + index, dose: dose.dose }] : [];
      });
  });
  return courseSums(weeks, clinicDefaults().dosing);
}

/** Faults: sum-differs. A printed sum has to lie within what the table's ranges give. */
export function sumFaults(protocol: Read<Protocol>, library: Library): Fault[] {
  return Object.entries(protocol.value.expect).flatMap(([card, expected]) => {
    const { reps, sessions, tensionS } = protocolSums(protocol.value, library, card);
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

const nowhere = () => ({ file: "", line: 1, column: 1 });

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
