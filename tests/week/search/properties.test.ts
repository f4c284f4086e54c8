/** What holds for every week: answers keep the rules, and writing it differently changes nothing. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { objectiveOf } from "../../../src/week/search/objective.ts";
import type { WeekProblem } from "../../../src/week/search/problem.ts";
import { solveWeek } from "../../../src/week/search/solve.ts";
import { verifyPlacement } from "../../../src/week/search/verify.ts";
import { seededWeek } from "./seeded.ts";

const weeks = fc
  .tuple(fc.integer({ min: 0, max: 1_000_000 }), fc.integer({ min: 1, max: 6 }), fc.boolean())
  .map(([seed, count, tight]) => seededWeek(seed, count, tight));

describe("every week", () => {
  test("that is solved keeps every rule and comes to the objective it claims", () => {
    fc.assert(
      fc.property(weeks, (problem) => {
        const answer = solveWeek(problem);
        if (answer.status !== "solved") return;
        expect(verifyPlacement(problem, answer.placement)).toEqual([]);
        expect(objectiveOf(problem, answer.placement)).toEqual(answer.objective);
      }),
      { numRuns: 300, seed: 1 },
    );
  });

  test("stays possible when open slots get more minutes, and never needs more sessions", () => {
    fc.assert(
      fc.property(
        weeks,
        fc.array(fc.nat(30), { minLength: 21, maxLength: 21 }),
        (problem, more) => {
          const before = solveWeek(problem);
          if (before.status !== "solved") return;
          const freeMinutes = problem.freeMinutes.map((m, t) => (m > 0 ? m + (more[t] ?? 0) : m));
          const after = solveWeek({ ...problem, freeMinutes });
          expect(after.status).toBe("solved");
          if (after.status !== "solved") return;
          const first = (o: typeof after.objective) => o.moved * 100 + o.sessions;
          expect(first(after.objective)).toBeLessThanOrEqual(first(before.objective));
        },
      ),
      { numRuns: 150, seed: 2 },
    );
  });

  test("comes to the same with other ids, in another order", () => {
    fc.assert(
      fc.property(weeks, (problem) => {
        const first = solveWeek(problem);
        const second = solveWeek(renamed(problem));
        expect(second.status).toBe(first.status);
        if (first.status !== "solved" || second.status !== "solved") return;
        expect(second.objective).toEqual(first.objective);
      }),
      { numRuns: 150, seed: 3 },
    );
  });

  test("gives the same placement twice", () => {
    fc.assert(
      fc.property(weeks, (problem) => {
        expect(solveWeek(problem)).toEqual(solveWeek(problem));
      }),
      { numRuns: 50, seed: 4 },
    );
  });
});

/** The same week with ids whose order is turned around, written backwards. */
function renamed(problem: WeekProblem): WeekProblem {
  const ids = problem.exercises.map((one) => one.id).sort();
  const name = (id: string) => `x${String(99 - ids.indexOf(id)).padStart(2, "0")}`;
  return {
    ...problem,
    exercises: problem.exercises
      .map((one) => ({
        ...one,
        id: name(one.id),
        ...(one.sameSessionAs === undefined ? {} : { sameSessionAs: name(one.sameSessionAs) }),
        ...(one.after === undefined ? {} : { after: one.after.map(name) }),
      }))
      .reverse(),
    given: (problem.given ?? []).map((bout) => ({ ...bout, exercise: name(bout.exercise) })),
    ...(problem.previous === undefined
      ? {}
      : { previous: new Map([...problem.previous].map(([id, slots]) => [name(id), slots])) }),
  };
}
