/** What a plan says of what was measured, and of the loads that a client's equipment makes. */
import * as z from "zod";
import { date, distance, id, mass, speed, time } from "../units/quantities.ts";

const side = z.enum(["left", "right", "both"]);
const onSide = side.describe("The side tested: left, right, or both together.");
const onDate = date.describe("The day of the measure.");
const card = id.describe("The card of the exercise tested.");

/** A measure, told apart by its test. */
export const measure = z
  .discriminatedUnion("test", [
    z.strictObject({
      test: z.literal("repetitions").describe("A repetition test: as many as can be done well."),
      card,
      side: onSide,
      load: mass.prefault("0 kg").describe("The load added, besides the body's own weight."),
      reps: z.number().int().min(1).max(100).describe("Repetitions done."),
      on: onDate,
    }),
    z.strictObject({
      test: z.literal("hold").describe("The longest hold."),
      card,
      side: onSide,
      load: mass.prefault("0 kg").describe("The load added."),
      time: time.describe("How long."),
      on: onDate,
    }),
    z.strictObject({
      test: z.literal("speed").describe("The top speed of a run, or a timed distance."),
      card,
      speed: speed.optional().describe("The speed, such as 18 km/h."),
      distance: distance.optional().describe("The distance timed."),
      time: time.optional().describe("The time for it."),
      on: onDate,
    }),
  ])
  .describe("What was measured.");

/** The loads that a piece of equipment makes. */
export const makesLoad = z
  .strictObject({
    loads: z
      .array(mass)
      .min(1)
      .optional()
      .describe("The loads there are, each alone: [2 kg, 4 kg]."),
    from: mass
      .optional()
      .describe("The least it makes (an empty backpack, a machine's first plate)."),
    up_to: mass.optional().describe("The most it makes."),
    steps: mass.optional().describe("The step between two loads."),
    bar: mass.optional().describe("A bar's own mass."),
    plates: z.array(mass).optional().describe("Plates, a pair of each: [1.25 kg, 2.5 kg]."),
    levels: z
      .array(z.number().int().min(1).max(8))
      .optional()
      .describe("Band levels, light to heavy."),
  })
  .partial();
