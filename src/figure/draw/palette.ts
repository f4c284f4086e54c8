/** The few tones of the figures: each a step apart in grey, the working limb the darkest large area. */
export const TONE = {
  ink: "#1d2a35",
  farInk: "#5d6a74",
  work: "#23607c",
  workFar: "#86a9b8",
  cloth: "#b7c2c9",
  clothFar: "#d9e0e4",
  shirt: "#e3e9ec",
  skin: "#fdf9f4",
  skinFar: "#f3efe9",
  hair: "#434f59",
  shoe: "#4b5864",
  shoeFar: "#97a2ab",
  ghost: "#f1f4f5",
  ghostInk: "#9aa6af",
  arrow: "#b5460f",
  ground: "#5d6a74",
  thing: "#eef1f2",
  thingSide: "#d5dce0",
  thingInk: "#74828c",
  band: "#1d2a35",
  weight: "#39444e",
  soft: "#ece3d6",
  towel: "#d3ae7c",
  paper: "#ffffff",
} as const;

/** Widths of lines in millimetres. */
export const LINE = {
  body: 0.48,
  thing: 0.22,
  ground: 0.55,
  band: 0.75,
  halo: 1.5,
} as const;
