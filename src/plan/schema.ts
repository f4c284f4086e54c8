/** What a plan says: one client, what was found and measured, their week, and what they do differently. */

import * as z from "zod";
import { type Vocabulary, word } from "../cards/vocabulary.ts";
import { painRule } from "../pain/rule.ts";
import { distanceGrowth, dosePart } from "../prescription/fields.ts";
import { date, id, line, mass, weekSpan } from "../units/quantities.ts";
import { makesLoad, measure } from "./found-schema.ts";
import { until } from "./moment-schema.ts";
import { weekSchema } from "./week-schema.ts";

/** What the digest of a signature looks like: the form of what it covers, and a part of its hash. */
export const DIGEST = /^\d+-[0-9a-f]{32}$/;

const side = z.enum(["left", "right", "both"]);
const score = z.number().min(0).max(10);

const client = z.strictObject({
  name: line.describe("The client's name, printed as typed."),
  reference: line.describe("The clinic's reference for this client."),
  born: date.optional().describe("Date of birth."),
  body_mass: mass.optional().describe("Body mass, such as 72 kg."),
});

/** For which weeks of the course a change is; for all of them where it says nothing. */
const changeSpan = {
  phase: id.optional().describe("In this phase only."),
  weeks: weekSpan
    .optional()
    .describe("In these weeks of the phase only, counted from its first week: 3 or 2-5."),
};

/**
 * What stops a plan unless it is answered: a load below its target, a dose beyond what was measured, an
 * age that a course or a card is not meant for, a distance that grows too fast.
 */
const ACCEPTABLE = [
  "load-short",
  "load-light",
  "dose-beyond-measure",
  "age-outside",
  "distance-steep",
] as const;

/** What is written where somebody asked, and there was nothing. */
const NONE = z.literal("none");

/** Whether that is all that is written. */
function isNone<T>(flags: readonly T[] | "none" | readonly ["none"]): flags is "none" | ["none"] {
  return flags === "none" || flags[0] === "none";
}

const built = new WeakMap<Vocabulary, ReturnType<typeof buildPlanSchema>>();

/** The schema of a plan's front matter, given the words of the library it uses; built once for each. */
export function planSchema(words: Vocabulary): ReturnType<typeof buildPlanSchema> {
  const schema = built.get(words) ?? buildPlanSchema(words);
  built.set(words, schema);
  return schema;
}

function buildPlanSchema(words: Vocabulary) {
  const have = word(words.equipment);
  const flag = word(words.flags);
  return z.strictObject({
    id: id.describe("Unique; the booklet's files are named by it."),
    client: client.describe("Who it is for."),
    clinician: line.describe("Who made the plan."),
    protocol: id.describe("The protocol it follows."),
    starts: date.describe("The first day."),
    weeks: z
      .number()
      .int()
      .min(1)
      .max(52)
      .optional()
      .describe(
        "Weeks of the course to print, weeks away not counted: at most those that it has, all of them if not given. For more see extend.",
      ),
    extend: z
      .array(
        z.strictObject({
          phase: id.describe("The phase that takes longer."),
          weeks: z.number().int().min(1).max(26).describe("How many weeks longer."),
          repeat_week: z
            .number()
            .int()
            .min(1)
            .max(52)
            .optional()
            .describe(
              "The week of the phase whose doses they have, counted from its first; they come right after it. Its last if not given.",
            ),
          why: line.describe("The reason."),
        }),
      )
      .default([])
      .describe(
        "Phases that take longer for this client: a week is done some times more. Phases that begin later move; the weeks of a change count those of the longer phase.",
      ),
    side: side.describe("The side treated."),
    stage: line.describe("Stage of healing, in the clinician's words."),
    irritability: z
      .enum(["low", "moderate", "high"])
      .describe("How easily symptoms are stirred up."),
    findings: z.array(line).default([]).describe("What was found, for the clinician; not printed."),
    flags: z
      .union([
        z.array(
          z.union([flag, z.strictObject({ flag: flag.describe("The health fact."), until })], {
            error: "name a flag, or give flag and until",
          }),
        ),
        NONE,
        z.tuple([NONE]),
      ])
      .transform((flags) => (isNone(flags) ? [] : flags))
      .default([])
      .describe(
        "Health facts that matter: a word alone for one that holds throughout, or { flag: WORD, until: … }. A card that a flag rules out is an error in the weeks in which it holds; its words of care stay as long. Write none where the client was asked and has none of them; an empty list says nothing.",
      ),
    goals: z
      .array(
        z.strictObject({
          what: line.describe("What the client wants to do, in their words."),
          now: score.describe("How well it goes now: 0 not at all, 10 as before."),
          want: score.describe("How well it should go."),
          on: date.describe("The day it was asked."),
        }),
      )
      .min(1)
      .describe("The client's own goals, 0 to 10."),
    measures: z.array(measure).default([]).describe("What was measured."),
    equipment: z
      .array(
        z.union([have, makesLoad.extend({ have: have.describe("What it is.") })], {
          error: "name a piece of equipment, or give have and the loads it makes",
        }),
      )
      .default([])
      .describe("What the client has at home, with the loads it can make."),
    week: weekSchema(words),
    my_plan: z
      .strictObject({
        when: line.optional().describe("When the client means to do it: after the evening news."),
        where: line.optional().describe("Where: on the bottom stair."),
        if_then: z
          .array(
            z.strictObject({
              if: line.describe(
                "What usually gets in the way, printed as typed: I come home late.",
              ),
              do: line.describe(
                "What the client does then, printed as typed: I do the short version.",
              ),
            }),
          )
          .default([])
          .describe("Answers to what usually gets in the way."),
      })
      .prefault({})
      .describe("The client's own plan; what is left out is left to write in."),
    pain: painRule.optional().describe("A pain rule for this client, instead of the protocol's."),
    pain_call: z
      .number()
      .min(1)
      .max(10)
      .optional()
      .describe(
        "From this pain on the client stops and calls the same day; not above the clinic's, which holds if left out.",
      ),
    distance_growth: distanceGrowth,
    leave_out: z
      .array(
        z.strictObject({
          card: id.describe("The protocol's card."),
          ...changeSpan,
          why: line.describe("The reason."),
        }),
      )
      .default([])
      .describe("Exercises of the protocol this client does not do."),
    swap: z
      .array(
        z.strictObject({
          card: id.describe("The protocol's card."),
          to: id.describe("The card to do instead."),
          ...changeSpan,
          why: line.describe("The reason."),
          dose: dosePart.optional().describe("What is different in its dose."),
        }),
      )
      .default([])
      .describe(
        "Exercises this client does instead. In weeks of no swap the protocol's card stays.",
      ),
    add: z
      .array(
        z.strictObject({
          card: id.describe("The card."),
          ...changeSpan,
          why: line.describe("The reason."),
          dose: dosePart.default({}).describe("Its dose, where the card's own does not do."),
        }),
      )
      .default([])
      .describe(
        "Exercises this client does besides. Without a phase all through the course; in weeks of several phases in the one that began last.",
      ),
    redose: z
      .array(
        z.strictObject({
          card: id.describe("The card."),
          ...changeSpan,
          why: line.describe("The reason."),
          dose: dosePart.describe("What is different."),
        }),
      )
      .default([])
      .describe("Doses that differ for this client."),
    accept: z
      .array(
        z.strictObject({
          code: z
            .enum(ACCEPTABLE)
            .describe("What is accepted, by the code with which it stops the plan."),
          card: id.describe("The card it is said of; of an age also the protocol."),
          why: line.describe("The reason."),
        }),
      )
      .default([])
      .describe("What stops the plan and is all right for this client."),
    signed: z
      .strictObject({
        by: line.describe("The clinician."),
        on: date.describe("The day."),
        digest: z
          .string()
          .regex(DIGEST, { error: "this is no digest; paulatim sign writes it" })
          .optional()
          .describe(
            "What was signed: the plan, its note and everything computed from them. Written by paulatim sign; where it does not match any more, or is left out, every page prints as a draft.",
          ),
      })
      .optional()
      .describe("Sign-off, as paulatim sign writes it. Without it every page prints as a draft."),
  });
}

export type Plan = z.infer<ReturnType<typeof planSchema>>;
export type Measure = Plan["measures"][number];
export type PlanEquipment = Plan["equipment"][number];
export type Flag = Plan["flags"][number];
/** What a plan may change of its protocol, each a list of changes. */
export type ChangeKind = "leave_out" | "swap" | "add" | "redose";
