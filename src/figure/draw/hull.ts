/** Outlines round circles, as SVG path data: the silhouette of a chain of balls. */
import type { Circle } from "./camera.ts";

/** Path data of the convex outline round circles; all outlines run the same way round. */
export function hullPath(circles: readonly Circle[]): string {
  const arcs = hullArcs(circles);
  const only = arcs[0];
  if (only === undefined) return "";
  if (arcs.length === 1) return discPath(only.circle);
  let path = "";
  for (const { circle, from, to } of arcs) {
    path += `${path === "" ? "M" : "L"}${point(circle, from)}${arc(circle, from, to)}`;
  }
  return `${path}Z`;
}

/** Path data of a circle. */
export function discPath(circle: Circle): string {
  return `M${point(circle, 0)}${arc(circle, 0, 2 * Math.PI)}Z`;
}

/** Path data of a polygon or an open line. */
export function linePath(points: readonly { x: number; y: number }[], closed = true): string {
  const text = points.map((p) => `${round(p.x)} ${round(p.y)}`).join("L");
  return `M${text}${closed ? "Z" : ""}`;
}

/** A number as it is written in the picture: hundredths of a millimetre, never "-0". */
export function round(value: number): string {
  const text = value.toFixed(2).replace(/\.?0+$/, "");
  return text === "-0" ? "0" : text;
}

interface Arc {
  readonly circle: Circle;
  readonly from: number;
  readonly to: number;
}

/**
 * The arcs of the outline in order of direction. In direction t the outline is on the circle whose
 * support c·u(t) + r is largest; it changes only where two circles have a common tangent.
 */
function hullArcs(circles: readonly Circle[]): Arc[] {
  const turns = tangents(circles);
  const first = circles[0];
  if (turns.length === 0)
    return first === undefined ? [] : [{ circle: largest(circles, 0), from: 0, to: 0 }];
  turns.sort((a, b) => a - b);
  const arcs: { circle: Circle; from: number; to: number }[] = [];
  for (let i = 0; i < turns.length; i += 1) {
    const from = turns[i] as number;
    const to = i + 1 < turns.length ? (turns[i + 1] as number) : (turns[0] as number) + 2 * Math.PI;
    if (to - from < 1e-9) continue;
    const circle = largest(circles, (from + to) / 2);
    const last = arcs.at(-1);
    if (last?.circle === circle) last.to = to;
    else arcs.push({ circle, from, to });
  }
  const head = arcs[0];
  const tail = arcs.at(-1);
  if (head !== undefined && tail !== undefined && arcs.length > 1 && head.circle === tail.circle) {
    head.from = tail.from - 2 * Math.PI;
    arcs.pop();
  }
  return arcs;
}

function tangents(circles: readonly Circle[]): number[] {
  const turns: number[] = [];
  for (let i = 0; i < circles.length; i += 1) {
    for (let j = i + 1; j < circles.length; j += 1) {
      const a = circles[i] as Circle;
      const b = circles[j] as Circle;
      const distance = Math.hypot(a.x - b.x, a.y - b.y);
      const ratio = (b.r - a.r) / distance;
      if (!(Math.abs(ratio) < 1)) continue;
      const middle = Math.atan2(a.y - b.y, a.x - b.x);
      const spread = Math.acos(ratio);
      turns.push(turnOf(middle - spread), turnOf(middle + spread));
    }
  }
  return turns;
}

const turnOf = (angle: number) => (angle + 4 * Math.PI) % (2 * Math.PI);

function largest(circles: readonly Circle[], turn: number): Circle {
  let found = circles[0] as Circle;
  let most = -Infinity;
  for (const circle of circles) {
    const support = circle.x * Math.cos(turn) + circle.y * Math.sin(turn) + circle.r;
    if (support > most + 1e-9) {
      most = support;
      found = circle;
    }
  }
  return found;
}

const point = (c: Circle, turn: number) =>
  `${round(c.x + c.r * Math.cos(turn))} ${round(c.y + c.r * Math.sin(turn))}`;

/** An arc as cubic curves of at most 170°: on radii of two millimetres their error is not visible. */
function arc(circle: Circle, from: number, to: number): string {
  const pieces = Math.max(1, Math.ceil((to - from) / 2.97));
  const step = (to - from) / pieces;
  const reach = (4 / 3) * Math.tan(step / 4) * circle.r;
  let path = "";
  for (let i = 0; i < pieces; i += 1) {
    const a = from + i * step;
    const b = a + step;
    const ax = circle.x + circle.r * Math.cos(a) - reach * Math.sin(a);
    const ay = circle.y + circle.r * Math.sin(a) + reach * Math.cos(a);
    const bx = circle.x + circle.r * Math.cos(b) + reach * Math.sin(b);
    const by = circle.y + circle.r * Math.sin(b) - reach * Math.cos(b);
    path += `C${round(ax)} ${round(ay)} ${round(bx)} ${round(by)} ${point(circle, b)}`;
  }
  return path;
}
