/** What a plan can do where a measure or the equipment does not serve a dose, as edits to choose from. */
import type { LibraryCard } from "../cards/library.ts";
import { choices, type Remedy, type Value } from "../edits/edit.ts";
import type { Plan } from "../plan/schema.ts";
import { type DoseContext, sayCard, type Work } from "./context.ts";
import { growth } from "./growth.ts";

export interface DoseRemedies {
  /** The card to do instead. */
  readonly instead: LibraryCard | undefined;
  /** Repetitions of every set that would do. */
  readonly reps?: number | undefined;
  /** The heaviest that the client has, where that is too light. */
  readonly heaviestKg?: number | undefined;
  /** What the plan can accept with a reason. */
  readonly accept?: Plan["accept"][number]["code"] | undefined;
}

type Choice = Omit<Remedy, "lead">;

/** The least change first: other repetitions or tempo, another card, and accepting it as it is. */
export function doseRemedies(
  context: DoseContext,
  work: Work,
  { heaviestKg, instead, reps, accept }: DoseRemedies,
): (weeks: readonly number[]) => readonly Remedy[] {
  const { card, origin } = work.exercise;
  const { id } = card.card;
  const alike = (work.stated.dose.reps ?? []).length === 1;
  const free = ![...context.program.plan.value.swap].some((swap) => swap.card === id);
  const remedy = (
    sentence: string,
    list: string,
    entry: Readonly<Record<string, Value>>,
  ): Choice => ({
    sentence,
    edits: [{ kind: "append", path: [list], value: { ...entry, why: null } }],
  });
  return (weeks) =>
    choices([
      ...(heaviestKg === undefined ? [] : growth(context, work, heaviestKg, weeks)),
      ...(reps !== undefined && alike
        ? [
            remedy(`Sets of ${reps} for ${id}, if the course allows it.`, "redose", {
              card: id,
              dose: { reps },
            }),
          ]
        : []),
      ...(instead && origin === "protocol" && free
        ? [
            remedy(`${sayCard(instead)} instead of ${id}.`, "swap", {
              card: id,
              to: instead.card.id,
            }),
          ]
        : []),
      ...(accept
        ? [remedy(`Accept ${accept} for ${id} as it is.`, "accept", { code: accept, card: id })]
        : []),
    ]);
}
