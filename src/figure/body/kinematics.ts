/** Where every segment of the body is, given its angles: forward kinematics. */

import { type BodySide, SIDES } from "../format/words.ts";
import { ANGLE, type Angles, LENGTH, limbAngle, limbSegment, SEGMENT, SEGMENTS } from "./body.ts";

/** Twelve numbers a segment: its rotation by rows, then its origin, in body heights. */
export type Frames = Float64Array;

const SIZE = 12;
const RADIAN = Math.PI / 180;

/** Segment frames of a pose; writes into `frames` where one is given. */
export function place(angles: Angles, frames: Frames = new Float64Array(SEGMENTS * SIZE)): Frames {
  const at = (index: number) => angles[index] as number;
  setRoot(frames, at(ANGLE.x), at(ANGLE.y), at(ANGLE.z));
  turnZ(frames, SEGMENT.pelvis, -at(ANGLE.lean));
  turnX(frames, SEGMENT.pelvis, at(ANGLE.roll));
  const half = [at(ANGLE.trunkForward) / 2, at(ANGLE.trunkSide) / 2, at(ANGLE.trunkTurn) / 2];
  middle(frames, SEGMENT.abdomen, SEGMENT.pelvis, LENGTH.lowBack, half);
  middle(frames, SEGMENT.thorax, SEGMENT.abdomen, LENGTH.midBack - LENGTH.lowBack, half);
  const neck = [at(ANGLE.neckForward), at(ANGLE.neckSide), at(ANGLE.neckTurn)];
  middle(frames, SEGMENT.head, SEGMENT.thorax, LENGTH.neck - LENGTH.midBack, neck);
  for (const side of SIDES) {
    leg(frames, angles, side);
    arm(frames, angles, side);
  }
  return frames;
}

function middle(frames: Frames, segment: number, parent: number, up: number, turns: number[]) {
  child(frames, segment, parent, 0, up, 0);
  turnZ(frames, segment, -(turns[0] as number));
  if (turns[1] !== 0) turnX(frames, segment, turns[1] as number);
  if (turns[2] !== 0) turnY(frames, segment, -(turns[2] as number));
}

function leg(frames: Frames, angles: Angles, side: BodySide) {
  const k = side === "right" ? 1 : -1;
  const base = limbAngle("hipFlexion", side);
  const thigh = limbSegment("thigh", side);
  child(frames, thigh, SEGMENT.pelvis, 0, 0, k * LENGTH.halfHips);
  ball(frames, thigh, k, angles, base);
  child(frames, thigh + 1, thigh, 0, -LENGTH.thigh, 0);
  turnZ(frames, thigh + 1, -(angles[base + 3] as number));
  child(frames, thigh + 2, thigh + 1, 0, -LENGTH.shank, 0);
  turnZ(frames, thigh + 2, angles[base + 4] as number);
  child(frames, thigh + 3, thigh + 2, BALL_X, BALL_Y, 0);
  turnZ(frames, thigh + 3, angles[base + 5] as number);
}

/** The ball of the foot, from the ankle; set by eye. */
export const BALL_X = 0.068;
export const BALL_Y = -0.0235;

function arm(frames: Frames, angles: Angles, side: BodySide) {
  const k = side === "right" ? 1 : -1;
  const base = limbAngle("shoulderFlexion", side);
  const upper = limbSegment("upperArm", side);
  const forward = (angles[base + 5] as number) * RADIAN;
  const up = (angles[base + 6] as number) * RADIAN;
  const collar = LENGTH.halfShoulders - STERNUM;
  const raised = Math.max(angles[base] as number, angles[base + 1] as number);
  const rise = (SHOULDER_RISE * Math.min(150, Math.max(0, raised - 30))) / 150;
  child(
    frames,
    upper,
    SEGMENT.thorax,
    collar * Math.sin(forward),
    LENGTH.trunk - LENGTH.midBack + collar * Math.sin(up) + rise,
    k * (STERNUM + collar * Math.cos(forward) * Math.cos(up)),
  );
  ball(frames, upper, k, angles, base);
  child(frames, upper + 1, upper, 0, -LENGTH.upperArm, 0);
  turnZ(frames, upper + 1, angles[base + 3] as number);
  child(frames, upper + 2, upper + 1, 0, -LENGTH.forearm, 0);
  turnZ(frames, upper + 2, angles[base + 4] as number);
}

/** Half width of the breastbone, about which the shoulder blade turns, and how far raised arms lift the shoulder; by eye. */
const STERNUM = 0.012;
const SHOULDER_RISE = 0.022;

function ball(frames: Frames, segment: number, k: number, angles: Angles, first: number) {
  turnZ(frames, segment, angles[first] as number);
  if (angles[first + 1] !== 0) turnX(frames, segment, -k * (angles[first + 1] as number));
  if (angles[first + 2] !== 0) turnY(frames, segment, -k * (angles[first + 2] as number));
}

function setRoot(frames: Frames, x: number, y: number, z: number) {
  frames.fill(0, 0, SIZE);
  frames[0] = 1;
  frames[4] = 1;
  frames[8] = 1;
  frames[9] = x;
  frames[10] = y;
  frames[11] = z;
}

/** Starts a segment at a point of its parent, turned as the parent is. */
function child(frames: Frames, segment: number, parent: number, x: number, y: number, z: number) {
  const p = parent * SIZE;
  const s = segment * SIZE;
  for (let i = 0; i < 9; i += 1) frames[s + i] = frames[p + i] as number;
  for (let row = 0; row < 3; row += 1) {
    frames[s + 9 + row] = along(frames, p, row, x, y, z);
  }
}

function along(frames: Frames, p: number, row: number, x: number, y: number, z: number): number {
  const r = p + 3 * row;
  return (
    (frames[p + 9 + row] as number) +
    (frames[r] as number) * x +
    (frames[r + 1] as number) * y +
    (frames[r + 2] as number) * z
  );
}

/** A coordinate (0 x, 1 y, 2 z) of a point given in a segment's own axes. */
export function coordinate(
  frames: Frames,
  segment: number,
  offset: readonly [number, number, number],
  axis: number,
): number {
  return along(frames, segment * SIZE, axis, offset[0], offset[1], offset[2]);
}

const turnX = (frames: Frames, segment: number, angle: number) =>
  turn(frames, segment, 1, 2, angle);
const turnY = (frames: Frames, segment: number, angle: number) =>
  turn(frames, segment, 2, 0, angle);
const turnZ = (frames: Frames, segment: number, angle: number) =>
  turn(frames, segment, 0, 1, angle);

/** Multiplies a segment's rotation from the right by a turn in the plane of two of its own axes. */
function turn(frames: Frames, segment: number, a: number, b: number, angle: number) {
  if (angle === 0) return;
  const cos = Math.cos(angle * RADIAN);
  const sin = Math.sin(angle * RADIAN);
  const s = segment * SIZE;
  for (let row = 0; row < 9; row += 3) {
    const first = frames[s + row + a] as number;
    const second = frames[s + row + b] as number;
    frames[s + row + a] = first * cos + second * sin;
    frames[s + row + b] = second * cos - first * sin;
  }
}
