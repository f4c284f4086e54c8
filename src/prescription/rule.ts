/** A rule from a start to a goal, week by week: repetitions first, then sets, then how often, then load. */
import type { DosePart } from "./fields.ts";
import {
  amountAt,
  amountSteps,
  loadAt,
  loadSteps,
  sameAmounts,
  startOfNewSet,
} from "./rule-axes.ts";

/**
 * The dose of each week, from the start in the first week to the goal in the last.
 *
 * The way is cut into small steps and the weeks are spread evenly over them: repetitions (or hold,
 * time, distance, turns) rise to the goal; then a set is added and repetitions start again where the sum
 * is not less than before, so that a new set never makes a leap; then days a week; then load, with
 * whatever falls as load rises. What cannot be cut into steps changes in the last week.
 * Easier weeks (every n-th, never the last) repeat the week before with one set less, or with two
 * thirds of the work where there is one set.
 */
export function followRule(
  from: DosePart,
  goal: DosePart,
  weeks: number,
  options: {
    readonly easierEvery?: number | undefined;
    readonly loadStep?: number | undefined;
  } = {},
): DosePart[] {
  const { easierEvery, loadStep } = options;
  const isEasier = (week: number) =>
    easierEvery !== undefined && week % easierEvery === 0 && week !== weeks;
  const path = pathOf(from, goal, loadStep ?? USUAL_LOAD_STEP);
  const working = Array.from({ length: weeks }, (_, index) => index + 1).filter(
    (w) => !isEasier(w),
  );
  const doses: DosePart[] = [];
  for (let week = 1; week <= weeks; week += 1) {
    const before = doses.at(-1);
    doses.push(isEasier(week) && before ? easier(before) : at(path, working, week));
  }
  return doses;
}

/** The middle of the 2 to 10 % of Ratamess 2009, Med Sci Sports Exerc 41:687. */
const USUAL_LOAD_STEP = 0.05;

function at(path: readonly DosePart[], working: readonly number[], week: number): DosePart {
  const turn = working.indexOf(week);
  const last = path.length - 1;
  const index = working.length === 1 ? last : Math.floor((turn * last) / (working.length - 1));
  return path[index] ?? {};
}

function pathOf(from: DosePart, goal: DosePart, loadStep: number): DosePart[] {
  const path = [from];
  const add = (part: DosePart) => path.push({ ...path.at(-1), ...part });
  const amounts = amountSteps(from, goal);
  for (let step = 1; step <= amounts; step += 1) add(amountAt(from, goal, step / amounts));

  const sets = from.sets ?? goal.sets ?? 1;
  for (let set = sets + 1; set <= (goal.sets ?? sets); set += 1) {
    const start = startOfNewSet(from, goal, set);
    const steps = Math.ceil(amounts * (1 - start));
    add({ sets: set, ...amountAt(from, goal, start) });
    for (let step = 1; step <= steps; step += 1) {
      add(amountAt(from, goal, start + ((1 - start) * step) / steps));
    }
  }

  if (from.per_week !== undefined && goal.per_week !== undefined) {
    for (let days = from.per_week + 1; days <= goal.per_week; days += 1) add({ per_week: days });
  }

  const loads = loadSteps(from, goal, loadStep);
  for (let step = 1; step <= loads; step += 1) add(loadAt(from, goal, step / loads));
  if (!same(path.at(-1), goal)) path.push(goal);
  return path;
}

function easier(dose: DosePart): DosePart {
  if (dose.sets !== undefined && dose.sets > 1) {
    const sets = dose.sets - 1;
    const reps = dose.reps && dose.reps.length > 1 ? dose.reps.slice(0, sets) : dose.reps;
    return { ...dose, sets, ...(reps && { reps }) };
  }
  const less = (amount: number) => Math.max(1, Math.floor((amount * 2) / 3));
  return {
    ...dose,
    ...(dose.reps && { reps: dose.reps.map((r) => ({ low: less(r.low), high: less(r.high) })) }),
    ...(dose.reps === undefined && dose.hold !== undefined && { hold: less(dose.hold) }),
    ...(dose.time !== undefined && { time: less(dose.time) }),
    ...(dose.distance !== undefined && { distance: less(dose.distance) }),
    ...(dose.turns && { turns: { ...dose.turns, times: less(dose.turns.times) } }),
  };
}

/** Whether two doses state the same; amounts by value, all else by its written form. */
function same(a: DosePart | undefined, b: DosePart): boolean {
  if (a === undefined || !sameAmounts(a, b)) return false;
  const fields = new Set([...Object.keys(a), ...Object.keys(b)]) as Set<keyof DosePart>;
  return [...fields].every((field) => JSON.stringify(a[field]) === JSON.stringify(b[field]));
}
