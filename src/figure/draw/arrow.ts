/** Lays the arrow that shows the movement beside the body: along the way of one landmark, never touching the body. Millimetres. */
import { LANDMARK_POINTS } from "../body/anatomy.ts";
import type { Angles } from "../body/body.ts";
import type { Frames } from "../body/kinematics.ts";
import type { ArrowHint } from "../format/schema.ts";
import type { Direction, Landmark } from "../format/words.ts";
import { type Camera, project, projectPoint } from "./camera.ts";
import { clearance, type Disc } from "./outline-discs.ts";
import type { Box } from "./picture.ts";
import { lengthOf, type Point, wayOf } from "./way.ts";

export interface Arrow {
  readonly shaft: readonly Point[];
  readonly doubleHeaded: boolean;
  /** The least distance between the arrow and the body. */
  readonly clear: number;
}

export interface ArrowSpace {
  readonly camera: Camera;
  /** The body of the frame that the arrow is drawn in. */
  readonly discs: readonly Disc[];
  readonly box: Box;
  /** A cropped frame: the arrow has to stay inside. */
  readonly closed: boolean;
}

export const ARROW = { width: 1.15, head: 2.6, headWide: 2.9, halo: 1.2 } as const;

const GAP = 1.5;
const HALF = 0.6;
const SHORT = 10;
const LEAST = 6.5;
/** Straight arrows stay this far above the ground. */
const GROUND = -0.9;

/** The arrow from one pose to the next; `before` is undefined where there is only one pose. */
export function layArrow(
  landmark: Landmark,
  hint: ArrowHint,
  before: Angles | undefined,
  after: { readonly angles: Angles; readonly frames: Frames },
  space: ArrowSpace,
): Arrow | undefined {
  const point = LANDMARK_POINTS.get(landmark);
  if (point === undefined) return undefined;
  const end = projectPoint(space.camera, after.frames, point);
  if (hint.direction === "round") return roundArrow(end, space);
  const way = before === undefined ? [end] : wayOf(landmark, before, after.angles, space.camera);
  const length = lengthOf(way);
  if (hint.direction !== undefined) {
    const along = screenWay(hint.direction, space.camera);
    const double = hint.direction.includes(" and ");
    return straightArrow(
      end,
      along,
      Math.min(12, Math.max(LEAST + 1.5, length)),
      hint,
      space,
      double,
    );
  }
  const first = way[0] as Point;
  if (length < SHORT) {
    const along = snap(Math.atan2(end.y - first.y, end.x - first.x));
    return straightArrow(end, along, Math.max(LEAST, length), hint, space, false);
  }
  return (
    pathArrow(way, hint, space) ??
    straightArrow(end, Math.atan2(end.y - first.y, end.x - first.x), SHORT, hint, space, false)
  );
}

/** The landmark's way, without its beginning, moved sideways until it is clear of the body. */
function pathArrow(way: readonly Point[], hint: ArrowHint, space: ArrowSpace): Arrow | undefined {
  const cut = way.slice(2);
  const normals = cut.map((_, i) => {
    const a = cut[Math.max(0, i - 1)] as Point;
    const b = cut[Math.min(cut.length - 1, i + 1)] as Point;
    const length = Math.hypot(b.x - a.x, b.y - a.y) || 1;
    return { x: (b.y - a.y) / length, y: -(b.x - a.x) / length };
  });
  for (let step = 0; step <= 28; step += 1) {
    const by = Math.ceil(step / 2) * (step % 2 === 0 ? 1 : -1) * 0.9;
    const shaft = cut.map((p, i) => {
      const normal = normals[i] as Point;
      return { x: p.x + normal.x * by, y: p.y + normal.y * by };
    });
    if (!onSide(shaft.at(-1), way.at(-1), hint.side) || !inside(shaft, space)) continue;
    const clear = clearOf(shaft, space.discs);
    if (clear >= GAP) return { shaft, doubleHeaded: false, clear };
  }
  return undefined;
}

/** A straight arrow, put where it is clear of the body and near the landmark. */
function straightArrow(
  end: Disc,
  along: number,
  length: number,
  hint: ArrowHint,
  space: ArrowSpace,
  doubleHeaded: boolean,
): Arrow | undefined {
  const dx = (Math.cos(along) * length) / 2;
  const dy = (Math.sin(along) * length) / 2;
  let best: Arrow | undefined;
  let least = Infinity;
  for (let ring = end.r + GAP; ring < 32; ring += 1.5) {
    if (ring > least) break;
    for (let turn = 0; turn < 24; turn += 1) {
      const angle = (turn * Math.PI) / 12;
      const middle = { x: end.x + ring * Math.cos(angle), y: end.y + ring * Math.sin(angle) };
      if (!onSide(middle, end, hint.side)) continue;
      const shaft = [
        { x: middle.x - dx, y: middle.y - dy },
        middle,
        { x: middle.x + dx, y: middle.y + dy },
      ];
      if (shaft.some((p) => p.y > GROUND)) continue;
      const price = ring + 1.2 * outside(shaft, space.box);
      if (price >= least || !inside(shaft, space)) continue;
      const clear = clearOf(shaft, space.discs);
      if (clear < GAP) continue;
      best = { shaft, doubleHeaded, clear };
      least = price;
    }
  }
  return best;
}

/** Three quarters of a circle round a landmark. */
function roundArrow(end: Disc, space: ArrowSpace): Arrow | undefined {
  for (let radius = end.r + 4; radius < 14; radius += 1) {
    const shaft = Array.from({ length: 17 }, (_, i) => {
      const angle = -2.4 + (i * 4.6) / 16;
      return { x: end.x + radius * Math.cos(angle), y: end.y + radius * Math.sin(angle) };
    });
    const clear = clearOf(shaft, space.discs);
    if (clear >= 0.6 && inside(shaft, space)) return { shaft, doubleHeaded: false, clear };
  }
  return undefined;
}

function clearOf(shaft: readonly Point[], discs: readonly Disc[]): number {
  let least = Infinity;
  for (let i = 1; i < shaft.length; i += 1) {
    const a = shaft[i - 1] as Point;
    const b = shaft[i] as Point;
    const steps = Math.max(1, Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / 1.2));
    for (let k = 0; k <= steps; k += 1) {
      const t = k / steps;
      const last = i === shaft.length - 1 && k >= steps - 1;
      const gap = clearance(discs, a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t);
      least = Math.min(least, gap - (last ? ARROW.headWide / 2 : HALF));
      if (least < 0) return least;
    }
  }
  return least;
}

function onSide(place: Point | undefined, of: Point | undefined, side: ArrowHint["side"]): boolean {
  if (side === undefined || place === undefined || of === undefined) return true;
  const dx = place.x - of.x;
  const dy = place.y - of.y;
  if (side === "above") return dy < -Math.abs(dx) * 0.6;
  if (side === "below") return dy > Math.abs(dx) * 0.6;
  return side === "ahead" ? dx > Math.abs(dy) * 0.6 : dx < -Math.abs(dy) * 0.6;
}

function inside(shaft: readonly Point[], { box, closed }: ArrowSpace): boolean {
  const most = closed ? 3 : 12;
  return shaft.every(
    (p) =>
      p.x > box.left - most &&
      p.x < box.right + most &&
      p.y > box.top - most &&
      p.y < Math.min(box.bottom + most, closed ? Infinity : 3),
  );
}

function outside(shaft: readonly Point[], box: Box): number {
  const wide = ARROW.headWide / 2;
  let most = 0;
  for (const p of shaft) {
    most = Math.max(most, box.left - p.x + wide, p.x + wide - box.right, box.top - p.y + wide);
  }
  return most;
}

/** The nearest of eight directions, where it is near. */
function snap(angle: number): number {
  const eighth = Math.PI / 4;
  const near = Math.round(angle / eighth) * eighth;
  return Math.abs(near - angle) <= 0.384 ? near : angle;
}

const WAYS: Readonly<Record<Direction, readonly [number, number, number]>> = {
  up: [0, 1, 0],
  down: [0, -1, 0],
  forward: [1, 0, 0],
  back: [-1, 0, 0],
  right: [0, 0, 1],
  left: [0, 0, -1],
  "up and down": [0, 1, 0],
  "forward and back": [1, 0, 0],
  round: [0, 1, 0],
};

function screenWay(direction: Direction, camera: Camera): number {
  const [x, y, z] = WAYS[direction];
  const to = project(camera, x, y, z);
  return snap(Math.atan2(to.y, to.x));
}
