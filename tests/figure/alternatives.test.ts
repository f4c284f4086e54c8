/** What stands for a picture says what a person sees: no angles of joints. */
import { describe, expect, test } from "vitest";
import { readLibrary } from "../../src/cards/read-library.ts";
import { drawFigure } from "../../src/figure/draw-figure.ts";
import { bookletOf, LANGUAGES } from "../gallery/books.ts";
import { PROTOCOLS } from "../support/shipped.ts";
import { DAY, worldWith } from "../support/world.ts";

/** "40°", "90 degrees", "45 Grad", "at right angles of 20". */
const ANGLE = /°|\bdegrees?\b|\bGrad\b|\bangle|\bWinkel/i;
/** A number that is not the number of a frame. */
const NUMBER = /(?<!Picture |Bild )\d/;

const { library } = readLibrary(worldWith(), ["exercises"], DAY);
const drawn = [...library.cards.values()].flatMap(({ card }) =>
  card.figure ? [[card.id, card.figure] as const] : [],
);

test("every card of the library has a picture", () => {
  expect(drawn.length).toBe(library.cards.size);
  expect(drawn.length).toBeGreaterThanOrEqual(52);
});

test.each(drawn)("%s", (_id, figure) => {
  for (const side of ["right", "left", "none"] as const) {
    const { alt } = drawFigure(figure, side);
    expect(alt.length).toBeGreaterThan(15);
    expect(alt).not.toMatch(ANGLE);
    expect(alt).not.toMatch(NUMBER);
  }
});

describe.each(LANGUAGES)("in the booklets, %s", (language) => {
  test.each([...PROTOCOLS])("%s", (course) => {
    const form = { course, paper: "A4", edition: "standard", language } as const;
    const { exercises, easier } = bookletOf(form);
    for (const { figure } of [...exercises, ...easier]) {
      expect(figure?.alt ?? "").not.toMatch(ANGLE);
      expect(figure?.alt ?? "").not.toMatch(NUMBER);
      expect(figure?.captions.length).toBeGreaterThan(0);
    }
  });
});

test.each(["knee bent 90°", "the hip at 45 degrees", "Knie 40 Grad gebeugt"])(
  "%s would be found",
  (words) => {
    expect(words).toMatch(ANGLE);
    expect(words).toMatch(NUMBER);
  },
);
