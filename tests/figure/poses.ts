/** Twenty-one figures of common exercises, as a card would write them. */
import { type Figure, figureSchema } from "../../src/figure/format/schema.ts";

const SOURCE: Record<string, unknown> = {
  "calf raise, both legs": {
    working: ["legs"],
    props: { wall: { at: 0.26 } },
    poses: [
      {
        hip: 0,
        knee: 0,
        lean: 2,
        shoulder: 59,
        rests: { foot: "floor", hand: { on: "wall", slides: true } },
      },
      {
        ankle: -40,
        hip: 0,
        knee: 0,
        lean: 4,
        shoulder: 75,
        rests: { toes: "floor", hand: { on: "wall", slides: true } },
      },
    ],
    arrows: [{ of: "heel right", direction: "up" }],
  },
  "calf raise, one leg on a step": {
    working: ["right leg"],
    props: { step: true, wall: { at: 0.36 } },
    poses: [
      {
        "hip right": 0,
        "knee right": 0,
        "ankle right": 18,
        "hip left": 15,
        "knee left": 70,
        "ankle left": -15,
        shoulder: 70,
        rests: { "toes right": "step", hand: { on: "wall", slides: true } },
      },
      { "ankle right": -40, "hip right": 0, "knee right": 0, shoulder: 75 },
    ],
    arrows: [{ of: "heel right" }],
  },
  "bridge, both legs": {
    base: "lying on the back",
    working: ["legs"],
    props: { mat: true },
    poses: [
      {
        lean: -90,
        knee: 108,
        rests: { pelvis: "mat", "upper back": "mat", head: "mat", foot: "mat" },
      },
      { hip: 0, rests: { "upper back": "mat", head: "mat", foot: "mat" } },
    ],
    arrows: [{ of: "pelvis", side: "above" }],
  },
  "bridge, one heel on a chair": {
    base: "lying on the back",
    working: ["right leg"],
    props: { chair: { at: 0.04, faces: "back" } },
    poses: [
      {
        lean: -90,
        "knee right": 80,
        "ankle right": 0,
        "hip left": 85,
        "knee left": 90,
        rests: { pelvis: "floor", "upper back": "floor", head: "floor", "heel right": "chair" },
      },
      {
        "hip right": 20,
        "hip left": 70,
        "ankle right": 0,
        rests: { "upper back": "floor", head: "floor", "heel right": "chair" },
      },
    ],
    arrows: [{ of: "pelvis", side: "above" }],
  },
  "hip hinge on one leg": {
    working: ["right leg"],
    poses: [
      {
        lean: 2,
        "knee right": 5,
        "hip left": 5,
        "knee left": 65,
        "ankle left": -10,
        rests: { "foot right": "floor" },
      },
      {
        lean: 70,
        "knee right": 20,
        "hip left": 0,
        "knee left": 8,
        "ankle left": 0,
        shoulder: 80,
        neck: -20,
      },
    ],
    arrows: [{ of: "head" }],
  },
  "kneeling lower": {
    base: "kneeling",
    working: ["legs"],
    props: { mat: true },
    poses: [
      { hip: 0, lean: 0, shoulder: 15, elbow: 95 },
      { hip: 0, lean: 40, shoulder: 30, elbow: 110, neck: -15 },
    ],
    arrows: [{ of: "head" }],
  },
  "leg lift on the side": {
    base: "lying on the left side",
    view: "front",
    working: ["right leg"],
    frames: "ghost",
    props: { mat: true },
    poses: [
      {
        roll: -90,
        "hip left": 30,
        "knee left": 50,
        "hip right": { abduction: -3 },
        rests: { "hip side left": "mat", "shoulder side left": "mat" },
      },
      { roll: -90, "hip right": { abduction: 35 } },
    ],
  },
  "side plank": {
    base: "side plank right",
    view: "front",
    rise: 8,
    turn: 24,
    working: ["trunk"],
    props: { mat: true },
    poses: [
      {},
      {
        trunk: { side: 0 },
        rests: { "elbow right": "mat", "ankle side right": { on: "mat", slides: true } },
      },
    ],
    arrows: [{ of: "pelvis", side: "above" }],
  },
  "sit to stand": {
    base: "sitting",
    working: ["legs"],
    props: { chair: true },
    poses: [
      { lean: 30, knee: 105, shoulder: 35, elbow: 50, neck: -15 },
      { base: "standing", lean: 0, hip: 0, knee: 0, rests: { foot: "floor" } },
    ],
    arrows: [{ of: "head" }],
  },
  "wall push-up": {
    working: ["arms"],
    props: { wall: { at: 0.36 } },
    poses: [
      { hip: 0, knee: 0, lean: 8, rests: { foot: "floor", hand: { on: "wall", at: 0.82 } } },
      { hip: 0, knee: 0, lean: 19, neck: -5 },
    ],
    arrows: [{ of: "chest" }],
  },
  "forearms outward with a band": {
    view: "front",
    working: ["arms"],
    crop: "shoulder",
    props: { band: { to: ["hand right", "hand left"] } },
    poses: [
      { elbow: 90, shoulder: { abduction: 4, rotation: -5 } },
      { shoulder: { abduction: 4, rotation: 50 } },
    ],
    rise: 22,
    arrows: [
      { of: "hand right", direction: "right" },
      { of: "hand left", direction: "left" },
    ],
  },
  "seated row": {
    base: "sitting",
    working: ["arms"],
    props: { chair: true, band: { from: [0.6, 0.6] } },
    poses: [
      { lean: 0, shoulder: 65, elbow: 10 },
      { shoulder: { flexion: -30, abduction: 15 }, elbow: 105 },
    ],
    arrows: [{ of: "hand right", direction: "back", side: "above" }],
  },
  "knee bend lying on the front": {
    base: "lying on the front",
    working: ["right leg"],
    frames: "ghost",
    props: { mat: true },
    poses: [
      { "knee right": 15, "knee left": 3, rests: { pelvis: "mat", chest: "mat" } },
      { "knee right": 95, "ankle right": 0 },
    ],
  },
  "half-kneeling stretch": {
    base: "half kneeling",
    working: ["right leg"],
    props: { mat: true },
    poses: [
      { lean: 0, "hip right": 0 },
      { lean: 0, "hip right": -22 },
    ],
    arrows: [{ of: "pelvis", direction: "forward" }],
  },
  "one-leg balance": {
    view: "front",
    turn: 24,
    working: ["right leg"],
    poses: [
      {},
      {
        "hip left": 55,
        "knee left": 85,
        shoulder: { abduction: 35 },
        elbow: 15,
        rests: { "foot right": "floor" },
      },
    ],
    arrows: [{ of: "knee left" }],
  },
  "heel slide": {
    base: "lying on the back",
    working: ["right leg"],
    frames: "ghost",
    props: { bed: true },
    poses: [
      {
        lean: -90,
        "knee right": 0,
        "ankle right": 0,
        rests: {
          pelvis: "bed",
          "upper back": "bed",
          head: "bed",
          "heel right": { on: "bed", slides: true },
          "heel left": "bed",
        },
      },
      {
        lean: -90,
        "knee right": 95,
        rests: {
          pelvis: "bed",
          "upper back": "bed",
          head: "bed",
          "foot right": { on: "bed", slides: true },
          "heel left": "bed",
        },
      },
    ],
    arrows: [{ of: "heel right", direction: "back" }],
  },
  "opposite arm and leg": {
    base: "hands and knees",
    working: ["right leg", "left arm"],
    props: { mat: true },
    poses: [
      { hip: 88, shoulder: 85, elbow: 0, neck: -15 },
      {
        "hip right": -2,
        "knee right": 0,
        "ankle right": -10,
        "shoulder left": 165,
        rests: { "knee left": "mat", "instep left": "mat", "hand right": "mat" },
      },
    ],
    arrows: [{ of: "heel right" }, { of: "hand left" }],
  },
  "knee straightening, sitting": {
    base: "sitting",
    working: ["right leg"],
    frames: "ghost",
    props: { chair: true },
    poses: [
      {
        lean: 0,
        knee: 90,
        rests: { pelvis: "chair", "foot left": "floor", "foot right": "floor" },
      },
      {
        lean: 0,
        "hip right": 86,
        "knee right": 8,
        "ankle right": 5,
        rests: { pelvis: "chair", "foot left": "floor" },
      },
    ],
  },
  squat: {
    working: ["legs"],
    poses: [{}, { lean: 35, knee: 85, shoulder: 95, elbow: 5, neck: -15 }],
    arrows: [{ of: "pelvis", direction: "down" }],
  },
  "hip abduction, standing": {
    view: "front",
    working: ["right leg"],
    frames: "ghost",
    poses: [
      { rests: { "foot left": "floor" } },
      { "hip right": { abduction: 30 }, shoulder: { abduction: 10 } },
    ],
  },
  "step up": {
    working: ["right leg"],
    props: { step: true },
    poses: [
      {
        lean: 12,
        "hip left": 0,
        "knee left": 0,
        "shoulder right": -15,
        "shoulder left": 25,
        elbow: 40,
        rests: { "foot left": "floor", "foot right": { on: "step", at: 0.24 } },
      },
      {
        lean: 2,
        "hip right": 0,
        "knee right": 0,
        "hip left": 30,
        "knee left": 50,
        "ankle left": -10,
        rests: { "foot right": "step" },
      },
    ],
    arrows: [{ of: "head" }],
  },
};

/** The figures by the name of their exercise. */
export const POSES: ReadonlyMap<string, Figure> = new Map(
  Object.entries(SOURCE).map(([name, source]) => [name, figureSchema.parse(source)]),
);
