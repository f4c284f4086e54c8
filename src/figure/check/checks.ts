/** What is wrong with a figure's poses: each fault at the value in the card that leads to it. */

import { PART_POINTS, SKIN } from "../body/anatomy.ts";
import { ANGLE_NAMES } from "../body/angle-names.ts";
import { type Angles, REAL_HEIGHT } from "../body/body.ts";
import { coordinate, type Frames } from "../body/kinematics.ts";
import { massCentre } from "../body/masses.ts";
import { RANGES } from "../body/ranges.ts";
import { groundOf, planeOf } from "../body/surfaces.ts";
import type { FigureFault } from "../format/drawing.ts";
import type { Figure } from "../format/schema.ts";
import { spanOf } from "../solve/place-props.ts";
import { splitSide } from "../solve/read-pose.ts";
import { missBy, type SolvedPose } from "../solve/solve-figure.ts";

/** Millimetres of the real body. */
const CONTACT = 5;
const BESIDE = 20;
const UNDER_FLOOR = 8;
const OFF_BALANCE = 25;

/** Every fault of the solved poses; none where they can be drawn. */
export function poseFaults(figure: Figure, poses: readonly SolvedPose[]): FigureFault[] {
  return poses.flatMap((pose, index) => [
    ...rangeFaults(pose, index),
    ...contactFaults(figure, pose, index),
    ...besideFaults(figure, poses, pose, index),
    ...floorFaults(figure, pose, index),
    ...balanceFaults(figure, pose, index),
  ]);
}

function rangeFaults(pose: SolvedPose, index: number): FigureFault[] {
  return RANGES.flatMap(([least, most], angle) => {
    const value = pose.angles[angle] as number;
    if (value >= least - 0.6 && value <= most + 0.6) return [];
    const name = ANGLE_NAMES[angle];
    if (name === undefined) return [];
    const joint = name.side === undefined ? name.joint : `${name.side} ${name.joint}`;
    const way = value > most ? name.more : name.less;
    const limit = value > most ? most : least;
    const stated = pose.stated.find((one) => one.index === angle);
    return [
      {
        path: stated === undefined ? posePath(index) : [...posePath(index), stated.key],
        message: `The ${joint} is ${way} to ${Math.round(Math.abs(value))}°; a picture allows ${Math.abs(limit)}°.`,
        hint:
          stated === undefined
            ? "State one more joint, or move what the body rests on."
            : "Write a smaller angle.",
      },
    ];
  });
}

function contactFaults(figure: Figure, pose: SolvedPose, index: number): FigureFault[] {
  const missed = new Map<string, number>();
  for (const row of pose.problem.rows) {
    const by = Math.abs(missBy(row, pose.frames)) * REAL_HEIGHT * (row.weight < 200 ? 0.3 : 1);
    const key = `${row.rest.key}|${row.rest.part}|${row.rest.on}`;
    if (by > CONTACT) missed.set(key, Math.max(by, missed.get(key) ?? 0));
  }
  const where = restsPath(figure, index);
  return [...missed].map(([key, by]) => {
    const [name = "", part = "", on = ""] = key.split("|");
    return {
      path: where.length > 3 ? [...where, name] : where,
      message: `The ${sidedName(part)} is ${Math.round(by / 10)} cm off the ${on}.`,
      hint: "Change an angle that is stated, or where it rests, so that it can reach.",
    };
  });
}

/** A part that rests on a chair, a step or the like has to be over it, not beside it. */
function besideFaults(
  figure: Figure,
  poses: readonly SolvedPose[],
  pose: SolvedPose,
  index: number,
): FigureFault[] {
  const { axis } = pose.problem;
  const where = restsPath(figure, index);
  return pose.rests.flatMap((rest) => {
    const span = spanOf(rest.on, poses, figure.props, axis);
    const point = PART_POINTS.get(rest.part)?.[0];
    if (span === undefined || point === undefined) return [];
    const at = coordinate(pose.frames, point.segment, point.offset, axis);
    const by = Math.max(span[0] - at, at - span[1]) * REAL_HEIGHT;
    if (by <= BESIDE) return [];
    return [
      {
        path: where.length > 3 ? [...where, rest.key] : where,
        message: `The ${sidedName(rest.part)} is ${Math.round(by / 10)} cm beside the ${rest.on}.`,
        hint: `Move the ${rest.on} with at, or say where on it the ${splitSide(rest.part)[0]} rests.`,
      },
    ];
  });
}

/** "foot right" as people say it. */
function sidedName(part: string): string {
  const [bare, side] = splitSide(part);
  return side === undefined ? bare : `${side} ${bare}`;
}

function floorFaults(figure: Figure, pose: SolvedPose, index: number): FigureFault[] {
  const ground = planeOf(groundOf(figure.props), figure.props);
  const lying = pose.rests.some((rest) => rest.on === "bed");
  const floor = lying && ground.kind === "level" ? ground.height : 0;
  let deepest = 0;
  for (const { segment, offset, radius } of SKIN) {
    const low = coordinate(pose.frames, segment, offset, 1) - radius;
    deepest = Math.max(deepest, (floor - low) * REAL_HEIGHT);
  }
  if (deepest <= UNDER_FLOOR) return [];
  return [
    {
      path: posePath(index),
      message: `The body goes ${Math.round(deepest / 10)} cm through the ${lying ? "bed" : "floor"}.`,
      hint: "Say what rests on the floor, or change the angles.",
    },
  ];
}

/** Where only feet touch, the mass centre has to be over them: forward in side views, sideways in front views. */
function balanceFaults(figure: Figure, pose: SolvedPose, index: number): FigureFault[] {
  const { soles, axis } = pose.problem;
  if (soles.length === 0 || (figure.poses[index]?.air ?? 0) > 0) return [];
  const middles = soles.map((sole) => coordinate(pose.frames, sole.segment, sole.offset, axis));
  const room = OFF_BALANCE / REAL_HEIGHT + (axis === 0 ? 0.02 : 0.03);
  const centre = massCentre(pose.frames, axis);
  const least = Math.min(...middles) - room;
  const most = Math.max(...middles) + room;
  if (centre >= least && centre <= most) return [];
  const by = centre > most ? centre - most : least - centre;
  const way =
    axis === 0
      ? centre > most
        ? "forward"
        : "back"
      : centre > most
        ? "to the right"
        : "to the left";
  return [
    {
      path: posePath(index),
      message: `The body would fall ${way}: its weight is ${Math.round((by * REAL_HEIGHT) / 10)} cm beyond the feet.`,
      hint: "Lean the body over the feet, or let a hand rest on something.",
    },
  ];
}

/** Millimetres on paper. */
const ALIKE = 1.2;

/** Whether the start and the end look the same. */
export function alikeFaults(figure: Figure, most: number): FigureFault[] {
  if (figure.poses.length < 2 || most >= ALIKE) return [];
  return [
    {
      path: posePath(1),
      message: "The start and the end of the movement look alike.",
      hint: "Change the angles more, crop the figure to enlarge it, or give one pose with an arrow.",
    },
  ];
}

/** Whether any angle of a solved pose is not a number. */
export function isFinitePose(angles: Angles, frames: Frames): boolean {
  return angles.every(Number.isFinite) && frames.every(Number.isFinite);
}

export const posePath = (index: number): (string | number)[] => ["figure", "poses", index];

/** Where the rests of a pose are written: in it, in a pose before, or in the base posture. */
function restsPath(figure: Figure, index: number): (string | number)[] {
  for (let i = index; i >= 0; i -= 1) {
    if (figure.poses[i]?.rests !== undefined) return [...posePath(i), "rests"];
  }
  return posePath(index);
}
