/** Draws what the body holds or wears: weights, backpack, ball, band, stick. Sizes in body heights, by eye. */
import { type BodyPoint, LANDMARK_POINTS } from "../body/anatomy.ts";
import { LENGTH, limbSegment, SEGMENT } from "../body/body.ts";
import type { Frames } from "../body/kinematics.ts";
import type { PropPoint, Props } from "../format/props-schema.ts";
import type { BodySide, Landmark } from "../format/words.ts";
import { type Circle, project, projectPoint } from "./camera.ts";
import type { ThingPlace } from "./draw-body.ts";
import { LINE, TONE } from "./palette.ts";
import type { Picture } from "./picture.ts";

/** Draws the things that belong to a place of the drawing order. */
export function drawThings(
  picture: Picture,
  frames: Frames,
  props: Props | undefined,
  place: ThingPlace,
  back: boolean,
): void {
  if (props === undefined) return;
  if (place === "hand right" || place === "hand left") {
    if (props.dumbbell !== undefined && heldIn(props.dumbbell) === place)
      dumbbell(picture, frames, place);
    if (place === "hand right" && props.barbell !== undefined) barbell(picture, frames, props);
  }
  const worn = back ? "before trunk" : "behind trunk";
  if (props.backpack !== undefined && place === worn) backpack(picture, frames);
  if (place === "between legs" && props.ball !== undefined) ball(picture, frames, props);
  if (place === "hand left" && props.weight !== undefined) weight(picture, frames, props);
}

/** Draws what lies over the whole body: bands, straps and a stick. */
export function drawOver(picture: Picture, frames: Frames, props: Props | undefined): void {
  for (const name of ["band", "strap"] as const) {
    const prop = props?.[name];
    if (prop === undefined) continue;
    const { from, to } = prop === true ? { from: undefined, to: undefined } : prop;
    band(picture, frames, from, to ?? ["hand right", "hand left"], name === "strap");
  }
  if (props?.lever !== undefined) lever(picture, frames);
  if (props?.stick !== undefined) {
    const ends = (["right", "left"] as const).map((side) => at(picture, frames, `hand ${side}`));
    const [a, b] = ends;
    if (a === undefined || b === undefined) return;
    const long = (k: number) => ({ x: b.x + (a.x - b.x) * k, y: b.y + (a.y - b.y) * k });
    picture.line([long(-0.3), long(1.3)], TONE.ink, 1.1);
    picture.line([long(-0.28), long(1.28)], TONE.soft, 0.6);
  }
}

/** The hands that close round something. */
export function fistsOf(props: Props | undefined): Set<BodySide> {
  const fists = new Set<BodySide>();
  if (props === undefined) return fists;
  if (props.dumbbell !== undefined) {
    fists.add(heldIn(props.dumbbell).endsWith("left") ? "left" : "right");
  }
  if (props.stick !== undefined || props.barbell !== undefined) fists.add("right").add("left");
  for (const prop of [props.band, props.strap]) {
    if (prop === undefined) continue;
    const to = (prop === true ? undefined : prop.to) ?? ["hand right", "hand left"];
    if (to.includes("hand right")) fists.add("right");
    if (to.includes("hand left")) fists.add("left");
  }
  return fists;
}

function heldIn(prop: Props["dumbbell"]): Landmark {
  return prop === undefined || prop === true ? "hand right" : (prop.in ?? "hand right");
}

function at(picture: Picture, frames: Frames, landmark: Landmark): Circle | undefined {
  const point = LANDMARK_POINTS.get(landmark);
  return point === undefined ? undefined : projectPoint(picture.camera, frames, point);
}

/** A bar through the fist, across the forearm, thumb side forward, with a weight at each end. */
function dumbbell(picture: Picture, frames: Frames, place: "hand right" | "hand left") {
  const segment = limbSegment("hand", place.endsWith("left") ? "left" : "right");
  const ball = (x: number, radius: number): BodyPoint => ({
    segment,
    offset: [x, -0.032, 0],
    radius,
  });
  const seen = (x: number, radius: number) => projectPoint(picture.camera, frames, ball(x, radius));
  picture.hull([[seen(-0.05, 0.009), seen(0.058, 0.009)]], TONE.weight, TONE.ink, LINE.body);
  for (const [a, b] of [
    [-0.06, -0.042],
    [0.05, 0.068],
  ] as const) {
    picture.hull([[seen(a, 0.03), seen(b, 0.03)]], TONE.weight, TONE.ink, LINE.body);
  }
}

function backpack(picture: Picture, frames: Frames) {
  const seen = (x: number, y: number, z: number, radius: number) =>
    projectPoint(picture.camera, frames, { segment: SEGMENT.thorax, offset: [x, y, z], radius });
  const outline = [-0.05, 0.05].flatMap((z) => [
    seen(-0.085, 0.09, z, 0.032),
    seen(-0.095, -0.03, z, 0.04),
    seen(-0.05, 0.1, z, 0.03),
    seen(-0.05, -0.04, z, 0.03),
  ]);
  picture.hull([outline], TONE.weight, TONE.ink, LINE.body);
}

function barbell(picture: Picture, frames: Frames, props: Props) {
  const prop = props.barbell;
  const on = prop === undefined || prop === true ? undefined : prop.on;
  const point: BodyPoint = on?.startsWith("thigh")
    ? { segment: limbSegment("thigh", "right"), offset: [0.055, -0.15, 0], radius: 0.012 }
    : { segment: SEGMENT.thorax, offset: [-0.062, 0.135, 0], radius: 0.012 };
  const seen = (z: number, radius: number) =>
    projectPoint(picture.camera, frames, {
      ...point,
      offset: [point.offset[0], point.offset[1], z],
      radius,
    });
  picture.hull([[seen(-0.4, 0.01), seen(0.4, 0.01)]], TONE.weight, TONE.ink, LINE.body);
  for (const [a, b] of [
    [-0.34, -0.3],
    [0.3, 0.34],
  ] as const) {
    picture.hull([[seen(a, 0.07), seen(b, 0.07)]], TONE.weight, TONE.ink, LINE.body);
    picture.disc(seen(b, 0.014), TONE.thingSide, TONE.ink, LINE.thing);
  }
}

function ball(picture: Picture, frames: Frames, props: Props) {
  const prop = props.ball;
  const radius = (prop === undefined || prop === true ? undefined : prop.size) ?? 0.055;
  const right = at(picture, frames, "knee right");
  const left = at(picture, frames, "knee left");
  if (right === undefined || left === undefined) return;
  const middle = { x: (right.x + left.x) / 2, y: (right.y + left.y) / 2 };
  const r = radius * picture.camera.scale;
  picture.hull(
    [[{ ...middle, y: middle.y - r * 0.35, r, depth: 0 }]],
    TONE.soft,
    TONE.ink,
    LINE.body,
  );
}

/** A weight on the thighs near the knees: a bag that hangs a little over both. */
function weight(picture: Picture, frames: Frames, props: Props) {
  const prop = props.weight;
  const on = (prop === undefined || prop === true ? undefined : prop.on) ?? "thigh right";
  const side = on.endsWith("left") ? "left" : "right";
  const part = on.startsWith("thigh") || on.startsWith("knee");
  const segment = part ? limbSegment("thigh", side) : SEGMENT.abdomen;
  const y = part ? -LENGTH.thigh * 0.76 : 0.03;
  const seen = (dx: number, dy: number, radius: number) =>
    projectPoint(picture.camera, frames, { segment, offset: [dx, y + dy, 0], radius });
  picture.hull(
    [
      [
        seen(0.062, -0.05, 0.024),
        seen(0.062, 0.05, 0.024),
        seen(0.088, -0.034, 0.024),
        seen(0.088, 0.034, 0.024),
      ],
    ],
    TONE.weight,
    TONE.ink,
    LINE.body,
  );
}

/** Hinged beside the knee, with a pad in front of the ankle. */
function lever(picture: Picture, frames: Frames) {
  const segment = limbSegment("shank", "right");
  const seen = (x: number, y: number, radius: number) =>
    projectPoint(picture.camera, frames, { segment, offset: [x, y, 0.06], radius });
  const pad = seen(0.052, -LENGTH.shank * 0.86, 0.026);
  const arm = [seen(0, 0, 0.012), seen(0.04, -LENGTH.shank * 0.8, 0.01)];
  picture.hull([arm], TONE.thingSide, TONE.thingInk, LINE.thing * 2);
  picture.disc(pad, TONE.weight, TONE.ink, LINE.thing);
}

function band(
  picture: Picture,
  frames: Frames,
  from: PropPoint | undefined,
  to: readonly Landmark[],
  strap: boolean,
) {
  const ends = to.flatMap((landmark) => at(picture, frames, landmark) ?? []);
  const anchor = anchorOf(picture, frames, from);
  const lines = anchor === undefined ? [ends] : ends.map((end) => [anchor, end]);
  const width = strap ? LINE.band * 1.5 : LINE.band;
  for (const line of lines) {
    if (line.length < 2) continue;
    picture.line(line, TONE.paper, LINE.halo);
    picture.line(line, TONE.band, width);
  }
  if (anchor !== undefined && Array.isArray(from)) {
    picture.disc({ ...anchor, r: 1.1 }, TONE.paper, TONE.ink, 0.5);
  }
}

function anchorOf(
  picture: Picture,
  frames: Frames,
  from: PropPoint | undefined,
): Circle | undefined {
  if (from === undefined) return undefined;
  if (typeof from === "string") return at(picture, frames, from);
  const [x, y, z] = from;
  return project(picture.camera, x, y, z ?? 0);
}
