/** Seven weeks that can be checked by hand: the problem and the best that can be done. */
import type { WeekProblem } from "../../../src/week/search/problem.ts";
import { exercise, free, week } from "./support.ts";

export interface HandCase {
  readonly name: string;
  readonly problem: WeekProblem;
  /** Sessions, evenness, fullest day, preference; undefined where it cannot be done. */
  readonly best?: readonly [number, number, number, number];
}

const heavy = exercise("heavy", { minutes: 12, recoveryHours: 48, hard: true, groups: ["calf"] });
const evenings = (minutes: number, days?: readonly number[]) =>
  free(days === undefined ? { part: "evening", minutes } : { part: "evening", minutes, days });

export const HAND_CASES: readonly HandCase[] = [
  {
    name: "12 and 8 minutes fit exactly into evenings of 20",
    problem: week([heavy, exercise("balance", { minutes: 8 })], { freeMinutes: evenings(20) }),
    best: [3, 0, 20, 0],
  },
  {
    name: "one minute more, and they can never share an evening",
    problem: week([heavy, exercise("balance", { minutes: 9 })], { freeMinutes: evenings(20) }),
    best: [6, 0, 12, 0],
  },
  {
    name: "heavy calf work 36 h clear of two runs",
    problem: week(
      [
        exercise("calf", {
          minutes: 15,
          times: { perWeek: 2 },
          recoveryHours: 48,
          clearBefore: [{ hours: 36, events: "any" }],
        }),
        exercise("hip", { minutes: 15, times: { perWeek: 2 }, recoveryHours: 36 }),
      ],
      {
        freeMinutes: free({ part: "morning", minutes: 30, days: [0, 1, 2, 3, 4, 5] }),
        events: [
          { id: "run-1", name: "run", day: 2, part: "morning", hard: false, groups: [] },
          { id: "run-2", name: "run", day: 6, part: "morning", hard: false, groups: [] },
        ],
      },
    ),
    best: [2, 0, 30, 0],
  },
  {
    name: "heavy work in the session of the drills and after them",
    problem: week(
      [
        exercise("mobility", { minutes: 5, times: { perDay: 1 } }),
        exercise("drills", { times: { perWeek: 2 }, recoveryHours: 20 }),
        exercise("heavy", {
          times: { perWeek: 2 },
          recoveryHours: 48,
          sameSessionAs: "drills",
          after: ["drills"],
        }),
      ],
      {
        freeMinutes: free(
          { part: "morning", minutes: 10 },
          { part: "evening", minutes: 20, days: [0, 2, 4] },
        ),
      },
    ),
    best: [9, 0, 25, 0],
  },
  {
    name: "two hard exercises of one group share their sessions",
    problem: week(
      [
        exercise("a", { times: { perWeek: 2 }, recoveryHours: 48, hard: true, groups: ["calf"] }),
        exercise("b", { recoveryHours: 48, hard: true, groups: ["calf"] }),
      ],
      { groupHours: { calf: 36 } },
    ),
    best: [3, 0, 20, 0],
  },
  {
    name: "three days in a row are too few for three sessions 48 h apart",
    problem: week([heavy], { freeMinutes: evenings(30, [0, 1, 2]) }),
  },
  {
    name: "one hard day in a row beside a match leaves too few evenings",
    problem: week(
      [
        exercise("a", { minutes: 15, times: { perWeek: 2 }, recoveryHours: 20, hard: true }),
        exercise("b", { minutes: 20, times: { perWeek: 2 }, recoveryHours: 20, hard: true }),
      ],
      {
        events: [{ id: "match", name: "match", day: 5, part: "midday", hard: true, groups: [] }],
        maxHardDaysInRow: 1,
      },
    ),
  },
];
