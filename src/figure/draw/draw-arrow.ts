/** Draws an arrow that has been laid: a shaft with a head, on a white halo. Millimetres. */
import { ARROW, type Arrow } from "./arrow.ts";
import { TONE } from "./palette.ts";
import type { Picture } from "./picture.ts";

interface Point {
  readonly x: number;
  readonly y: number;
}

/** Draws the arrow over everything that is already in the picture. */
export function drawArrow(picture: Picture, { shaft, doubleHeaded }: Arrow): void {
  const ends = [head(shaft), ...(doubleHeaded ? [head([...shaft].reverse())] : [])];
  const line = shortened(shaft, doubleHeaded);
  picture.line(line, TONE.paper, ARROW.width + ARROW.halo);
  for (const end of ends) picture.polygon(end, TONE.paper, TONE.paper, ARROW.halo);
  picture.line(line, TONE.arrow, ARROW.width);
  for (const end of ends) picture.polygon(end, TONE.arrow, TONE.arrow, 0.25);
}

/** The triangle at the end of the shaft. */
function head(shaft: readonly Point[]): Point[] {
  const tip = shaft.at(-1) as Point;
  const base = back(shaft, ARROW.head);
  const length = Math.hypot(tip.x - base.x, tip.y - base.y) || 1;
  const x = ((tip.x - base.x) / length) * (ARROW.headWide / 2);
  const y = ((tip.y - base.y) / length) * (ARROW.headWide / 2);
  return [tip, { x: base.x - y, y: base.y + x }, { x: base.x + y, y: base.y - x }];
}

/** The shaft without the part that lies under its head. */
function shortened(shaft: readonly Point[], both: boolean): Point[] {
  const cut = (points: readonly Point[]) => {
    const tip = points.at(-1) as Point;
    const base = back(points, ARROW.head * 0.8);
    const far = points.filter((p) => Math.hypot(p.x - tip.x, p.y - tip.y) > ARROW.head);
    return [...far, base];
  };
  const once = cut(shaft);
  return both ? cut([...once].reverse()) : once;
}

/** The point of the shaft at a distance from its tip. */
function back(shaft: readonly Point[], distance: number): Point {
  const tip = shaft.at(-1) as Point;
  let left = distance;
  for (let i = shaft.length - 1; i > 0; i -= 1) {
    const a = shaft[i] as Point;
    const b = shaft[i - 1] as Point;
    const length = Math.hypot(a.x - b.x, a.y - b.y);
    if (length >= left) {
      const t = left / (length || 1);
      return { x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t };
    }
    left -= length;
  }
  return shaft[0] ?? tip;
}
