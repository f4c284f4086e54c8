/** The words a figure is written in: sides, joints and their motions, parts that rest on something, surfaces, landmarks. */

export const SIDES = ["right", "left"] as const;
export type BodySide = (typeof SIDES)[number];

/** Motions of a joint, the one meant by a bare number first. All in degrees. */
export const PAIRED_JOINTS = {
  hip: ["flexion", "abduction", "rotation"],
  knee: ["flexion"],
  ankle: ["dorsiflexion"],
  shoulder: ["flexion", "abduction", "rotation"],
  elbow: ["flexion"],
  wrist: ["flexion"],
  "shoulder blade": ["forward", "up"],
} as const;

export const MIDDLE_JOINTS = {
  trunk: ["forward", "side", "turn"],
  neck: ["forward", "side", "turn"],
} as const;

/** Parts of the body that can rest on a surface: those that come in two, and those that do not. */
export const PAIRED_PARTS = [
  "foot",
  "toes",
  "heel",
  "instep",
  "knee",
  "elbow",
  "forearm",
  "hand",
  "fist",
  "fingers",
  "hip side",
  "shoulder side",
  "ankle side",
] as const;
export const MIDDLE_PARTS = ["pelvis", "upper back", "chest", "belly", "head"] as const;

export type PairedPart = (typeof PAIRED_PARTS)[number];
export type MiddlePart = (typeof MIDDLE_PARTS)[number];

/** Things a part can rest on. */
export const SURFACES = [
  "floor",
  "mat",
  "step",
  "bench",
  "chair",
  "table",
  "bed",
  "cushion",
  "towel",
  "pillow",
  "handrail",
  "wall",
  "doorway",
  "plate",
  "seat",
  "helper",
] as const;
export type Surface = (typeof SURFACES)[number];

/** Points of the body that an arrow can follow, a hand can lie on, or a band can be tied to. */
export const PAIRED_LANDMARKS = [
  "hip",
  "thigh",
  "knee",
  "shin",
  "ankle",
  "heel",
  "toes",
  "shoulder",
  "upper arm",
  "elbow",
  "forearm",
  "wrist",
  "hand",
] as const;
export const MIDDLE_LANDMARKS = ["pelvis", "belly", "chest", "head"] as const;

export type PairedName = `${(typeof PAIRED_LANDMARKS)[number]} ${BodySide}`;
export type Landmark = PairedName | (typeof MIDDLE_LANDMARKS)[number];

export const LANDMARKS: readonly Landmark[] = [
  ...PAIRED_LANDMARKS.flatMap((name) => SIDES.map((side): Landmark => `${name} ${side}`)),
  ...MIDDLE_LANDMARKS,
];

export const BASES = [
  "standing",
  "sitting",
  "long sitting",
  "kneeling",
  "half kneeling",
  "hands and knees",
  "lying on the back",
  "lying on the front",
  "lying on the left side",
  "lying on the right side",
  "side plank right",
  "side plank left",
  "front plank",
] as const;
export type BaseName = (typeof BASES)[number];

export const VIEWS = ["side", "left side", "front", "back", "above"] as const;

export const LIMBS = [
  "right leg",
  "left leg",
  "legs",
  "right arm",
  "left arm",
  "arms",
  "trunk",
] as const;
export type Limb = (typeof LIMBS)[number];

export const CROPS = ["foot", "hand", "shoulder", "neck"] as const;
export type Crop = (typeof CROPS)[number];

export const DIRECTIONS = [
  "up",
  "down",
  "forward",
  "back",
  "right",
  "left",
  "up and down",
  "forward and back",
  "round",
] as const;
export type Direction = (typeof DIRECTIONS)[number];
