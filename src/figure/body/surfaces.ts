/** Where the things of a figure stand, and how high: what a part can rest on. Lengths in body heights. */
import type { Props } from "../format/props-schema.ts";
import type { Surface } from "../format/words.ts";

/** Usual sizes, by eye and by the furniture of a home for a person of 1.70 m. */
export const USUAL = {
  mat: 0.012,
  step: 0.11,
  bench: 0.27,
  chair: 0.252,
  table: 0.43,
  bed: 0.29,
  cushion: 0.05,
  towel: 0.04,
  pillow: 0.05,
  handrail: 0.56,
  wall: 0.33,
  plate: 0.5,
  seat: 0.2,
  helper: 0.27,
} as const;

/** A level surface at a height, or an upright one at a place of the picture's plane. */
export type Plane =
  | { readonly kind: "level"; readonly height: number }
  | { readonly kind: "upright"; readonly at: number; readonly facing: 1 | -1 };

type Fields = Readonly<Record<string, unknown>>;

/** A number among a prop's fields, or its usual value. */
export function sizeOf(
  props: Props | undefined,
  name: keyof Props,
  field: string,
): number | undefined {
  const value = props?.[name];
  if (value === undefined || value === true) return undefined;
  const number = (value as Fields)[field];
  return typeof number === "number" ? number : undefined;
}

/** What "ground" means in a base posture: the bed, the mat, or the floor. */
export function groundOf(props: Props | undefined): Surface {
  return props?.bed !== undefined ? "bed" : props?.mat !== undefined ? "mat" : "floor";
}

/** The plane of a surface, whether or not the figure lists it among its props. */
export function planeOf(surface: Surface, props: Props | undefined): Plane {
  if (surface === "wall" || surface === "doorway" || surface === "plate") {
    const at = sizeOf(props, surface, "at") ?? (surface === "plate" ? USUAL.plate : USUAL.wall);
    return { kind: "upright", at, facing: at > 0 ? -1 : 1 };
  }
  return { kind: "level", height: heightOf(surface, props) };
}

function heightOf(surface: Surface, props: Props | undefined): number {
  switch (surface) {
    case "floor":
    case "wall":
    case "doorway":
    case "plate":
      return 0;
    case "towel":
      return props?.step !== undefined ? heightOf("step", props) : 0;
    case "pillow":
      return heightOf(groundOf(props), props) + (sizeOf(props, "pillow", "height") ?? USUAL.pillow);
    case "mat":
      return USUAL.mat;
    case "seat":
      return USUAL.seat;
    default:
      return sizeOf(props, surface, "height") ?? USUAL[surface];
  }
}
