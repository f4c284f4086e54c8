/** Solves the poses of a figure one after the other, each from the one before. */
import { PART_POINTS } from "../body/anatomy.ts";
import {
  ANGLE,
  ANGLES,
  type Angles,
  LENGTH,
  limbAngle,
  limbSegment,
  REAL_HEIGHT,
} from "../body/body.ts";
import { coordinate, type Frames, place } from "../body/kinematics.ts";
import { POSTURES } from "../body/postures.ts";
import { RANGES } from "../body/ranges.ts";
import type { Figure } from "../format/schema.ts";
import { type BaseName, SIDES } from "../format/words.ts";
import { footprintKey, type PlaneAxis, type Problem, poseProblem, withStated } from "./problem.ts";
import { baseOf, type Rest, restsOf, type Stated, statedAngles } from "./read-pose.ts";
import { type Solution, solve } from "./solve.ts";

export interface SolvedPose {
  readonly base: BaseName;
  readonly stated: readonly Stated[];
  readonly rests: readonly Rest[];
  readonly problem: Problem;
  readonly angles: Angles;
  readonly frames: Frames;
}

/** The poses of a figure with every angle known. Whether they hold is for the checks to say. */
export function solveFigure(figure: Figure): SolvedPose[] {
  const axis = planeAxis(figure);
  const poses: SolvedPose[] = [];
  for (let index = 0; index < figure.poses.length; index += 1) {
    poses.push(solvePose(figure, index, axis, poses.at(-1)));
  }
  return poses;
}

/** The plane in which the solver moves the body: forward, or sideways. */
export function planeAxis(figure: Figure): PlaneAxis {
  return figure.view === "front" || figure.view === "back" ? 2 : 0;
}

function solvePose(
  figure: Figure,
  index: number,
  axis: PlaneAxis,
  before: SolvedPose | undefined,
): SolvedPose {
  const pose = figure.poses[index] ?? {};
  const base = baseOf(figure, index);
  const rests = restsOf(figure, index);
  const stated = statedAngles(pose);
  const fresh = before === undefined || figure.poses[index]?.base !== undefined;
  const from = fresh ? baseAngles(base, before?.angles) : before.angles;
  const problem = poseProblem(stated, rests, {
    axis,
    props: figure.props,
    air: figure.poses[index]?.air ?? 0,
    footprints: before === undefined ? new Map() : footprints(before, axis),
  });
  const start = withStated(armsAtWall(from, rests, before), stated);
  const { angles } = best(problem, start);
  const frames = place(angles);
  bendToes(angles, frames, rests);
  return { base, stated, rests, problem, angles, frames: place(angles, frames) };
}

const AT_WALL = [
  ["hand", 75, 25, 60],
  ["forearm", 80, 95, 0],
] as const;

/** Hands that come to a wall start from arms held out in front, fingers up. */
function armsAtWall(
  angles: Angles,
  rests: readonly Rest[],
  before: SolvedPose | undefined,
): Angles {
  const copy = Float64Array.from(angles);
  for (const side of SIDES) {
    for (const [part, shoulder, elbow, wrist] of AT_WALL) {
      const there = (list: readonly Rest[]) =>
        list.some((rest) => rest.part === `${part} ${side}` && !planeOfRest(rest));
      if (!there(rests) || (before !== undefined && there(before.rests))) continue;
      copy[limbAngle("shoulderFlexion", side)] = shoulder;
      copy[limbAngle("elbow", side)] = elbow;
      copy[limbAngle("wrist", side)] = wrist;
    }
  }
  return copy;
}

/** The angles of a base posture, the pelvis at its usual height or where it was. */
function baseAngles(base: BaseName, before: Angles | undefined): Angles {
  const posture = POSTURES[base];
  const angles = new Float64Array(ANGLES);
  angles[ANGLE.x] = before?.[ANGLE.x] ?? 0;
  angles[ANGLE.z] = before?.[ANGLE.z] ?? 0;
  angles[ANGLE.y] = posture.long ? 0.15 : LENGTH.hipHeight;
  angles[ANGLE.lean] = posture.lean ?? 0;
  angles[ANGLE.roll] = posture.roll ?? 0;
  return withStated(angles, statedAngles(posture.joints));
}

/** Millimetres of the real body by which a contact may be missed. */
const NEAR = 5 / REAL_HEIGHT;

/** The best solution of several starts; the others are tried only where the first is not good. */
function best(problem: Problem, start: Angles): Solution {
  let found = solve(problem, start, start);
  if (holds(problem, found.angles)) return found;
  for (const [share, hip, ankle] of [
    [0.6, 10, 10],
    [1, 10, 10],
    [0.5, 0, -10],
  ] as const) {
    const other = Float64Array.from(start);
    for (const side of SIDES) {
      const knee = Math.max(other[limbAngle("knee", side)] as number, 20);
      set(problem, other, limbAngle("knee", side), knee);
      set(problem, other, limbAngle("hipFlexion", side), share * knee + hip);
      set(problem, other, limbAngle("ankle", side), ankle);
      const elbow = Math.max(other[limbAngle("elbow", side)] as number, 40);
      set(problem, other, limbAngle("elbow", side), elbow);
    }
    const next = solve(problem, other, start);
    if (next.cost < found.cost) found = next;
    if (holds(problem, found.angles)) break;
  }
  return found;
}

function set(problem: Problem, angles: Angles, index: number, value: number) {
  if (problem.unknowns.includes(index)) angles[index] = value;
}

/** Whether every part is where it rests and every joint within its range. */
function holds(problem: Problem, angles: Angles): boolean {
  const frames = place(angles);
  if (problem.rows.some((row) => Math.abs(missBy(row, frames)) > NEAR)) return false;
  return problem.unknowns.every((index) => {
    const [least, most] = RANGES[index] as readonly [number, number];
    const value = angles[index] as number;
    return value >= least - 0.5 && value <= most + 0.5;
  });
}

/** How far a row is from what it wants, in body heights. */
export function missBy(row: Problem["rows"][number], frames: Frames): number {
  const { point, from, axis, target } = row;
  const value = coordinate(frames, point.segment, point.offset, axis);
  return value - (from ? coordinate(frames, from.segment, from.offset, axis) : 0) - target;
}

/** Where the parts of a solved pose rest, for the pose after it. */
function footprints(pose: SolvedPose, axis: PlaneAxis): Map<string, number> {
  const prints = new Map<string, number>();
  for (const rest of pose.rests) {
    const level = planeOfRest(rest);
    (PART_POINTS.get(rest.part) ?? []).forEach((point, index) => {
      const along = level ? axis : 1;
      prints.set(
        footprintKey(rest, index),
        coordinate(pose.frames, point.segment, point.offset, along),
      );
    });
  }
  return prints;
}

function planeOfRest(rest: Rest): boolean {
  return rest.on !== "wall" && rest.on !== "doorway" && rest.on !== "plate";
}

const TOWEL_LIFT = 40;

/** Toes that carry the foot lie level; on a rolled towel they bend up more. */
function bendToes(angles: Angles, frames: Frames, rests: readonly Rest[]) {
  for (const side of SIDES) {
    const index = limbAngle("toes", side);
    const rest = rests.find((one) => one.part === `toes ${side}` || one.part === `foot ${side}`);
    if (rest === undefined || rest.part.startsWith("foot")) {
      angles[index] = 0;
      continue;
    }
    const foot = limbSegment("foot", side);
    const rise = coordinate(frames, foot, [1, 0, 0], 1) - coordinate(frames, foot, [0, 0, 0], 1);
    const pitch = (Math.asin(Math.max(-1, Math.min(1, rise))) * 180) / Math.PI;
    const lift = rest.on === "towel" ? TOWEL_LIFT : 0;
    angles[index] = Math.max(-10, Math.min(75, lift - pitch));
  }
}
