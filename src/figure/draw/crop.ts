/** The enlarged region of a cropped figure. Lengths in body heights. */

import { LANDMARK_POINTS } from "../body/anatomy.ts";
import type { Crop, Landmark } from "../format/words.ts";
import type { SolvedPose } from "../solve/solve-figure.ts";
import type { Camera } from "./camera.ts";
import { projectPoint } from "./camera.ts";
import type { Box } from "./picture.ts";

interface Region {
  readonly round: readonly Landmark[];
  /** Room round the landmarks: left, right, above, below. */
  readonly room: readonly [number, number, number, number];
  readonly scale: number;
}

const REGIONS: Readonly<Record<Crop, Region>> = {
  foot: {
    round: ["heel right", "toes right", "ankle right"],
    room: [0.07, 0.07, 0.17, 0.045],
    scale: 95,
  },
  hand: {
    round: ["hand right", "wrist right", "forearm right"],
    room: [0.1, 0.1, 0.1, 0.1],
    scale: 95,
  },
  shoulder: {
    round: [
      "head",
      "shoulder right",
      "shoulder left",
      "hand right",
      "hand left",
      "elbow right",
      "elbow left",
      "belly",
    ],
    room: [0.1, 0.1, 0.07, 0.07],
    scale: 78,
  },
  neck: {
    round: ["head", "shoulder right", "shoulder left"],
    room: [0.06, 0.06, 0.075, 0.09],
    scale: 75,
  },
};

/** Millimetres a body height in a cropped frame. */
export const cropScale = (crop: Crop): number => REGIONS[crop].scale;

/** The part of the picture that a cropped frame shows, in millimetres; the same in all frames. */
export function cropBox(crop: Crop, camera: Camera, poses: readonly SolvedPose[]): Box {
  const { round, room } = REGIONS[crop];
  const box: Box = { left: Infinity, right: -Infinity, top: Infinity, bottom: -Infinity };
  for (const pose of poses) {
    for (const landmark of round) {
      const point = LANDMARK_POINTS.get(landmark);
      if (point === undefined) continue;
      const { x, y } = projectPoint(camera, pose.frames, point);
      box.left = Math.min(box.left, x - room[0] * camera.scale);
      box.right = Math.max(box.right, x + room[1] * camera.scale);
      box.top = Math.min(box.top, y - room[2] * camera.scale);
      box.bottom = Math.max(box.bottom, y + room[3] * camera.scale);
    }
  }
  return box;
}
