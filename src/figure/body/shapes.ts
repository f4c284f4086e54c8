/** The shape of each part of the body, as balls in its segment's axes: x forward, y up, z right. Data only; radii set by eye, in body heights. */

import type { BodySide } from "../format/words.ts";
import type { BodyPoint } from "./anatomy.ts";
import { type LimbSegment, limbSegment, SEGMENT } from "./body.ts";
import { BALL_X, BALL_Y } from "./kinematics.ts";

/** A shape is outlines drawn together; an outline goes round its balls. */
export type Shape = readonly (readonly BodyPoint[])[];

export function legShape(side: BodySide): Shape {
  const ball = on(side);
  const knee = ball("shank", 0, 0, 0.0335);
  return [
    [ball("thigh", 0, 0, 0.054), ball("thigh", 0.004, -0.09, 0.05), knee],
    [knee, ball("shank", -0.01, -0.075, 0.0335), ball("foot", 0, 0.004, 0.021)],
  ];
}

export function shoeShape(side: BodySide): Shape {
  const ball = on(side);
  const front = ball("foot", BALL_X, BALL_Y, 0.0155);
  return [
    [ball("foot", -0.02, -0.019, 0.02), ball("foot", 0.012, -0.01, 0.02), front],
    [front, ball("toes", 0.034, 0.003, 0.0125)],
  ];
}

export function armShape(side: BodySide): Shape {
  const ball = on(side);
  const elbow = ball("forearm", 0, 0, 0.0235);
  return [
    [ball("upperArm", 0, 0, 0.0335), ball("upperArm", 0, -0.06, 0.0315), elbow],
    [elbow, ball("forearm", 0, -0.045, 0.0245), ball("hand", 0, 0, 0.0165)],
  ];
}

export function handShape(side: BodySide, fist: boolean): Shape {
  const ball = on(side);
  const wrist = ball("hand", 0, -0.004, 0.0155);
  if (fist) return [[wrist, ball("hand", 0.004, -0.032, 0.0235)]];
  return [
    [wrist, ball("hand", 0, -0.028, 0.0195), ball("hand", 0, -0.075, 0.01)],
    [ball("hand", 0.012, -0.022, 0.01), ball("hand", 0.028, -0.046, 0.0075)],
  ];
}

export function pelvisShape(): Shape {
  return [
    [
      ...pair(SEGMENT.pelvis, 0, 0, 0.046, 0.056),
      ...pair(SEGMENT.pelvis, 0, 0.04, 0.042, 0.05),
      ...pair(SEGMENT.abdomen, 0, 0.03, 0.038, 0.0475),
    ],
  ];
}

/** The upper trunk; the shoulders go where the arms begin. */
export function shirtShape(): Shape {
  const waist = pair(SEGMENT.abdomen, 0, 0.02, 0.038, 0.0475);
  const chest = pair(SEGMENT.thorax, 0, 0.06, 0.05, 0.058);
  return [
    [...waist, ...chest],
    [
      ...chest,
      { segment: limbSegment("upperArm", "right"), offset: [0, 0, -0.012], radius: 0.034 },
      { segment: limbSegment("upperArm", "left"), offset: [0, 0, 0.012], radius: 0.034 },
    ],
    [...pair(SEGMENT.thorax, 0, 0.128, 0.03, 0.034), ...pair(SEGMENT.thorax, 0, 0.07, 0.05, 0.05)],
  ];
}

export function neckShape(): Shape {
  return [
    [
      { segment: SEGMENT.thorax, offset: [-0.004, 0.142, 0], radius: 0.03 },
      { segment: SEGMENT.head, offset: [0, 0.06, 0], radius: 0.03 },
    ],
  ];
}

export function hairShape(): Shape {
  return [
    [
      { segment: SEGMENT.head, offset: [-0.006, 0.116, 0], radius: 0.057 },
      { segment: SEGMENT.head, offset: [-0.018, 0.088, 0], radius: 0.044 },
    ],
  ];
}

export function faceShape(): Shape {
  const head = (x: number, y: number, z: number, radius: number): BodyPoint => ({
    segment: SEGMENT.head,
    offset: [x, y, z],
    radius,
  });
  return [
    [
      head(0.021, 0.108, 0.017, 0.036),
      head(0.021, 0.108, -0.017, 0.036),
      head(0.024, 0.071, 0, 0.028),
    ],
    [head(0.048, 0.1, 0, 0.014), head(0.06, 0.09, 0, 0.0085)],
  ];
}

/** One ear; only the one nearer the viewer is drawn. */
export function earShape(side: BodySide): Shape {
  const z = side === "right" ? 0.046 : -0.046;
  return [[{ segment: SEGMENT.head, offset: [-0.006, 0.1, z], radius: 0.0125 }]];
}

/** Covers the line of a hip that does not work where it lies over the pelvis. */
export function hipPatch(side: BodySide): Shape {
  return [[{ segment: limbSegment("thigh", side), offset: [0, 0.004, 0], radius: 0.047 }]];
}

function on(side: BodySide) {
  return (segment: LimbSegment, x: number, y: number, radius: number): BodyPoint => ({
    segment: limbSegment(segment, side),
    offset: [x, y, 0],
    radius,
  });
}

function pair(segment: number, x: number, y: number, z: number, radius: number): BodyPoint[] {
  return [
    { segment, offset: [x, y, z], radius },
    { segment, offset: [x, y, -z], radius },
  ];
}
