/** The body's measures and the order of its joint angles. Lengths in body heights, angles in degrees, axes x forward, y up, z right. */
import type { BodySide } from "../format/words.ts";

/**
 * Heights and lengths as shares of body height: Drillis & Contini 1966, as printed in Winter,
 * Biomechanics and Motor Control of Human Movement, fig. 4.1. The last five are set by eye
 * (the published hand of .108 looked long).
 */
export const LENGTH = {
  ankleHeight: 0.039,
  kneeHeight: 0.285,
  hipHeight: 0.53,
  shoulderHeight: 0.818,
  upperArm: 0.186,
  forearm: 0.146,
  shank: 0.246,
  thigh: 0.245,
  trunk: 0.288,
  hand: 0.085,
  halfHips: 0.052,
  halfShoulders: 0.108,
  lowBack: 0.062,
  midBack: 0.157,
  neck: 0.297,
} as const;

/**
 * Share of body mass and place of the mass centre from the proximal end (Dempster, as in Winter,
 * table 4.1). The trunk's .497 is split as there into pelvis, abdomen and thorax, whose mass
 * centres are measured from the lower end here (there from the upper).
 */
export const MASS = {
  hand: { share: 0.006, at: 0.506 },
  forearm: { share: 0.016, at: 0.43 },
  upperArm: { share: 0.028, at: 0.436 },
  foot: { share: 0.0145, at: 0.5 },
  shank: { share: 0.0465, at: 0.433 },
  thigh: { share: 0.1, at: 0.433 },
  pelvis: { share: 0.142, at: 0.895 },
  abdomen: { share: 0.139, at: 0.56 },
  thorax: { share: 0.216, at: 0.18 },
  head: { share: 0.081, at: 1 },
} as const;

/** Segments in the order of kinematics: a parent stands before its children. */
export const SEGMENT = { pelvis: 0, abdomen: 1, thorax: 2, head: 3 } as const;
const LIMB_SEGMENTS = ["thigh", "shank", "foot", "toes", "upperArm", "forearm", "hand"] as const;
export type LimbSegment = (typeof LIMB_SEGMENTS)[number];
export const SEGMENTS = 4 + 2 * LIMB_SEGMENTS.length;

export function limbSegment(segment: LimbSegment, side: BodySide): number {
  return 4 + LIMB_SEGMENTS.indexOf(segment) + (side === "right" ? 0 : LIMB_SEGMENTS.length);
}

/** Positions of the angles of the whole body in a pose's array; x, y, z are the mid-hip point. */
export const ANGLE = {
  x: 0,
  y: 1,
  z: 2,
  lean: 3,
  roll: 4,
  trunkForward: 5,
  trunkSide: 6,
  trunkTurn: 7,
  neckForward: 8,
  neckSide: 9,
  neckTurn: 10,
} as const;

const LIMB_ANGLES = [
  "hipFlexion",
  "hipAbduction",
  "hipRotation",
  "knee",
  "ankle",
  "toes",
  "shoulderFlexion",
  "shoulderAbduction",
  "shoulderRotation",
  "elbow",
  "wrist",
  "bladeForward",
  "bladeUp",
] as const;
export type LimbAngle = (typeof LIMB_ANGLES)[number];
export const ANGLES = 11 + 2 * LIMB_ANGLES.length;

export function limbAngle(angle: LimbAngle, side: BodySide): number {
  return 11 + LIMB_ANGLES.indexOf(angle) + (side === "right" ? 0 : LIMB_ANGLES.length);
}

/** All angles of a pose, in the order of ANGLE and limbAngle. */
export type Angles = Float64Array;

/** The figure's height in millimetres where a check speaks of millimetres of the real body. */
export const REAL_HEIGHT = 1700;
