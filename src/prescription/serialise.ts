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

function targetText(target: Target): string {
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
      return `${percentOf(target.share)} % of top speed`;
  }
}

const percentOf = (share: number): number => tidy(share * 100);
