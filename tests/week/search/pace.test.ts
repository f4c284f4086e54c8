/** How far the search has to go for ten exercises, in nodes, which no machine changes. */
import { expect, test } from "vitest";
import { NODE_LIMIT, solveWeek } from "../../../src/week/search/solve.ts";
import { verifyPlacement } from "../../../src/week/search/verify.ts";
import { seededWeek } from "./seeded.ts";

test("ten exercises are nearly always settled, half of them in a few thousand nodes", () => {
  const nodes: number[] = [];
  let unknown = 0;
  for (let seed = 0; seed < 100; seed++) {
    const problem = seededWeek(seed, 10, seed % 2 === 1);
    const answer = solveWeek(problem);
    nodes.push(answer.nodes);
    if (answer.status !== "unknown") continue;
    unknown += 1;
    // A week that is not proven best still keeps every rule.
    expect(answer.found).toBeDefined();
    if (answer.found) expect(verifyPlacement(problem, answer.found.placement)).toEqual([]);
  }
  nodes.sort((a, b) => a - b);
  expect(nodes[50]).toBeLessThan(5000);
  expect(nodes[90]).toBeLessThan(NODE_LIMIT / 2);
  expect(unknown).toBeLessThanOrEqual(3);
}, 60_000);

test("a limit that is reached is unknown, never impossible", () => {
  for (let seed = 0; seed < 60; seed++) {
    const problem = seededWeek(seed, 6, seed % 2 === 1);
    const truth = solveWeek(problem).status;
    for (const nodeLimit of [1, 10, 100, 1000]) {
      const { status } = solveWeek(problem, { nodeLimit });
      expect([truth, "unknown"]).toContain(status);
    }
  }
});
