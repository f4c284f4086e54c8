/** Doses written back as an author writes them; reading that gives the same values again. */

import { tempoText } from "../units/quantities.ts";
import { tidy } from "../units/rounding.ts";
import { defined, distanceText, massText, timeText } from "../units/serialise.ts";
import type { DosePart, Repetitions, Target } from "./fields.ts";

/** A dose, or part of one, as front matter holds it. */
export function serialiseDose(dose: DosePart): Record<string, unknown> {
  const { hold, time, distance, turns, tempo, rest, rest_reps, reps, target, every, ...plain } =
    dose;
  return defined({
    ...plain,
    reps: reps && repsForm(reps),
    hold: hold === undefined ? undefined : timeText(hold),
    time: time === undefined ? undefined : timeText(time),
    distance: distance === undefined ? undefined : distanceText(distance),
    turns: turns && { ...turns, work: timeText(turns.work), easy: timeText(turns.easy) },
    tempo: tempo && tempoText(tempo),
    rest: rest === undefined ? undefined : timeText(rest),
    rest_reps: rest_reps === undefined ? undefined : timeText(rest_reps),
    target: target && targetText(target),
    every: every === undefined ? undefined : `${every} days`,
  });
}

function repsForm(reps: Repetitions): unknown {
  const sets = reps.map(({ low, high }) => (low === high ? low : `${low}-${high}`));
  return sets.length === 1 ? sets[0] : sets;
}

/** A target as an author writes it. */
export function targetText(target: Target): string {
  switch (target.kind) {
    case "rm":
      return `${target.reps} RM`;
    case "reserve":
      return `${target.reps} in reserve`;
    case "load":
      return massText(target.kg);
    case "band":
      return `band ${target.level}`;
    case "percent-1rm":
      return `${percentOf(target.share)} % of 1RM`;
    case "percent-hold":
      return `${percentOf(target.share)} % of best hold`;
    case "percent-reps":
      return `${percentOf(target.share)} % of most reps`;
    case "percent-speed":
      return `${target.least === undefined ? "" : `${percentOf(target.least)}-`}${percentOf(target.share)} % of top speed`;
    case "speed":
      return speedText(target);
  }
}

const percentOf = (share: number): number => tidy(share * 100);

function speedText({ fast, slow, as }: Extract<Target, { kind: "speed" }>): string {
  const one = (speed: number) =>
    as === "min/km" ? paceText(speed) : String(tidy(as === "km/h" ? speed * 3.6 : speed));
  const ends = as === "min/km" ? [one(fast), one(slow)] : [one(slow), one(fast)];
  return `${[...new Set(ends)].join("-")} ${as}`;
}

/** Minutes and seconds a kilometre: "5:30". */
export function paceText(metresPerSecond: number): string {
  const seconds = Math.round(1000 / metresPerSecond);
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")}`;
}
