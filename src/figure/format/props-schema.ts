/** The things of a figure, as a card names them. Lengths in body heights. */
import * as z from "zod";
import { LANDMARKS } from "./words.ts";

const length = (says: string) => z.number().min(-2).max(2).optional().describe(says);
const size = (says: string) => z.number().min(0.01).max(1.2).optional().describe(says);

const AT = "How far ahead of the first contact it stands (in a front view: to the right).";

/** A prop with all its sizes left at their usual values can be written as `true`. */
function prop<F extends z.core.$ZodLooseShape>(says: string, fields: F) {
  return z
    .union([z.literal(true), z.strictObject(fields)], {
      error: `write true, or ${Object.keys(fields).join(", ")}`,
    })
    .optional()
    .describe(says);
}

const hold = z
  .enum(LANDMARKS)
  .optional()
  .describe("The part of the body that holds or carries it, or that it lies against.");

const point = z
  .union([z.enum(LANDMARKS), z.tuple([z.number(), z.number()]).rest(z.number())], {
    error: "write a part of the body, or [ahead, up] or [ahead, up, right] in body heights",
  })
  .describe("A part of the body, or a fixed place [ahead, up, right] in body heights.");

export const propsSchema = z
  .strictObject({
    wall: prop("A wall; where at is negative it stands behind.", { at: length(AT) }),
    doorway: prop("A door frame, used like a wall.", { at: length(AT) }),
    step: prop("A step or low box to stand on.", {
      height: size("Height."),
      at: length("Where its near edge is."),
      depth: size("How deep it is."),
    }),
    bench: prop("A firm box or bench.", {
      height: size("Height."),
      at: length("Where its near edge is."),
      depth: size("How long it is."),
    }),
    chair: prop("A firm chair.", {
      height: size("Height of the seat."),
      at: length("Where the middle of the seat is."),
      faces: z.enum(["ahead", "back", "viewer"]).optional().describe("Which way it faces."),
    }),
    table: prop("A table.", {
      height: size("Height."),
      at: length("Where its near edge is."),
      depth: size("How long it is."),
    }),
    sofa: prop("A heavy sofa behind, that holds the ankles down.", {}),
    bed: prop("A bed.", { height: size("Height.") }),
    mat: prop("A mat on the floor.", { at: length("Where it begins."), depth: size("Length.") }),
    handrail: prop("A rail to hold.", { height: size("Height."), at: length(AT) }),
    cushion: prop("A balance cushion or board under the feet.", { height: size("Height.") }),
    towel: prop("A rolled towel.", {
      at: length(AT),
      height: size("How thick the roll is."),
      under: hold,
    }),
    pillow: prop("A pillow.", { at: length(AT), height: size("Height."), under: hold }),
    band: prop("A stretch band.", {
      from: point.optional(),
      to: z.array(z.enum(LANDMARKS)).optional().describe("The parts of the body it pulls on."),
    }),
    strap: prop("A strap that does not stretch.", {
      from: point.optional(),
      to: z.array(z.enum(LANDMARKS)).optional().describe("The parts of the body it holds."),
    }),
    dumbbell: prop("A hand weight.", { in: hold }),
    weight: prop("A weight that lies on the body.", { on: hold }),
    backpack: prop("A backpack with weight, on the back.", {}),
    barbell: prop("A long bar with weights.", { on: hold }),
    ball: prop("A ball.", { size: size("Its radius."), in: hold }),
    stick: prop("A stick held in both hands.", {}),
    lever: prop("The padded lever of a knee machine, in front of the right shin.", {}),
    sled: prop("The sloping backrest of a squat machine; it carries the balance.", {}),
    helper: prop("A helper who kneels at the feet and holds the right leg.", {
      height: size("How high the leg is held."),
    }),
    plate: prop("The foot plate of a machine, with its backrest.", { at: length(AT) }),
  })
  .describe("The things in the picture.");

export type Props = z.infer<typeof propsSchema>;
export type PropName = keyof Props;
export type PropPoint = z.infer<typeof point>;
