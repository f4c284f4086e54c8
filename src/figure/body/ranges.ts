/** How far each joint may go in a picture. Degrees. */

import { SIDES } from "../format/words.ts";
import { ANGLE, ANGLES, type LimbAngle, limbAngle } from "./body.ts";

export type Range = readonly [least: number, most: number];

/**
 * After the neutral-zero norms of the AAOS (1965), from memory, widened a little for drawing;
 * the widening is the difference to the norms in tests/figure/ranges.test.ts.
 */
const LIMB_RANGES: Record<LimbAngle, Range> = {
  hipFlexion: [-30, 125],
  hipAbduction: [-30, 45],
  hipRotation: [-45, 45],
  knee: [0, 145],
  ankle: [-50, 25],
  toes: [-10, 75],
  shoulderFlexion: [-60, 180],
  shoulderAbduction: [-45, 180],
  shoulderRotation: [-90, 90],
  elbow: [0, 150],
  wrist: [-80, 90],
  bladeForward: [-25, 30],
  bladeUp: [-15, 35],
};

const MIDDLE_RANGES = {
  trunkForward: [-30, 90],
  trunkSide: [-35, 35],
  trunkTurn: [-45, 45],
  neckForward: [-45, 45],
  neckSide: [-45, 45],
  neckTurn: [-70, 70],
} as const satisfies Record<string, Range>;

/** The range of each angle of a pose; unbounded for the place and tilt of the pelvis. */
export const RANGES: readonly Range[] = ranges();

function ranges(): Range[] {
  const all: Range[] = Array.from({ length: ANGLES }, () => [-Infinity, Infinity]);
  for (const [name, range] of Object.entries(MIDDLE_RANGES)) {
    all[ANGLE[name as keyof typeof MIDDLE_RANGES]] = range;
  }
  for (const side of SIDES) {
    for (const [name, range] of Object.entries(LIMB_RANGES)) {
      all[limbAngle(name as LimbAngle, side)] = range;
    }
  }
  return all;
}
