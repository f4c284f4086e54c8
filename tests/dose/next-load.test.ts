/** The next load when a target has been beaten (ACSM 2009: 2 to 10 % more after two sessions). */
import { describe, expect, test } from "vitest";
import { nextLoad } from "../../src/dose/next-load.ts";

const kilos = [{ have: "backpack", loads: [], ladder: { from: 1, upTo: 60, step: 1 } }];
const dumbbells = [{ have: "dumbbell", loads: [4, 6, 8, 10] }];

describe("Ratamess 2009, Med Sci Sports Exerc 41:687", () => {
  test.each([
    ["beaten twice: at most 10 % more", { kg: 20, bodyKg: 0 }, [1, 2], kilos, 22, "more-load"],
    [
      "beaten twice with a body share: at most 10 % of the load moved",
      { kg: 20, bodyKg: 60 },
      [1, 1],
      kilos,
      28,
      "more-load",
    ],
    ["beaten once", { kg: 20, bodyKg: 0 }, [2], kilos, 20, "same"],
    ["beaten, but not in the last session", { kg: 20, bodyKg: 0 }, [2, 2, 0], kilos, 20, "same"],
    ["beaten in the last two of three", { kg: 20, bodyKg: 0 }, [0, 1, 2], kilos, 22, "more-load"],
    ["never", { kg: 20, bodyKg: 0 }, [], kilos, 20, "same"],
    ["not a number", { kg: 20, bodyKg: 0 }, [Number.NaN, 2], kilos, 20, "same"],
    [
      "too coarse: repetitions first",
      { kg: 6, bodyKg: 0 },
      [2, 2],
      dumbbells,
      6,
      "more-repetitions",
    ],
    ["the heaviest there is", { kg: 10, bodyKg: 0 }, [2, 2], dumbbells, 10, "more-repetitions"],
    ["no equipment", { kg: 0, bodyKg: 60 }, [2, 2], [], 0, "more-repetitions"],
    ["from the body alone", { kg: 0, bodyKg: 60 }, [2, 2], kilos, 6, "more-load"],
  ] as const)("%s", (_name, now, over, makes, kg, action) => {
    const next = nextLoad(now, over, makes);
    expect([next.kg, next.action]).toEqual([kg, action]);
    expect(next.provenance.length).toBeGreaterThan(0);
  });
  test.each([
    [0.05, 21],
    [0.5, 22],
    [0.02, 20],
  ])("a step of at most %d, held between 2 and 10 %%", (step, kg) => {
    expect(nextLoad({ kg: 20, bodyKg: 0 }, [2, 2], kilos, step).kg).toBe(kg);
  });
});
