/** What a protocol says: a course for a condition, phase by phase and week by week. */

import * as z from "zod";
import { ageBound, reviewed, sources, writtenIn } from "../cards/schema.ts";
import { painRule } from "../pain/rule.ts";
import { distanceGrowth, dosePart } from "../prescription/fields.ts";
import { id, line, percent, weekSpan, weekSpanKey } from "../units/quantities.ts";

const rule = z
  .strictObject({
    from: dosePart.describe("The dose of the first week."),
    to: dosePart.describe("The dose of the last week."),
    load_step: percent
      .optional()
      .describe(
        "How much the load grows when the goal is met, such as 5 % (ACSM 2009: 2 to 10 %).",
      ),
    easier_every: z
      .number()
      .int()
      .min(2)
      .max(8)
      .optional()
      .describe("Every how many weeks an easier week comes, with one set less."),
  })
  .describe("A way from a start to a goal: repetitions first, then sets, then load.");

const grows = z
  .strictObject({
    reps: z
      .number()
      .int()
      .min(2)
      .max(100)
      .optional()
      .describe("Repetitions of a set, up to so many."),
    tempo: dosePart.shape.tempo.describe("A slower tempo, as slow as this."),
  })
  .refine(({ reps, tempo }) => reps !== undefined || tempo !== undefined, {
    error: "state reps, tempo or both",
  })
  .describe(
    "What may grow in place of the load where the heaviest that a client has is too light, if a source allows it. A rule allows the repetitions that it leads to.",
  );

export const protocolExercise = z.strictObject({
  card: id.describe("The card's id."),
  why: line.optional().describe("One sentence for the client, where the card's own does not fit."),
  main: z
    .boolean()
    .default(true)
    .describe("Whether the phase's aim depends on it; false for extras."),
  dose: dosePart.default({}).describe("What holds in every week of the phase."),
  weeks: z
    .record(weekSpanKey, z.union([z.literal("none"), dosePart]))
    .optional()
    .describe(
      "Week by week, counted from the phase's first week: 1, 2-3, 4-5 …; none for weeks without the exercise. In weeks without a row the dose holds, where it is complete.",
    ),
  rule: rule.optional(),
  grows: grows.optional(),
  same_session_as: id.optional().describe("A card of the same phase in whose sessions it is done."),
  after: z
    .array(id)
    .default([])
    .describe("Cards of the same phase that come before it in a session."),
  when: line
    .optional()
    .describe(
      "For an exercise that starts when a sign is there and not in a given week: the sign. It names exercises as those under move_on do.",
    ),
});

const sign = z.union([
  line,
  z
    .strictObject({
      say: line.describe("The sign in the client's words."),
      of: id
        .optional()
        .describe(
          "The card whose sign it is, where the words do not name it: it is no sign of what stands in the card's place.",
        ),
      not_for: z
        .array(id)
        .default([])
        .describe("Flags with which a client must not try what the sign asks, or cannot do it."),
    })
    .refine((one) => one.of !== undefined || one.not_for.length > 0, {
      error: "state of or not_for, or write the sign alone",
    }),
]);

const sums = z.strictObject({
  reps: z
    .number()
    .int()
    .optional()
    .describe("Repetitions of the whole course, all sets and sessions."),
  sessions: z.number().int().optional().describe("Sessions of the whole course."),
  tension: z
    .number()
    .optional()
    .describe("Seconds under tension of one session on one side, in the last week."),
});

const phase = z.strictObject({
  id: id.describe("Unique within the protocol."),
  title: line.describe("The phase in the client's words."),
  aim: line.describe("What this phase is for, in the client's words."),
  weeks: z.number().int().min(1).max(52).describe("Planned weeks."),
  range: weekSpan.optional().describe("The fewest and most weeks it may take, such as 8-12."),
  from_week: z
    .number()
    .int()
    .min(1)
    .optional()
    .describe("Week of the course in which it begins; after the last phase if not given."),
  exercises: z.array(protocolExercise).min(1).describe("What is done, in the order of a session."),
  move_on: z
    .array(sign)
    .min(1)
    .describe(
      "Signs to move on, as a checklist in the client's words. An exercise is named by its card's id, as in {heel-dig-hold}: its title is printed, or that of what stands in its place. Where the client has neither, the clinician's word stands in place of the sign, as it does for a client with a flag under not_for.",
    ),
  go_back: z
    .array(line)
    .default([])
    .describe(
      "Signs to go back a step, in the client's words: the sign in a sentence, then what to do. An exercise is named by its card's id, as in {heel-dig-hold}: its title is printed, of what stands in its place, or of what is below it where the client does not have it.",
    ),
});

/** What a client may expect, by the question it answers. */
export const outlookTexts = {
  takes: line.describe("How long it usually takes."),
  known: line.describe("What is known: what good it did, in whom, and what may be unpleasant."),
  unknown: line.describe("What is not known."),
  instead: line.describe("What else there is."),
};

const outlook = z
  .strictObject({
    ...outlookTexts,
    from: z
      .array(line)
      .min(1)
      .describe("Which of the sources it comes from, each as it is cited there."),
  })
  .describe("What to expect, in the client's words.");

export const protocolSchema = z.strictObject({
  id: id.describe("Unique; plans name the protocol by it."),
  language: writtenIn,
  title: line.describe("The course in the client's words."),
  clinical: line.describe("The course in the clinician's words."),
  condition: line.describe("What it is for."),
  standing: line.describe(
    "How well it is tested, in a sentence: trials, people, what is not known.",
  ),
  age: ageBound,
  outlook: outlook.optional(),
  pain: painRule,
  rest_between_exercises: dosePart.shape.rest.describe("Rest from one exercise to the next."),
  distance_growth: distanceGrowth,
  phases: z.array(phase).min(1).describe("The phases in their order."),
  expect: z
    .record(id, sums)
    .default({})
    .describe(
      "Sums the source prints, by card id; they are compared with the table, and with what each plan lays out.",
    ),
  sources,
  reviewed,
});

export type Protocol = z.infer<typeof protocolSchema>;
export type ProtocolPhase = Protocol["phases"][number];
export type Sign = ProtocolPhase["move_on"][number];
export type ProtocolExercise = ProtocolPhase["exercises"][number];
