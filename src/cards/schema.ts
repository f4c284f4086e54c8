/** What an exercise card says: the only definition, from which types, checks and the author's reference come. */
import * as z from "zod";
import { figureSchema } from "../figure/format/schema.ts";
import { painRule } from "../pain/rule.ts";
import { distanceGrowth, dosePart } from "../prescription/fields.ts";
import { saysWork, shapeProblem } from "../prescription/shape-problem.ts";
import { date, id, line, time } from "../units/quantities.ts";
import { LANGUAGES, ORIGINAL } from "../words/languages.ts";
import { type Vocabulary, word } from "./vocabulary.ts";

export const QUALITIES = [
  "mobility",
  "isometric",
  "strength",
  "power",
  "balance",
  "endurance",
  "running",
  "relaxation",
] as const;

const source = z.strictObject({
  cite: line.describe("Authors, year, journal, volume and page."),
  for: line.describe("What on this card comes from there."),
});

export const sources = z
  .array(source)
  .min(1, {
    error: "name at least one source; for a fact of the trade write cite: common practice",
  })
  .describe("Where the content comes from. A fact of the trade is cited as common practice.");

export const reviewed = z
  .strictObject({
    by: line.describe("Who checked the content."),
    on: date.describe("When, YYYY-MM-DD."),
    again: date.describe("When it is to be checked again, YYYY-MM-DD."),
  })
  .refine((review) => review.on < review.again, {
    error: "the next review has to come after the last",
    path: ["again"],
  })
  .describe("Who checked the content, and when it is due again.");

export const writtenIn = z
  .enum(LANGUAGES)
  .default(ORIGINAL)
  .describe("The language it is written in; translations lie beside it.");

const step = (says: string) =>
  z
    .array(
      z.strictObject({
        to: id.describe("The id of the other card."),
        when: z
          .strictObject({
            reps_over: z.number().int().min(1).optional().describe("Repetitions above the target."),
            sessions: z.number().int().min(1).optional().describe("In how many sessions running."),
            say: line
              .optional()
              .describe("The same in the client's words, where numbers do not do."),
          })
          .optional()
          .describe("When to take this step."),
      }),
    )
    .default([])
    .describe(says);

/** Ages in whole years, either end open. */
export const ageBound = z
  .strictObject({
    from: z.number().int().min(0).max(120).optional().describe("From this age on, in years."),
    to: z.number().int().min(0).max(120).optional().describe("Up to this age."),
  })
  .refine(({ from, to }) => from !== undefined || to !== undefined, {
    error: "give from, to, or both",
  })
  .refine(({ from = 0, to = 120 }) => from <= to, { error: "from has to come before to" })
  .optional()
  .describe("Ages it is meant for; a client outside of them stops the plan.");

/** Steps that a client with a flag does otherwise than the card says. */
export const careSteps = z
  .array(
    z.strictObject({
      step: line.describe("A step of Set up or Move, word for word as it stands there."),
      do: line.describe("What this client reads in its place; may hold placeholders."),
    }),
  )
  .default([])
  .describe("Steps that this client does otherwise, so that no step goes against the care.");

/** The schema of a card's front matter, given the words of its library. */
export function cardSchema(words: Vocabulary) {
  return z.strictObject({
    id: id.describe("Unique in the library; other files name the card by it."),
    language: writtenIn,
    title: line.describe("The exercise in the client's words."),
    clinical: line.describe("The exercise in the clinician's words."),
    why: line.describe("One sentence for the client: why this exercise is there."),
    region: word(words.regions).describe("Body region; the name of the card's folder."),
    trains: z.enum(QUALITIES).describe("The quality it trains."),
    tissues: z.array(word(words.tissues)).min(1).describe("What it loads, the main tissue first."),
    limb: z
      .enum(["leg", "arm", "body"])
      .describe("What does the work: decides words such as “your left leg”."),
    side: z
      .enum(["each", "both", "none"])
      .describe("each: one side at a time; both: two sides together; none: no side."),
    demand: z
      .number()
      .min(1)
      .max(10)
      .describe(
        "How hard it is on the main tissue, 1 to 10, compared with the other cards of its region.",
      ),
    equipment: z
      .array(word(words.equipment))
      .default([])
      .describe("What the client needs besides a load. All of it is needed."),
    equipment_with: z
      .partialRecord(word(words.equipment), z.array(word(words.equipment)))
      .default({})
      .describe(
        "What is needed instead of `equipment` where this thing of load.with makes the load: { leg-press-machine: [] }.",
      ),
    load: z
      .strictObject({
        kind: z
          .enum(["none", "body", "weight", "band", "hold", "time", "distance", "speed"])
          .describe(
            "What makes it hard: the body's own weight, a weight, a band, or how long, far or fast.",
          ),
        body_share: z
          .number({ error: "write the share of body mass as a number from 0 to 1" })
          .min(0)
          .max(1)
          .optional()
          .describe("The share of body mass that is moved, 0 to 1; with a source under sources."),
        add: z
          .enum(["weight", "band"])
          .optional()
          .describe("What can be added to the body's own weight."),
        with: z
          .array(word(words.equipment))
          .default([])
          .describe("Equipment that can make the load; one of them is enough."),
      })
      .refine((load) => load.kind !== "body" || load.body_share !== undefined, {
        error: "a body load needs body_share, the share of body mass that is moved",
      })
      .refine(
        (load) => (load.kind !== "weight" && load.add === undefined) || load.with.length > 0,
        {
          error: "name the equipment that can make the load under with",
          path: ["with"],
        },
      )
      .describe("What makes it hard."),
    capacity_from: z
      .array(id)
      .default([])
      .describe("Other cards of the same movement whose measures count for this one."),
    dose: dosePart
      .required({ sets: true })
      .refine(saysWork, { error: "a dose needs reps, hold, time, distance or turns" })
      .refine((dose) => frequencies(dose) === 1, {
        error: "a dose needs one of per_week, per_day and every",
      })
      .superRefine((dose, context) => {
        const problem = shapeProblem(dose);
        if (!problem) return;
        const { fields, says, hint } = problem;
        const [field] = fields;
        const message = `the dose ${says}`;
        context.addIssue({ code: "custom", path: [field], message, params: { hint } });
      })
      .describe("The usual dose, used where a protocol or a plan says nothing else."),
    pace: z
      .strictObject({
        first: z.enum(["lift", "lower"]).default("lift").describe("Which part comes first."),
        lift: line.optional().describe("The client's word for lifting: up, pull, push, open."),
        lower: line.optional().describe("The client's word for lowering: down, back, close."),
      })
      .prefault({})
      .describe("How the two parts of the movement are called; up and down if not given."),
    recovery: time.describe("The least time from one bout to the next, such as 48 h."),
    distance_growth: distanceGrowth,
    age: ageBound,
    hard: z
      .boolean()
      .optional()
      .describe(
        "Whether it is hard work, kept clear of the client's events. If not given: with an effort of 7 or more, where it trains power, or where its recovery is 36 h or more.",
      ),
    pain: painRule,
    harder: step("The next cards up the ladder."),
    easier: step("The next cards down the ladder."),
    alternatives: z
      .array(id)
      .default([])
      .describe("Cards of about the same demand that can stand in for this one."),
    not_for: z
      .array(
        z.strictObject({
          flag: word(words.flags).describe("The flag that rules it out."),
          why: line.describe("The reason, for the clinician."),
        }),
      )
      .default([])
      .describe("Flags with which a client must not get this exercise."),
    care: z
      .array(
        z.strictObject({
          flag: word(words.flags).describe("The flag that asks for care."),
          say: line.describe("What to tell the client, in the client's words."),
          equipment: z
            .array(word(words.equipment))
            .default([])
            .describe("What it takes, besides what the exercise needs."),
          steps: careSteps,
          not_with: z
            .array(word(words.equipment))
            .default([])
            .describe("Things of load.with that must not make this client's load."),
        }),
      )
      .default([])
      .describe("Flags with which a client gets an extra word of care."),
    figure: figureSchema
      .optional()
      .describe("The picture of the exercise, by joint angles; drawn for each client's side."),
    image: z
      .strictObject({
        file: line
          .regex(/^[A-Za-z0-9][\w.-]*\.(svg|png|jpe?g)$/, {
            error: "name an SVG, PNG or JPEG file in the card's own folder",
          })
          .describe("An SVG, PNG or JPEG file in the card's folder."),
        alt: line.describe("What the picture shows, for people who cannot see it."),
      })
      .optional()
      .describe("A picture of the clinic's own, in place of a drawn figure."),
    sources,
    reviewed,
  });
}

export type Card = z.infer<ReturnType<typeof cardSchema>>;

/** How many of the three ways to say how often are given. */
export function frequencies(dose: { [K in "per_week" | "per_day" | "every"]?: unknown }): number {
  return [dose.per_week, dose.per_day, dose.every].filter((given) => given !== undefined).length;
}
