/** Seven weeks with known answers. */
import { describe, expect, test } from "vitest";
import { solveWeek } from "../../../src/week/search/solve.ts";
import { verifyPlacement } from "../../../src/week/search/verify.ts";
import { HAND_CASES } from "./cases.ts";

describe("weeks that can be checked by hand", () => {
  test.each(HAND_CASES.map((one) => [one.name, one] as const))("%s", (_, { problem, best }) => {
    const answer = solveWeek(problem);
    if (best === undefined) {
      expect(answer.status).toBe("impossible");
      return;
    }
    if (answer.status !== "solved") throw new Error(answer.status);
    const { sessions, evenness, fullestDay, preference } = answer.objective;
    expect([sessions, evenness, fullestDay, preference]).toEqual(best);
    expect(verifyPlacement(problem, answer.placement)).toEqual([]);
  });
});
