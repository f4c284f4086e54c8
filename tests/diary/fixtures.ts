/** Diaries to test with: one of a few sessions, and arbitrary ones. */
import fc from "fast-check";
import {
  type Amount,
  byPlan,
  type Diary,
  type DiaryEntry,
  type DiaryExercise,
} from "../../src/diary/entry.ts";
import { isoDate } from "../../src/units/dates.ts";

export const NO_AMOUNT: Amount = { sets: undefined, reps: undefined, kg: undefined };

export const exercise = (over: Partial<DiaryExercise> = {}): DiaryExercise => ({
  card: "heel-raise-one-leg-step",
  title: "Rise up on one leg, heel over a step",
  side: "left",
  done: "yes",
  planned: { sets: 3, reps: 12, kg: 10 },
  real: NO_AMOUNT,
  pain: undefined,
  sudden: undefined,
  ...over,
});

export const entry = (over: Partial<DiaryEntry> = {}): DiaryEntry => ({
  date: "2026-12-01",
  part: "evening",
  week: 1,
  booklet: "2026-11-25 3f9a2c",
  done: "yes",
  doneOn: "2026-12-01",
  short: false,
  effort: 6,
  painAfter: 2,
  painMorning: 1,
  worseMorning: false,
  note: "",
  exercises: [exercise()],
  written: "2026-12-01T18:30:05Z",
  ...over,
});

export const diaryOf = (...entries: readonly DiaryEntry[]): Diary => ({
  plan: "achilles-demo",
  client: "R-0417",
  entries,
});

/** Three sessions: as planned, in part with a note, and not done. */
export const THREE = diaryOf(
  entry(),
  entry({
    date: "2026-12-03",
    done: "part",
    doneOn: "2026-12-04",
    short: true,
    note: 'Sore, then better.\n"Stairs" were fine; knee too.',
    exercises: [
      exercise({ done: "part", real: { sets: 2, reps: 10, kg: 7.5 }, pain: 4 }),
      exercise({
        card: "calf-hold-two-legs",
        title: "Hold on both legs",
        side: "both",
        planned: { sets: 5, reps: undefined, kg: undefined },
        pain: 0,
      }),
    ],
    written: "2026-12-05T07:02:41Z",
  }),
  entry({
    date: "2026-12-05",
    part: "morning",
    done: "no",
    doneOn: undefined,
    effort: undefined,
    painAfter: undefined,
    painMorning: undefined,
    worseMorning: undefined,
    exercises: [exercise({ done: "no" })],
    written: "2026-12-06T09:00:00Z",
  }),
);

const maybe = <T>(value: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> =>
  fc.option(value, { nil: undefined });

/** What clients and spreadsheets trip over, among any characters at all. */
const HOSTILE = [
  "=1+1",
  "+",
  "-5",
  "@SUM(A1)",
  "'",
  "''=x",
  " =x",
  "\t",
  "\r",
  "\n",
  "\r\n",
  '"',
  '""',
  ",",
  ";",
  "\uFEFF",
  "\u202Eabc",
  "שלום",
  "مرحبا",
  "👩🏽‍🦽",
  "1,5",
  "\u2028",
  "\0",
  "\u001b[31m",
  "PAULATIM1:1/1:",
];

const hostileText = (longest: number): fc.Arbitrary<string> =>
  fc
    .array(fc.oneof(fc.constantFrom(...HOSTILE), fc.string({ unit: "binary", maxLength: 8 })), {
      maxLength: 8,
    })
    .map((pieces) => pieces.join("").slice(0, longest))
    .filter((text) => !/\p{Surrogate}/u.test(text));

const someText = hostileText(400).filter((text) => text !== "");
const score = maybe(
  fc.oneof(
    fc.integer({ min: 0, max: 10 }),
    fc.integer({ min: 0, max: 20 }).map((n) => n / 2),
  ),
);
const day = fc.integer({ min: 18_000, max: 24_000 }).map(isoDate);
const instant = fc
  .integer({ min: 1_500_000_000, max: 2_500_000_000 })
  .map((seconds) => new Date(seconds * 1000).toISOString().replace(".000Z", "Z"));
const done = fc.constantFrom("yes", "part", "no");
const id = fc.stringMatching(/^[a-z0-9]{1,12}(-[a-z0-9]{1,12}){0,3}$/);
const amount: fc.Arbitrary<Amount> = fc.record({
  sets: maybe(fc.integer({ min: 0, max: 100 })),
  reps: maybe(fc.integer({ min: 0, max: 1000 })),
  kg: maybe(
    fc.oneof(
      fc.integer({ min: 0, max: 4000 }).map((quarters) => quarters / 4),
      fc.double({ min: 0.001, max: 1000, noNaN: true }),
    ),
  ),
});

const anyExercise: fc.Arbitrary<DiaryExercise> = fc.record({
  card: id,
  title: someText,
  side: fc.constantFrom("left", "right", "each", "both", "none"),
  done,
  planned: amount,
  real: amount,
  pain: score,
  sudden: maybe(fc.boolean()),
});

const anyEntry: fc.Arbitrary<DiaryEntry> = fc.record({
  date: day,
  part: fc.constantFrom("morning", "midday", "evening"),
  week: fc.integer({ min: 1, max: 520 }),
  booklet: someText,
  done,
  doneOn: maybe(day),
  short: fc.boolean(),
  effort: score,
  painAfter: score,
  painMorning: score,
  worseMorning: maybe(fc.boolean()),
  note: hostileText(2000),
  exercises: fc.array(anyExercise, { maxLength: 4 }),
  written: instant,
});

const entries = fc
  .uniqueArray(anyEntry, { maxLength: 6, selector: ({ date, part }) => `${date} ${part}` })
  .map((list) => [...list].sort(byPlan));

/** Any diary that a phone could hold. */
export const anyDiary: fc.Arbitrary<Diary> = fc.record({ plan: id, client: someText, entries });

/** Diaries of one client that share sessions: few days, few instants. */
export const anyOfOneClient: fc.Arbitrary<Diary> = fc
  .uniqueArray(
    fc
      .tuple(
        anyEntry,
        fc.integer({ min: 20_000, max: 20_002 }).map(isoDate),
        fc.constantFrom("2026-12-01T18:30:05Z", "2026-12-01T18:30:06Z"),
      )
      .map(([one, date, written]) => ({ ...one, date, written })),
    { maxLength: 6, selector: ({ date, part }) => `${date} ${part}` },
  )
  .map((list) => diaryOf(...[...list].sort(byPlan)));
