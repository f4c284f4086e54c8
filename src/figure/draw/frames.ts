/** Draws the frames of a figure at one scale, each with its furniture, body and arrows. */

import type { Figure } from "../format/schema.ts";
import { type Landmark, SIDES } from "../format/words.ts";
import { splitSide } from "../solve/read-pose.ts";
import { planeAxis, type SolvedPose } from "../solve/solve-figure.ts";
import { type Camera, cameraOf } from "./camera.ts";
import { cropBox, cropScale } from "./crop.ts";
import { type BodyStyle, drawBody, drawGhost } from "./draw-body.ts";
import { drawFurniture } from "./draw-furniture.ts";
import { drawOver, drawThings, fistsOf } from "./draw-things.ts";
import { addArrows, type LaidArrow } from "./frame-arrows.ts";
import { addInset, inInset } from "./inset.ts";
import { bodyDiscs } from "./outline-discs.ts";
import { type Box, Picture } from "./picture.ts";
import type { Scene } from "./scene.ts";
import { travel } from "./way.ts";

export interface DrawnFrames {
  readonly pictures: readonly Picture[];
  readonly arrows: readonly LaidArrow[];
  /** Cropped frames show this part only. */
  readonly crop: Box | undefined;
  readonly scale: number;
}

const USUAL_SCALE = 43;
const MOST_WIDE = { beside: 48.9, below: 52, ghost: 54 } as const;
const MOST_HIGH = { beside: 47.5, below: 36, ghost: 47.5 } as const;

export type FrameLayout = keyof typeof MOST_WIDE;

/** All frames at the largest scale, up to 43 mm a body height, at which they fit. */
export function drawFrames(
  figure: Figure,
  poses: readonly SolvedPose[],
  layout: FrameLayout,
): DrawnFrames {
  const scale = figure.crop === undefined ? USUAL_SCALE : cropScale(figure.crop);
  const drawn = drawAt(figure, poses, layout, scale);
  const least = fitting(drawn, layout, figure.poses.length);
  return least >= 0.999 ? drawn : drawAt(figure, poses, layout, scale * least);
}

function fitting({ pictures, crop }: DrawnFrames, layout: FrameLayout, count: number): number {
  const boxes = crop === undefined ? pictures.map((picture) => picture.box) : [crop];
  const wide = layout === "beside" && count > 2 ? 32 : MOST_WIDE[layout];
  const across = Math.max(...boxes.map((box) => box.right - box.left));
  const ground = crop === undefined ? 0 : -Infinity;
  const high = Math.max(...boxes.map((box) => Math.max(box.bottom, ground) - box.top));
  return Math.min(1, wide / across, MOST_HIGH[layout] / high);
}

function drawAt(
  figure: Figure,
  poses: readonly SolvedPose[],
  layout: FrameLayout,
  scale: number,
): DrawnFrames {
  const camera = cameraOf(figure, scale);
  const scene = sceneOf(figure, poses, camera);
  const crop = figure.crop === undefined ? undefined : cropBox(figure.crop, camera, poses);
  const arrows: LaidArrow[] = [];
  const shown = layout === "ghost" ? poses.slice(-1) : poses;
  const pictures = shown.map((pose) => {
    const picture = new Picture(camera);
    const style = styleOf(figure, pose, picture);
    drawFurniture(picture, { ...scene, pose });
    if (layout === "ghost" && poses[0] !== undefined) {
      const start = { ...style, ghost: true };
      drawGhost(picture, poses[0].frames, start, ghostLimbs(figure, poses));
    }
    drawBody(picture, pose.frames, style);
    drawOver(picture, pose.frames, figure.props);
    const elsewhere = figure.inset !== undefined;
    arrows.push(
      ...addArrows(picture, figure, poses, pose, crop, (of) => !(elsewhere && inInset(of))),
    );
    if (elsewhere) arrows.push(...addInset(picture, figure, scene, pose, style));
    return picture;
  });
  return { pictures, arrows, crop, scale };
}

function sceneOf(figure: Figure, poses: readonly SolvedPose[], camera: Camera): Scene {
  let top = 0;
  let [left, right] = [Infinity, -Infinity];
  for (const pose of poses) {
    for (const disc of bodyDiscs(camera, pose.frames)) {
      top = Math.max(top, -(disc.y - disc.r) / camera.scale);
      left = Math.min(left, (disc.x - disc.r) / camera.scale);
      right = Math.max(right, (disc.x + disc.r) / camera.scale);
    }
  }
  const axis = planeAxis(figure);
  const flipped = axis === 2 ? figure.view === "front" : figure.view === "left side";
  const reach: [number, number] = flipped ? [-right, -left] : [left, right];
  return { props: figure.props, poses, axis, top, reach };
}

function styleOf(figure: Figure, pose: SolvedPose, picture: Picture): BodyStyle {
  const near = figure.view === "side" ? "right" : figure.view === "left side" ? "left" : undefined;
  const fists = fistsOf(figure.props);
  for (const rest of pose.rests) {
    const [part, side] = splitSide(rest.part);
    if (part === "fist" && side !== undefined) fists.add(side);
  }
  return {
    working: figure.working,
    fists,
    ghost: false,
    near,
    things: (place) =>
      drawThings(picture, pose.frames, figure.props, place, figure.view === "back"),
  };
}

/** Limbs that are elsewhere at the start: drawn pale there. */
function ghostLimbs(figure: Figure, poses: readonly SolvedPose[]): string[] {
  const [first, last] = [poses[0], poses.at(-1)];
  if (first === undefined || last === undefined) return [];
  const camera = cameraOf(figure, USUAL_SCALE);
  return SIDES.flatMap((side) => [
    ...((["heel", "knee"] as const).some((name) => moves(`${name} ${side}`))
      ? [`leg ${side}`]
      : []),
    ...((["hand", "elbow"] as const).some((name) => moves(`${name} ${side}`))
      ? [`arm ${side}`]
      : []),
  ]);
  function moves(landmark: Landmark) {
    return (
      first !== undefined &&
      last !== undefined &&
      travel(landmark, first.frames, last.frames, camera) > 2.5
    );
  }
}
