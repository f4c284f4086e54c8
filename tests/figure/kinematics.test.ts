/** Forward kinematics against a general computation with 4×4 matrices, on random poses. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  ANGLE,
  ANGLES,
  LENGTH,
  type LimbAngle,
  limbAngle,
  limbSegment,
  SEGMENT,
} from "../../src/figure/body/body.ts";
import { BALL_X, BALL_Y, coordinate, place } from "../../src/figure/body/kinematics.ts";
import { type BodySide, SIDES } from "../../src/figure/format/words.ts";

type Matrix = readonly (readonly number[])[];

const product = (a: Matrix, b: Matrix): Matrix =>
  a.map((row) => [0, 1, 2, 3].map((j) => row.reduce((sum, v, k) => sum + v * (b[k]?.[j] ?? 0), 0)));

const chain = (...matrices: Matrix[]): Matrix => matrices.reduce(product);

const shift = (x: number, y: number, z: number): Matrix => [
  [1, 0, 0, x],
  [0, 1, 0, y],
  [0, 0, 1, z],
  [0, 0, 0, 1],
];

/** Rotation about an axis through the origin by Rodrigues' formula. */
function turn(axis: readonly [number, number, number], degrees: number): Matrix {
  const t = (degrees * Math.PI) / 180;
  const [x, y, z] = axis;
  const [c, s, v] = [Math.cos(t), Math.sin(t), 1 - Math.cos(t)];
  return [
    [c + x * x * v, x * y * v - z * s, x * z * v + y * s, 0],
    [y * x * v + z * s, c + y * y * v, y * z * v - x * s, 0],
    [z * x * v - y * s, z * y * v + x * s, c + z * z * v, 0],
    [0, 0, 0, 1],
  ];
}

const rx = (degrees: number) => turn([1, 0, 0], degrees);
const ry = (degrees: number) => turn([0, 1, 0], degrees);
const rz = (degrees: number) => turn([0, 0, 1], degrees);

/** Every segment's frame, by its number. */
function oracle(a: Float64Array): Map<number, Matrix> {
  const at = (index: number) => a[index] as number;
  const frames = new Map<number, Matrix>();
  const pelvis = chain(
    shift(at(ANGLE.x), at(ANGLE.y), at(ANGLE.z)),
    rz(-at(ANGLE.lean)),
    rx(at(ANGLE.roll)),
  );
  const half = chain(
    rz(-at(ANGLE.trunkForward) / 2),
    rx(at(ANGLE.trunkSide) / 2),
    ry(-at(ANGLE.trunkTurn) / 2),
  );
  const abdomen = chain(pelvis, shift(0, 0.062, 0), half);
  const thorax = chain(abdomen, shift(0, 0.157 - 0.062, 0), half);
  const head = chain(
    thorax,
    shift(0, LENGTH.neck - 0.157, 0),
    rz(-at(ANGLE.neckForward)),
    rx(at(ANGLE.neckSide)),
    ry(-at(ANGLE.neckTurn)),
  );
  frames.set(SEGMENT.pelvis, pelvis).set(SEGMENT.abdomen, abdomen);
  frames.set(SEGMENT.thorax, thorax).set(SEGMENT.head, head);
  for (const side of SIDES) limbs(frames, at, side, pelvis, thorax);
  return frames;
}

function limbs(
  frames: Map<number, Matrix>,
  at: (index: number) => number,
  side: BodySide,
  pelvis: Matrix,
  thorax: Matrix,
) {
  const k = side === "right" ? 1 : -1;
  const of = (angle: LimbAngle) => at(limbAngle(angle, side));
  const ball = (flexion: number, abduction: number, rotation: number) =>
    chain(rz(flexion), rx(-k * abduction), ry(-k * rotation));
  const thigh = chain(
    pelvis,
    shift(0, 0, k * 0.052),
    ball(of("hipFlexion"), of("hipAbduction"), of("hipRotation")),
  );
  const shank = chain(thigh, shift(0, -0.245, 0), rz(-of("knee")));
  const foot = chain(shank, shift(0, -0.246, 0), rz(of("ankle")));
  const toes = chain(foot, shift(BALL_X, BALL_Y, 0), rz(of("toes")));
  const radians = Math.PI / 180;
  const raised = Math.max(of("shoulderFlexion"), of("shoulderAbduction"));
  const rise = 0.022 * Math.min(1, Math.max(0, (raised - 30) / 150));
  const [forward, up] = [of("bladeForward") * radians, of("bladeUp") * radians];
  const upperArm = chain(
    thorax,
    shift(0, 0.288 - 0.157 + rise, 0),
    shift(
      0.096 * Math.sin(forward),
      0.096 * Math.sin(up),
      k * (0.012 + 0.096 * Math.cos(forward) * Math.cos(up)),
    ),
    ball(of("shoulderFlexion"), of("shoulderAbduction"), of("shoulderRotation")),
  );
  const forearm = chain(upperArm, shift(0, -0.186, 0), rz(of("elbow")));
  const hand = chain(forearm, shift(0, -0.146, 0), rz(of("wrist")));
  const all = { thigh, shank, foot, toes, upperArm, forearm, hand };
  for (const [name, frame] of Object.entries(all)) {
    frames.set(limbSegment(name as keyof typeof all, side), frame);
  }
}

const poses = fc
  .array(fc.double({ min: -170, max: 170, noNaN: true }), { minLength: ANGLES, maxLength: ANGLES })
  .map((values) => Float64Array.from(values, (v, i) => (i < 3 ? v / 170 : v)));

describe("forward kinematics", () => {
  test("agrees with a general matrix computation on random poses", () => {
    fc.assert(
      fc.property(poses, (angles) => {
        const frames = place(angles);
        for (const [segment, frame] of oracle(angles)) {
          for (const offset of [
            [0, 0, 0],
            [0.1, -0.2, 0.3],
          ] as const) {
            for (let axis = 0; axis < 3; axis += 1) {
              const row = frame[axis] ?? [];
              const wanted =
                (row[0] ?? 0) * offset[0] +
                (row[1] ?? 0) * offset[1] +
                (row[2] ?? 0) * offset[2] +
                (row[3] ?? 0);
              expect(coordinate(frames, segment, offset, axis)).toBeCloseTo(wanted, 9);
            }
          }
        }
      }),
      { numRuns: 200 },
    );
  });

  test.each([
    ["hip flexion brings the knee forward", "hipFlexion", "shank", 0, 1],
    ["hip abduction brings the right knee to the right", "hipAbduction", "shank", 2, 1],
    ["shoulder flexion brings the elbow forward", "shoulderFlexion", "forearm", 0, 1],
    [
      "shoulder abduction brings the right elbow to the right",
      "shoulderAbduction",
      "forearm",
      2,
      1,
    ],
    ["knee flexion brings the foot back", "knee", "foot", 0, -1],
    ["elbow flexion brings the hand forward", "elbow", "hand", 0, 1],
    [
      "a shoulder blade drawn forward brings the shoulder forward",
      "bladeForward",
      "upperArm",
      0,
      1,
    ],
  ] as const)("%s", (_name, angle, segment, axis, sign) => {
    const angles = new Float64Array(ANGLES);
    const before = coordinate(place(angles), limbSegment(segment, "right"), [0, 0, 0], axis);
    angles[limbAngle(angle, "right")] = 20;
    const after = coordinate(place(angles), limbSegment(segment, "right"), [0, 0, 0], axis);
    expect(Math.sign(after - before)).toBe(sign);
  });
});
