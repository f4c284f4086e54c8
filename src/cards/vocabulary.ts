/** The shared words of a library: body regions, tissues, equipment and health flags, each explained. */
import * as z from "zod";
import { id, line } from "../units/quantities.ts";

const terms = (what: string) => z.record(id, line).default({}).describe(what);

export const vocabularySchema = z.strictObject({
  regions: terms("Body regions, each with its name in the client's words."),
  tissues: terms("Muscles, tendons, joints: what an exercise trains, in the client's words."),
  equipment: z
    .record(
      id,
      z.strictObject({
        say: line.describe("The client's words for it, as in “You need: a firm step”."),
        short: line.optional().describe("As short as a table needs it: backpack, bar."),
        makes: z
          .enum(["weight", "band"])
          .optional()
          .describe("What kind of load it makes, if it makes one."),
        home: z
          .literal(true)
          .optional()
          .describe(
            "Taken to be in every home: listed under “You need”, but a plan need not list it.",
          ),
      }),
    )
    .default({})
    .describe("Things a client may have at home."),
  flags: terms("Health facts that matter for what a client may do, for the clinician."),
});

export type Vocabulary = z.infer<typeof vocabularySchema>;

/** The words of several libraries as one; later ones add to and replace earlier ones. */
export function mergeVocabularies(all: readonly Vocabulary[]): Vocabulary {
  return {
    regions: Object.assign({}, ...all.map((one) => one.regions)),
    tissues: Object.assign({}, ...all.map((one) => one.tissues)),
    equipment: Object.assign({}, ...all.map((one) => one.equipment)),
    flags: Object.assign({}, ...all.map((one) => one.flags)),
  };
}

/** A schema for one word of a group, so that a slip of the pen is caught and the nearest word offered. */
export function word(group: Readonly<Record<string, unknown>>) {
  return z.enum(Object.keys(group).sort() as [string, ...string[]]);
}
