/** Draws the small things of a figure that lie on the ground. Sizes in body heights, by eye. */

import { groundOf, planeOf, sizeOf, USUAL } from "../body/surfaces.ts";
import { landmarkAt, spanOf, touched } from "../solve/place-props.ts";
import { project } from "./camera.ts";
import { LINE, TONE } from "./palette.ts";
import type { Picture } from "./picture.ts";
import type { Scene } from "./scene.ts";
import { drawBlock, drawRoll } from "./solids.ts";

export function mat(picture: Picture, { props, axis, reach }: Scene) {
  const from = sizeOf(props, "mat", "at") ?? reach[0] - 0.03;
  const to = from + (sizeOf(props, "mat", "depth") ?? reach[1] + 0.03 - from);
  const block = {
    along: [from, to] as const,
    up: [0, USUAL.mat] as const,
    across: [-0.2, 0.18] as const,
  };
  drawBlock(picture, axis, block, TONE.soft);
}

export function cushion(picture: Picture, { props, axis, poses }: Scene) {
  const height = sizeOf(props, "cushion", "height") ?? USUAL.cushion;
  const [from, to] = spanOf("cushion", poses, props, axis) ?? [0, 0];
  const place = (along: number, up: number, radius: number) =>
    axis === 0
      ? project(picture.camera, along, up, 0, radius)
      : project(picture.camera, 0, up, along, radius);
  const board = height - 0.012;
  picture.hull(
    [[place((from + to) / 2, board / 2, board / 2)]],
    TONE.thingSide,
    TONE.thingInk,
    LINE.thing * 2,
  );
  picture.hull(
    [[place(from, board + 0.006, 0.008), place(to, board + 0.006, 0.008)]],
    TONE.soft,
    TONE.thingInk,
    LINE.thing * 2,
  );
}

export function towel(picture: Picture, { props, axis, poses, pose }: Scene) {
  const radius = (sizeOf(props, "towel", "height") ?? USUAL.towel) / 2;
  const at = sizeOf(props, "towel", "at");
  const towelProp = props?.towel;
  const under = towelProp !== undefined && towelProp !== true ? towelProp.under : undefined;
  const first = poses[0];
  const span = touched(poses, "towel", axis);
  if (first === undefined || (at === undefined && under === undefined && span === undefined))
    return;
  const onStep = span !== undefined && props?.step !== undefined;
  const ground = onStep
    ? (sizeOf(props, "step", "height") ?? USUAL.step)
    : planeOf(groundOf(props), props);
  const height = typeof ground === "number" ? ground : ground.kind === "level" ? ground.height : 0;
  const place =
    at ??
    (span !== undefined ? span[0] + 0.036 : landmarkAt(pose ?? first, under ?? "pelvis")[axis]);
  drawRoll(picture, axis, place, height + radius, radius, 0.1, TONE.towel);
}

export function pillow(picture: Picture, { props, axis, poses }: Scene) {
  const first = poses[0];
  if (first === undefined) return;
  const pillowProp = props?.pillow;
  const under = pillowProp !== undefined && pillowProp !== true ? pillowProp.under : undefined;
  const ground = planeOf(groundOf(props), props);
  const low = ground.kind === "level" ? ground.height : 0;
  const thick = sizeOf(props, "pillow", "height") ?? USUAL.pillow;
  const at = sizeOf(props, "pillow", "at") ?? landmarkAt(first, under ?? "head")[axis];
  const place = (along: number, up: number, across: number, radius: number) =>
    axis === 0
      ? project(picture.camera, along, up, across, radius)
      : project(picture.camera, across, up, along, radius);
  const circles = [-0.085, 0.085].flatMap((d) => [
    place(at + d, low + thick * 0.4, -0.08, thick * 0.36),
    place(at + d, low + thick * 0.4, 0.08, thick * 0.36),
    place(at + d * 0.4, low + thick * 0.5, 0, thick * 0.5),
  ]);
  picture.hull([circles], TONE.soft, TONE.thingInk, LINE.thing * 2);
}
