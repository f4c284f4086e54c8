/** A dose as card, protocol and plan state it together, and who stated what. */
import type { Place } from "../faults/fault.ts";
import type { DosePart } from "./fields.ts";

/** A dose as stated by card, protocol and plan together; the later of the three wins, field by field. */
export interface StatedDose {
  readonly dose: CompleteDose;
  readonly stated: Readonly<Partial<Record<keyof DosePart, Statement>>>;
}

export interface Statement {
  readonly by: "card" | "protocol" | "plan";
  readonly place: Place;
}

/** A dose that says how many sets, what a set is, and how often. Times in seconds, lengths in metres. */
export type CompleteDose = DosePart & { readonly sets: number };
