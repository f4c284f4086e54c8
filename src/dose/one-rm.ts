/** One repetition maximum (1RM) from a repetition test, by a named formula with its range of validity. */
import type { Clinic } from "../clinic/schema.ts";

export type FormulaName = Clinic["dosing"]["one_rm"];

export interface Formula {
  readonly name: string;
  /** The formula as printed: w the load, r the repetitions to failure. */
  readonly says: string;
  readonly source: string;
  /** The most repetitions for which it is meant. */
  readonly most: number;
  readonly rangeSource: string;
  /** 1RM as a multiple of the load for 2 and more repetitions; undefined where it has no value. */
  readonly factor: (reps: number) => number;
}

const LINEAR = "Reynolds 2006, J Strength Cond Res 20:584: at most 10 repetitions";
const CAUTION = "common practice; no published range at hand";

/**
 * The formulas, each with its source. Original citations are from memory; the forms were compared
 * with printed collections of them. Ranges: Reynolds 2006 for those that are linear in repetitions.
 */
export const FORMULAS: Readonly<Record<FormulaName, Formula>> = {
  epley: {
    name: "Epley",
    says: "w × (1 + r/30)",
    source: "Epley 1985, Poundage Chart",
    most: 10,
    rangeSource: LINEAR,
    factor: (r) => 1 + r / 30,
  },
  brzycki: {
    name: "Brzycki",
    says: "36 w / (37 − r)",
    source: "Brzycki 1993, JOPERD 64(1):88",
    most: 10,
    rangeSource: LINEAR,
    factor: (r) => 36 / (37 - r),
  },
  lander: {
    name: "Lander",
    says: "100 w / (101.3 − 2.67123 r)",
    source: "Lander 1985, NSCA J 6(6):60",
    most: 10,
    rangeSource: LINEAR,
    factor: (r) => 100 / (101.3 - 2.67123 * r),
  },
  lombardi: {
    name: "Lombardi",
    says: "w × r^0.10",
    source: "Lombardi 1989, Beginning Weight Training",
    most: 10,
    rangeSource: CAUTION,
    factor: (r) => r ** 0.1,
  },
  oconner: {
    name: "O'Conner",
    says: "w × (1 + 0.025 r)",
    source: "O'Conner, Simmons and O'Shea 1989, Weight Training Today",
    most: 10,
    rangeSource: LINEAR,
    factor: (r) => 1 + 0.025 * r,
  },
  mayhew: {
    name: "Mayhew",
    says: "100 w / (52.2 + 41.9 e^(−0.055 r))",
    source: "Mayhew 1992, J Appl Sport Sci Res 6:200",
    most: 15,
    rangeSource: CAUTION,
    factor: (r) => 100 / (52.2 + 41.9 * Math.exp(-0.055 * r)),
  },
  wathen: {
    name: "Wathen",
    says: "100 w / (48.8 + 53.8 e^(−0.075 r))",
    source: "Wathen 1994, Essentials of Strength Training and Conditioning",
    most: 15,
    rangeSource: CAUTION,
    factor: (r) => 100 / (48.8 + 53.8 * Math.exp(-0.075 * r)),
  },
};

/**
 * 1RM as a multiple of the load lifted `reps` times. At one repetition it is the load itself,
 * whatever the formula would print (Epley alone would give 103 %). Undefined where the formula
 * has no positive value: Brzycki from 37 repetitions, Lander from 38.
 */
export function oneRmFactor(formula: FormulaName, reps: number): number | undefined {
  if (!(reps >= 1)) return undefined;
  if (reps === 1) return 1;
  const factor = FORMULAS[formula].factor(reps);
  return Number.isFinite(factor) && factor > 0 ? factor : undefined;
}

/**
 * Above this multiple of the tested load an estimate is not used. A cautious limit of this program,
 * not a published one: so far from the test the formulas differ by more than the load itself.
 */
export const MOST_FACTOR = 2;
