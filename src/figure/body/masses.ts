/** The mass centre of the whole body. */

import { SIDES } from "../format/words.ts";
import { LENGTH, limbSegment, MASS, SEGMENT } from "./body.ts";
import { coordinate, type Frames } from "./kinematics.ts";

type Offset = readonly [number, number, number];

/** A coordinate (0 x, 1 y, 2 z) of the mass centre, in body heights. */
export function massCentre(frames: Frames, axis: number): number {
  let sum = 0;
  for (const { segment, offset, share } of MASSES) {
    sum += share * coordinate(frames, segment, offset, axis);
  }
  return sum / TOTAL;
}

/** The ear canal above the base of the neck, where the head's mass centre lies (Winter, table 4.1). */
const EAR = 0.109;

const MASSES: readonly { segment: number; offset: Offset; share: number }[] = [
  middle(SEGMENT.pelvis, LENGTH.lowBack, MASS.pelvis),
  middle(SEGMENT.abdomen, LENGTH.midBack - LENGTH.lowBack, MASS.abdomen),
  middle(SEGMENT.thorax, LENGTH.neck - LENGTH.midBack, MASS.thorax),
  middle(SEGMENT.head, EAR, MASS.head),
  ...SIDES.flatMap((side) => [
    limb(limbSegment("thigh", side), LENGTH.thigh, MASS.thigh),
    limb(limbSegment("shank", side), LENGTH.shank, MASS.shank),
    {
      segment: limbSegment("foot", side),
      offset: [0.034, -0.02, 0] as const,
      share: MASS.foot.share,
    },
    limb(limbSegment("upperArm", side), LENGTH.upperArm, MASS.upperArm),
    limb(limbSegment("forearm", side), LENGTH.forearm, MASS.forearm),
    limb(limbSegment("hand", side), LENGTH.hand, MASS.hand),
  ]),
];

const TOTAL = MASSES.reduce((sum, mass) => sum + mass.share, 0);

interface Share {
  readonly share: number;
  readonly at: number;
}

function middle(segment: number, length: number, { share, at }: Share) {
  return { segment, offset: [0, length * at, 0] as const, share };
}

function limb(segment: number, length: number, { share, at }: Share) {
  return { segment, offset: [0, -length * at, 0] as const, share };
}
