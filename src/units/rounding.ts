/** Rounding that is safe for doses, and numbers as a clinician reads them. */

/** Far below any step that equipment makes; keeps 0.1 + 0.2 from counting as more than 0.3. */
const HAIR = 1e-9;

/** The largest multiple of `step` that is at or under `value`. */
export function floorTo(value: number, step: number): number {
  return tidy(Math.floor(value / step + HAIR) * step);
}

/** The smallest multiple of `step` that is at or over `value`; for times, never for loads. */
export function ceilTo(value: number, step: number): number {
  return tidy(Math.ceil(value / step - HAIR) * step);
}

/** Whether `value` is at or under `limit`, apart from the last bits of a floating-point number. */
export function atMost(value: number, limit: number): boolean {
  return value <= limit + HAIR * Math.max(1, Math.abs(limit));
}

/** Removes the last bits that floating-point arithmetic leaves: 0.30000000000000004 is 0.3. */
export function tidy(value: number): number {
  return Math.round(value * 1e6) / 1e6 + 0;
}

/** A number with at most two decimals, without trailing zeros; 12.50 is "12.5". */
export function show(value: number): string {
  return String(Math.round(value * 100) / 100 + 0);
}

/** A share as a percentage with at most one decimal. */
export function showPercent(share: number): string {
  return `${Math.round(share * 1000) / 10 + 0} %`;
}

/** Seconds as people say them: 45 s, 2 min, 2 min 30 s. */
export function showTime(seconds: number): string {
  if (seconds < 120 && seconds % 60 !== 0) return `${show(seconds)} s`;
  const minutes = Math.floor(seconds / 60);
  const rest = tidy(seconds - minutes * 60);
  return rest === 0 ? `${minutes} min` : `${minutes} min ${show(rest)} s`;
}
