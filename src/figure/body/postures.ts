/** The base postures: what a pose starts from before it says anything. Data only. */
import type { BaseName } from "../format/words.ts";

export interface Posture {
  /** Tilt of the pelvis forward and to the right, in degrees; with `fixed` it is not solved for. */
  readonly lean?: number;
  readonly roll?: number;
  /** Angles in the words of a pose. */
  readonly joints: Readonly<Record<string, number | Readonly<Record<string, number>>>>;
  /** What rests where, in the words of a pose; "ground" is the bed, the mat or the floor. */
  readonly rests: Readonly<Record<string, string>>;
  /** Lying postures have their frames one below the other. */
  readonly long?: boolean;
  /** How the text begins. */
  readonly says: string;
}

export const POSTURES: Readonly<Record<BaseName, Posture>> = {
  standing: {
    joints: { shoulder: { abduction: 6 }, elbow: 8 },
    rests: { foot: "floor" },
    says: "Standing",
  },
  sitting: {
    joints: { hip: 88, knee: 88, shoulder: { flexion: 20, abduction: 6 }, elbow: 55 },
    rests: { foot: "floor", pelvis: "chair" },
    says: "Sitting",
  },
  "long sitting": {
    joints: { hip: 85, shoulder: { flexion: -35, abduction: 12 }, elbow: 5, ankle: -10 },
    lean: -8,
    rests: { pelvis: "ground", heel: "ground" },
    long: true,
    says: "Sitting with straight legs",
  },
  kneeling: {
    joints: { knee: 90, ankle: -50, shoulder: { abduction: 6 }, elbow: 8 },
    rests: { knee: "ground", instep: "ground" },
    says: "Kneeling",
  },
  "half kneeling": {
    joints: { "hip left": 90, knee: 90, "ankle right": -40, shoulder: { abduction: 6 }, elbow: 8 },
    rests: { "knee right": "ground", "instep right": "ground", "foot left": "floor" },
    says: "Kneeling on one knee",
  },
  "hands and knees": {
    lean: 80,
    joints: { hip: 90, knee: 90, ankle: -45, shoulder: 90, neck: -15 },
    rests: { knee: "ground", instep: "ground", hand: "ground" },
    long: true,
    says: "On hands and knees",
  },
  "lying on the back": {
    lean: -90,
    joints: { shoulder: { abduction: 55 }, ankle: -15 },
    rests: { pelvis: "ground", "upper back": "ground", head: "ground" },
    long: true,
    says: "Lying on the back",
  },
  "lying on the front": {
    lean: 90,
    joints: { shoulder: { flexion: 165, abduction: 30, rotation: -60 }, elbow: 100, ankle: -40 },
    rests: { pelvis: "ground", chest: "ground", knee: "ground", toes: "ground" },
    long: true,
    says: "Lying on the front",
  },
  "lying on the left side": {
    roll: -90,
    joints: { "shoulder left": 120, "elbow left": 120 },
    rests: {
      "hip side left": "ground",
      "shoulder side left": "ground",
      "ankle side left": "ground",
    },
    long: true,
    says: "Lying on the left side",
  },
  "lying on the right side": {
    roll: 90,
    joints: { "shoulder right": 120, "elbow right": 120 },
    rests: {
      "hip side right": "ground",
      "shoulder side right": "ground",
      "ankle side right": "ground",
    },
    long: true,
    says: "Lying on the right side",
  },
  "side plank right": {
    roll: 86,
    joints: { trunk: { side: -28 }, "elbow right": 90, "shoulder right": { abduction: 118 } },
    rests: {
      "elbow right": "ground",
      "hip side right": "ground",
      "ankle side right": "ground",
    },
    long: true,
    says: "On the right side, propped on the elbow",
  },
  "side plank left": {
    roll: -86,
    joints: { trunk: { side: 28 }, "elbow left": 90, "shoulder left": { abduction: 118 } },
    rests: {
      "elbow left": "ground",
      "hip side left": "ground",
      "ankle side left": "ground",
    },
    long: true,
    says: "On the left side, propped on the elbow",
  },
  "front plank": {
    lean: 80,
    joints: { shoulder: 90, elbow: 90, ankle: 10, neck: -10 },
    rests: { elbow: "ground", fist: "ground", toes: "ground" },
    long: true,
    says: "On the forearms and toes, face down",
  },
};
