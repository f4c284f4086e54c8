/** The body as discs on paper: what an arrow has to keep clear of, and what has to fit into the frame. */

import type { Frames } from "../body/kinematics.ts";
import * as shapes from "../body/shapes.ts";
import { type BodySide, SIDES } from "../format/words.ts";
import { type Camera, projectPoint } from "./camera.ts";

export interface Disc {
  readonly x: number;
  readonly y: number;
  readonly r: number;
}

const SHAPES: readonly shapes.Shape[] = [
  ...SIDES.flatMap((side) => [
    shapes.legShape(side),
    shapes.shoeShape(side),
    shapes.armShape(side),
    shapes.handShape(side, false),
  ]),
  shapes.pelvisShape(),
  shapes.shirtShape(),
  shapes.neckShape(),
  shapes.hairShape(),
  shapes.faceShape(),
];

/** Discs that fill the body's silhouette closely enough for clearances of a millimetre. */
export function bodyDiscs(camera: Camera, frames: Frames): Disc[] {
  return discsOf(camera, frames, SHAPES);
}

/** The same for single legs only. */
export function legDiscs(camera: Camera, frames: Frames, sides: readonly BodySide[]): Disc[] {
  const legs = sides.flatMap((side) => [shapes.legShape(side), shapes.shoeShape(side)]);
  return discsOf(camera, frames, legs);
}

function discsOf(camera: Camera, frames: Frames, parts: readonly shapes.Shape[]): Disc[] {
  const discs: Disc[] = [];
  for (const shape of parts) {
    for (const outline of shape) {
      const circles = outline.map((point) => projectPoint(camera, frames, point));
      for (let i = 1; i < circles.length; i += 1) between(discs, circles[i - 1], circles[i]);
    }
  }
  return discs;
}

function between(discs: Disc[], a: Disc | undefined, b: Disc | undefined) {
  if (a === undefined || b === undefined) return;
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const steps = Math.max(1, Math.ceil(length / Math.max(1.2, Math.min(a.r, b.r))));
  for (let i = 0; i <= steps; i += 1) {
    const t = i / steps;
    discs.push({ x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t, r: a.r + (b.r - a.r) * t });
  }
}

/** How far a point is from the nearest disc; negative inside. */
export function clearance(discs: readonly Disc[], x: number, y: number): number {
  let least = Infinity;
  for (const disc of discs) {
    const dx = disc.x - x;
    const dy = disc.y - y;
    const reach = least + disc.r;
    const square = dx * dx + dy * dy;
    if (reach > 0 && square >= reach * reach) continue;
    const gap = Math.sqrt(square) - disc.r;
    if (gap < least) least = gap;
  }
  return least;
}

/** The farthest that any part of the outline goes on paper between one pose and the next. */
export function mostMoved(camera: Camera, poses: readonly Frames[]): number {
  let most = 0;
  for (let i = 1; i < poses.length; i += 1) {
    for (const point of SHAPES.flat(2)) {
      const a = projectPoint(camera, poses[i - 1] as Frames, point);
      const b = projectPoint(camera, poses[i] as Frames, point);
      most = Math.max(most, Math.hypot(a.x - b.x, a.y - b.y));
    }
  }
  return most;
}
