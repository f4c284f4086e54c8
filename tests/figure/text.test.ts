/** The picture in words: base posture, changed contacts, what differs at the end. */

import { describe, expect, test } from "vitest";
import { drawFigure } from "../../src/figure/draw-figure.ts";
import type { FigureSide } from "../../src/figure/format/drawing.ts";
import { figureSchema } from "../../src/figure/format/schema.ts";
import { POSES } from "./poses.ts";

const say = (source: unknown, side: FigureSide = "right") =>
  drawFigure(figureSchema.parse(source), side).alt;
const sayOf = (name: string) => {
  const figure = POSES.get(name);
  return figure === undefined ? "" : drawFigure(figure, "right").alt;
};

describe("words for a picture", () => {
  test.each([
    ["calf raise, both legs", "both heels leave the floor"],
    ["calf raise, both legs", "both ankles pointed down 40°"],
    ["bridge, both legs", "seat leaves the mat"],
    ["sit to stand", "seat leaves the chair"],
    ["side plank", "right hip leaves the mat"],
    ["one-leg balance", "left foot leaves the floor"],
    ["opposite arm and leg", "left hand leaves the mat"],
    ["knee bend lying on the front", "right knee bent 95°"],
    ["wall push-up", "Standing, at a wall."],
  ])("%s: %s", (name, words) => {
    expect(sayOf(name)).toContain(words);
  });

  test("say left and right that agree as both", () => {
    expect(say({ working: ["arms"], poses: [{}, { elbow: 90 }] })).toContain(
      "both elbows bent 90°",
    );
  });

  test("leave out what differs by less than 6°", () => {
    expect(
      say({ working: ["arms"], poses: [{}, { elbow: 90, "shoulder right": 4 }] }),
    ).not.toContain("shoulder");
  });

  test("round to 5°", () => {
    expect(say({ working: ["arms"], poses: [{}, { elbow: 88 }] })).toContain("bent 90°");
  });

  test("a jump leaves the floor", () => {
    const words = say({
      working: ["legs"],
      poses: [
        { lean: 6, knee: 30 },
        { air: 0.05, ankle: -30, knee: 5, rests: { toes: "floor" } },
      ],
    });
    expect(words).toContain("the body leaves the floor");
  });

  test("say nothing twice", () => {
    for (const name of POSES.keys()) {
      const parts = sayOf(name).split(/[.:,] | and /);
      expect(new Set(parts).size).toBe(parts.length);
    }
  });

  test("an override is said as it is written, for the client's side", () => {
    const text = "The right heel rises.";
    expect(say({ working: ["legs"], poses: [{}], text })).toBe(text);
    expect(say({ working: ["legs"], poses: [{}], text }, "left")).toBe("The left heel rises.");
  });
});
