/** Draws the furniture of a figure: always behind the body. Sizes in body heights, by eye. */

import { planeOf, sizeOf, USUAL } from "../body/surfaces.ts";
import type { PropName } from "../format/props-schema.ts";
import { spanOf, touched } from "../solve/place-props.ts";
import { project } from "./camera.ts";
import { helper } from "./draw-helper.ts";
import { plate, sled, sofa } from "./draw-machine.ts";
import { cushion, mat, pillow, towel } from "./draw-small.ts";
import { TONE } from "./palette.ts";
import type { Picture } from "./picture.ts";
import type { Scene } from "./scene.ts";
import { drawBlock } from "./solids.ts";

type Draw = (picture: Picture, scene: Scene) => void;

/** Draws the furniture of a scene, or only that of the names given; the farthest first. */
export function drawFurniture(picture: Picture, scene: Scene, only?: ReadonlySet<string>): void {
  for (const [name, draw] of FURNITURE) {
    if (only !== undefined && !only.has(name)) continue;
    if (scene.props?.[name] !== undefined || isTouched(scene, name)) draw(picture, scene);
  }
}

function isTouched({ poses }: Scene, name: PropName): boolean {
  return poses.some((pose) => pose.rests.some((rest) => rest.on === name));
}

const FURNITURE: readonly [PropName, Draw][] = [
  ["wall", (picture, scene) => wall(picture, scene, "wall")],
  ["doorway", (picture, scene) => wall(picture, scene, "doorway")],
  ["bed", bed],
  ["mat", mat],
  ["table", (picture, scene) => table(picture, scene)],
  ["bench", (picture, scene) => bench(picture, scene)],
  ["sofa", sofa],
  ["chair", chair],
  ["step", step],
  ["handrail", handrail],
  ["cushion", cushion],
  ["helper", helper],
  ["plate", plate],
  ["sled", sled],
  ["towel", towel],
  ["pillow", pillow],
];

function wall(picture: Picture, { props, axis, top }: Scene, name: "wall" | "doorway") {
  const plane = planeOf(name, props);
  if (plane.kind !== "upright") return;
  const thick = name === "wall" ? 0.05 : 0.035;
  const far = plane.at - plane.facing * thick;
  const along: [number, number] = [Math.min(plane.at, far), Math.max(plane.at, far)];
  const across: [number, number] = axis === 0 ? [-0.3, 0.1] : [-0.25, 0.12];
  drawBlock(picture, axis, { along, up: [0, top + 0.02], across });
}

function bed(picture: Picture, { props, axis, reach }: Scene) {
  const height = sizeOf(props, "bed", "height") ?? USUAL.bed;
  const [from, to] = [reach[0] - 0.06, reach[1] + 0.06];
  for (const along of [
    [from + 0.02, from + 0.06],
    [to - 0.06, to - 0.02],
  ] as const) {
    drawBlock(picture, axis, { along, up: [0, height - 0.1], across: [0.1, 0.16] });
  }
  drawBlock(picture, axis, { along: [from, to], up: [height - 0.1, height], across: [-0.2, 0.18] });
}

function table(picture: Picture, { props, axis, poses }: Scene) {
  const height = sizeOf(props, "table", "height") ?? USUAL.table;
  const [from, to] = spanOf("table", poses, props, axis) ?? [0, 0];
  const across: [number, number] = axis === 0 ? [-0.25, 0.12] : [-0.1, 0.3];
  for (const along of [
    [from + 0.02, from + 0.045],
    [to - 0.045, to - 0.02],
  ] as const) {
    drawBlock(picture, axis, {
      along,
      up: [0, height - 0.025],
      across: [across[1] - 0.06, across[1] - 0.03],
    });
  }
  drawBlock(picture, axis, { along: [from, to], up: [height - 0.025, height], across });
}

function bench(picture: Picture, { props, axis, poses }: Scene) {
  const height = sizeOf(props, "bench", "height") ?? USUAL.bench;
  const along = spanOf("bench", poses, props, axis) ?? [0, 0];
  drawBlock(picture, axis, { along, up: [0, height], across: [-0.16, 0.14] });
}

function step(picture: Picture, { props, axis, poses }: Scene) {
  const height = sizeOf(props, "step", "height") ?? USUAL.step;
  const along = spanOf("step", poses, props, axis) ?? [0, 0];
  const across: [number, number] = axis === 0 ? [-0.15, 0.13] : [-0.1, 0.12];
  drawBlock(picture, axis, { along, up: [0, height], across });
}

function chair(picture: Picture, scene: Scene) {
  const { props, axis, poses } = scene;
  const seat = sizeOf(props, "chair", "height") ?? USUAL.chair;
  const [from, to] = spanOf("chair", poses, props, axis) ?? [0, 0];
  const chairProp = props?.chair;
  const faces = chairProp !== undefined && chairProp !== true ? chairProp.faces : undefined;
  const wide: [number, number] = axis === 0 ? [-0.13, 0.11] : [-0.1, 0.16];
  for (const across of [wide[0], wide[1] - 0.03]) {
    for (const along of [from, to - 0.025]) {
      drawBlock(picture, axis, {
        along: [along, along + 0.025],
        up: [0, seat - 0.03],
        across: [across, across + 0.03],
      });
    }
  }
  const high = seat + 0.24;
  const back = faces === "back" ? to - 0.025 : from;
  if (axis === 2 || faces === "viewer") {
    drawBlock(picture, axis, {
      along: [from, to],
      up: [seat, high],
      across: [wide[0], wide[0] + 0.02],
    });
  } else {
    drawBlock(picture, axis, { along: [back, back + 0.025], up: [seat, high], across: wide });
  }
  drawBlock(picture, axis, { along: [from, to], up: [seat - 0.03, seat], across: wide });
}

function handrail(picture: Picture, { props, axis, poses }: Scene) {
  const height = sizeOf(props, "handrail", "height") ?? USUAL.handrail;
  const span = touched(poses, "handrail", axis);
  const at =
    sizeOf(props, "handrail", "at") ?? (span === undefined ? 0.3 : (span[0] + span[1]) / 2);
  const across = axis === 0 ? -0.15 : -0.18;
  const place = (along: number, up: number) =>
    axis === 0
      ? project(picture.camera, along, up, across)
      : project(picture.camera, across, up, along);
  for (const post of [at - 0.13, at + 0.13]) {
    picture.line([place(post, 0), place(post, height)], TONE.thingInk, 0.9);
    picture.line([place(post, 0.008), place(post, height - 0.008)], TONE.thing, 0.5);
  }
  const rail = [place(at - 0.2, height), place(at + 0.2, height)];
  picture.line(rail, TONE.thingInk, 1.5);
  picture.line(rail, TONE.thingSide, 1.1);
}
