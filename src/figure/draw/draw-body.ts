/** Draws a body in its pose: limbs from far to near, the working ones darkest. */

import { LANDMARK_POINTS } from "../body/anatomy.ts";
import type { Frames } from "../body/kinematics.ts";
import * as shapes from "../body/shapes.ts";
import { type BodySide, type Landmark, type Limb, SIDES } from "../format/words.ts";
import { projectPoint } from "./camera.ts";
import { TONE } from "./palette.ts";
import type { Picture } from "./picture.ts";

export interface BodyStyle {
  readonly working: readonly Limb[];
  /** Hands that hold something. */
  readonly fists: ReadonlySet<BodySide>;
  /** A pale body: where a limb started from. */
  readonly ghost: boolean;
  /** The near side, where the view has one. */
  readonly near: BodySide | undefined;
  /** Things drawn with a part of the body: between an arm and its hand, or behind or before the trunk. */
  readonly things: (place: ThingPlace) => void;
}

export type ThingPlace =
  | "hand right"
  | "hand left"
  | "behind trunk"
  | "before trunk"
  | "between legs";

/** Draws the whole body into a picture. */
export function drawBody(picture: Picture, frames: Frames, style: BodyStyle): void {
  for (const part of order(picture, frames, style)) {
    if (part === "trunk") trunk(picture, frames, style);
    else if (part === "head") head(picture, frames, style);
    else if (part === "thing") style.things("between legs");
    else if (part.startsWith("arm")) arm(picture, frames, style, sideOf(part));
    else leg(picture, frames, style, sideOf(part));
  }
}

/** Draws single limbs only, pale: the start of a limb that swings clear. */
export function drawGhost(
  picture: Picture,
  frames: Frames,
  style: BodyStyle,
  limbs: readonly string[],
): void {
  for (const part of limbs) {
    if (part.startsWith("arm")) arm(picture, frames, style, sideOf(part));
    else leg(picture, frames, style, sideOf(part));
  }
}

/** Draws the working legs only, the far one first. */
export function drawWorkingLegs(picture: Picture, frames: Frames, style: BodyStyle): void {
  for (const side of workingLegs(style)) leg(picture, frames, style, side);
}

/** The sides whose leg works, the far one first. */
export function workingLegs(style: BodyStyle): BodySide[] {
  const order: BodySide[] = style.near === "left" ? ["right", "left"] : ["left", "right"];
  return order.filter((side) => works(style, "leg", side));
}

const sideOf = (part: string): BodySide => (part.endsWith("right") ? "right" : "left");

/** What is drawn before what: fixed from the side, by nearness from the front or back. */
function order(picture: Picture, frames: Frames, { near }: BodyStyle): string[] {
  if (near !== undefined) {
    const far = near === "right" ? "left" : "right";
    return [`arm ${far}`, `leg ${far}`, "thing", "trunk", "head", `leg ${near}`, `arm ${near}`];
  }
  const depth = (name: Landmark) => {
    const point = LANDMARK_POINTS.get(name);
    return point === undefined ? 0 : projectPoint(picture.camera, frames, point).depth;
  };
  const trunkDepth = (depth("chest") + depth("pelvis")) / 2;
  const parts: [string, number][] = [
    ["trunk", trunkDepth],
    ["head", depth("head") < depth("chest") - 0.05 ? trunkDepth - 0.001 : trunkDepth + 0.001],
    ["thing", Math.min(depth("knee right"), depth("knee left")) - 0.0301],
  ];
  for (const side of SIDES) {
    const hand = (depth(`elbow ${side}`) + depth(`hand ${side}`)) / 2;
    parts.push([`arm ${side}`, hand + 0.04]);
    parts.push([`leg ${side}`, (depth(`knee ${side}`) + depth(`hip ${side}`)) / 2 - 0.03]);
  }
  return parts.sort((a, b) => a[1] - b[1]).map(([name]) => name);
}

function works(style: BodyStyle, limb: "leg" | "arm", side: BodySide): boolean {
  return style.working.includes(`${side} ${limb}`) || style.working.includes(`${limb}s`);
}

function tones(style: BodyStyle, side: BodySide, work: boolean, plain: string, plainFar: string) {
  const far = style.near !== undefined && style.near !== side;
  if (style.ghost) return { fill: TONE.ghost, line: TONE.ghostInk, far };
  if (work)
    return { fill: far ? TONE.workFar : TONE.work, line: far ? TONE.farInk : TONE.ink, far };
  return { fill: far ? plainFar : plain, line: far ? TONE.farInk : TONE.ink, far };
}

function leg(picture: Picture, frames: Frames, style: BodyStyle, side: BodySide) {
  const work = works(style, "leg", side);
  const { fill, line, far } = tones(style, side, work, TONE.cloth, TONE.clothFar);
  const shoe = style.ghost ? TONE.ghost : far ? TONE.shoeFar : TONE.shoe;
  picture.body(frames, shapes.shoeShape(side), shoe, line);
  picture.body(frames, shapes.legShape(side), fill, line);
  const near = style.near === undefined || style.near === side;
  if (!work && near && !style.ghost) picture.body(frames, shapes.hipPatch(side), fill, undefined);
}

function arm(picture: Picture, frames: Frames, style: BodyStyle, side: BodySide) {
  const work = works(style, "arm", side);
  const { fill, line, far } = tones(style, side, work, TONE.skin, TONE.skinFar);
  const hand = style.ghost ? TONE.ghost : far ? TONE.skinFar : TONE.skin;
  picture.body(frames, shapes.armShape(side), fill, line);
  if (!style.ghost) style.things(`hand ${side}`);
  picture.body(frames, shapes.handShape(side, style.fists.has(side)), hand, line);
}

function trunk(picture: Picture, frames: Frames, style: BodyStyle) {
  const work = style.working.includes("trunk");
  style.things("behind trunk");
  picture.body(frames, shapes.neckShape(), TONE.skin, TONE.ink);
  picture.body(frames, shapes.pelvisShape(), TONE.cloth, TONE.ink);
  picture.body(frames, shapes.shirtShape(), work ? TONE.work : TONE.shirt, TONE.ink);
  style.things("before trunk");
}

function head(picture: Picture, frames: Frames, style: BodyStyle) {
  const hair = LANDMARK_POINTS.get("head");
  const face = shapes.faceShape()[0]?.[0];
  if (hair === undefined || face === undefined) return;
  const seen = (point: typeof hair) => projectPoint(picture.camera, frames, point).depth;
  const faced = seen(face) > seen(hair) - 0.012;
  const drawHair = () => picture.body(frames, shapes.hairShape(), TONE.hair, TONE.ink);
  const drawFace = () => picture.body(frames, shapes.faceShape(), TONE.skin, TONE.ink);
  if (faced) {
    drawHair();
    drawFace();
  } else {
    drawFace();
    drawHair();
  }
  if (style.near !== undefined) {
    picture.body(frames, shapes.earShape(style.near), TONE.skin, TONE.ink);
  }
}
