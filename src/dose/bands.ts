/** The force of elastic bands by level and elongation. */

import { KG_PER_LB } from "../units/mass.ts";

export interface BandForce {
  readonly level: number;
  /** Pounds-force at 100 % and at 200 % elongation, as printed. */
  readonly lb100: number;
  readonly lb200: number;
}

/**
 * Levels 1 (lightest) to 8, without colours. From a printed maker's chart, seen in a second-hand
 * copy. Doubtful: Uchida 2016, J Phys Ther Sci 28:1266, measured five of eight levels below the
 * chart; Santos 2009 found level 8 at 5.1 times level 1, where the chart has 5.9.
 */
export const BANDS: readonly BandForce[] = [
  { level: 1, lb100: 2.4, lb200: 3.4 },
  { level: 2, lb100: 3.0, lb200: 4.3 },
  { level: 3, lb100: 3.7, lb200: 5.5 },
  { level: 4, lb100: 4.6, lb200: 6.7 },
  { level: 5, lb100: 5.8, lb200: 8.6 },
  { level: 6, lb100: 7.3, lb200: 10.2 },
  { level: 7, lb100: 10.2, lb200: 15.3 },
  { level: 8, lb100: 14.2, lb200: 21.3 },
];

export const BAND_SOURCE =
  "printed chart of elastic bands (doubtful: Uchida 2016, J Phys Ther Sci 28:1266, measured lower forces)";

/**
 * Force of a band in kilograms-force at an elongation from 1 (100 %, as it is if not given) to 2,
 * on a straight line between the two printed columns. Undefined for a level or an elongation that
 * is not printed.
 */
export function bandKg(level: number, atElongation = 1): number | undefined {
  const band = BANDS.find((one) => one.level === level);
  if (!band || !(atElongation >= 1 && atElongation <= 2)) return undefined;
  return (band.lb100 + (band.lb200 - band.lb100) * (atElongation - 1)) * KG_PER_LB;
}
