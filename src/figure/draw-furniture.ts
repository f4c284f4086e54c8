/** Draws the furniture of a figure: always behind the body. Sizes in body heights, by eye. */

import { project } from "./camera.ts";
import { LINE, TONE } from "./palette.ts";
import type { Picture } from "./picture.ts";
import { landmarkAt, stepSpan, touched, touches } from "./place-props.ts";
import type { PlaneAxis } from "./problem.ts";
import type { PropName, Props } from "./props-schema.ts";
import { drawBlock, drawRoll } from "./solids.ts";
import type { SolvedPose } from "./solve-figure.ts";
import { groundOf, planeOf, sizeOf, USUAL } from "./surfaces.ts";

export interface Scene {
  readonly props: Props | undefined;
  readonly poses: readonly SolvedPose[];
  /** The pose of this frame. */
  readonly pose?: SolvedPose;
  readonly axis: PlaneAxis;
  /** The highest point of the figure, up to which a wall is drawn. */
  readonly top: number;
  /** From where to where the figures reach, for mats and beds. */
  readonly reach: readonly [number, number];
}

type Draw = (picture: Picture, scene: Scene) => void;

/** Draws all furniture of a scene, the farthest first. */
export function drawFurniture(picture: Picture, scene: Scene): void {
  for (const [name, draw] of FURNITURE) {
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
  ["plate", plate],
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

function mat(picture: Picture, { props, axis, reach }: Scene) {
  const from = sizeOf(props, "mat", "at") ?? reach[0] - 0.03;
  const to = from + (sizeOf(props, "mat", "depth") ?? reach[1] + 0.03 - from);
  const block = {
    along: [from, to] as const,
    up: [0, USUAL.mat] as const,
    across: [-0.2, 0.18] as const,
  };
  drawBlock(picture, axis, block, TONE.soft);
}

function table(picture: Picture, { props, axis, poses }: Scene) {
  const height = sizeOf(props, "table", "height") ?? USUAL.table;
  const [from, to] = stepSpan(poses, props, "table", axis, 0.5);
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
  const along = stepSpan(poses, props, "bench", axis, 0.28);
  drawBlock(picture, axis, { along, up: [0, height], across: [-0.16, 0.14] });
}

function step(picture: Picture, { props, axis, poses }: Scene) {
  const height = sizeOf(props, "step", "height") ?? USUAL.step;
  const along = stepSpan(poses, props, "step", axis, axis === 0 ? 0.24 : 0.4);
  const across: [number, number] = axis === 0 ? [-0.15, 0.13] : [-0.1, 0.12];
  drawBlock(picture, axis, { along, up: [0, height], across });
}

function chair(picture: Picture, scene: Scene) {
  const { props, axis, poses } = scene;
  const seat = sizeOf(props, "chair", "height") ?? USUAL.chair;
  const first = poses.find((pose) => pose.rests.some((rest) => rest.part === "pelvis"));
  const sat = touches(poses, "chair", "pelvis") && first !== undefined;
  const pelvis = first === undefined ? 0 : landmarkAt(first, "pelvis")[axis];
  const span = touched(poses, "chair", axis);
  const given = sizeOf(props, "chair", "at");
  const half = 0.125;
  const middle =
    given ??
    (sat ? pelvis + (axis === 0 ? 0.04 : 0) : ((span?.[0] ?? 0.3) + (span?.[1] ?? 0.3)) / 2);
  const chairProp = props?.chair;
  const faces = chairProp !== undefined && chairProp !== true ? chairProp.faces : undefined;
  const from = middle - half;
  const to = middle + half;
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

function cushion(picture: Picture, { props, axis, poses }: Scene) {
  const height = sizeOf(props, "cushion", "height") ?? USUAL.cushion;
  const [from, to] = stepSpan(poses, props, "cushion", axis, 0.32);
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

/** A heavy sofa whose lower edge holds the ankles down. */
function sofa(picture: Picture, { axis, poses }: Scene) {
  const first = poses[0];
  if (first === undefined) return;
  const ankle = landmarkAt(first, "ankle right")[axis] + 0.03;
  const across: [number, number] = [-0.22, -0.02];
  drawBlock(picture, axis, { along: [ankle - 0.34, ankle - 0.24], up: [0.08, 0.46], across });
  drawBlock(picture, axis, { along: [ankle - 0.34, ankle], up: [0.085, 0.25], across });
}

/** The plate and backrest of a machine that is pushed with the feet. */
function plate(picture: Picture, { props, axis, poses, pose }: Scene) {
  const at = sizeOf(props, "plate", "at") ?? USUAL.plate;
  drawBlock(picture, axis, { along: [at, at + 0.03], up: [0.05, 0.55], across: [-0.16, 0.12] });
  const seated = pose ?? poses[0];
  if (seated === undefined) return;
  const pelvis = landmarkAt(seated, "pelvis");
  const chest = landmarkAt(seated, "chest");
  const lean = Math.atan2(chest[0] - pelvis[0], chest[1] - pelvis[1]);
  const rest = (up: number, behind: number, across: number) =>
    project(
      picture.camera,
      pelvis[0] + Math.sin(lean) * up - Math.cos(lean) * behind,
      pelvis[1] + Math.cos(lean) * up + Math.sin(lean) * behind,
      across,
      0.02,
    );
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
  const back = [-0.1, 0.1].flatMap((z) => [rest(-0.03, 0.085, z), rest(0.38, 0.085, z)]);
  picture.hull([back], TONE.thingSide, TONE.thingInk, LINE.thing * 2);
  const front = (along: number, across: number) =>
    project(picture.camera, pelvis[0] + along, USUAL.seat - 0.02, across, 0.016);
  const seat = [-0.1, 0.1].flatMap((z) => [front(-0.1, z), front(0.1, z)]);
  picture.hull([seat], TONE.thing, TONE.thingInk, LINE.thing * 2);
}

function towel(picture: Picture, { props, axis, poses }: Scene) {
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
    at ?? (span !== undefined ? span[0] + 0.036 : landmarkAt(first, under ?? "pelvis")[axis]);
  drawRoll(picture, axis, place, height + radius, radius, 0.1, TONE.towel);
}

function pillow(picture: Picture, { props, axis, poses }: Scene) {
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
