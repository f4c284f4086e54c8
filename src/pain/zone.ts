/** What a number of pain means while an exercise is done: the zones of the ruler that a booklet prints. */
import { isOver } from "./advice.ts";
import type { PainLimits } from "./limits.ts";

/** From no pain to the worst: go on, go on with care, stop, stop and call. */
export type PainZone = "fine" | "allowed" | "too-much" | "call";

/** The zone of a pain, 0 to 10. */
export function painZone(pain: number, limits: PainLimits, callLevel: number): PainZone {
  if (pain >= callLevel) return "call";
  if (isOver(pain, { pain: limits })) return "too-much";
  return pain <= limits.comfortable ? "fine" : "allowed";
}
