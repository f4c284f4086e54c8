/** Serialises quantities: written back as an author writes them; reading that gives the same values again. */

/** Seconds with the largest unit that divides them: "30 s", "2 min", "48 h". */
export function timeText(seconds: number): string {
  if (seconds > 0 && seconds % 3600 === 0) return `${seconds / 3600} h`;
  if (seconds > 0 && seconds % 60 === 0) return `${seconds / 60} min`;
  return `${seconds} s`;
}

export const massText = (kg: number): string => `${kg} kg`;

export const distanceText = (metres: number): string => `${metres} m`;

export const speedText = (metresPerSecond: number): string => `${metresPerSecond} m/s`;

/** Without the fields that are undefined. */
export function defined(fields: Readonly<Record<string, unknown>>): Record<string, unknown> {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined));
}
