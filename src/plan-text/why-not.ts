/** Why an exercise is not in a client's program, for the clinician. */
import type { Card } from "../cards/schema.ts";
import type { Remedy } from "../edits/edit.ts";
import type { Fault } from "../faults/fault.ts";
import { faultText } from "../faults/print.ts";
import type { Presence } from "../program/absence.ts";
import { spansOf, weekSpanText } from "../units/week-span.ts";

/** "Bilateral hopping … [hops-two-legs]: weeks 5-12." */
export function weeksLine({ id, clinical }: Card, weeks: readonly number[]): string {
  const spans = spansOf(weeks).map(weekSpanText).join(", ");
  const where = weeks.length === 0 ? "not in this client's program" : `in weeks ${spans}`;
  return `${clinical} [${id}] is ${where}.`;
}

interface Starts extends Pick<Presence, "signs" | "waits"> {
  /** Whether the clinician's word stands in place of a sign that is not this client's. */
  readonly asks?: boolean;
}

/** The signs without which it is not begun, and the clinician's word where it waits for that. */
export const startLines = ({ signs, asks = false, waits }: Starts): string[] => [
  ...signs.map((sign) => `It starts only when: ${sign}`),
  ...(asks
    ? ["Its sign to begin is not for this client: they are told to wait for your word."]
    : []),
  ...(waits
    ? ["A flag rules it out until a review: the client is told to wait for your word."]
    : []),
];

/** The reasons, each with the edits that would bring it, numbered as they are to be taken. */
export function whyNotText(absent: readonly Fault[], numbered: readonly Remedy[]): string {
  return absent.map((fault) => faultText(fault, false, numbered)).join("\n\n");
}
