/** What a plan says: one client, what was found and measured, their week, and what they do differently. */

import * as z from "zod";
import { type Vocabulary, word } from "../cards/vocabulary.ts";
import { painRule } from "../pain/rule.ts";
import { dosePart } from "../prescription/fields.ts";
import { isDate } from "../units/dates.ts";
import { PARTS, WEEKDAYS } from "../units/day-parts.ts";
import { date, distance, id, line, mass, speed, time, weekSpan } from "../units/quantities.ts";

const side = z.enum(["left", "right", "both"]);
const score = z.number().min(0).max(10);

const client = z.strictObject({
  name: line.describe("The client's name, printed as typed."),
  reference: line.describe("The clinic's reference for this client."),
  born: date.optional().describe("Date of birth."),
  body_mass: mass.optional().describe("Body mass, such as 72 kg."),
});

const onSide = side.describe("The side tested: left, right, or both together.");
const onDate = date.describe("The day of the measure.");
const card = id.describe("The card of the exercise tested.");

const measure = z
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

const makesLoad = z
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

const clockTime = z
  .string({ error: 'write a clock time as "07:30", in quotation marks' })
  .regex(/^([01]\d|2[0-3]):[0-5]\d$/, { error: 'write a clock time as "07:30"' });

/** For which weeks of the course a change is; for all of them where it says nothing. */
const changeSpan = {
  phase: id.optional().describe("In this phase only."),
  weeks: weekSpan
    .optional()
    .describe("In these weeks of the phase only, counted from its first week: 3 or 2-5."),
};

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

const until = z
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

const part = z.enum(PARTS);
const day = z.enum(WEEKDAYS);

/**
 * What stops a plan unless it is answered: a load below its target, a dose beyond what was measured, an
 * age that a course or a card is not meant for.
 */
const ACCEPTABLE = ["load-short", "dose-beyond-measure", "age-outside"] as const;

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
      .array(
        z.union([flag, z.strictObject({ flag: flag.describe("The health fact."), until })], {
          error: "name a flag, or give flag and until",
        }),
      )
      .default([])
      .describe(
        "Health facts that matter: a word alone for one that holds throughout, or { flag: WORD, until: … }. A card that a flag rules out is an error in the weeks in which it holds; its words of care stay as long.",
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
    week: z
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
            from: date.describe(
              "The first day of work of the rota; before it the usual week holds.",
            ),
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
      .describe("The client's real week."),
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
      .describe("Exercises this client does besides."),
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
      .strictObject({ by: line.describe("The clinician."), on: date.describe("The day.") })
      .optional()
      .describe("Sign-off. Without it every page prints as a draft."),
  });
}

export type Plan = z.infer<ReturnType<typeof planSchema>>;
export type Measure = Plan["measures"][number];
export type PlanEquipment = Plan["equipment"][number];
export type Flag = Plan["flags"][number];
/** A point in time of a plan: a date, or where a week of the course or a phase begins. */
export type Moment = z.infer<typeof moment>;
/** What a plan may change of its protocol, each a list of changes. */
export type ChangeKind = "leave_out" | "swap" | "add" | "redose";
