/** How a plan states a point in time: a date, or where a week of the course or a phase begins; and when a flag ends. */
import * as z from "zod";
import { isDate } from "../units/dates.ts";
import { id } from "../units/quantities.ts";

const moment = z.union(
  [
    z.string().refine(isDate, {
      error: "write a date as YYYY-MM-DD, { week: 6 }, { phase: ID }, or for a flag review",
    }),
    z.strictObject({
      week: z.number().int().min(1).max(104).describe("The week of the course that begins then."),
    }),
    z.strictObject({ phase: id.describe("The phase that begins then.") }),
  ],
  { error: "write a date, { week: 6 } or { phase: ID }" },
);

/** When a flag ends. */
export const until = z
  .union(
    [
      z.literal("review"),
      moment,
      z.strictObject({
        review: moment.describe(
          "When that review is planned. From then on cards that the flag rules out may be planned; pages say that they wait for the clinician's word.",
        ),
      }),
    ],
    {
      error:
        "write a date, { week: 6 }, { phase: ID }, review, or { review: … } with one of the three",
    },
  )
  .describe(
    "When it ends: a date, the beginning of a week of the course or of a phase, or a review: then it holds until you take it out.",
  );

export type Moment = z.infer<typeof moment>;
