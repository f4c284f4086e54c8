/** Draws machines that are pushed, and a sofa that holds the ankles. Sizes in body heights, by eye. */

import { sizeOf, USUAL } from "../body/surfaces.ts";
import { landmarkAt } from "../solve/place-props.ts";
import type { SolvedPose } from "../solve/solve-figure.ts";
import { project } from "./camera.ts";
import { LINE, TONE } from "./palette.ts";
import type { Picture } from "./picture.ts";
import type { Scene } from "./scene.ts";
import { drawBlock } from "./solids.ts";

/** A heavy sofa whose lower edge holds the ankles down. */
export function sofa(picture: Picture, { axis, poses }: Scene) {
  const first = poses[0];
  if (first === undefined) return;
  const ankle = landmarkAt(first, "ankle right")[axis] + 0.03;
  const across: [number, number] = [-0.22, -0.02];
  drawBlock(picture, axis, { along: [ankle - 0.34, ankle - 0.24], up: [0.08, 0.46], across });
  drawBlock(picture, axis, { along: [ankle - 0.34, ankle], up: [0.085, 0.25], across });
}

/** The plate and backrest of a machine that is pushed with the feet. */
export function plate(picture: Picture, { props, axis, poses, pose }: Scene) {
  const at = sizeOf(props, "plate", "at") ?? USUAL.plate;
  drawBlock(picture, axis, { along: [at, at + 0.03], up: [0.05, 0.55], across: [-0.16, 0.12] });
  const seated = pose ?? poses[0];
  if (seated === undefined) return;
  const pelvis = landmarkAt(seated, "pelvis");
  picture.line(
    [project(picture.camera, pelvis[0] - 0.5, 0.05, 0), project(picture.camera, at, 0.05, 0)],
    TONE.thingInk,
    1.2,
  );
  drawBlock(picture, axis, {
    along: [pelvis[0] - 0.1, pelvis[0] - 0.02],
    up: [0.05, USUAL.seat - 0.03],
    across: [-0.05, 0.05],
  });
  backrest(picture, seated);
  const front = (along: number, across: number) =>
    project(picture.camera, pelvis[0] + along, USUAL.seat - 0.02, across, 0.016);
  const seat = [-0.1, 0.1].flatMap((z) => [front(-0.1, z), front(0.1, z)]);
  picture.hull([seat], TONE.thing, TONE.thingInk, LINE.thing * 2);
}

/** The padded rest behind a trunk that leans back. */
function backrest(picture: Picture, pose: SolvedPose) {
  const pelvis = landmarkAt(pose, "pelvis");
  const lean = leanOf(pose);
  const rest = (up: number, across: number) =>
    project(
      picture.camera,
      pelvis[0] + Math.sin(lean) * up - Math.cos(lean) * 0.085,
      pelvis[1] + Math.cos(lean) * up + Math.sin(lean) * 0.085,
      across,
      0.02,
    );
  const back = [-0.1, 0.1].flatMap((z) => [rest(-0.03, z), rest(0.38, z)]);
  picture.hull([back], TONE.thingSide, TONE.thingInk, LINE.thing * 2);
}

function leanOf(pose: SolvedPose): number {
  const [pelvis, chest] = [landmarkAt(pose, "pelvis"), landmarkAt(pose, "chest")];
  return Math.atan2(chest[0] - pelvis[0], chest[1] - pelvis[1]);
}

/** A backrest that slides on a sloping rail while the feet stay on the floor plate. */
export function sled(picture: Picture, { poses, pose, axis }: Scene) {
  const shown = pose ?? poses[0];
  if (shown === undefined) return;
  const lean = leanOf(shown);
  const pelvis = landmarkAt(shown, "pelvis");
  const foot = landmarkAt(shown, "toes right")[axis];
  const rail = (up: number, across: number) => {
    const height = (up - pelvis[1]) / Math.cos(lean);
    return project(
      picture.camera,
      pelvis[0] + Math.sin(lean) * height - Math.cos(lean) * 0.12,
      pelvis[1] + Math.cos(lean) * height + Math.sin(lean) * 0.12,
      across,
    );
  };
  for (const across of [-0.09, 0.09]) {
    picture.line([rail(0.12, across), rail(0.95, across)], TONE.thingInk, 1.3);
    picture.line([rail(0.12, across), rail(0.95, across)], TONE.thingSide, 0.8);
  }
  drawBlock(picture, axis, {
    along: [foot - 0.2, foot + 0.04],
    up: [-0.02, 0],
    across: [-0.15, 0.13],
  });
  backrest(picture, shown);
}
