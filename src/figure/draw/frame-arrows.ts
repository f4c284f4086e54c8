/** Chooses and lays the arrows of one frame. */

import type { ArrowHint, Figure } from "../format/schema.ts";
import { type BodySide, type Landmark, SIDES } from "../format/words.ts";
import type { SolvedPose } from "../solve/solve-figure.ts";
import { ARROW, type Arrow, layArrow } from "./arrow.ts";
import type { Camera } from "./camera.ts";
import { drawArrow } from "./draw-arrow.ts";
import { bodyDiscs, type Disc } from "./outline-discs.ts";
import type { Box, Picture } from "./picture.ts";
import { travel } from "./way.ts";

/** An arrow with the position of its hint in the card; undefined where there is no room for it. */
export interface LaidArrow {
  readonly hint: number;
  readonly arrow: Arrow | undefined;
}

/**
 * Draws the arrows of one frame and gives them back. A closed `box` (a crop or an inset) is widened
 * until they are inside; `of` chooses by landmark which arrows belong to this picture, and `discs`
 * are what they keep clear of.
 */
export function addArrows(
  picture: Picture,
  figure: Figure,
  poses: readonly SolvedPose[],
  pose: SolvedPose,
  box: Box | undefined,
  of: (landmark: Landmark) => boolean,
  discs: readonly Disc[] = bodyDiscs(picture.camera, pose.frames),
): LaidArrow[] {
  const index = poses.indexOf(pose);
  const before = poses[index - 1];
  const hints: readonly ArrowHint[] = figure.arrows ?? [{}];
  return hints.flatMap((hint, number) => {
    const frame = hint.frame ?? poses.length;
    const everywhere = figure.arrows === undefined && before !== undefined;
    if (!everywhere && frame !== index + 1) return [];
    const landmark = hint.of ?? mover(figure, before, pose, picture.camera);
    if (landmark === undefined || !of(landmark)) return [];
    const closed = box !== undefined;
    const space = { camera: picture.camera, discs, box: box ?? { ...picture.box }, closed };
    const arrow = layArrow(landmark, hint, before?.angles, pose, space);
    if (arrow !== undefined) {
      drawArrow(picture, arrow);
      if (box !== undefined) makeRoom(box, arrow);
    }
    return [{ hint: number, arrow }];
  });
}

/** Widens a cropped frame until an arrow is inside. */
function makeRoom(box: Box, { shaft }: Arrow) {
  const room = ARROW.headWide / 2 + 0.5;
  for (const { x, y } of shaft) {
    box.left = Math.min(box.left, x - room);
    box.right = Math.max(box.right, x + room);
    box.top = Math.min(box.top, y - room);
    box.bottom = Math.max(box.bottom, y + room);
  }
}

const MOVERS: Readonly<Record<string, readonly string[]>> = {
  leg: ["heel", "knee", "hip"],
  arm: ["hand", "elbow"],
};

/** The landmark of the working limbs that goes farthest. */
function mover(
  figure: Figure,
  before: SolvedPose | undefined,
  pose: SolvedPose,
  camera: Camera,
): Landmark | undefined {
  if (before === undefined) return undefined;
  const landmarks = figure.working.flatMap((limb): Landmark[] => {
    if (limb === "trunk") return ["chest", "head", "pelvis"];
    const [name, sides] = limbOf(limb);
    return (MOVERS[name] ?? []).flatMap((part) =>
      sides.map((side) => `${part} ${side}` as Landmark),
    );
  });
  let found: Landmark | undefined;
  let most = 1;
  for (const landmark of landmarks) {
    const way = travel(landmark, before.frames, pose.frames, camera);
    if (way > most + 0.01) [found, most] = [landmark, way];
  }
  return found;
}

function limbOf(limb: string): [string, readonly BodySide[]] {
  if (limb === "legs" || limb === "arms") return [limb.slice(0, -1), SIDES];
  const side: BodySide = limb.startsWith("left") ? "left" : "right";
  return [limb.endsWith("leg") ? "leg" : "arm", [side]];
}
