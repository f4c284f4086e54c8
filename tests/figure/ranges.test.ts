/** The ranges of joints in pictures against published norms. */
import { describe, expect, test } from "vitest";
import { type LimbAngle, limbAngle } from "../../src/figure/body/body.ts";
import { RANGES } from "../../src/figure/body/ranges.ts";

/** Most degrees by which a picture may go beyond the norm. */
const WIDENED = 15;

/** "Normal Values for Range of Motion of Joints", Merck Manual, 2014 table: joint, motion, norm. */
const MERCK: readonly [LimbAngle, "most" | "least", number][] = [
  ["hipFlexion", "most", 125],
  ["hipFlexion", "least", -15],
  ["hipAbduction", "most", 45],
  ["hipAbduction", "least", -45],
  ["hipRotation", "most", 45],
  ["hipRotation", "least", -45],
  ["knee", "most", 130],
  ["ankle", "most", 20],
  ["ankle", "least", -50],
  ["shoulderFlexion", "least", -50],
  ["shoulderRotation", "most", 90],
  ["shoulderRotation", "least", -90],
  ["elbow", "most", 160],
];

/** American Academy of Orthopaedic Surgeons 1965, neutral-zero norms. */
const AAOS: readonly [LimbAngle, "most" | "least", number][] = [
  ["hipFlexion", "most", 120],
  ["hipFlexion", "least", -30],
  ["hipAbduction", "least", -30],
  ["knee", "most", 135],
  ["ankle", "least", -50],
  ["shoulderFlexion", "most", 180],
  ["shoulderFlexion", "least", -60],
  ["shoulderAbduction", "most", 180],
  ["elbow", "most", 150],
  ["elbow", "least", 0],
  ["wrist", "least", -80],
];

const rangeOf = (angle: LimbAngle, end: "most" | "least") =>
  RANGES[limbAngle(angle, "right")]?.[end === "least" ? 0 : 1] ?? Number.NaN;

describe("ranges", () => {
  test.each(MERCK)(
    "%s: %s is not more than 15° beyond the Merck Manual's %d°",
    (angle, end, norm) => {
      expect(Math.abs(rangeOf(angle, end))).toBeLessThanOrEqual(Math.abs(norm) + WIDENED);
    },
  );

  test.each(AAOS)(
    "%s: %s is within 15° of the AAOS norm of %d° (from memory)",
    (angle, end, norm) => {
      expect(Math.abs(rangeOf(angle, end) - norm)).toBeLessThanOrEqual(WIDENED);
    },
  );

  test("are the same on both sides", () => {
    for (const angle of ["hipFlexion", "knee", "shoulderRotation", "bladeUp"] as const) {
      expect(RANGES[limbAngle(angle, "left")]).toEqual(RANGES[limbAngle(angle, "right")]);
    }
  });
});
