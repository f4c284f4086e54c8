/** A box beside the figure that shows the foot enlarged, for movements too small for a whole body. Millimetres. */

import { LANDMARK_POINTS } from "../body/anatomy.ts";
import type { Figure } from "../format/schema.ts";
import type { Landmark } from "../format/words.ts";
import type { SolvedPose } from "../solve/solve-figure.ts";
import { type Camera, cameraOf, projectPoint } from "./camera.ts";
import { type BodyStyle, drawWorkingLegs, workingLegs } from "./draw-body.ts";
import { drawFurniture } from "./draw-furniture.ts";
import { addArrows, type LaidArrow } from "./frame-arrows.ts";
import { legDiscs } from "./outline-discs.ts";
import { type Box, Picture } from "./picture.ts";
import type { Scene } from "./scene.ts";

/** Millimetres a body height in the box, and its distance from the figure. */
const SCALE = 82;
const GAP = 2;

/** Room round the ankle, in body heights: left, right, above, below. */
const ROOM = [0.118, 0.115, 0.09, 0.085] as const;

/** Small things under the foot that the box shows as well. */
const THINGS: ReadonlySet<string> = new Set(["step", "towel", "cushion", "mat"]);

/** Whether an arrow of this landmark is drawn in the box instead of in the frame. */
export const inInset = (landmark: Landmark): boolean => /^(heel|toes|ankle) right$/.test(landmark);

/** Adds the box to a frame, at its back or, for sitting figures, in front; gives back its arrows. */
export function addInset(
  picture: Picture,
  figure: Figure,
  scene: Scene,
  pose: SolvedPose,
  style: BodyStyle,
): LaidArrow[] {
  const camera = cameraOf(figure, SCALE);
  const enlarged = new Picture(camera);
  drawFurniture(enlarged, { ...scene, pose }, THINGS);
  drawWorkingLegs(enlarged, pose.frames, { ...style, things: () => undefined });
  const view = viewOf(camera, scene.poses);
  const discs = legDiscs(camera, pose.frames, workingLegs(style));
  const arrows = addArrows(enlarged, figure, scene.poses, pose, view, inInset, discs);
  const width = view.right - view.left;
  const height = view.bottom - view.top;
  const { box } = picture;
  const ahead = figure.base === "sitting";
  const left = ahead ? box.right + GAP : box.left - GAP - width;
  const bottom = -0.6;
  const place = { left, right: left + width, top: bottom - height, bottom };
  picture.insets.push({ place, view, paths: enlarged.paths });
  picture.cover({ x: place.left, y: place.top, r: 0.3 });
  picture.cover({ x: place.right, y: place.bottom, r: 0.3 });
  return arrows;
}

/** What the box shows: the foot in all poses, so that both frames show the same place. */
function viewOf(camera: Camera, poses: readonly SolvedPose[]): Box {
  const ankle = LANDMARK_POINTS.get("ankle right");
  const box: Box = { left: Infinity, right: -Infinity, top: Infinity, bottom: -Infinity };
  for (const pose of poses) {
    if (ankle === undefined) break;
    const { x, y } = projectPoint(camera, pose.frames, ankle);
    box.left = Math.min(box.left, x - ROOM[0] * SCALE);
    box.right = Math.max(box.right, x + ROOM[1] * SCALE);
    box.top = Math.min(box.top, y - ROOM[2] * SCALE);
    box.bottom = Math.max(box.bottom, y + ROOM[3] * SCALE);
  }
  const floor = 0.02 * SCALE;
  return { ...box, bottom: Math.min(box.bottom, floor) };
}
