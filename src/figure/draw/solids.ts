/** Draws boxes and rolls that stand in the scene, as the viewer sees them. */

import type { PlaneAxis } from "../solve/problem.ts";
import { type Camera, project, towards } from "./camera.ts";
import { LINE, TONE } from "./palette.ts";
import type { Picture } from "./picture.ts";

/** A box: along the picture's plane, up, and across the plane (the third axis), in body heights. */
export interface Block {
  readonly along: readonly [number, number];
  readonly up: readonly [number, number];
  readonly across: readonly [number, number];
}

const FACES = [
  { axis: 0, end: 1 },
  { axis: 0, end: 0 },
  { axis: 1, end: 1 },
  { axis: 2, end: 1 },
  { axis: 2, end: 0 },
] as const;

/** Draws the faces of a box that the viewer sees. */
export function drawBlock(picture: Picture, axis: PlaneAxis, block: Block, fill?: string): void {
  const ranges =
    axis === 0 ? [block.along, block.up, block.across] : [block.across, block.up, block.along];
  const way = towards(picture.camera);
  const main = Math.abs(way[0]) > Math.abs(way[2]) ? 0 : 2;
  for (const face of FACES) {
    const out = face.end === 1 ? 1 : -1;
    if ((way[face.axis] as number) * out < 0.03) continue;
    const tone = fill ?? (face.axis === main ? TONE.thing : TONE.thingSide);
    picture.polygon(corners(picture.camera, ranges, face), tone, TONE.thingInk, LINE.thing);
  }
}

function corners(
  camera: Camera,
  ranges: readonly (readonly [number, number])[],
  { axis, end }: { axis: number; end: number },
) {
  const [a, b] = [0, 1, 2].filter((other) => other !== axis) as [number, number];
  const square = [
    [0, 0],
    [1, 0],
    [1, 1],
    [0, 1],
  ] as const;
  return square.map(([i, j]) => {
    const place: [number, number, number] = [0, 0, 0];
    place[axis] = ranges[axis]?.[end] ?? 0;
    place[a] = ranges[a]?.[i] ?? 0;
    place[b] = ranges[b]?.[j] ?? 0;
    return project(camera, place[0], place[1], place[2]);
  });
}

/** Draws a roll that lies across the picture's plane: a disc at its near end, and its length. */
export function drawRoll(
  picture: Picture,
  axis: PlaneAxis,
  along: number,
  up: number,
  radius: number,
  half: number,
  fill: string,
): void {
  const at = (across: number) =>
    axis === 0
      ? project(picture.camera, along, up, across, radius)
      : project(picture.camera, across, up, along, radius);
  const ends = [at(-half), at(half)].sort((a, b) => a.depth - b.depth);
  const near = ends[1];
  if (near === undefined) return;
  picture.hull([ends], fill, TONE.thingInk, LINE.thing * 2);
  picture.disc({ ...near, r: near.r }, fill, TONE.thingInk, LINE.thing);
  picture.disc({ ...near, r: near.r * 0.5 }, "none", TONE.thingInk, LINE.thing);
}
