/** Where each thing of a figure stands, read off the first pose that touches it. Lengths in body heights. */
import { LANDMARK_POINTS, PART_POINTS } from "../body/anatomy.ts";
import { coordinate } from "../body/kinematics.ts";
import { sizeOf } from "../body/surfaces.ts";
import type { Props } from "../format/props-schema.ts";
import type { Landmark, Surface } from "../format/words.ts";
import type { PlaneAxis } from "./problem.ts";
import { splitSide } from "./read-pose.ts";
import type { SolvedPose } from "./solve-figure.ts";

/** From where to where a thing reaches along the picture's plane. */
export type Span = readonly [number, number];

/** Along the plane, where the parts that rest on a surface are; undefined where none does. */
export function touched(
  poses: readonly SolvedPose[],
  surface: Surface,
  axis: PlaneAxis,
): Span | undefined {
  for (const pose of poses) {
    const places = pose.rests
      .filter((rest) => rest.on === surface)
      .flatMap((rest) => PART_POINTS.get(rest.part) ?? [])
      .map((point) => coordinate(pose.frames, point.segment, point.offset, axis));
    if (places.length > 0) return [Math.min(...places), Math.max(...places)];
  }
  return undefined;
}

/** Whether one of the named parts rests on a surface. */
function touches(poses: readonly SolvedPose[], surface: Surface, part: string): boolean {
  return poses.some((pose) =>
    pose.rests.some((rest) => rest.on === surface && splitSide(rest.part)[0] === part),
  );
}

/** Where a landmark is in a pose: x, y, z. */
export function landmarkAt(pose: SolvedPose, landmark: Landmark): [number, number, number] {
  const point = LANDMARK_POINTS.get(landmark);
  if (point === undefined) return [0, 0, 0];
  const at = (axis: number) => coordinate(pose.frames, point.segment, point.offset, axis);
  return [at(0), at(1), at(2)];
}

/** Usual depths of the things that parts can be beside. */
const DEPTHS = { table: 0.5, bench: 0.28, cushion: 0.32 } as const;

/** From where to where a thing reaches; undefined for what reaches everywhere. */
export function spanOf(
  name: string,
  poses: readonly SolvedPose[],
  props: Props | undefined,
  axis: PlaneAxis,
): Span | undefined {
  if (name === "chair") return chairSpan(poses, props, axis);
  if (name === "step") return stepSpan(poses, props, name, axis, axis === 0 ? 0.24 : 0.4);
  if (name === "table" || name === "bench" || name === "cushion") {
    return stepSpan(poses, props, name, axis, DEPTHS[name]);
  }
  return undefined;
}

const CHAIR_DEPTH = 0.25;

/** A chair is where it is said to be, under who sits on it, or where it is touched. */
function chairSpan(poses: readonly SolvedPose[], props: Props | undefined, axis: PlaneAxis): Span {
  const first = poses.find((pose) => pose.rests.some((rest) => rest.part === "pelvis"));
  const sat = touches(poses, "chair", "pelvis") && first !== undefined;
  const span = touched(poses, "chair", axis) ?? [0.3, 0.3];
  const under = sat ? landmarkAt(first, "pelvis")[axis] + (axis === 0 ? 0.04 : 0) : undefined;
  const middle = sizeOf(props, "chair", "at") ?? under ?? (span[0] + span[1]) / 2;
  return [middle - CHAIR_DEPTH / 2, middle + CHAIR_DEPTH / 2];
}

/** A step or box under the feet: from just behind the ball of the foot, or from behind the heel. */
function stepSpan(
  poses: readonly SolvedPose[],
  props: Props | undefined,
  name: "step" | "bench" | "table" | "cushion",
  axis: PlaneAxis,
  usual: number,
): Span {
  const depth = sizeOf(props, name, "depth") ?? usual;
  const at = sizeOf(props, name, "at");
  if (at !== undefined) return [at, at + depth];
  const span = touched(poses, name, axis) ?? touched(poses, "towel", axis);
  if (span === undefined) return [0.3, 0.3 + depth];
  const middle = (span[0] + span[1]) / 2;
  if (axis === 2) return [middle - depth / 2, middle + depth / 2];
  if (name === "step" && (touches(poses, name, "toes") || touches(poses, "towel", "toes"))) {
    return [span[0] - 0.022, span[0] - 0.022 + depth];
  }
  if (name === "step") return [span[0] - 0.04, span[0] - 0.04 + depth];
  return [middle - depth / 2, middle + depth / 2];
}
