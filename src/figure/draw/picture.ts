/** One frame while it is drawn: paths in paper millimetres from the place of the first contact, and the room they take. */

import type { Frames } from "../body/kinematics.ts";
import type { Shape } from "../body/shapes.ts";
import type { Camera, Circle } from "./camera.ts";
import { projectPoint } from "./camera.ts";
import { discPath, hullPath, linePath } from "./hull.ts";
import { LINE } from "./palette.ts";

export interface Box {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

export interface Path {
  readonly d: string;
  readonly fill: string;
  readonly stroke: string | undefined;
  readonly width: number;
  /** Lines between the outlines of one path vanish under its fill. */
  readonly under: boolean;
}

/** A box in the picture that shows another part of it enlarged. */
export interface Inset {
  readonly place: Box;
  /** What is seen of the enlarged paths. */
  readonly view: Box;
  readonly paths: readonly Path[];
}

interface Point {
  readonly x: number;
  readonly y: number;
}

export class Picture {
  readonly camera: Camera;
  readonly paths: Path[] = [];
  readonly insets: Inset[] = [];
  readonly box: Box = { left: Infinity, right: -Infinity, top: Infinity, bottom: -Infinity };

  constructor(camera: Camera) {
    this.camera = camera;
  }

  /** Draws a part of the body. */
  body(frames: Frames, shape: Shape, fill: string, stroke: string | undefined) {
    let d = "";
    for (const outline of shape) {
      const circles = outline.map((point) => projectPoint(this.camera, frames, point));
      for (const circle of circles) this.cover(circle);
      d += hullPath(circles);
    }
    this.paths.push({ d, fill, stroke, width: LINE.body, under: stroke !== undefined });
  }

  /** Draws outlines round circles that are already on paper. */
  hull(outlines: readonly (readonly Circle[])[], fill: string, stroke: string, width: number) {
    for (const circle of outlines.flat()) this.cover(circle);
    this.paths.push({ d: outlines.map(hullPath).join(""), fill, stroke, width, under: true });
  }

  polygon(points: readonly Point[], fill: string, stroke: string, width: number) {
    for (const point of points) this.cover({ ...point, r: 0 });
    this.paths.push({ d: linePath(points), fill, stroke, width, under: false });
  }

  line(points: readonly Point[], stroke: string, width: number) {
    for (const point of points) this.cover({ ...point, r: width / 2 });
    this.paths.push({ d: linePath(points, false), fill: "none", stroke, width, under: false });
  }

  disc(circle: Circle, fill: string, stroke: string, width: number) {
    this.cover(circle);
    this.paths.push({ d: discPath(circle), fill, stroke, width, under: false });
  }

  /** Makes room for a circle. */
  cover({ x, y, r }: { x: number; y: number; r: number }) {
    const { box } = this;
    box.left = Math.min(box.left, x - r);
    box.right = Math.max(box.right, x + r);
    box.top = Math.min(box.top, y - r);
    box.bottom = Math.max(box.bottom, y + r);
  }
}
