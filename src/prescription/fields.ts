/** The fields of a dose, the same in cards, protocols and plans, and what they mean. */
import * as z from "zod";
import { kilograms } from "../units/mass.ts";
import { distance, percent as percentField, tempo, time } from "../units/quantities.ts";

/** Repetitions of one set, or of each set in turn; low equals high unless a range is given. */
export type Repetitions = readonly { readonly low: number; readonly high: number }[];

const REPS_HELP = "write repetitions as 12, as a range 6-8, or as one number a set: [12, 10, 8]";

const repsOfASet = z
  .union([z.number().int().min(1).max(200), z.string().regex(/^\d{1,3}-\d{1,3}$/)], {
    error: REPS_HELP,
  })
  .transform((value) => {
    if (typeof value === "number") return { low: value, high: value };
    const [low = 1, high = low] = value.split("-").map(Number);
    return { low, high };
  })
  .refine(({ low, high }) => low >= 1 && low <= high && high <= 200, { error: REPS_HELP });

/** One entry: the same in every set. Several: one for each set. */
const reps = z
  .union([z.array(repsOfASet).min(2).max(20), repsOfASet], { error: REPS_HELP })
  .transform((value): Repetitions => (Array.isArray(value) ? value : [value]));

/** Work and easy in turn, so many times in a set, the easy part after the last work too. Times in seconds. */
export interface Turns {
  readonly work: number;
  readonly easy: number;
  readonly times: number;
}

const POSITIVE = "give more than 0; leave the field out if there is none";
const length = time.refine((seconds) => seconds > 0, { error: POSITIVE });

const turns = z.strictObject({
  work: length.describe("How long the work lasts each time; of a run, the running."),
  easy: length.describe("How long the easy part after it lasts; of a run, the walking."),
  times: z
    .number({ error: "write the number of turns as a whole number" })
    .int()
    .min(1)
    .max(60)
    .describe("How many times in a set."),
});

/** What the load of an exercise is aimed at. */
export type Target =
  | { readonly kind: "rm"; readonly reps: number }
  | { readonly kind: "percent-1rm"; readonly share: number }
  | { readonly kind: "percent-hold"; readonly share: number }
  | { readonly kind: "percent-reps"; readonly share: number }
  /** A share of the top speed, and the least of it where a range is stated. */
  | { readonly kind: "percent-speed"; readonly share: number; readonly least?: number }
  /** A speed, or a range of speeds, in metres a second, and how it is written. */
  | {
      readonly kind: "speed";
      readonly fast: number;
      readonly slow: number;
      readonly as: "km/h" | "m/s" | "min/km";
    }
  | { readonly kind: "reserve"; readonly reps: number }
  | { readonly kind: "load"; readonly kg: number }
  | { readonly kind: "band"; readonly level: number };

const TARGET_HELP =
  "write a target as 15 RM, 70 % of 1RM, 70 % of best hold, 70 % of most reps, 70 % of top speed, 75-80 % of top speed, 9-10 km/h, 5:30-6:00 min/km, 2 in reserve, 10 kg, 25 lb or band 3";

const percent = (n = ""): number => Number(n) / 100;
/** Seconds a kilometre, written as minutes and seconds, as metres a second. */
const ofPace = (min = "", s = ""): number => 1000 / (60 * Number(min) + Number(s));

const TARGETS: readonly (readonly [RegExp, (...groups: readonly string[]) => Target])[] = [
  [/^(\d{1,2}) ?RM$/, (reps) => ({ kind: "rm", reps: Number(reps) })],
  [/^(\d{1,3}(?:\.\d+)?) ?% of 1RM$/, (n) => ({ kind: "percent-1rm", share: percent(n) })],
  [/^(\d{1,3}(?:\.\d+)?) ?% of best hold$/, (n) => ({ kind: "percent-hold", share: percent(n) })],
  [/^(\d{1,3}(?:\.\d+)?) ?% of most reps$/, (n) => ({ kind: "percent-reps", share: percent(n) })],
  [
    /^(?:(\d{1,3}(?:\.\d+)?)-)?(\d{1,3}(?:\.\d+)?) ?% of top speed$/,
    (least, n) => ({
      kind: "percent-speed",
      share: percent(n),
      ...(least !== undefined && { least: percent(least) }),
    }),
  ],
  [
    /^(?:(\d{1,3}(?:\.\d+)?)-)?(\d{1,3}(?:\.\d+)?) ?(km\/h|m\/s)$/,
    (slow, fast, unit) => {
      const as = unit === "m/s" ? unit : "km/h";
      const metres = (n: string | undefined) => Number(n) / (as === "km/h" ? 3.6 : 1);
      return { kind: "speed", as, fast: metres(fast), slow: metres(slow ?? fast) };
    },
  ],
  [
    /^(\d{1,2}):([0-5]\d)(?:-(\d{1,2}):([0-5]\d))? ?min\/km$/,
    (min, s, slowMin, slowS) => {
      const fast = ofPace(min, s);
      const slow = slowMin === undefined ? fast : ofPace(slowMin, slowS);
      return { kind: "speed", as: "min/km", fast, slow };
    },
  ],
  [/^(\d{1,2}) in reserve$/, (reps) => ({ kind: "reserve", reps: Number(reps) })],
  [
    /^(\d+(?:\.\d+)?) ?(kg|g|lb)$/,
    (amount, unit = "") => ({ kind: "load", kg: kilograms(Number(amount), unit) }),
  ],
  [/^band ([1-8])$/, (level) => ({ kind: "band", level: Number(level) })],
];

/** Faster than anybody has run: 45 km/h, in metres a second. */
const NOBODY = 12.5;

const target = z
  .string({ error: TARGET_HELP })
  .refine((text) => readTarget(text) !== undefined, { error: TARGET_HELP })
  .transform((text) => readTarget(text) as Target);

function readTarget(text: string): Target | undefined {
  for (const [pattern, make] of TARGETS) {
    const match = pattern.exec(text);
    if (!match) continue;
    const made = make(...match.slice(1));
    return isPossible(made) ? made : undefined;
  }
  return undefined;
}

function isPossible(target: Target): boolean {
  switch (target.kind) {
    case "rm":
      return target.reps >= 1;
    case "speed":
      return isRange(target.slow, target.fast) && target.fast <= NOBODY;
    case "percent-speed":
      return isRange(target.least ?? target.share, target.share) && target.share <= 1;
    case "percent-1rm":
    case "percent-hold":
    case "percent-reps":
      return target.share > 0 && target.share <= 1;
    case "reserve":
    case "load":
    case "band":
      return true;
  }
}

/** Both above 0, the lower one first. */
const isRange = (low: number, high: number): boolean => low > 0 && low <= high;

const doseFields = {
  sets: z
    .number({ error: "write the number of sets as a whole number" })
    .int()
    .min(1)
    .max(20)
    .describe("Number of sets."),
  reps: reps.describe(
    "Repetitions in a set: a number (12), a range (6-8), or one number a set ([12, 10, 8]).",
  ),
  hold: length.describe(
    "How long each repetition is held, such as 45 s; without repetitions, the one hold of a set.",
  ),
  time: length.describe(
    "How long a set lasts, for work that is timed and not counted: 60 s, 8 min.",
  ),
  distance: distance
    .refine((metres) => metres > 0, { error: POSITIVE })
    .describe("How far a set goes, such as 20 m; with repetitions, how far each of them goes."),
  turns: turns.describe(
    "Two things in turn in a set, such as running and walking: { work: 3 min, easy: 2 min, times: 6 }.",
  ),
  tempo: tempo.describe(
    "Seconds of lowering, pause at the bottom, lifting, pause at the top: 3-0-3-0. X: as fast as is safe. Only with repetitions.",
  ),
  rest: time.describe("Rest between two sets, such as 2 min."),
  rest_reps: time.describe("Rest between two repetitions, such as 10 s. Only with repetitions."),
  effort: z
    .number({ error: "write the effort as a number from 0 to 10" })
    .min(0)
    .max(10)
    .describe("How hard it should feel, from 0 (rest) to 10 (the most you can)."),
  target: target.describe(
    "What the load is aimed at: 15 RM, 70 % of 1RM, 70 % of best hold, 70 % of most reps, 70 % of top speed or 75-80 % of top speed, a speed or pace (9-10 km/h, 5:30-6:00 min/km), 2 in reserve, 10 kg, 25 lb, band 3. Percent may have decimals: 67.5 % of 1RM.",
  ),
  per_week: z
    .number({ error: "write times a week as a whole number from 1 to 7" })
    .int()
    .min(1)
    .max(7)
    .describe("How many days a week. Give one of per_week, per_day and every."),
  per_day: z
    .number({ error: "write times a day as a whole number from 1 to 3" })
    .int()
    .min(1)
    .max(3)
    .describe("How many times each day, every day of the week."),
  every: z
    .string()
    .regex(/^[2-7] days$/, { error: "write the rhythm as 2 days, 3 days …" })
    .transform((text) => Number(text[0]))
    .describe("Every how many days, such as 2 days (every second day)."),
} as const;

/** Any part of a dose: what a protocol's row, a plan's change or a card may state. */
export const dosePart = z.strictObject(doseFields).partial();

export type DosePart = z.infer<typeof dosePart>;

/** The most by which the distance of a week may grow. */
export const distanceGrowth = z
  .string({ error: "write a share in percent, such as 15 %" })
  .regex(/^(\d+(?:\.\d+)?) ?%$/, { error: "write a share in percent, such as 15 %", abort: true })
  .refine((text) => Number.parseFloat(text) > 0 && Number.parseFloat(text) <= 20, {
    error: "write more than 0 % and at most 20 %",
  })
  .pipe(percentField)
  .optional()
  .describe(
    "The most by which the distance of a week may grow over the week before, at most 20 %; running is measured as one. More stops the plan, unless it is accepted. Of card and protocol the lower holds; a plan states its own. Where nobody states one, more than 20 % of running is a warning.",
  );
