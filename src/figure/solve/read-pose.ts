/** Turns a pose's words into angles that are stated and places that parts rest on, each with the way to it in the card. */
import { ANGLE, type LimbAngle, limbAngle } from "../body/body.ts";
import { POSTURES } from "../body/postures.ts";
import { groundOf } from "../body/surfaces.ts";
import type { Figure, JointValue, Pose } from "../format/schema.ts";
import {
  type BaseName,
  type BodySide,
  type Landmark,
  PAIRED_JOINTS,
  SIDES,
  SURFACES,
  type Surface,
} from "../format/words.ts";

export interface Stated {
  readonly index: number;
  readonly value: number;
  /** The key of the pose that says it, such as "hip right". */
  readonly key: string;
  /** The joint and its motion in words. */
  readonly name: string;
}

export interface Rest {
  /** "foot right", "pelvis", … */
  readonly part: string;
  readonly key: string;
  readonly on: Surface | Landmark;
  readonly at: number | undefined;
  readonly slides: boolean;
  readonly from: string | undefined;
}

type Words = Readonly<Record<string, unknown>>;
type RawRest = string | { on: string; at?: number; slides?: boolean; from?: string };

const isSurface = (on: string): on is Surface => (SURFACES as readonly string[]).includes(on);
export const restsOnSurface = (rest: Rest): rest is Rest & { on: Surface } => isSurface(rest.on);

const LIMB_NAMES: Readonly<Record<string, readonly LimbAngle[]>> = {
  hip: ["hipFlexion", "hipAbduction", "hipRotation"],
  knee: ["knee"],
  ankle: ["ankle"],
  shoulder: ["shoulderFlexion", "shoulderAbduction", "shoulderRotation"],
  elbow: ["elbow"],
  wrist: ["wrist"],
  "shoulder blade": ["bladeForward", "bladeUp"],
};

const MIDDLE_NAMES: Readonly<Record<string, readonly number[]>> = {
  trunk: [ANGLE.trunkForward, ANGLE.trunkSide, ANGLE.trunkTurn],
  neck: [ANGLE.neckForward, ANGLE.neckSide, ANGLE.neckTurn],
  lean: [ANGLE.lean],
  roll: [ANGLE.roll],
};

const MOTIONS: Readonly<Record<string, readonly string[]>> = {
  ...PAIRED_JOINTS,
  trunk: ["forward", "side", "turn"],
  neck: ["forward", "side", "turn"],
};

/** All angles that words state; what is said of one side comes after what is said of both. */
export function statedAngles(words: Words): Stated[] {
  const both: Stated[] = [];
  const one: Stated[] = [];
  for (const [key, value] of Object.entries(words)) {
    if (typeof value !== "number" && (typeof value !== "object" || value === null)) continue;
    const [, side] = splitSide(key);
    (side === undefined ? both : one).push(...statedBy(key, value as JointValue));
  }
  return [...both, ...one];
}

function statedBy(key: string, value: JointValue): Stated[] {
  const [joint, side] = splitSide(key);
  const middle = MIDDLE_NAMES[joint];
  if (middle !== undefined) {
    return motions(joint, value).map((part) => ({ ...part, index: middle[part.index] ?? 0, key }));
  }
  const names = LIMB_NAMES[joint] ?? [];
  return (side === undefined ? SIDES : [side]).flatMap((each) =>
    motions(`${each} ${joint}`, value, joint).flatMap((part) => {
      const name = names[part.index];
      return name === undefined ? [] : [{ ...part, index: limbAngle(name, each), key }];
    }),
  );
}

function motions(name: string, value: JointValue, joint = name) {
  const all = MOTIONS[joint] ?? [joint];
  if (typeof value === "number") return [{ index: 0, value, name }];
  return Object.entries(value).flatMap(([motion, amount]) =>
    amount === undefined
      ? []
      : [{ index: all.indexOf(motion), value: amount, name: `${name} ${motion}` }],
  );
}

/** The name of a part or joint, and its side where the words name one. */
export function splitSide(key: string): [string, BodySide | undefined] {
  for (const side of SIDES) {
    if (key.endsWith(` ${side}`)) return [key.slice(0, -side.length - 1), side];
  }
  return [key, undefined];
}

/** The base posture of a pose: its own, that of the pose before, or the figure's. */
export function baseOf(figure: Figure, index: number): BaseName {
  for (let i = index; i >= 0; i -= 1) {
    const base = figure.poses[i]?.base;
    if (base !== undefined) return base;
  }
  return figure.base;
}

/** What rests where in a pose: as it says, as the pose before says, or as in the base posture. */
export function restsOf(figure: Figure, index: number): Rest[] {
  for (let i = index; i >= 0; i -= 1) {
    const pose: Pose | undefined = figure.poses[i];
    if (pose?.rests !== undefined) return readRests(pose.rests as Words);
    if (pose?.base !== undefined) return baseRests(figure, pose.base);
  }
  return baseRests(figure, figure.base);
}

function baseRests(figure: Figure, base: BaseName): Rest[] {
  const ground = groundOf(figure.props);
  const entries = Object.entries(POSTURES[base].rests);
  return readRests(
    Object.fromEntries(entries.map(([k, on]) => [k, on === "ground" ? ground : on])),
  );
}

const PAIRED_WORDS =
  /^(foot|toes|heel|instep|knee|elbow|forearm|hand|fist|fingers|(hip|shoulder|ankle) side)$/;

function readRests(words: Words): Rest[] {
  return Object.entries(words).flatMap(([key, raw]) => {
    if (raw === undefined) return [];
    const value = raw as RawRest;
    const place = typeof value === "string" ? { on: value } : value;
    const parts = PAIRED_WORDS.test(key) ? SIDES.map((side) => `${key} ${side}`) : [key];
    return parts.map((part) => ({
      part,
      key,
      on: place.on as Surface | Landmark,
      at: place.at,
      slides: place.slides ?? false,
      from: place.from,
    }));
  });
}
