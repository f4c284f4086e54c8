/** The name of every angle of a pose, in a card's words. */

import { type BodySide, SIDES } from "../format/words.ts";
import { ANGLE, ANGLES, type LimbAngle, limbAngle } from "./body.ts";

export interface AngleName {
  /** The joint as a pose's key names it, without its side. */
  readonly joint: string;
  readonly side: BodySide | undefined;
  /** What more of it is, and what less of it is. */
  readonly more: string;
  readonly less: string;
}

const LIMB: Readonly<Record<LimbAngle, readonly [joint: string, more: string, less: string]>> = {
  hipFlexion: ["hip", "bent", "stretched back"],
  hipAbduction: ["hip", "out to the side", "in across the middle"],
  hipRotation: ["hip", "turned out", "turned in"],
  knee: ["knee", "bent", "bent back"],
  ankle: ["ankle", "bent up", "pointed down"],
  toes: ["toes", "bent up", "bent down"],
  shoulderFlexion: ["shoulder", "raised forward", "drawn back"],
  shoulderAbduction: ["shoulder", "raised to the side", "drawn across"],
  shoulderRotation: ["shoulder", "turned out", "turned in"],
  elbow: ["elbow", "bent", "bent back"],
  wrist: ["wrist", "bent up", "bent down"],
  bladeForward: ["shoulder blade", "drawn forward", "drawn back"],
  bladeUp: ["shoulder blade", "drawn up", "drawn down"],
};

const MIDDLE = {
  lean: ["lean", "leaning forward", "leaning back"],
  roll: ["roll", "tilted to the right", "tilted to the left"],
  trunkForward: ["trunk", "bent forward", "bent back"],
  trunkSide: ["trunk", "bent to the right", "bent to the left"],
  trunkTurn: ["trunk", "turned to the right", "turned to the left"],
  neckForward: ["neck", "bent forward", "bent back"],
  neckSide: ["neck", "bent to the right", "bent to the left"],
  neckTurn: ["neck", "turned to the right", "turned to the left"],
} as const;

/** Names by position in a pose's angles; undefined for the place of the pelvis. */
export const ANGLE_NAMES: readonly (AngleName | undefined)[] = names();

function names(): (AngleName | undefined)[] {
  const all: (AngleName | undefined)[] = Array.from({ length: ANGLES }, () => undefined);
  for (const [name, [joint, more, less]] of Object.entries(MIDDLE)) {
    all[ANGLE[name as keyof typeof MIDDLE]] = { joint, side: undefined, more, less };
  }
  for (const side of SIDES) {
    for (const [name, [joint, more, less]] of Object.entries(LIMB)) {
      all[limbAngle(name as LimbAngle, side)] = { joint, side, more, less };
    }
  }
  return all;
}
