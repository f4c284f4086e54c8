/** How often an exercise is done, and how many sessions that makes in a given week. */
import type { StatedDose } from "../prescription/stated.ts";
import { rankOf } from "../prescription/stated.ts";
import { type DoseContext, sayCard, statedStep, type Work } from "./context.ts";
import type { Frequency, ProvenanceStep } from "./types.ts";

/**
 * Sessions in a week of the course. Every so many days counts from the first day of the course, so
 * that every second day gives four and three sessions in turn.
 */
export function sessionsInWeek(frequency: Frequency, week: number): number {
  if ("perWeek" in frequency) return frequency.perWeek;
  if ("perDay" in frequency) return frequency.perDay * 7;
  const { everyDays } = frequency;
  return Math.ceil((week * 7) / everyDays) - Math.ceil(((week - 1) * 7) / everyDays);
}

/** How often, as stated last. Fault: dose-incomplete where nobody says; once a week then stands in. */
export function frequencyOf(
  context: DoseContext,
  work: Work,
): { readonly frequency: Frequency; readonly provenance: readonly ProvenanceStep[] } {
  const { dose, stated } = work.stated;
  const field = latest(work.stated);
  const amount = field && dose[field];
  if (field === undefined || amount === undefined) {
    context.findings.add(
      {
        code: "dose-incomplete",
        cause: `${work.exercise.card.card.id} frequency`,
        level: "error",
        place: () => work.exercise.place,
        say: (weeks) =>
          `How often ${sayCard(work.exercise.card)} is done is not stated (${weeks}).`,
        hint: "Give one of per_week, per_day and every.",
      },
      work.week,
    );
    return { frequency: { perWeek: 1 }, provenance: [] };
  }
  const frequency = make(field, amount);
  return { frequency, provenance: [statedStep(stated[field], sayFrequency(frequency), amount)] };
}

/** "3 days a week", "twice a day, every day", "every second day". */
function sayFrequency(frequency: Frequency): string {
  if ("perWeek" in frequency) {
    return frequency.perWeek === 1 ? "1 day a week" : `${frequency.perWeek} days a week`;
  }
  if ("perDay" in frequency) {
    return `${["", "Once", "Twice", "Three times"][frequency.perDay] ?? `${frequency.perDay} times`} a day, every day`;
  }
  return frequency.everyDays === 2 ? "Every second day" : `Every ${frequency.everyDays} days`;
}

type Field = "per_week" | "per_day" | "every";

function latest(stated: StatedDose): Field | undefined {
  const fields: readonly Field[] = ["per_week", "per_day", "every"];
  return fields
    .filter((field) => stated.dose[field] !== undefined)
    .reduce<Field | undefined>(
      (best, field) =>
        best === undefined || rankOf(stated, field) > rankOf(stated, best) ? field : best,
      undefined,
    );
}

function make(field: Field, amount: number): Frequency {
  if (field === "per_week") return { perWeek: amount };
  return field === "per_day" ? { perDay: amount } : { everyDays: amount };
}
