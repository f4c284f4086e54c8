/** Courses of an invented clinic, for what no shipped one has: phases side by side, days apart that differ, ties. */

interface OwnCourse {
  /** The front matter. */
  readonly text: string;
  readonly id: string;
}

const SOURCES = `sources: [{ cite: common practice, for: all of it }]
reviewed: { by: Robin Ashdown, on: 2026-11-01, again: 2028-11-01 }`;

export const OWN_COURSES: readonly OwnCourse[] = [
  {
    id: "own-hardly-any",
    text: `id: own-hardly-any
title: A little every third day
clinical: A stand for a plan that adds all of its work
condition: Anything
age: { from: 25, to: 60 }
standing: Not tested.
pain: monitored
phases:
  - id: only
    title: A little
    aim: You keep moving.
    weeks: 6
    exercises:
      - { card: chair-stand, dose: { sets: 2, reps: 8, rest: 1 min, effort: 3, every: 3 days } }
    move_on: [You can do it.]
${SOURCES}
`,
  },
  {
    id: "own-side-by-side",
    text: `id: own-side-by-side
title: Two parts that overlap
clinical: Phases side by side
condition: Anything
standing: Not tested.
pain: monitored
phases:
  - id: first
    title: The first part
    aim: You begin.
    weeks: 4
    exercises:
      - { card: chair-stand, dose: { sets: 2, reps: 8, rest: 1 min, effort: 4, every: 2 days } }
      - { card: heel-raise-two-legs-floor, same_session_as: chair-stand, dose: { sets: 2, reps: 12, rest: 1 min, effort: 4, every: 2 days } }
      - card: bridge-two-legs
        dose: { sets: 2, reps: 10, rest: 1 min, effort: 4, per_week: 2 }
        weeks: { "1": none, "3-4": { per_week: 3, effort: 7 } }
    move_on:
      - "You can do {bridge-two-legs} and {chair-stand} with ease."
      - { say: You can kneel for a minute., not_for: [cannot-kneel, falls-risk] }
      - { say: We have shown you how to go up., of: step-up }
  - id: second
    title: The second part
    aim: You do more.
    weeks: 4
    from_week: 3
    exercises:
      - { card: step-up, when: "You can do {chair-stand} ten times in a row.", dose: { sets: 2, reps: 8, rest: 1 min, effort: 6, every: 4 days } }
      - { card: side-bridge, dose: { sets: 2, hold: 20 s, rest: 1 min, effort: 5, per_week: 3 } }
      - { card: front-bridge, after: [side-bridge], main: false, dose: { sets: 1, hold: 20 s, effort: 5, per_week: 2 } }
    move_on: [You can do it.]
    go_back: [It hurts more.]
${SOURCES}
`,
  },
];
