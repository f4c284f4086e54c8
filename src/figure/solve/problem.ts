/** Sets up what the solver has to find for one pose: free angles, and rows that measure how far parts are from where they rest. */
import { type BodyPoint, LANDMARK_POINTS, PART_POINTS } from "../body/anatomy.ts";
import { ANGLE, type Angles, type LimbAngle, limbAngle } from "../body/body.ts";
import { planeOf } from "../body/surfaces.ts";
import type { Props } from "../format/props-schema.ts";
import type { BodySide, Landmark } from "../format/words.ts";
import { type Rest, restsOnSurface, type Stated, splitSide } from "./read-pose.ts";

/** One measured coordinate: of a point, or of a point from another; wanted: the target. */
export interface Row {
  readonly point: BodyPoint;
  readonly from: BodyPoint | undefined;
  readonly axis: number;
  readonly target: number;
  readonly weight: number;
  /** The rest it belongs to. */
  readonly rest: Rest;
}

/** The plane of the picture in which the solver moves the body: 0 forward, 2 to the right. */
export type PlaneAxis = 0 | 2;

export interface Problem {
  readonly unknowns: readonly number[];
  readonly rows: readonly Row[];
  /** Points whose middle the mass centre is to be over; empty where balance is not asked. */
  readonly soles: readonly BodyPoint[];
  readonly axis: PlaneAxis;
}

/** Where points rested in the pose before, by part and surface. */
export type Footprints = ReadonlyMap<string, number>;

const CONTACT = 300;
const FINGERTIP = 150;

export interface Setting {
  readonly axis: PlaneAxis;
  readonly props: Props | undefined;
  readonly air: number;
  readonly footprints: Footprints;
}

/** The problem of one pose. */
export function poseProblem(
  stated: readonly Stated[],
  rests: readonly Rest[],
  setting: Setting,
): Problem {
  const first = rests.find((rest) => rest.at === undefined && restsOnSurface(rest) && !rest.slides);
  const rows = rests.flatMap((rest) => rowsOf(rest, rest === first, setting));
  const fixed = new Set(stated.map((angle) => angle.index));
  const free = freeAngles(rests, setting.axis).filter((index) => !fixed.has(index));
  return {
    unknowns: free,
    rows,
    soles: setting.props?.sled === undefined ? solesOf(rests) : [],
    axis: setting.axis,
  };
}

function rowsOf(rest: Rest, first: boolean, setting: Setting): Row[] {
  const points = PART_POINTS.get(rest.part) ?? [];
  if (!restsOnSurface(rest)) return ownBodyRows(rest, points);
  const plane = planeOf(rest.on, setting.props);
  const { axis } = setting;
  const along = plane.kind === "level" ? axis : 1;
  const rows: Row[] = points.map((point, index) => ({
    point,
    from: undefined,
    axis: plane.kind === "level" ? 1 : axis,
    target:
      plane.kind === "level"
        ? plane.height + setting.air + (rest.on === "handrail" ? 0 : point.radius)
        : plane.at + plane.facing * point.radius,
    weight: index > 0 && rest.part.startsWith("hand") ? FINGERTIP : CONTACT,
    rest,
  }));
  points.forEach((point, index) => {
    const before = rest.slides ? undefined : setting.footprints.get(footprintKey(rest, index));
    const start = first && setting.footprints.size === 0 ? 0 : undefined;
    if (rest.part === "head" && rest.at === undefined) return;
    const target = index === 0 ? (rest.at ?? before ?? start) : before;
    if (target === undefined || (index > 0 && !rest.part.startsWith("foot"))) return;
    rows.push({ point, from: undefined, axis: along, target, weight: CONTACT, rest });
  });
  return rows;
}

/** Foot and toes share the ball, foot and heel the heel: a heel that rises leaves the ball where it was. */
export function footprintKey(rest: Rest, index: number): string {
  const [part, side] = splitSide(rest.part);
  const name =
    part === "foot"
      ? index === 0
        ? "ball"
        : "heel"
      : part === "toes"
        ? "ball"
        : `${part} ${index}`;
  const on = rest.on === "mat" ? "floor" : rest.on;
  return `${name} ${side ?? ""} ${on}`;
}

const SIDES_OF_PART: Readonly<Record<string, readonly [number, number, number]>> = {
  above: [0, 1, 0],
  below: [0, -1, 0],
  front: [1, 0, 0],
  behind: [-1, 0, 0],
  outside: [0, 0, 1],
  inside: [0, 0, -1],
};

function ownBodyRows(rest: Rest, points: readonly BodyPoint[]): Row[] {
  const target = LANDMARK_POINTS.get(rest.on as Landmark);
  const point = points[0];
  if (target === undefined || point === undefined) return [];
  const [, side] = splitSide(rest.on);
  const k = side === "left" ? -1 : 1;
  const way = SIDES_OF_PART[rest.from ?? ""] ?? [0, 0, 0];
  const gap = 0.85 * (target.radius + point.radius);
  return [0, 1, 2].map((axis) => ({
    point,
    from: target,
    axis,
    target: (way[axis] ?? 0) * gap * (axis === 2 ? k : 1),
    weight: FINGERTIP,
    rest,
  }));
}

const FEET = new Set(["foot", "toes", "heel"]);

/** The points of the soles where nothing but feet rests on anything. */
function solesOf(rests: readonly Rest[]): BodyPoint[] {
  const onSurfaces = rests.filter(restsOnSurface);
  if (onSurfaces.length === 0) return [];
  if (!onSurfaces.every((rest) => FEET.has(splitSide(rest.part)[0]))) return [];
  return onSurfaces.flatMap((rest) => PART_POINTS.get(rest.part) ?? []);
}

/** Parts that the trunk bends sideways for. */
const PROPPED = new Set(["elbow", "forearm", "shoulder side"]);

/** The angles that may move to bring the parts to where they rest. */
function freeAngles(rests: readonly Rest[], axis: PlaneAxis): number[] {
  const free = new Set<number>([axis, ANGLE.y, axis === 0 ? ANGLE.lean : ANGLE.roll]);
  for (const rest of rests) {
    const [part, side] = splitSide(rest.part);
    if (axis === 2 && PROPPED.has(part)) free.add(ANGLE.trunkSide);
    if (part === "head") free.add(axis === 0 ? ANGLE.neckForward : ANGLE.neckSide);
    if (side === undefined) continue;
    for (const name of limbFreedom(part, axis, restsOnSurface(rest))) {
      free.add(limbAngle(name, side as BodySide));
    }
  }
  return [...free].sort((a, b) => a - b);
}

function limbFreedom(part: string, axis: PlaneAxis, onSurface: boolean): readonly LimbAngle[] {
  if (part === "shoulder side" || part === "hip side") return [];
  if (["foot", "toes", "heel", "instep"].includes(part)) {
    return axis === 0
      ? ["hipFlexion", "knee", "ankle"]
      : ["hipFlexion", "hipAbduction", "knee", "ankle"];
  }
  if (part === "knee" || part === "ankle side")
    return axis === 0 ? ["hipFlexion"] : ["hipAbduction"];
  if (!onSurface) return ["shoulderFlexion", "shoulderAbduction", "shoulderRotation", "elbow"];
  if (part === "elbow") return axis === 0 ? ["shoulderFlexion"] : ["shoulderAbduction"];
  if (axis === 2) return ["shoulderAbduction", "shoulderRotation", "elbow"];
  return part === "hand" ? ["shoulderFlexion", "elbow", "wrist"] : ["shoulderFlexion", "elbow"];
}

/** A copy with stated angles written in. */
export function withStated(angles: Angles, stated: readonly Stated[]): Angles {
  const copy = Float64Array.from(angles);
  for (const { index, value } of stated) copy[index] = value;
  return copy;
}
