/** Remedies of seeded impossible weeks, each compared with every single change and every pair. */
import { expect, test } from "vitest";
import { PARTS } from "../../../src/units/day-parts.ts";
import { withChanges } from "../../../src/week/explain/apply.ts";
import { explainProgram } from "../../../src/week/explain/explain.ts";
import type { Explanation } from "../../../src/week/explain/explain-types.ts";
import { layOutProgram } from "../../../src/week/program/program.ts";
import type { LayoutFailure, ProgramWeeks } from "../../../src/week/program/program-types.ts";
import type { WeekProblem } from "../../../src/week/search/problem.ts";
import { seededWeek } from "../search/seeded.ts";
import { fits } from "./fits.ts";
import { type State, type Step, stateOf, stepsOf } from "./table.ts";
import { weekProgram } from "./week-program.ts";

/** With this variable set there are more weeks, and larger ones. */
const FULL = process.env.PAULATIM_FULL_TESTS !== undefined;
const WEEKS = FULL ? 1000 : 40;
const MOST_EXERCISES = FULL ? 5 : 2;

test(`remedies of ${WEEKS} impossible weeks help, and none is dearer than the least`, {
  timeout: 3_600_000,
}, () => {
  const seen = { least: 0, pairs: 0, larger: 0, none: 0, incomplete: 0, open: 0 };
  const wrong: unknown[] = [];
  for (const { seed, program, failure } of impossibleWeeks()) {
    const explained = explainProgram(program, failure);
    const { least, larger, complete } = explained;
    wrong.push(...unhelpful(explained, program, failure).map((sentence) => ({ seed, sentence })));
    const cost = least[0]?.cost ?? Number.POSITIVE_INFINITY;
    if (least.some((one) => one.cost !== cost)) wrong.push({ seed, "not of one cost": least });
    const truth = leastCost(stateOf(program), failure.problem, cost);
    if (truth !== undefined && truth < cost && complete) wrong.push({ seed, cost, truth });
    seen[least.length > 0 ? "least" : larger.length > 0 ? "larger" : "none"] += 1;
    if (least[0]?.changes.length === 2) seen.pairs += 1;
    if (!complete) seen.incomplete += 1;
    if (truth === undefined) seen.open += 1;
  }
  process.stdout.write(`remedies of ${WEEKS} weeks: ${JSON.stringify(seen)}\n`);
  expect(wrong).toEqual([]);
  expect(seen.open + seen.incomplete).toBeLessThan(WEEKS / 20);
  expect(seen.pairs).toBeGreaterThan(WEEKS / 10);
});

function* impossibleWeeks() {
  for (let seed = 0, weeks = 0; weeks < WEEKS; seed++) {
    const problem = seededWeek(seed, 2 + (seed % (MOST_EXERCISES - 1)), true);
    if (problem.exercises.some(({ times }) => "everyDays" in times)) continue;
    const program = withMore(weekProgram(problem), seed);
    const failure = layOutProgram(program);
    if (failure.status === "laid-out" || failure.status === "malformed") continue;
    weeks += 1;
    yield { seed, program, failure };
  }
}

/** Remedies that do not help the whole program, or not by the rules as they are written here. */
function unhelpful(
  { least, larger }: Explanation,
  program: ProgramWeeks,
  { problem }: LayoutFailure,
): string[] {
  return [...least, ...larger].flatMap(({ changes, sentence }) => {
    const changed = withChanges(program, changes);
    const isLaidOut = layOutProgram(changed).status === "laid-out";
    const takes = changed.days.some((day) =>
      PARTS.some((part) => day.taken?.includes(part) && day.free[part] > 0),
    );
    const helps = isLaidOut && fits(weekOf(stateOf(changed), problem)) !== false;
    return helps && !takes ? [] : [sentence];
  });
}

/**
 * Every second exercise with three sets, so that fewer sets can be among the remedies; and, in most
 * weeks, closed parts that cannot be opened: a shift, school, a match.
 */
function withMore(program: ProgramWeeks, seed: number): ProgramWeeks {
  const [phase] = program.phases;
  const exercises = (phase?.weeks[0]?.exercises ?? []).map((one, e) => {
    const thirds = [one.minutes / 3, (2 * one.minutes) / 3].map(Math.ceil);
    return e % 2 === 0 ? { ...one, minutesBySets: thirds } : one;
  });
  const days = program.days.map((day, index) => ({
    ...day,
    taken: PARTS.filter((part) => {
      const isOpen = day.free[part] > 0;
      return !isOpen && (part === "evening" ? index === seed % 7 : seed % 5 > 0);
    }),
  }));
  return { ...program, days, phases: [{ id: "one", weeks: [{ exercises }] }] };
}

/** The least cost below `limit` that helps; `limit` where there is none; undefined if not known. */
function leastCost(week: State, problem: WeekProblem, limit: number): number | undefined {
  const steps = stepsOf(week);
  const help = (list: readonly Step[]) =>
    fits(
      weekOf(
        list.reduce((state, { make }) => make(state), week),
        problem,
      ),
    );
  const farthest = new Map(steps.map((step) => [step.thing, step]));
  const known = new Map<string, boolean | undefined>();
  // More time and less work never make a week harder: what does not help pulled to the end never does.
  const canHelp = (list: readonly Step[]) => {
    const key = list.map(({ thing }) => thing).join();
    if (!known.has(key)) known.set(key, help(list.map((step) => farthest.get(step.thing) ?? step)));
    return known.get(key);
  };
  const lists = [
    ...steps.map((step) => [step]),
    ...steps.flatMap((a, i) =>
      steps.slice(i + 1).flatMap((b) => (a.thing === b.thing ? [] : [[a, b]])),
    ),
  ].map((list) => ({ list, cost: list.reduce((sum, step) => sum + step.cost, 0) }));
  for (const { list, cost } of lists.sort((a, b) => a.cost - b.cost)) {
    if (cost >= limit) break;
    if (canHelp(list) === false) continue;
    const answer = help(list);
    if (answer === undefined) return undefined;
    if (answer) return cost;
  }
  return limit;
}

function weekOf({ free, exercises }: State, problem: WeekProblem): WeekProblem {
  const { given: _, ...rest } = problem;
  const bare = exercises.map(({ minutesBySets: _sets, times, ...one }) => {
    if ("everyDays" in times) throw new Error("not for every n days");
    return { ...one, times };
  });
  return { ...rest, freeMinutes: free, exercises: bare };
}
