/** A pain rule as cards, protocols and plans state it. */
import * as z from "zod";

const painNumbers = z
  .strictObject({
    comfortable: z.number().min(0).max(10).describe("Pain up to this number needs no thought."),
    during: z.number().min(0).max(10).describe("The most pain during the exercise, 0 to 10."),
    after: z.number().min(0).max(10).describe("The most pain in the hours after it, 0 to 10."),
  })
  .describe("Limits of its own for this exercise.");

export const painRule = z
  .union([z.enum(["pain-free", "monitored"]), painNumbers], {
    error: "write pain-free, monitored, or the numbers comfortable, during and after",
  })
  .refine((rule) => typeof rule === "string" || rule.comfortable <= rule.during, {
    error: "comfortable cannot be more than during",
    path: ["comfortable"],
  })
  .describe(
    "How much pain is all right: pain-free (none beyond the usual), monitored (the clinic's numbers), or numbers.",
  );

export type PainRule = z.infer<typeof painRule>;
