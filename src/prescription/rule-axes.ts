/** What can grow by small steps in a rule: amounts (repetitions, hold, time, distance) and load. */

import { ceilTo, floorTo } from "../units/rounding.ts";
import type { DosePart, Repetitions, Target, Turns } from "./fields.ts";

const LENGTHS = ["hold", "time", "distance"] as const;
/** A long hold, time or distance grows in at most this many steps. */
const MOST_STEPS = 10;

/** Number of steps in which the amounts that rise go from start to goal; 0 where none rises. */
export function amountSteps(from: DosePart, goal: DosePart): number {
  const reps = rising(from, goal)
    ? Math.max(
        ...pairs(from.reps, goal.reps).map(([a, b]) => Math.max(b.low - a.low, b.high - a.high)),
      )
    : 0;
  const lengths = LENGTHS.map((field) =>
    Math.min(MOST_STEPS, Math.ceil(rise(from[field], goal[field]))),
  );
  return Math.max(0, reps, ...lengths, turnSteps(from.turns, goal.turns));
}

/** The rising amounts at a part of the way, 0 to 1, rounded down to whole units (fives between fives). */
export function amountAt(from: DosePart, goal: DosePart, way: number): DosePart {
  const part: { -readonly [K in keyof DosePart]: DosePart[K] } = {};
  if (rising(from, goal)) {
    part.reps = pairs(from.reps, goal.reps).map(([a, b]) => ({
      low: between(a.low, b.low, way, 1),
      high: between(a.high, b.high, way, 1),
    }));
  }
  for (const field of LENGTHS) {
    const a = from[field];
    const b = goal[field];
    if (a !== undefined && b !== undefined && b > a) {
      part[field] = between(a, b, way, unitOf(a, b));
    }
  }
  if (from.turns && goal.turns) part.turns = turnsAt(from.turns, goal.turns, way);
  return part;
}

/** Turns go their way in one: half a minute of work or of ease a step, or one turn. */
const TURN_STEP_S = 30;

function turnSteps(from: Turns | undefined, goal: Turns | undefined): number {
  if (!from || !goal) return 0;
  const far = (a: number, b: number, step: number) => Math.ceil(Math.abs(b - a) / step);
  const work = far(from.work, goal.work, TURN_STEP_S);
  const easy = far(from.easy, goal.easy, TURN_STEP_S);
  return Math.min(MOST_STEPS, Math.max(work, easy, far(from.times, goal.times, 1)));
}

/** Turns at a part of the way: work and times rounded down, ease up, so that none is harder than the way. */
function turnsAt(from: Turns, goal: Turns, way: number): Turns {
  if (way >= 1) return goal;
  const at = (a: number, b: number) => a + (b - a) * way;
  return {
    work: floorTo(at(from.work, goal.work), unitOf(from.work, goal.work)),
    easy: ceilTo(at(from.easy, goal.easy), unitOf(from.easy, goal.easy)),
    times: floorTo(at(from.times, goal.times), 1),
  };
}

/**
 * Where on the way of amounts a newly added set begins: with `set` sets, as little as gives no less
 * work than the set count before it at the goal; never under the start.
 */
export function startOfNewSet(from: DosePart, goal: DosePart, set: number): number {
  const a = from.reps?.[0]?.high;
  const b = goal.reps?.[0]?.high;
  const ends: readonly (readonly [number | undefined, number | undefined, boolean])[] = [
    rising(from, goal) ? [a, b, true] : [undefined, undefined, true],
    ...LENGTHS.map((field) => [from[field], goal[field], false] as const),
  ];
  for (const [start, end, counted] of ends) {
    if (start === undefined || end === undefined || end <= start) continue;
    const unit = counted ? 1 : unitOf(start, end);
    const least = Math.max(start, ceilTo((end * (set - 1)) / set, unit));
    return Math.min(1, (least - start) / (end - start));
  }
  return 1;
}

/** Number of steps of load: of target and effort, and of amounts and sets that fall meanwhile. */
export function loadSteps(from: DosePart, goal: DosePart, loadStep: number): number {
  const effort = Math.ceil(Math.abs((goal.effort ?? 0) - (from.effort ?? goal.effort ?? 0)));
  const falls = falling(from, goal)
    ? Math.max(
        ...pairs(from.reps, goal.reps).map(([a, b]) => Math.max(a.low - b.low, a.high - b.high)),
      )
    : 0;
  return Math.max(
    0,
    falls,
    from.effort === undefined ? 0 : effort,
    targetSteps(from, goal, loadStep),
  );
}

/** Target, effort and falling repetitions at a part of the way; never heavier than the way itself. */
export function loadAt(from: DosePart, goal: DosePart, way: number): DosePart {
  const part: { -readonly [K in keyof DosePart]: DosePart[K] } = {};
  const target = targetAt(from.target, goal.target, way);
  if (target) part.target = target;
  if (from.effort !== undefined && goal.effort !== undefined) {
    part.effort = floorTo(from.effort + (goal.effort - from.effort) * way, 0.5);
    if (way === 1) part.effort = goal.effort;
  }
  if (falling(from, goal)) {
    part.reps = pairs(from.reps, goal.reps).map(([a, b]) => ({
      low: between(a.low, b.low, way, 1),
      high: between(a.high, b.high, way, 1),
    }));
  }
  return part;
}

/** Whether the amounts of two doses are the same. */
export function sameAmounts(a: DosePart, b: DosePart): boolean {
  return a.sets === b.sets && LENGTHS.every((field) => a[field] === b[field]);
}

function targetSteps({ target: a }: DosePart, { target: b }: DosePart, loadStep: number): number {
  if (!a || !b || a.kind !== b.kind) return 0;
  const [from, to] = [amountOf(a), amountOf(b)];
  if (from === to) return 0;
  if (a.kind === "rm" || a.kind === "reserve" || a.kind === "band") return Math.abs(from - to);
  const whole = from > 0 && loadStep > 0 ? Math.ceil(Math.abs(to / from - 1) / loadStep - 1e-9) : 1;
  return Math.min(52, Math.max(1, whole));
}

function targetAt(a: Target | undefined, b: Target | undefined, way: number): Target | undefined {
  if (!a || !b || a.kind !== b.kind) return undefined;
  if (way >= 1) return b;
  const now = amountOf(a) + (amountOf(b) - amountOf(a)) * way;
  // A repetition maximum and a reserve are lighter the higher they are; all else the lower.
  if (a.kind === "rm" || a.kind === "reserve") return { kind: a.kind, reps: -floorTo(-now, 1) };
  if (a.kind === "load") return { kind: a.kind, kg: floorTo(now, 0.1) };
  if (a.kind === "band") return { kind: a.kind, level: floorTo(now, 1) };
  if (a.kind === "speed" && b.kind === "speed") {
    const slow = Math.min(now, a.slow + (b.slow - a.slow) * way);
    return { kind: b.kind, as: b.as, fast: now, slow };
  }
  if (a.kind === "percent-speed" && b.kind === "percent-speed") {
    const share = floorTo(now, 0.01);
    const [from, to] = [a.least ?? a.share, b.least ?? b.share];
    const least = Math.min(share, floorTo(from + (to - from) * way, 0.01));
    return { kind: a.kind, share, ...(least < share && { least }) };
  }
  if (a.kind === "speed" || a.kind === "percent-speed") return undefined;
  return { kind: a.kind, share: floorTo(now, 0.01) };
}

function amountOf(target: Target): number {
  if (target.kind === "rm" || target.kind === "reserve") return target.reps;
  if (target.kind === "load") return target.kg;
  if (target.kind === "speed") return target.fast;
  return target.kind === "band" ? target.level : target.share;
}

function rising(from: DosePart, goal: DosePart): boolean {
  const both = pairs(from.reps, goal.reps);
  return (
    both.length > 0 &&
    both.every(([a, b]) => b.low >= a.low && b.high >= a.high) &&
    both.some(([a, b]) => b.low > a.low || b.high > a.high)
  );
}

function falling(from: DosePart, goal: DosePart): boolean {
  const both = pairs(from.reps, goal.reps);
  return (
    both.length > 0 && rising({ reps: both.map(([, b]) => b) }, { reps: both.map(([a]) => a) })
  );
}

type SetReps = Repetitions[number];

/** Repetitions set by set; empty where the two lists differ in length and cannot be compared. */
function pairs(a: Repetitions | undefined, b: Repetitions | undefined): [SetReps, SetReps][] {
  if (!a || !b || a.length !== b.length) return [];
  return a.flatMap((one, index) => {
    const other = b[index];
    return other ? [[one, other] as [SetReps, SetReps]] : [];
  });
}

function rise(from: number | undefined, to: number | undefined): number {
  return from === undefined || to === undefined ? 0 : Math.max(0, to - from);
}

/** Between two amounts, rounded down to the unit, never under the lower of the two. */
function between(from: number, to: number, way: number, unit: number): number {
  return way >= 1 ? to : Math.max(Math.min(from, to), floorTo(from + (to - from) * way, unit));
}

/** Lengths grow in fives where both ends are fives and far enough apart. */
function unitOf(from: number, to: number): number {
  return from % 5 === 0 && to % 5 === 0 && Math.abs(to - from) >= 20 ? 5 : 1;
}
