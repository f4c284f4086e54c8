/** A dose as card, protocol and plan state it together, and who stated what. */
import type { Place } from "../faults/fault.ts";
import type { DosePart } from "./fields.ts";

/** A dose as stated by card, protocol and plan together; the later of the three wins, field by field. */
export interface StatedDose {
  readonly dose: CompleteDose;
  readonly stated: Readonly<Partial<Record<keyof DosePart, Statement>>>;
  /** Set where a hold was stated over repetitions that somebody else counted, and not held. */
  readonly unclearHold?: boolean;
}

export interface Statement {
  readonly by: "card" | "protocol" | "plan";
  readonly place: Place;
}

/** A dose that says how many sets, what a set is, and how often. Times in seconds, lengths in metres. */
export type CompleteDose = DosePart & { readonly sets: number };

const RANK = { card: 0, protocol: 1, plan: 2 } as const;

/** How late a field was stated: card, then protocol, then plan; -1 where it was not. */
export function rankOf({ stated }: Pick<StatedDose, "stated">, field: keyof DosePart): number {
  const statement = stated[field];
  return statement === undefined ? -1 : RANK[statement.by];
}

/** Of these fields the one that was stated last; of several, the first named. */
export function lastStated(
  dose: Pick<StatedDose, "stated">,
  [first, ...more]: readonly [keyof DosePart, ...(keyof DosePart)[]],
): keyof DosePart {
  return more.reduce(
    (last, field) => (rankOf(dose, field) > rankOf(dose, last) ? field : last),
    first,
  );
}
