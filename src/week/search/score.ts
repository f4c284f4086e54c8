/** What a day or a week of sessions costs, as one whole number that compares in the right order. */

/** Moved bouts, then sessions, then bouts off preferred slots; each below 1000. */
export const MOVED = 1_000_000;
export const SESSION = 1000;
export const IMPOSSIBLE = 1e12;

/** Moved bouts and sessions, without preference. */
export function withoutPreference(score: number): number {
  return Math.floor(score / SESSION);
}

/** The three parts of a score. */
export function readScore(score: number): { moved: number; sessions: number; preference: number } {
  return {
    moved: Math.floor(score / MOVED),
    sessions: Math.floor((score % MOVED) / SESSION),
    preference: score % SESSION,
  };
}

/** A week: score of its sessions, unevenness and tenths of a minute of its fullest day. */
export interface WeekScore {
  readonly score: number;
  readonly evenness: number;
  readonly fullest: number;
}

/** The score below which a week with this evenness and fullest day would be better than `best`. */
export function scoreToBeat(
  best: WeekScore | undefined,
  evenness: number,
  fullest: number,
): number {
  if (best === undefined) return IMPOSSIBLE;
  const order = evenness - best.evenness || fullest - best.fullest;
  if (order === 0) return best.score;
  return (withoutPreference(best.score) + (order < 0 ? 1 : 0)) * SESSION;
}
