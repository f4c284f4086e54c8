/** The way that a landmark takes on paper from one pose to the next. Millimetres. */
import { LANDMARK_POINTS } from "../body/anatomy.ts";
import type { Angles } from "../body/body.ts";
import { type Frames, place } from "../body/kinematics.ts";
import type { Landmark } from "../format/words.ts";
import { type Camera, projectPoint } from "./camera.ts";

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** The way of a landmark over ten poses between two. */
export function wayOf(landmark: Landmark, before: Angles, after: Angles, camera: Camera): Point[] {
  const point = LANDMARK_POINTS.get(landmark);
  if (point === undefined) return [];
  const between = new Float64Array(after.length);
  const steps = 10;
  let frames: Frames | undefined;
  return Array.from({ length: steps + 1 }, (_, step) => {
    for (let i = 0; i < between.length; i += 1) {
      const from = before[i] as number;
      between[i] = from + (((after[i] as number) - from) * step) / steps;
    }
    frames = place(between, frames);
    const { x, y } = projectPoint(camera, frames, point);
    return { x, y };
  });
}

/** How far a landmark goes on paper between two poses. */
export function travel(landmark: Landmark, before: Frames, after: Frames, camera: Camera): number {
  const point = LANDMARK_POINTS.get(landmark);
  if (point === undefined) return 0;
  const a = projectPoint(camera, before, point);
  const b = projectPoint(camera, after, point);
  return Math.hypot(a.x - b.x, a.y - b.y);
}

export function lengthOf(way: readonly Point[]): number {
  let sum = 0;
  for (let i = 1; i < way.length; i += 1) {
    const a = way[i - 1] as Point;
    const b = way[i] as Point;
    sum += Math.hypot(b.x - a.x, b.y - a.y);
  }
  return sum;
}
