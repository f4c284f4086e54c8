/** A clinic's settings: who it is, how it is reached, and the limits it works within. */
import * as z from "zod";
import { WEEKDAYS } from "../units/day-parts.ts";
import { MASS_UNITS } from "../units/mass.ts";
import { id, line, percent, time } from "../units/quantities.ts";
import { LANGUAGES, usualLocale } from "../words/languages.ts";

const limits = z.strictObject({
  exercises_per_session: z
    .number()
    .int()
    .min(1)
    .max(20)
    .default(4)
    .describe(
      "More exercises in one session give a warning (Bachmann 2018, Phys Rehab Kur Med 28:20).",
    ),
  session: time.prefault("45 min").describe("A longer session gives a warning."),
  reading_grade: z
    .number()
    .min(1)
    .max(20)
    .default(6)
    .describe(
      "The highest reading grade of client texts (Kincaid 1975); harder ones give a warning.",
    ),
  short_session: time
    .prefault("10 min")
    .describe("What a client can do on a bad day, where the plan does not say."),
  measure_age: time.prefault("6 weeks").describe("An older measure gives a warning."),
  week_growth: percent
    .prefault("30 %")
    .describe(
      "More growth of the work of one tissue, in one quality, from one week to the next gives a warning.",
    ),
  load_step: percent
    .prefault("10 %")
    .describe(
      "A larger step of load gives a warning (Ratamess 2009, Med Sci Sports Exerc 41:687).",
    ),
});

const dosing = z.strictObject({
  one_rm: z
    .enum(["epley", "brzycki", "lander", "lombardi", "oconner", "mayhew", "wathen"])
    .default("epley")
    .describe("The formula for one repetition maximum (1RM) from a repetition test."),
  rm_to_load: z
    .enum(["same-formula", "nsca-chart", "nsca-textbook"])
    .default("same-formula")
    .describe(
      "How a repetition maximum becomes a share of 1RM: the same formula, or a printed table.",
    ),
  deviation: z
    .enum(["population", "sample"])
    .default("population")
    .describe("The standard deviation in weekly monotony."),
  fast_part: z
    .number()
    .min(0)
    .max(2)
    .default(1)
    .describe("Seconds that an X in a tempo counts as."),
  last_rest: z
    .boolean()
    .default(false)
    .describe("Whether the rest after the last set counts as session time."),
  changeover: time
    .prefault("1 min")
    .describe("Time from one exercise to the next where nothing else is said."),
});

const look = z.strictObject({
  logo: z
    .strictObject({
      file: line
        .regex(/^[A-Za-z0-9][\w.-]*\.(svg|png|jpe?g)$/, {
          error: "name an SVG, PNG or JPEG file beside clinic.yaml",
        })
        .describe("An SVG, PNG or JPEG file beside clinic.yaml."),
      alt: line.describe("What it shows, for people who cannot see it."),
    })
    .optional()
    .describe("The clinic's logo, for the cover."),
  colour: z
    .string()
    .regex(/^#[0-9a-f]{6}$/i, { error: 'write a colour as "#15455a", in quotation marks' })
    .optional()
    .describe("The colour of headings and marks, dark enough to be read on white."),
});

const week = z.strictObject({
  prefer: z
    .array(z.enum(WEEKDAYS))
    .default([])
    .describe("Days the clinic likes best for sessions; a client's own wishes come first."),
  hard_days_in_row: z
    .number()
    .int()
    .min(1)
    .max(7)
    .optional()
    .describe("The most days in a row with hard work, the client's own events counted."),
  ease_after_away: percent
    .refine((share) => share > 0 && share <= 1, { error: "write more than 0 % and at most 100 %" })
    .prefault("67 %")
    .describe(
      "Share of the sets in the first week back after more than a week away, rounded down to one set at least; 100 % eases nothing. Common practice.",
    ),
});

const pain = z
  .strictObject({
    comfortable: z.number().min(0).max(10).default(2).describe("Up to here pain needs no thought."),
    during: z.number().min(0).max(10).default(5).describe("The most pain during an exercise."),
    after: z.number().min(0).max(10).default(5).describe("The most pain in the hours after."),
    call: z
      .number()
      .min(1)
      .max(10)
      .default(8)
      .describe(
        "From this pain on a client stops and calls the same day, whatever the exercise. Common practice.",
      ),
  })
  .refine((rule) => rule.comfortable <= rule.during, {
    error: "comfortable cannot be more than during",
    path: ["comfortable"],
  })
  .refine((rule) => Math.max(rule.during, rule.after) < rule.call, {
    error: "call has to be more than during and after",
    path: ["call"],
  });

/** What stands in clinic.yaml. */
export const clinicSettings = z.strictObject({
  name: line.describe("The clinic's name."),
  phone: line.describe("The number a client calls."),
  hours: line.describe("When somebody answers, such as Mon–Fri 8:00–18:00."),
  out_of_hours: line.describe("Whom to call when the clinic is closed."),
  emergency: line.describe("The emergency number."),
  address: line.optional().describe("Street and place."),
  email: line.optional().describe("For questions that can wait."),
  phone_page: z
    .url({ protocol: /^https$/, error: "write an address that begins with https://" })
    .max(150, { error: "write an address of at most 150 letters" })
    .optional()
    .describe(
      "The clinic's own page, the same for all clients, on which they read how to get their booklet on their phone. Its address stands before the diary, also as a code to photograph.",
    ),
  language: z
    .enum(LANGUAGES)
    .default("en")
    .describe(
      "Language of the booklet: its own words, and the translations of cards and protocols.",
    ),
  locale: z
    .string()
    .regex(/^[a-z]{2,3}(-[A-Z]{2})?$/, { error: "write a locale as en-GB" })
    .optional()
    .describe("How dates and numbers are written; if left out, en-GB or de-DE by the language."),
  units: z
    .enum(MASS_UNITS)
    .default("kg")
    .describe("The unit of loads on pages and screens: kg or lb. Plans may write either."),
  paper: z.enum(["A4", "Letter"]).default("A4").describe("Paper size of the PDF."),
  shipped_cards: z
    .boolean()
    .default(true)
    .describe(
      "Whether the cards and protocols that come with the program are part of the library.",
    ),
  at_home: z
    .array(id)
    .default([])
    .describe(
      "Equipment that the clinic takes for granted in every home, besides what the vocabulary does: words of the vocabulary. It stands under “You need”, and a plan need not list it.",
    ),
  limits: limits.prefault({}).describe("Limits beyond which the program warns."),
  dosing: dosing.prefault({}).describe("How doses are computed."),
  look: look.prefault({}).describe("The clinic's own look."),
  week: week.prefault({}).describe("How sessions are laid out in a week."),
  pain: pain.prefault({}).describe("What monitored pain means here, 0 to 10."),
});

/** The settings with the locale of their language where they name none. */
export const clinicSchema = clinicSettings
  .refine(({ language, locale }) => locale === undefined || locale.startsWith(language), {
    error: "write a locale of the clinic's language, such as en-GB or de-AT",
    path: ["locale"],
  })
  .transform((clinic) => ({ ...clinic, locale: clinic.locale ?? usualLocale(clinic.language) }));

export type Clinic = z.infer<typeof clinicSchema>;
