/** Looks at the body from one side: turns places in body heights into places on paper in millimetres. */
import { coordinate, type Frames } from "../body/kinematics.ts";
import { POSTURES } from "../body/postures.ts";
import type { Figure } from "../format/schema.ts";

export interface Circle {
  readonly x: number;
  /** Downwards, as on paper. */
  readonly y: number;
  readonly r: number;
  /** Nearness to the viewer, in body heights. */
  readonly depth: number;
}

export interface Camera {
  /** Degrees round the body: 0 from the front, 90 from its right side. */
  readonly azimuth: number;
  readonly rise: number;
  /** Millimetres a body height. */
  readonly scale: number;
}

const RADIAN = Math.PI / 180;

/** The usual direction of each view; a little to the front, so that the far limbs show. */
const AZIMUTH = { side: 72, "left side": -72, front: 4, back: 176, above: 78 } as const;
const LYING_SIDE = 78;

/** The camera of a figure at a scale. */
export function cameraOf(figure: Figure, scale: number): Camera {
  const lying = POSTURES[figure.base].long === true;
  const usual =
    figure.view === "side" && lying
      ? LYING_SIDE
      : figure.view === "left side" && lying
        ? -LYING_SIDE
        : AZIMUTH[figure.view];
  const turn = figure.turn ?? 0;
  const rise = figure.rise ?? (figure.view === "above" ? 50 : 0);
  return { azimuth: usual < 0 ? usual + turn : usual - turn, rise, scale };
}

/** The way to the viewer, as a unit vector. */
export function towards({ azimuth, rise }: Camera): [number, number, number] {
  const level = Math.cos(rise * RADIAN);
  return [
    level * Math.cos(azimuth * RADIAN),
    Math.sin(rise * RADIAN),
    level * Math.sin(azimuth * RADIAN),
  ];
}

/** A place in body heights as the viewer sees it. */
export function project(camera: Camera, x: number, y: number, z: number, radius = 0): Circle {
  const sin = Math.sin(camera.azimuth * RADIAN);
  const cos = Math.cos(camera.azimuth * RADIAN);
  const up = Math.cos(camera.rise * RADIAN);
  const tilt = Math.sin(camera.rise * RADIAN);
  const near = cos * x + sin * z;
  return {
    x: (sin * x - cos * z) * camera.scale,
    y: -(up * y - tilt * near) * camera.scale,
    r: radius * camera.scale,
    depth: up * near + tilt * y,
  };
}

/** A sphere of the body as the viewer sees it. */
export function projectPoint(
  camera: Camera,
  frames: Frames,
  point: {
    readonly segment: number;
    readonly offset: readonly [number, number, number];
    readonly radius: number;
  },
): Circle {
  const { segment, offset, radius } = point;
  return project(
    camera,
    coordinate(frames, segment, offset, 0),
    coordinate(frames, segment, offset, 1),
    coordinate(frames, segment, offset, 2),
    radius,
  );
}
