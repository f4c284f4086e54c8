/** What a plan says of the client's real week: free time, days away, what else fills it, and when its days begin. */
import * as z from "zod";
import { type Vocabulary, word } from "../cards/vocabulary.ts";
import { PARTS, WEEKDAYS } from "../units/day-parts.ts";
import { date, id, line, time } from "../units/quantities.ts";

const clockTime = z
  .string({ error: 'write a clock time as "07:30", in quotation marks' })
  .regex(/^([01]\d|2[0-3]):[0-5]\d$/, { error: 'write a clock time as "07:30"' });

const part = z.enum(PARTS);
const day = z.enum(WEEKDAYS);

/** The schema of `week`, given the words of the library. */
export function weekSchema(words: Vocabulary) {
  return z
    .strictObject({
      free: z
        .partialRecord(day, z.partialRecord(part, time))
        .describe("Free time by day and part of the day: mon: { evening: 30 min }."),
      other_weeks: z
        .array(
          z.strictObject({
            from: date.describe("The first day."),
            until: date.optional().describe("The last day; to the end if not given."),
            free: z
              .partialRecord(day, z.partialRecord(part, time))
              .describe("Free time by day and part of the day, in place of the usual."),
          }),
        )
        .default([])
        .describe("Times in which the week is another one: holidays, a season, a new job."),
      rota: z
        .strictObject({
          on: z.number().int().min(1).max(28).describe("Days of work, one after the other."),
          off: z.number().int().min(1).max(28).describe("Days off after them."),
          from: date.describe("The first day of work of the rota; before it the usual week holds."),
          until: date.optional().describe("Its last day; to the end if not given."),
          free_on: z
            .partialRecord(part, time)
            .default({})
            .describe("Free time on a day of work: { evening: 20 min }; none if not given."),
          free_off: z.partialRecord(part, time).describe("Free time on a day off."),
          hard_on_days_off: z
            .boolean()
            .default(false)
            .describe("Whether the client likes hard exercises best on days off."),
        })
        .optional()
        .describe(
          "Work that goes by the date and not by the weekday: 4 days on, 3 days off. In its time its free time holds in place of the usual; other_weeks come before it.",
        ),
      away: z
        .array(
          z.union(
            [
              date,
              z.strictObject({
                from: date.describe("The first day away."),
                to: date.describe("The last day away."),
                // biome-ignore lint/suspicious/noThenProperty: the author's word; a string is no thenable
                then: z
                  .enum(["shift", "skip"])
                  .default("shift")
                  .describe(
                    "What becomes of a week without any day for sessions: shift does it a week later and makes the program a week longer; skip leaves it out.",
                  ),
              }),
            ],
            {
              error: "write a date, or from and to",
            },
          ),
        )
        .default([])
        .describe(
          "Days with no session: holidays, days off. A date alone is one day away. The week after more than a week away has fewer sets, as the clinic says.",
        ),
      events: z
        .array(
          z
            .strictObject({
              what: line.describe("Training, match, long run, night shift …"),
              day: day.optional().describe("The weekday, for what comes every week."),
              from: date.optional().describe("The first date of what comes every week."),
              until: date.optional().describe("The last date of what comes every week."),
              on: z.array(date).optional().describe("The dates, for what does not."),
              part: part.describe("Morning, midday or evening."),
              hard: z
                .boolean()
                .default(false)
                .describe(
                  "Whether it counts as a hard bout; no session is laid in its part of the day.",
                ),
              tissues: z.array(word(words.tissues)).default([]).describe("What it loads."),
              clear_before: time
                .optional()
                .describe("Time to keep clear of hard bouts before it, such as 24 h."),
              clear_of: z
                .array(id)
                .min(1)
                .optional()
                .describe(
                  "Which bouts these times mean: qualities (strength, isometric, running …), which count where they load its tissues, and cards. Hard ones if not given.",
                ),
              clear_after: time
                .optional()
                .describe(
                  "Time to keep clear of hard bouts after it, counted from its start, such as 24 h. A hard event that does not say is followed by 24 h without hard work that loads its tissues and needs a day or more itself; 0 h for none.",
                ),
              blocks: z
                .boolean()
                .default(false)
                .describe("Whether there is no free time in that part of the day."),
            })
            .refine((event) => (event.day === undefined) !== (event.on === undefined), {
              error: "give either day or on",
            })
            .refine(
              (event) => event.on === undefined || (event.from ?? event.until) === undefined,
              {
                error: "from and until go with day; with on give the dates alone",
              },
            ),
        )
        .default([])
        .describe("What else loads or fills the week."),
      prefer: z.array(day).default([]).describe("Days the client likes best."),
      few_minutes: time
        .optional()
        .describe("What the client can do on a bad day: the short version fits into it."),
      hours: z
        .strictObject({
          morning: clockTime.default("07:00").describe("When the morning session begins."),
          midday: clockTime.default("13:00").describe("When the midday session begins."),
          evening: clockTime.default("19:00").describe("When the evening session begins."),
        })
        .prefault({})
        .describe(
          "When the parts of the client's day begin, one after the other. Recovery is counted by them. A day may begin in the evening (22:00, 02:00, 06:00 for work at night): it is named by the date on which it begins, and its parts after midnight lie on the next date.",
        ),
    })
    .describe("The client's real week.");
}
