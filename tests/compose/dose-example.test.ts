/** The words of a dose explained by an example: every shape of a set, in both languages, once a booklet. */
import { describe, expect, test } from "vitest";
import { makeBooklet } from "../../src/booklet.ts";
import { loadWords } from "../../src/words/load-words.ts";
import { PROTOCOLS, shippedCourse } from "../support/shipped.ts";
import { madeSmall } from "../support/small-course.ts";
import { DAY, english } from "../support/world.ts";

const explained = (dose: string, card?: string, words = english()) => {
  const { made, workspace } = madeSmall({
    says: `dose: ${dose}`,
    ...(card === undefined ? {} : { card }),
  });
  return makeBooklet(made, workspace, words, DAY).phases[0]?.explained.work;
};

describe("a dose in plain words", () => {
  test.each([
    [
      "{ sets: 3, reps: 15, rest: 30 s, per_week: 2 }",
      "“3 sets of 15”: do it 15 times, then rest 30 seconds. Do that 3 times in all.",
    ],
    [
      "{ sets: 2, reps: 8-12, per_week: 2 }",
      "“2 sets of 8 to 12”: do it 8 to 12 times, then rest. Do that twice in all.",
    ],
    ["{ sets: 1, reps: 10, per_week: 2 }", "“1 set of 10”: do it 10 times. That is all of it."],
    [
      "{ sets: 3, reps: [12, 10, 8], rest: 2 min, per_week: 2 }",
      "“3 sets: 12, 10, 8”: do as many as the first number says, then rest 2 minutes. Go on with the next number.",
    ],
  ])("%s", (dose, says) => {
    expect(explained(dose)).toBe(says);
  });

  test.each([
    [
      "{ sets: 5, hold: 45 s, rest: 2 min, per_week: 2 }",
      "“5 holds of 45 seconds”: hold it for 45 seconds, then rest 2 minutes. Do that 5 times in all.",
    ],
    [
      "{ sets: 2, reps: 10, hold: 5 s, per_week: 2 }",
      "“2 sets of 10 holds, 5 seconds each”: hold 5 seconds, let go, 10 times in a row, then rest. Do that twice in all.",
    ],
    [
      "{ sets: 3, time: 1 min, per_week: 2 }",
      "“3 times 1 minute”: keep at it for 1 minute, then rest. Do that 3 times in all.",
    ],
  ])("%s", (dose, says) => {
    expect(explained("{}", dose)).toBe(says);
  });

  test("in German", () => {
    expect(
      explained(
        "{ sets: 3, reps: 15, rest: 30 s, per_week: 2 }",
        undefined,
        loadWords("de", "de-DE"),
      ),
    ).toBe("„3 Sätze zu 15“: 15-mal üben, dann 30 Sekunden Pause. Das 3-mal insgesamt.");
  });
});

test.each(PROTOCOLS)(
  "%s explains a dose once, and effort on the first page that asks for it",
  (protocol) => {
    const { made, workspace } = shippedCourse(protocol);
    const { phases } = makeBooklet(made, workspace, english(), DAY);
    expect(phases.map(({ explained: { work } }) => work !== undefined)).toEqual(
      phases.map((_, at) => at === 0),
    );
    const asks = phases.map(({ rows }) =>
      rows.some(({ doses }) => doses.some(({ effort }) => effort !== undefined)),
    );
    const first = asks.indexOf(true);
    expect(phases.map(({ explained: { effort } }) => effort !== undefined)).toEqual(
      phases.map((_, at) => at === first),
    );
    for (const { explained } of phases) {
      for (const number of explained.effort?.numbers ?? []) {
        expect(number).toBeGreaterThanOrEqual(0);
        expect(number).toBeLessThanOrEqual(10);
      }
    }
  },
);
