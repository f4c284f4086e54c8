/** A week as an integer program for HiGHS: an independent answer to compare the search with. */

import * as highsModule from "highs";
import type { WeekExercise, WeekProblem } from "../../../src/week/search/problem.ts";

export interface OracleAnswer {
  readonly status: "solved" | "impossible" | "out of time";
  /** Moved, sessions, evenness, fullest day, preference. */
  readonly objective: readonly number[];
}

type Clock = WeekProblem["clock"];
const NAMES = ["morning", "midday", "evening"] as const;
/** Hours from midnight of day 0, in 60ths. */
const minute = (t: number, clock: Clock): number =>
  1440 * Math.floor(t / 3) + clock[NAMES[((t % 3) + 3) % 3] ?? "morning"];
const WEEK = 7 * 1440;
const SLOTS = Array.from({ length: 21 }, (_, t) => t);
const DAYS = [0, 1, 2, 3, 4, 5, 6];
const isDated = (e: WeekExercise): boolean => "everyDays" in e.times || "onDays" in e.times;
const movement = (e: { id: string; movement?: string }): string => e.movement ?? e.id;
const x = (e: number, t: number): string => `x_${e}_${t}`;
const sum = (terms: readonly string[]): string => terms.join(" + ");

/** Prepares HiGHS; the function returned solves one week within so many seconds for each goal. */
export async function oracle(): Promise<(problem: WeekProblem, seconds: number) => OracleAnswer> {
  // The package's types describe its CommonJS form; what is imported is the loader itself.
  const load = highsModule.default as unknown as () => Promise<highsModule.Highs>;
  const highs = await load();
  return (problem, seconds) => solveByHighs(highs, problem, seconds);
}

function solveByHighs(
  highs: highsModule.Highs,
  problem: WeekProblem,
  seconds: number,
): OracleAnswer {
  const { rows, binaries, goals } = program(problem);
  const objective: number[] = [];
  for (const goal of goals) {
    if (goal === "") {
      objective.push(0);
      continue;
    }
    const fixed = rows.map((row, i) => ` r${i}: ${row}`).join("\n");
    const text = `Minimize\n obj: ${goal}\nSubject To\n${fixed}\nBounds\n 0 <= M\nBinary\n ${binaries.join("\n ")}\nEnd\n`;
    const answer = solveText(highs, text, seconds);
    if (answer.Status === "Infeasible") return { status: "impossible", objective: [] };
    if (answer.Status !== "Optimal") return { status: "out of time", objective: [] };
    const value = Math.round(answer.ObjectiveValue);
    objective.push(value);
    rows.push(`${goal} <= ${value}`);
  }
  return { status: "solved", objective };
}

/** HiGHS 1.15.3 stops with an error on a few programs unless its presolve is off. */
function solveText(highs: highsModule.Highs, text: string, seconds: number) {
  const options = { output_flag: false, time_limit: seconds, mip_rel_gap: 0 };
  try {
    return highs.solve(text, options);
  } catch {
    return highs.solve(text, { ...options, presolve: "off" });
  }
}

/** Rows, 0/1 columns and the five goals of the integer program. */
function program(problem: WeekProblem) {
  const { exercises } = problem;
  const rows: string[] = [];
  const binaries: string[] = SLOTS.map((t) => `y_${t}`);
  const evenness: string[] = [];
  const open = DAYS.filter((d) => [0, 1, 2].some((p) => (problem.freeMinutes[3 * d + p] ?? 0) > 0));
  exercises.forEach((one, e) => {
    for (const t of SLOTS) {
      binaries.push(x(e, t));
      if (!mayLie(one, t, problem)) rows.push(`${x(e, t)} = 0`);
      else rows.push(`${x(e, t)} - y_${t} <= 0`);
    }
    const onDay = (d: number): string => sum([0, 1, 2].map((p) => x(e, 3 * d + p)));
    if ("perWeek" in one.times) {
      const sets = subsets(one.times.perWeek);
      sets.forEach((set, s) => {
        binaries.push(`z_${e}_${s}`);
        const cost = unevenness(set);
        if (cost > 0) evenness.push(`${cost} z_${e}_${s}`);
      });
      rows.push(`${sum(sets.map((_, s) => `z_${e}_${s}`))} = 1`);
      for (const d of DAYS) {
        const holds = sets.flatMap((set, s) => (set.includes(d) ? [` - z_${e}_${s}`] : []));
        rows.push(`${onDay(d)}${holds.join("")} = 0`);
      }
    } else {
      for (const d of DAYS) rows.push(`${onDay(d)} = ${boutsOn(one, d, open)}`);
    }
  });
  pairRows(problem, rows);
  for (const t of SLOTS) {
    const minutes = exercises.map((one, e) => `${one.minutes} ${x(e, t)}`);
    rows.push(`${sum(minutes)} - ${problem.freeMinutes[t] ?? 0} y_${t} <= 0`);
  }
  for (const d of DAYS) {
    const minutes = exercises.flatMap((one, e) =>
      [0, 1, 2].map((p) => `${one.minutes} ${x(e, 3 * d + p)}`),
    );
    rows.push(`${sum(minutes)} - M <= 0`);
  }
  hardRows(problem, rows, binaries);
  const moved: string[] = [];
  const preference: string[] = [];
  exercises.forEach((one, e) => {
    const before = problem.previous?.get(one.id);
    for (const t of SLOTS) {
      const shifted = before !== undefined && !before.includes(t);
      if (shifted) moved.push(x(e, t));
      const off = one.preferredSlots !== undefined && !one.preferredSlots.includes(t);
      if (shifted || off) preference.push(`${Number(shifted) + Number(off)} ${x(e, t)}`);
    }
  });
  const repairs = problem.aim === "repair" ? sum(moved) : "";
  const goals = [repairs, sum(SLOTS.map((t) => `y_${t}`)), sum(evenness), "M", sum(preference)];
  return { rows, binaries, goals };
}

/** Rows for hours apart, for order and for shared sessions. */
function pairRows(problem: WeekProblem, rows: string[]): void {
  const { exercises, groupHours } = problem;
  exercises.forEach((one, e) => {
    exercises.forEach((other, f) => {
      const wraps = problem.wraps && !isDated(one) && !isDated(other);
      const groups = one.groups.filter((group) => other.groups.includes(group));
      const hours = one.hard && other.hard ? groups.map((group) => groupHours[group] ?? 0) : [];
      const twins = movement(one) === movement(other);
      const recovery = twins ? Math.max(one.recoveryHours, other.recoveryHours) : 0;
      const apart = 60 * Math.max(0, ...hours, recovery);
      const single = boutsOn(one, 0, DAYS) < 2 && boutsOn(other, 0, DAYS) < 2;
      for (const t of SLOTS) {
        for (const u of SLOTS) {
          const plain = Math.abs(minute(t, problem.clock) - minute(u, problem.clock));
          const distance = wraps ? Math.min(plain, WEEK - plain) : plain;
          const near = t === u ? twins : distance < apart;
          const tooNear = (e < f || (e === f && t < u)) && near;
          const sameDay = Math.floor(t / 3) === Math.floor(u / 3);
          const late = single && sameDay && t < u && (one.after ?? []).includes(other.id);
          if (tooNear || late) rows.push(`${x(e, t)} + ${x(f, u)} <= 1`);
        }
        if (one.sameSessionAs === other.id) rows.push(`${x(e, t)} - ${x(f, t)} <= 0`);
      }
    });
  });
}

function hardRows(problem: WeekProblem, rows: string[], binaries: string[]): void {
  const most = problem.maxHardDaysInRow;
  if (most === undefined) return;
  const around = problem.wraps && !problem.exercises.some((one) => one.hard && isDated(one));
  const fixed = new Set(problem.events.filter((event) => event.hard).map((event) => event.day));
  for (const bout of problem.given ?? []) if (bout.hard) fixed.add(Math.floor(bout.slot / 3));
  for (const d of DAYS) {
    binaries.push(`h_${d}`);
    if (fixed.has(d)) rows.push(`h_${d} = 1`);
    problem.exercises.forEach((one, e) => {
      if (one.hard) for (const p of [0, 1, 2]) rows.push(`${x(e, 3 * d + p)} - h_${d} <= 0`);
    });
  }
  for (let first = around ? 0 : -most; first < 7; first++) {
    const window = Array.from({ length: most + 1 }, (_, i) => first + i);
    const days = around ? window.map((d) => d % 7) : window;
    const inside = [...new Set(days.filter((d) => d >= 0 && d < 7))].map((d) => `h_${d}`);
    const outside = days.filter((d) => (d < 0 || d > 6) && fixed.has(d)).length;
    rows.push(`${sum(inside)} <= ${most - outside}`);
  }
}

function mayLie(one: WeekExercise, t: number, problem: WeekProblem): boolean {
  if ((problem.freeMinutes[t] ?? 0) < one.minutes) return false;
  for (const event of problem.events) {
    const at = 1440 * event.day + problem.clock[event.part];
    const here = minute(t, problem.clock);
    const touches = event.groups.some((group) => one.groups.includes(group));
    const ahead = problem.wraps ? (at - here + 2 * WEEK) % WEEK : at - here;
    const behind = problem.wraps ? (here - at + 2 * WEEK) % WEEK : here - at;
    for (const { hours, events } of one.clearBefore ?? []) {
      const meant =
        events === "any" || (events === "touching" ? touches : events.includes(event.id));
      if (meant && ahead >= 0 && ahead < 60 * hours) return false;
    }
    if (!one.hard || (event.groups.length > 0 && !touches)) continue;
    if (ahead >= 0 && ahead < 60 * (event.clearBeforeHours ?? 0)) return false;
    if (behind >= 0 && behind < 60 * (event.clearAfterHours ?? 0)) return false;
  }
  for (const bout of problem.given ?? []) {
    const distance = Math.abs(minute(t, problem.clock) - minute(bout.slot, problem.clock));
    const recovery = bout.slot < 0 ? bout.recoveryHours : one.recoveryHours;
    const twins = movement({ ...bout, id: bout.exercise }) === movement(one);
    if (twins && distance < 60 * recovery) return false;
    const shared = bout.groups.filter((group) => one.groups.includes(group));
    const near = shared.some((group) => distance < 60 * (problem.groupHours[group] ?? 0));
    if (bout.hard && one.hard && near) return false;
  }
  return true;
}

/** Bouts on a day of an exercise whose days are fixed; at most 1 for one whose days are not. */
function boutsOn(one: WeekExercise, day: number, open: readonly number[]): number {
  const { times } = one;
  if ("perWeek" in times) return 1;
  if ("perDay" in times) return (times.days ?? open).includes(day) ? times.perDay : 0;
  if ("onDays" in times) return times.onDays.includes(day) ? 1 : 0;
  return day >= times.firstDay && (day - times.firstDay) % times.everyDays === 0 ? 1 : 0;
}

function subsets(size: number): number[][] {
  const all: number[][] = [[]];
  for (const d of DAYS) all.push(...all.map((set) => [...set, d]));
  return all.filter((set) => set.length === size);
}

/** Sum of squared gaps around the week, above the least possible, halved. */
function unevenness(set: readonly number[]): number {
  const squares = set.map((d, i) => ((set[i + 1] ?? (set[0] ?? 0) + 7) - d) ** 2);
  const total = squares.reduce((a, b) => a + b, 0);
  const even = set.map(
    (_, i) => Math.floor((7 * (i + 1)) / set.length) - Math.floor((7 * i) / set.length),
  );
  return (total - even.reduce((a, b) => a + b * b, 0)) / 2;
}
