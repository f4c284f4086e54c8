/** Where on the body the named parts and landmarks are: points with a radius, in a segment's own axes. Data only; by eye. */

import {
  type BodySide,
  type Landmark,
  MIDDLE_PARTS,
  type MiddlePart,
  PAIRED_PARTS,
  type PairedPart,
  SIDES,
} from "../format/words.ts";
import { LENGTH, type LimbSegment, limbSegment, SEGMENT } from "./body.ts";
import { BALL_X, BALL_Y } from "./kinematics.ts";

export interface BodyPoint {
  readonly segment: number;
  readonly offset: readonly [number, number, number];
  readonly radius: number;
}

type Local = readonly [segment: LimbSegment, x: number, y: number, radius: number];

const HEEL: Local = ["foot", -0.02, -0.019, 0.02];
const BALL: Local = ["foot", BALL_X, BALL_Y, 0.0155];
const TOE: Local = ["toes", 0.034, 0.003, 0.0125];
const KNEE: Local = ["shank", 0, 0, 0.0335];
const ELBOW: Local = ["forearm", 0, 0, 0.0235];
const WRIST: Local = ["hand", 0, 0, 0.0165];
const PALM: Local = ["hand", 0, -0.026, 0.0195];
const FINGERS: Local = ["hand", 0, -0.075, 0.01];
const FIST: Local = ["hand", 0, -0.03, 0.023];

/** The points with which a part rests on a surface; the first one says where on it. */
const PAIRED: Readonly<Record<PairedPart, readonly Local[]>> = {
  foot: [BALL, HEEL],
  toes: [BALL],
  heel: [HEEL],
  instep: [TOE],
  knee: [KNEE],
  elbow: [ELBOW],
  forearm: [ELBOW, WRIST],
  hand: [PALM, FINGERS],
  fist: [FIST],
  fingers: [FINGERS],
  "hip side": [["thigh", 0, 0, 0.054]],
  "shoulder side": [["upperArm", 0, 0, 0.0335]],
  "ankle side": [["foot", 0, 0, 0.021]],
};

const MIDDLE: Readonly<Record<MiddlePart | "forehead", BodyPoint>> = {
  pelvis: { segment: SEGMENT.pelvis, offset: [0, 0, 0], radius: 0.056 },
  "upper back": { segment: SEGMENT.thorax, offset: [-0.02, 0.11, 0], radius: 0.04 },
  chest: { segment: SEGMENT.thorax, offset: [0, 0.06, 0], radius: 0.058 },
  belly: { segment: SEGMENT.abdomen, offset: [0, 0.04, 0], radius: 0.047 },
  head: { segment: SEGMENT.head, offset: [-0.006, 0.116, 0], radius: 0.057 },
  forehead: { segment: SEGMENT.head, offset: [0.03, 0.12, 0], radius: 0.036 },
};

function localPoint([segment, x, y, radius]: Local, side: BodySide): BodyPoint {
  return { segment: limbSegment(segment, side), offset: [x, y, 0], radius };
}

/** The points of a part such as "foot right" or "pelvis". */
export const PART_POINTS: ReadonlyMap<string, readonly BodyPoint[]> = new Map([
  ...MIDDLE_PARTS.map((part): [string, readonly BodyPoint[]] => [part, [MIDDLE[part]]]),
  ...PAIRED_PARTS.flatMap((part) =>
    SIDES.map((side): [string, readonly BodyPoint[]] => [
      `${part} ${side}`,
      PAIRED[part].map((point) => localPoint(point, side)),
    ]),
  ),
]);

const LANDMARK_LOCAL: Readonly<Record<string, Local>> = {
  hip: ["thigh", 0, 0, 0.054],
  thigh: ["thigh", 0, -LENGTH.thigh * 0.72, 0.042],
  knee: KNEE,
  shin: ["shank", 0, -LENGTH.shank / 2, 0.03],
  ankle: ["foot", 0, 0, 0.021],
  heel: HEEL,
  toes: TOE,
  shoulder: ["upperArm", 0, 0, 0.0335],
  "upper arm": ["upperArm", 0, -LENGTH.upperArm / 2, 0.029],
  elbow: ELBOW,
  forearm: ["forearm", 0, -LENGTH.forearm / 2, 0.022],
  wrist: WRIST,
  hand: FIST,
};

/** A landmark such as "elbow right" or "head". */
export const LANDMARK_POINTS: ReadonlyMap<Landmark, BodyPoint> = new Map([
  ...SIDES.flatMap((side) =>
    Object.entries(LANDMARK_LOCAL).map(([name, local]): [Landmark, BodyPoint] => [
      `${name} ${side}` as Landmark,
      localPoint(local, side),
    ]),
  ),
  ["pelvis", MIDDLE.pelvis],
  ["belly", MIDDLE.belly],
  ["chest", MIDDLE.chest],
  ["head", MIDDLE.head],
]);

/** Points that must stay above the floor. */
export const SKIN: readonly BodyPoint[] = [
  MIDDLE.pelvis,
  MIDDLE.chest,
  MIDDLE.belly,
  MIDDLE.head,
  MIDDLE.forehead,
  ...SIDES.flatMap((side) =>
    [HEEL, BALL, TOE, KNEE, ELBOW, WRIST, FINGERS].map((point) => localPoint(point, side)),
  ),
];
