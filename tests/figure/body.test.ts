/** The body's measures against the published tables. */
import { describe, expect, test } from "vitest";
import {
  ANGLES,
  LENGTH,
  limbAngle,
  limbSegment,
  MASS,
  SEGMENT,
} from "../../src/figure/body/body.ts";
import { coordinate, place } from "../../src/figure/body/kinematics.ts";
import { massCentre } from "../../src/figure/body/masses.ts";
import { SIDES } from "../../src/figure/format/words.ts";

/** Drillis & Contini 1966, as printed in Winter, Biomechanics and Motor Control of Human Movement, fig. 4.1. */
const DRILLIS_CONTINI: readonly [keyof typeof LENGTH, number][] = [
  ["ankleHeight", 0.039],
  ["kneeHeight", 0.285],
  ["hipHeight", 0.53],
  ["shoulderHeight", 0.818],
  ["upperArm", 0.186],
  ["forearm", 0.146],
];

/** Dempster, as in Winter, table 4.1: share of body mass; mass centre from the proximal end. */
const DEMPSTER: readonly [keyof typeof MASS, number, number][] = [
  ["hand", 0.006, 0.506],
  ["forearm", 0.016, 0.43],
  ["upperArm", 0.028, 0.436],
  ["foot", 0.0145, 0.5],
  ["shank", 0.0465, 0.433],
  ["thigh", 0.1, 0.433],
];

describe("lengths", () => {
  test.each(DRILLIS_CONTINI)("%s is %f of body height (Drillis & Contini 1966)", (name, share) => {
    expect(LENGTH[name]).toBe(share);
  });

  test("shank, thigh and trunk are the differences of the heights", () => {
    expect(LENGTH.shank).toBeCloseTo(0.285 - 0.039, 10);
    expect(LENGTH.thigh).toBeCloseTo(0.53 - 0.285, 10);
    expect(LENGTH.trunk).toBeCloseTo(0.818 - 0.53, 10);
  });
});

describe("masses", () => {
  test.each(DEMPSTER)(
    "%s has %f of the mass, at %f (Dempster, as in Winter)",
    (name, share, at) => {
      expect(MASS[name]).toEqual({ share, at });
    },
  );

  test("pelvis, abdomen and thorax together have the trunk's .497 (Dempster, as in Winter)", () => {
    expect(MASS.pelvis.share + MASS.abdomen.share + MASS.thorax.share).toBeCloseTo(0.497, 10);
  });

  test("all segments together are the whole body", () => {
    const limbs = MASS.hand.share + MASS.forearm.share + MASS.upperArm.share;
    const legs = MASS.foot.share + MASS.shank.share + MASS.thigh.share;
    expect(0.497 + MASS.head.share + 2 * (limbs + legs)).toBeCloseTo(1, 2);
  });
});

describe("standing", () => {
  const angles = new Float64Array(ANGLES);
  angles[1] = LENGTH.hipHeight;
  const frames = place(angles);

  test("the mass centre is between 55 and 57 % of body height (published range for women and men)", () => {
    const height = massCentre(frames, 1);
    expect(height).toBeGreaterThanOrEqual(0.55);
    expect(height).toBeLessThanOrEqual(0.57);
  });

  test("the mass centre is in the middle plane", () => {
    expect(massCentre(frames, 2)).toBeCloseTo(0, 12);
  });

  test.each([
    ["shank", LENGTH.kneeHeight],
    ["foot", LENGTH.ankleHeight],
    ["upperArm", LENGTH.shoulderHeight],
  ] as const)("the %s begins at its published height", (segment, height) => {
    for (const side of SIDES) {
      expect(coordinate(frames, limbSegment(segment, side), [0, 0, 0], 1)).toBeCloseTo(height, 10);
    }
  });

  test("the top of the head is at body height", () => {
    const top = coordinate(frames, SEGMENT.head, [-0.006, 0.116, 0], 1) + 0.057;
    expect(Math.abs(top - 1)).toBeLessThan(0.002);
  });

  test("angles of the two sides do not share a place", () => {
    expect(limbAngle("hipFlexion", "right")).not.toBe(limbAngle("hipFlexion", "left"));
  });
});
