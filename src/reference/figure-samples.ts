/** Sample figures for the words of figures that no shipped card uses. */
import { type Figure, figureSchema } from "../figure/format/schema.ts";

const sample = (figure: unknown): Figure => figureSchema.parse(figure);

/** By name of the sample's picture. */
export const SAMPLES: ReadonlyMap<string, Figure> = new Map([
  [
    "sample-half-kneeling",
    sample({
      base: "half kneeling",
      working: ["right leg"],
      props: { mat: true },
      poses: [
        {
          lean: 0,
          "hip right": 0,
          rests: { "knee right": "mat", "instep right": "mat", "foot left": "mat" },
        },
        { "hip right": -22 },
      ],
    }),
  ],
  [
    "sample-lying-right",
    sample({
      base: "lying on the right side",
      view: "front",
      frames: "ghost",
      working: ["left leg"],
      props: { mat: true },
      poses: [
        {
          roll: 90,
          "hip right": 30,
          "knee right": 50,
          "hip left": { abduction: -3 },
          rests: { "hip side right": "mat", "shoulder side right": "mat" },
        },
        { "hip left": { abduction: 35 } },
      ],
    }),
  ],
  [
    "sample-doorway",
    sample({
      working: ["right arm"],
      props: { doorway: { at: 0.3 } },
      poses: [
        {
          "shoulder right": 80,
          "elbow right": 60,
          rests: { foot: "floor", "fingers right": "doorway" },
        },
        {
          "shoulder right": 95,
          "elbow right": 40,
          rests: { foot: "floor", "fingers right": { on: "doorway", slides: true } },
        },
      ],
    }),
  ],
  [
    "sample-lying-front",
    sample({
      base: "lying on the front",
      working: ["trunk"],
      props: { mat: true },
      poses: [{ rests: { chest: "mat", pelvis: "mat", instep: "mat" } }],
    }),
  ],
  [
    "sample-barbell",
    sample({
      working: ["legs"],
      props: { barbell: true },
      poses: [{ rests: { foot: "floor" } }, { lean: 35, knee: 80, rests: { foot: "floor" } }],
    }),
  ],
  [
    "sample-stick",
    sample({
      view: "front",
      working: ["arms"],
      props: { stick: true },
      poses: [
        { shoulder: 20, elbow: 90, rests: { foot: "floor" } },
        { shoulder: 90, elbow: 10 },
      ],
    }),
  ],
]);
