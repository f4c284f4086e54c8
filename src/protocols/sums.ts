/** The sums of a protocol's table, and whether they agree with those its source prints. */
import type { Library } from "../cards/library.ts";
import { expandWeeks } from "../dose/progression.ts";
import { Fault } from "../faults/fault.ts";
import { mergeDose } from "../plan/merge-dose.ts";
import type { CompleteDose } from "../plan/program.ts";
import type { Read } from "../read/source.ts";
import type { Protocol } from "./schema.ts";

export interface Sums {
  /** Repetitions of the whole course on one side, at the low and at the high end of every range. */
  readonly reps: { readonly low: number; readonly high: number };
  readonly sessions: number;
}

/** Repetitions and sessions of one card over a whole protocol, on one side. */
export function protocolSums(protocol: Protocol, library: Library, cardId: string): Sums {
  const card = library.cards.get(cardId);
  let low = 0;
  let high = 0;
  let sessions = 0;
  for (const phase of protocol.phases) {
    for (const exercise of phase.exercises.filter((one) => one.card === cardId)) {
      expandWeeks(exercise, phase.weeks).doses.forEach((part, index) => {
        if (!part) return;
        const dose = mergeDose([
          { by: "card", part: card?.card.dose ?? {}, placeOf: nowhere },
          { by: "protocol", part, placeOf: nowhere },
        ])?.dose;
        if (!dose) return;
        const times = sessionsOf(dose, index + 1);
        const [lowest, highest] = repsOf(dose);
        sessions += times;
        low += times * lowest;
        high += times * highest;
      });
    }
  }
  return { reps: { low, high }, sessions };
}

/** Faults: sum-differs, unknown-card. A printed sum of repetitions may be that of either end of a range. */
export function sumFaults(protocol: Read<Protocol>, library: Library): Fault[] {
  return Object.entries(protocol.value.expect).flatMap(([card, expected]) => {
    const sums = protocolSums(protocol.value, library, card);
    const faults: Fault[] = [];
    const differs = (field: "reps" | "sessions", got: string) => {
      const place = protocol.source.at(["expect", card, field]);
      faults.push(
        new Fault(
          "sum-differs",
          `${card}: the table gives ${got}, the source ${expected[field]}.`,
          {
            place,
            frame: protocol.source.frame(place),
            hint: "Check the weeks against the source.",
          },
        ),
      );
    };
    const { reps, sessions } = sums;
    if (expected.reps !== undefined && expected.reps !== reps.low && expected.reps !== reps.high) {
      const range = reps.low === reps.high ? `${reps.low}` : `${reps.low} to ${reps.high}`;
      differs("reps", `${range} repetitions`);
    }
    if (expected.sessions !== undefined && expected.sessions !== sessions) {
      differs("sessions", `${sessions} sessions`);
    }
    return faults;
  });
}

const nowhere = () => ({ file: "", line: 1, column: 1 });

/** Sessions in a week; "every second day" gives four and three in turn, beginning with four. */
function sessionsOf(dose: CompleteDose, week: number): number {
  if (dose.per_day !== undefined) return dose.per_day * 7;
  if (dose.every !== undefined) {
    const until = (weeks: number) => Math.ceil((weeks * 7) / (dose.every ?? 1));
    return until(week) - until(week - 1);
  }
  return dose.per_week ?? 0;
}

function repsOf(dose: CompleteDose): [number, number] {
  const reps = dose.reps ?? [];
  const one = reps.length === 1 ? reps[0] : undefined;
  if (one) return [one.low * dose.sets, one.high * dose.sets];
  return [
    reps.reduce((sum, set) => sum + set.low, 0),
    reps.reduce((sum, set) => sum + set.high, 0),
  ];
}
