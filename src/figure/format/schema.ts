/** What a card says under `figure:`: the only definition, from which types, checks and the author's reference come. */
import * as z from "zod";
import { line } from "../../units/quantities.ts";
import { propsSchema } from "./props-schema.ts";
import {
  BASES,
  CROPS,
  DIRECTIONS,
  LANDMARKS,
  LIMBS,
  MIDDLE_JOINTS,
  MIDDLE_PARTS,
  PAIRED_JOINTS,
  PAIRED_PARTS,
  SIDES,
  SURFACES,
  VIEWS,
} from "./words.ts";

const angle = z.number().min(-180).max(180);
const degrees = (says: string) => angle.optional().describe(says);

/** A joint's angles: a bare number for its first motion, or its motions by name. */
function joint<M extends string>(name: string, motions: readonly M[]) {
  const first = motions[0] as M;
  const fields = Object.fromEntries(
    motions.map((motion) => [motion, degrees(`Degrees of ${name} ${motion}.`)]),
  ) as Record<M, z.ZodOptional<z.ZodNumber>>;
  return z
    .union([angle, z.strictObject(fields)], {
      error: `write the angle in degrees, or ${motions.join(", ")}`,
    })
    .optional()
    .describe(`${name}, in degrees: a number is ${first}; or ${motions.join(", ")} by name.`);
}

export type JointValue = number | { readonly [motion: string]: number | undefined };

const ON = [...SURFACES, ...LANDMARKS] as const;

const restPlace = z
  .union(
    [
      z.enum(ON),
      z.strictObject({
        on: z.enum(ON).describe("The surface, or the part of the own body, that it rests on."),
        at: z
          .number()
          .min(-2)
          .max(2)
          .optional()
          .describe(
            "Where on it, in body heights: how far ahead (a height, on a wall) of the first part that says nothing, counted from foot to head.",
          ),
        slides: z
          .boolean()
          .default(false)
          .describe("May move along the surface between the poses."),
        from: z
          .enum(["above", "below", "front", "behind", "outside", "inside"])
          .optional()
          .describe("On the own body: the side of that part which it lies on."),
      }),
    ],
    { error: "write what it rests on, such as floor, or on, at, slides" },
  )
  .optional();

const rests = z
  .strictObject({
    ...paired(PAIRED_PARTS, (name) => restPlace.describe(`What the ${name} rests on.`)),
    ...middle(MIDDLE_PARTS, (name) => restPlace.describe(`What the ${name} rests on.`)),
  })
  .describe("What rests where. Left out in a later pose: as in the pose before.");

const pose = z
  .strictObject({
    base: z.enum(BASES).optional().describe("Starts this pose from another base posture."),
    lean: degrees("The pelvis leans forward (back: negative) from upright; lying on the back -90."),
    roll: degrees("The pelvis rolls to the right (left: negative) from upright."),
    ...jointFields(),
    rests: rests.optional(),
    air: z
      .number()
      .min(0)
      .max(0.3)
      .optional()
      .describe("In a jump: how far what would rest on the floor is above it, in body heights."),
  })
  .describe("One pose. What it does not say stays as near as it can to the pose before.");

const arrow = z
  .strictObject({
    of: z.enum(LANDMARKS).optional().describe("The part whose way it shows."),
    direction: z
      .enum(DIRECTIONS)
      .optional()
      .describe("A plain straight arrow this way, instead of the way the part takes."),
    side: z
      .enum(["above", "below", "ahead", "behind"])
      .optional()
      .describe("On which side of the part it is to be drawn."),
    frame: z
      .number()
      .int()
      .min(1)
      .max(3)
      .optional()
      .describe("The frame it is drawn in; the last if not given."),
  })
  .describe("A hint for the movement arrow; without one it shows what moves most.");

/** What a frame shows, in a few words that hold for either side. */
export const caption = line.max(40).regex(/^[^{}]*$/, {
  error: "say it without a placeholder: one caption serves both sides",
});

/** The schema of `figure:`. Write it for a client whose working side is the right. */
export const figureSchema = z
  .strictObject({
    base: z.enum(BASES).default("standing").describe("The posture the poses start from."),
    view: z
      .enum(VIEWS)
      .default("side")
      .describe(
        "From where it is seen: side (the right side nearest), left side, front, back, above.",
      ),
    turn: z
      .number()
      .min(-90)
      .max(90)
      .optional()
      .describe("Turns the viewer from that view, in degrees; positive: towards the front."),
    rise: z
      .number()
      .min(-30)
      .max(60)
      .optional()
      .describe("Raises the viewer above level, in degrees."),
    working: z
      .array(z.enum(LIMBS))
      .min(1)
      .describe("The limbs that do the work, drawn darkest. For one side: the right."),
    poses: z.array(pose).min(1).max(3).describe("Start and end, and at most one more."),
    props: propsSchema.optional(),
    arrows: z
      .array(arrow)
      .max(3)
      .optional()
      .describe("Hints for the movement arrows; an empty list draws none."),
    captions: z
      .array(caption)
      .min(1)
      .max(3)
      .optional()
      .describe(
        "A few words for each frame in turn, printed under the picture: [Heel low, Push up high].",
      ),
    frames: z
      .enum(["beside", "below", "ghost"])
      .optional()
      .describe(
        "Frames beside each other, one below the other, or one frame with a pale start limb.",
      ),
    crop: z.enum(CROPS).optional().describe("Shows only this region, enlarged."),
    inset: z
      .enum(["foot"])
      .optional()
      .describe("Also shows the right foot enlarged, in a box in each frame."),
    text: line
      .max(400)
      .optional()
      .describe("What the picture shows, in words, instead of the computed text."),
  })
  .describe("The picture of the exercise, as joint angles from which it is drawn.");

export type Figure = z.infer<typeof figureSchema>;
export type Pose = z.infer<typeof pose>;
export type ArrowHint = z.infer<typeof arrow>;

type Both<N extends string> = N | `${N} right` | `${N} left`;

/** Fields for parts that come in two: without a side both are meant. */
function paired<N extends string, T extends z.ZodType>(
  names: readonly N[],
  make: (name: string) => T,
): Record<Both<N>, T> {
  const entries = names.flatMap((name) => [
    [name, make(`${name} of both sides`)],
    ...SIDES.map((side) => [`${name} ${side}`, make(`${side} ${name}`)]),
  ]);
  return Object.fromEntries(entries) as Record<Both<N>, T>;
}

function middle<N extends string, T extends z.ZodType>(
  names: readonly N[],
  make: (name: string) => T,
): Record<N, T> {
  return Object.fromEntries(names.map((name) => [name, make(name)])) as Record<N, T>;
}

type JointField = z.ZodOptional<z.ZodType<JointValue>>;
type JointFields = Record<
  Both<keyof typeof PAIRED_JOINTS> | keyof typeof MIDDLE_JOINTS,
  JointField
>;

function jointFields(): JointFields {
  const fields: Record<string, unknown> = {};
  for (const [name, motions] of Object.entries(PAIRED_JOINTS)) {
    fields[name] = joint(`Both sides' ${name}`, motions);
    for (const side of SIDES) fields[`${name} ${side}`] = joint(`${side} ${name}`, motions);
  }
  for (const [name, motions] of Object.entries(MIDDLE_JOINTS)) fields[name] = joint(name, motions);
  return fields as JointFields;
}
