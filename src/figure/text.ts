/** Says a figure in words: the base posture, then its captions; without them what is different at the end and what has left or reached a surface. */

import { ANGLE_NAMES, type AngleName } from "./body/angle-names.ts";
import { POSTURES } from "./body/postures.ts";
import type { FigureSide } from "./format/drawing.ts";
import type { Props } from "./format/props-schema.ts";
import type { Figure } from "./format/schema.ts";
import type { BodySide } from "./format/words.ts";
import { restsOnSurface, splitSide } from "./solve/read-pose.ts";
import type { SolvedPose } from "./solve/solve-figure.ts";

/** Degrees that count as a difference. */
const DIFFERENT = 6;
const MUCH = 20;

/** The picture in plain sentences, for the client's side. */
export function figureText(figure: Figure, poses: readonly SolvedPose[], side: FigureSide): string {
  const text = figure.text ?? computed(figure, poses);
  const own = side === "left" ? swapped(text) : text;
  return side === "each" ? `${own} Shown for the right side.` : own;
}

function computed(figure: Figure, poses: readonly SolvedPose[]): string {
  const first = poses[0];
  if (first === undefined) return "";
  const sentences = [`${[POSTURES[first.base].says, ...things(figure.props)].join(", ")}.`];
  if (figure.captions !== undefined) return [...sentences, ...captioned(figure.captions)].join(" ");
  const start = statedWords(first);
  if (start.length > 0) sentences.push(`Start: ${listed(start)}.`);
  for (let i = 1; i < poses.length; i += 1) {
    const [before, after] = [poses[i - 1], poses[i]];
    if (before === undefined || after === undefined) continue;
    const jump = (figure.poses[i]?.air ?? 0) > 0;
    const contacts = jump ? ["the body leaves the floor"] : leftAndReached(before, after);
    const words = [...contacts, ...changes(figure, before, after)];
    const name = i === poses.length - 1 ? "End" : "Then";
    if (words.length > 0) sentences.push(`${name}: ${listed(words)}.`);
  }
  return sentences.join(" ");
}

/** What a person sees in each frame, in the author's words. */
const captioned = (captions: readonly string[]): string[] =>
  captions.map((caption, at) =>
    captions.length === 1 ? `${caption}.` : `Picture ${at + 1}: ${caption}.`,
  );

const THING_WORDS: Readonly<Partial<Record<keyof Props, string>>> = {
  wall: "at a wall",
  doorway: "at a door frame",
  step: "at a step",
  bench: "with a box",
  table: "at a table",
  chair: "with a chair",
  bed: "on a bed",
  mat: "on a mat",
  handrail: "with a rail to hold",
  cushion: "on a balance board",
  towel: "with a rolled towel",
  pillow: "with a pillow",
  band: "with a band",
  strap: "with a strap",
  dumbbell: "with a weight in the hand",
  weight: "with a weight on the thighs",
  backpack: "with a backpack",
  barbell: "with a bar",
  ball: "with a ball",
  stick: "with a stick",
  sofa: "with the ankles held down by a heavy sofa",
  lever: "in a knee machine, the pad in front of the shin",
  sled: "in a sloping squat machine",
  helper: "with a helper who holds the leg",
  plate: "in a machine with a foot plate",
};

function things(props: Props | undefined): string[] {
  if (props === undefined) return [];
  return Object.keys(props).flatMap((name) => THING_WORDS[name as keyof Props] ?? []);
}

/** Joints that the first pose states, unless they are straight. */
function statedWords(pose: SolvedPose): string[] {
  const indexes = new Set(pose.stated.map((one) => one.index));
  return merged(
    [...indexes].flatMap((index) => {
      const name = ANGLE_NAMES[index];
      const value = rounded(pose.angles[index] as number);
      if (name === undefined || name.joint === "roll" || Math.abs(value) < DIFFERENT) return [];
      if (name.joint === "lean" && Math.abs(value) > 60) return [];
      return [{ name, words: `${value > 0 ? name.more : name.less} ${Math.abs(value)}°` }];
    }),
  );
}

/** Joints that differ at the end: those that are stated or belong to a working limb, others only where they differ much. */
function changes(figure: Figure, before: SolvedPose, after: SolvedPose): string[] {
  const stated = new Set(after.stated.map((one) => one.index));
  return merged(
    ANGLE_NAMES.flatMap((name, index) => {
      const from = before.angles[index] as number;
      const to = after.angles[index] as number;
      if (name === undefined || name.joint === "toes" || name.joint === "wrist") return [];
      const least = stated.has(index) || works(figure, name) ? DIFFERENT : MUCH;
      if (Math.abs(to - from) < least) return [];
      return [{ name, words: changeWords(name, rounded(to)) }];
    }),
  );
}

function works({ working }: Figure, { joint, side }: AngleName): boolean {
  if (side === undefined) return true;
  const limb = ["hip", "knee", "ankle"].includes(joint) ? "leg" : "arm";
  return working.includes(`${side} ${limb}`) || working.includes(`${limb}s`);
}

const AT_REST: Readonly<Record<string, string>> = {
  lean: "upright",
  roll: "upright",
  shoulder: "hanging down",
  ankle: "square",
  "shoulder blade": "at rest",
};

function changeWords(name: AngleName, to: number): string {
  if (Math.abs(to) < DIFFERENT) return AT_REST[name.joint] ?? "straight";
  return `${to > 0 ? name.more : name.less} ${Math.abs(to)}°`;
}

const rounded = (degrees: number) => Math.round(degrees / 5) * 5;

interface Piece {
  readonly name: AngleName;
  readonly words: string;
}

/** Left and right that say the same become both; nothing is said twice, nor "straight" of a joint that is bent another way. */
function merged(all: readonly Piece[]): string[] {
  const pieces = all.filter(
    ({ name, words }) =>
      /\d/.test(words) ||
      !all.some(
        (other) =>
          other.name.joint === name.joint &&
          other.name.side === name.side &&
          /\d/.test(other.words),
      ),
  );
  const said = pieces.flatMap(({ name, words }) => {
    if (name.joint === "lean" || name.joint === "roll") return [`body ${words}`];
    if (name.side === undefined) return [`${name.joint} ${words}`];
    const twin = pieces.some(
      (other) =>
        other.name.joint === name.joint && other.name.side !== name.side && other.words === words,
    );
    if (!twin) return [`${name.side} ${name.joint} ${words}`];
    return name.side === "right" ? [`both ${name.joint}s ${words}`] : [];
  });
  return [...new Set(said)];
}

const PART_WORDS: Readonly<Record<string, readonly [one: string, many: string]>> = {
  pelvis: ["seat", "seat"],
  "hip side": ["hip", "hips"],
  "shoulder side": ["shoulder", "shoulders"],
  "ankle side": ["foot", "feet"],
  instep: ["foot", "feet"],
  fist: ["hand", "hands"],
  fingers: ["hand", "hands"],
  foot: ["foot", "feet"],
  toes: ["foot", "feet"],
};

/** Parts that rested on a surface and no longer do, and the other way round. */
function leftAndReached(before: SolvedPose, after: SolvedPose): string[] {
  return [...gone(before, after, "leave", "leaves"), ...gone(after, before, "reach", "reaches")];
}

function gone(from: SolvedPose, to: SolvedPose, many: string, one: string): string[] {
  const byPart = new Map<string, BodySide[]>();
  for (const rest of from.rests.filter(restsOnSurface)) {
    const [part, side] = splitSide(rest.part);
    const still = (names: readonly string[]) =>
      to.rests.some((other) => {
        const [name, otherSide] = splitSide(other.part);
        return otherSide === side && names.includes(name) && restsOnSurface(other);
      });
    const group = FAMILY.find((family) => family.includes(part)) ?? [part];
    if (still([part])) continue;
    const heelOnly = part === "foot" && still(["toes"]);
    const toesOnly = part === "foot" && still(["heel"]);
    if (still(group) && !heelOnly && !toesOnly) continue;
    const said = heelOnly ? "heel" : toesOnly ? "front of the foot" : part;
    const key = `${said}|${rest.on}`;
    byPart.set(key, [...(byPart.get(key) ?? []), ...(side === undefined ? [] : [side])]);
  }
  return [...byPart].map(([key, sides]) => {
    const [part = "", on = ""] = key.split("|");
    const [single, plural] = PART_WORDS[part] ?? [part, `${part}s`];
    if (sides.length === 2) return `both ${plural} ${many} the ${on}`;
    return `${sides.length === 1 ? `${sides[0]} ` : ""}${single} ${one} the ${on}`;
  });
}

const FAMILY: readonly (readonly string[])[] = [
  ["foot", "toes", "heel"],
  ["hand", "fist", "fingers"],
];

function listed(words: readonly string[]): string {
  const text =
    words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`;
  return text;
}

/** Right for left and left for right. */
function swapped(text: string): string {
  return text.replace(/\b([Rr]ight|[Ll]eft)\b/g, (word) => {
    const other = word.toLowerCase() === "right" ? "left" : "right";
    return word[0] === word[0]?.toUpperCase() ? other[0]?.toUpperCase() + other.slice(1) : other;
  });
}
