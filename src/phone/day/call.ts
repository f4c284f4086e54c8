/** Whether the client is to call the clinic, in the sentences of the booklet. */
import type { Diary } from "../../diary/entry.ts";
import { type Call, type CallReason, dueCalls } from "../../pain/call.ts";
import { felt } from "./advice.ts";
import type { PhoneData, PlannedSession } from "./data.ts";

/** A call that is due: what for, and the booklet's signs that say so. */
export interface DueCall {
  readonly reasons: readonly CallReason[];
  readonly says: readonly string[];
}

/** The call that is due; undefined where none is, or the client has made it. */
export function callOf(
  { entries }: Diary,
  calls: readonly Call[],
  { made, pain }: Pick<PhoneData, "made" | "pain">,
  sessions: readonly PlannedSession[],
): DueCall | undefined {
  const reasons = dueCalls(entries.map(felt(sessions, entries)), calls, made, pain.callLevel);
  if (reasons.length === 0) return undefined;
  return { reasons, says: [...new Set(reasons.map(({ sign }) => pain[sign]))] };
}

/** The calls with one made now for all that it was due for. */
export const withCall = (
  calls: readonly Call[],
  { reasons }: DueCall,
  at: string,
  booklet: string,
): readonly Call[] => [
  ...calls,
  { at, booklet, for: reasons.map(({ id, pain }) => ({ id, pain })) },
];
