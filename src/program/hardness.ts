/** What counts as hard work, and why: the one rule that layout, terminal and JSON share. */
import type { Card } from "../cards/schema.ts";
import { show } from "../units/rounding.ts";

export interface Hardness {
  readonly hard: boolean;
  /** In a few words: "effort 8 of 10". */
  readonly because: string;
}

/**
 * From this effort on, of 10, a bout is hard whatever it trains: the upper of the three zones of a
 * session's perceived exertion (Seiler and Kjerland 2006, Scand J Med Sci Sports 16:49; from memory).
 */
const HARD_EFFORT = 7;

/** From this recovery time on, the tissue says that a bout was hard. Common practice. */
export const HARD_RECOVERY_S = 36 * 3600;

/**
 * Whether a bout is hard work: what the card says; else by its effort, by the quality trained (power is
 * quick and strong at any effort), and by the time that its tissue needs afterwards.
 *
 * @param effort 0 to 10; undefined where none is stated
 */
export function hardness(card: Card, effort: number | undefined): Hardness {
  if (card.hard !== undefined) return { hard: card.hard, because: "the card says so" };
  if (effort !== undefined && effort >= HARD_EFFORT) {
    return { hard: true, because: `effort ${show(effort)} of 10` };
  }
  if (card.trains === "power") return { hard: true, because: "it trains power" };
  const hours = show(card.recovery / 3600);
  return card.recovery >= HARD_RECOVERY_S
    ? { hard: true, because: `its tissue needs ${hours} h` }
    : { hard: false, because: `effort under ${HARD_EFFORT}, and its tissue needs ${hours} h` };
}
