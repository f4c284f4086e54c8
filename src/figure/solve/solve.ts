/** Finds the free angles of a pose: damped least squares (Levenberg 1944, Marquardt 1963) with a numeric Jacobian. */
import { ANGLE, type Angles } from "../body/body.ts";
import { coordinate, type Frames, place } from "../body/kinematics.ts";
import { massCentre } from "../body/masses.ts";
import { RANGES } from "../body/ranges.ts";
import type { Problem } from "./problem.ts";

export interface Solution {
  readonly angles: Angles;
  readonly cost: number;
}

/** The pull to the posture it comes from, per degree, and how much a joint out of range weighs. */
const PULL = 0.01;
const OUT_OF_RANGE = 0.5;
const BALANCE = 60;
const PASSES = [1, 0.2, 0.05] as const;
const MOST_STEPS = 25;
const MOST_TURN = 25;
const MOST_SHIFT = 0.3;

/**
 * Solves a pose. `start` holds stated angles as they are to be; `rest` is the posture that free
 * angles are pulled to.
 */
export function solve(problem: Problem, start: Angles, rest: Angles): Solution {
  const work = new Work(problem, Float64Array.from(start), rest);
  let cost = 0;
  for (const weight of PASSES) cost = work.descend(weight);
  return { angles: work.angles, cost };
}

class Work {
  readonly angles: Angles;
  readonly #problem: Problem;
  readonly #rest: Angles;
  readonly #n: number;
  readonly #m: number;
  readonly #frames: Frames;
  readonly #residual: Float64Array;
  readonly #moved: Float64Array;
  readonly #jacobian: Float64Array;

  constructor(problem: Problem, angles: Angles, rest: Angles) {
    this.#problem = problem;
    this.angles = angles;
    this.#rest = rest;
    this.#n = problem.unknowns.length;
    this.#m = problem.rows.length + (problem.soles.length > 0 ? 1 : 0);
    this.#frames = place(angles);
    this.#residual = new Float64Array(this.#m);
    this.#moved = new Float64Array(this.#m);
    this.#jacobian = new Float64Array(this.#m * this.#n);
  }

  /** Goes downhill with one weight of the pull; the cost reached. */
  descend(weight: number): number {
    let damping = 1e-3;
    let cost = this.#cost(this.#residual, weight);
    for (let step = 0; step < MOST_STEPS; step += 1) {
      this.#differentiate();
      const { matrix, gradient } = this.#normal(weight);
      let gained = 0;
      for (let attempt = 0; attempt < 6; attempt += 1) {
        const change = solveSymmetric(matrix, gradient, this.#n, damping);
        const before = Float64Array.from(this.angles);
        this.#move(change);
        const next = this.#cost(this.#moved, weight);
        if (next < cost) {
          gained = cost - next;
          cost = next;
          this.#residual.set(this.#moved);
          damping = Math.max(1e-9, damping / 6);
          break;
        }
        this.angles.set(before);
        damping *= 8;
      }
      if (gained <= 1e-7 + 1e-5 * cost) break;
    }
    return cost;
  }

  #cost(into: Float64Array, weight: number): number {
    this.#measure(into);
    let sum = 0;
    for (const value of into) sum += value * value;
    for (const index of this.#problem.unknowns) {
      const pull = this.#pull(index, weight);
      const excess = this.#excess(index);
      sum += pull * pull + excess * excess;
    }
    return sum;
  }

  #measure(into: Float64Array) {
    place(this.angles, this.#frames);
    const { rows, soles, axis } = this.#problem;
    for (let i = 0; i < rows.length; i += 1) {
      const row = rows[i] as (typeof rows)[number];
      const { point, from } = row;
      let value = coordinate(this.#frames, point.segment, point.offset, row.axis) - row.target;
      if (from) value -= coordinate(this.#frames, from.segment, from.offset, row.axis);
      into[i] = value * row.weight;
    }
    if (soles.length === 0) return;
    let middle = 0;
    for (const { segment, offset } of soles) {
      middle += coordinate(this.#frames, segment, offset, axis) / soles.length;
    }
    into[rows.length] = (massCentre(this.#frames, axis) - middle) * BALANCE;
  }

  #pull(index: number, weight: number): number {
    return (
      stiffness(index) * weight * ((this.angles[index] as number) - (this.#rest[index] as number))
    );
  }

  #excess(index: number): number {
    const [least, most] = RANGES[index] as readonly [number, number];
    const value = this.angles[index] as number;
    const over = value > most ? value - most : value < least ? value - least : 0;
    return OUT_OF_RANGE * over;
  }

  #differentiate() {
    const { unknowns } = this.#problem;
    for (let j = 0; j < this.#n; j += 1) {
      const index = unknowns[j] as number;
      const by = index <= ANGLE.z ? 1e-6 : 1e-4;
      const value = this.angles[index] as number;
      this.angles[index] = value + by;
      this.#measure(this.#moved);
      this.angles[index] = value;
      for (let i = 0; i < this.#m; i += 1) {
        this.#jacobian[i * this.#n + j] =
          ((this.#moved[i] as number) - (this.#residual[i] as number)) / by;
      }
    }
  }

  /** The normal matrix and the downhill gradient, pull and range included. */
  #normal(weight: number) {
    const n = this.#n;
    const jacobian = this.#jacobian;
    const matrix = new Float64Array(n * n);
    const gradient = new Float64Array(n);
    for (let i = 0; i < this.#m; i += 1) {
      const at = i * n;
      for (let j = 0; j < n; j += 1) {
        const left = jacobian[at + j] as number;
        if (left === 0) continue;
        gradient[j] = (gradient[j] as number) - left * (this.#residual[i] as number);
        for (let k = 0; k <= j; k += 1) {
          matrix[j * n + k] = (matrix[j * n + k] as number) + left * (jacobian[at + k] as number);
        }
      }
    }
    for (let j = 0; j < n; j += 1) {
      const index = this.#problem.unknowns[j] as number;
      const slope = stiffness(index) * weight;
      const excess = this.#excess(index);
      matrix[j * n + j] =
        (matrix[j * n + j] as number) + slope * slope + (excess === 0 ? 0 : OUT_OF_RANGE ** 2);
      gradient[j] =
        (gradient[j] as number) - slope * this.#pull(index, weight) - OUT_OF_RANGE * excess;
    }
    return { matrix, gradient };
  }

  #move(change: Float64Array) {
    const { unknowns } = this.#problem;
    for (let j = 0; j < this.#n; j += 1) {
      const index = unknowns[j] as number;
      const most = index <= ANGLE.z ? MOST_SHIFT : MOST_TURN;
      const by = Math.max(-most, Math.min(most, change[j] as number));
      this.angles[index] = (this.angles[index] as number) + by;
    }
  }
}

function stiffness(index: number): number {
  if (index <= ANGLE.z) return 0;
  if (index <= ANGLE.roll) return 0.6 * PULL;
  return index <= ANGLE.neckTurn ? 6 * PULL : PULL;
}

/** Solves the damped symmetric system by Cholesky; the lower half of `matrix` is read. */
function solveSymmetric(matrix: Float64Array, right: Float64Array, n: number, damping: number) {
  const lower = new Float64Array(n * n);
  const out = new Float64Array(n);
  for (let i = 0; i < n; i += 1) {
    for (let j = 0; j <= i; j += 1) {
      let sum = matrix[i * n + j] as number;
      if (i === j) sum += damping * (sum + 1e-6);
      for (let k = 0; k < j; k += 1) {
        sum -= (lower[i * n + k] as number) * (lower[j * n + k] as number);
      }
      lower[i * n + j] =
        i === j ? Math.sqrt(Math.max(sum, 1e-12)) : sum / (lower[j * n + j] as number);
    }
  }
  for (let i = 0; i < n; i += 1) {
    let sum = right[i] as number;
    for (let k = 0; k < i; k += 1) sum -= (lower[i * n + k] as number) * (out[k] as number);
    out[i] = sum / (lower[i * n + i] as number);
  }
  for (let i = n - 1; i >= 0; i -= 1) {
    let sum = out[i] as number;
    for (let k = i + 1; k < n; k += 1) sum -= (lower[k * n + i] as number) * (out[k] as number);
    out[i] = sum / (lower[i * n + i] as number);
  }
  return out;
}
