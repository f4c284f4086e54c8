/** Random plans: everything that a plan may say, drawn from a number, so that most of them can be made. */
import { stringify } from "yaml";
import { addDays } from "../surfaces/calendar-days.ts";
import { type Random, randomFrom } from "../surfaces/random.ts";
import { type Course, courseWeeks } from "./asked.ts";
import { answered, changed, extended } from "./draw-changes.ts";
import { bornOf, cardsOf, flagsOf, measuresOf, thingsOf } from "./draw-client.ts";
import { weekOf } from "./draw-week.ts";
import { COURSES } from "./library.ts";
import type { PlanText } from "./plan-text.ts";

export interface RandomPlan {
  readonly seed: number;
  readonly course: Course;
  readonly plan: PlanText;
  /** The plan's file. */
  readonly text: string;
}

const ACCEPTED = ["load-short", "load-light", "dose-beyond-measure", "age-outside"];

/** The plan of a seed. Plans whose seeds follow one another go through the courses in turn. */
export function planOf(seed: number): RandomPlan {
  const random = randomFrom(seed);
  const course = COURSES[seed % COURSES.length] as Course;
  const plan = drawn(seed, course, random);
  return { seed, course, plan, text: `---\n${stringify(plan)}---\n\nA note.\n` };
}

function drawn(seed: number, course: Course, random: Random): PlanText {
  const starts = addDays("2026-10-05", random.whole(0, 480));
  const born = bornOf(starts, random);
  const before = addDays(starts, -3);
  const whole: PlanText = {
    id: `plan-${seed}`,
    client: {
      name: "Ines Halloway",
      reference: "TC-2",
      ...(born !== undefined && { born }),
      body_mass: `${random.whole(48, 112)} kg`,
    },
    clinician: "Robin Ashdown",
    protocol: course.id,
    starts,
    extend: extended(course, random),
    side: random.one(["left", "right", "both"]),
    stage: "Able to bear load",
    irritability: "low",
    flags: [],
    goals: [{ what: "Walk to the harbour", now: 3, want: 8, on: before }],
    measures: [],
    equipment: [],
    week: { free: {}, away: [], events: [] },
    leave_out: [],
    swap: [],
    add: [],
    redose: [],
    accept: [],
    signed: { by: "Robin Ashdown", on: before },
  };
  const cut = random.chance(0.35) ? { weeks: random.whole(1, courseWeeks(whole, course)) } : {};
  const short = { ...whole, ...cut };
  const flagged = { ...short, flags: flagsOf(short, course, random) };
  const work = changed(answered(flagged, course, random), course, random);
  const asked = cardsOf(work, course).map(({ id }) => id);
  const equipped = {
    ...work,
    equipment: thingsOf(work, course, random),
    measures: measuresOf(work, course, random),
    accept: random.chance(0.96)
      ? [course.id, ...asked].flatMap((card) =>
          ACCEPTED.map((code) => ({ code, card, why: "Seen by us." })),
        )
      : [],
  };
  return { ...equipped, week: weekOf(equipped, course, random) };
}
