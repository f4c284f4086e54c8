/** Quantities and doses written back as an author writes them; reading that gives the same values again. */
import type { DosePart, Repetitions, Target } from "./dose-fields.ts";
import { tempoText, type WeekSpan } from "./quantities.ts";

/** Seconds with the largest unit that divides them: "30 s", "2 min", "48 h". */
export function timeText(seconds: number): string {
  if (seconds > 0 && seconds % 3600 === 0) return `${seconds / 3600} h`;
  if (seconds > 0 && seconds % 60 === 0) return `${seconds / 60} min`;
  return `${seconds} s`;
}

export const massText = (kg: number): string => `${kg} kg`;

export const distanceText = (metres: number): string => `${metres} m`;

export const speedText = (metresPerSecond: number): string => `${metresPerSecond} m/s`;

export const weekSpanText = ({ first, last }: WeekSpan): string =>
  first === last ? `${first}` : `${first}-${last}`;

/** A dose, or part of one, as front matter holds it. */
export function doseForm(dose: DosePart): Record<string, unknown> {
  const { hold, time, distance, tempo, rest, rest_reps, reps, target, every, ...plain } = dose;
  return defined({
    ...plain,
    reps: reps && repsForm(reps),
    hold: hold === undefined ? undefined : timeText(hold),
    time: time === undefined ? undefined : timeText(time),
    distance: distance === undefined ? undefined : distanceText(distance),
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

const percentOf = (share: number): number => Math.round(share * 100);

/** Without the fields that are undefined. */
export function defined(fields: Readonly<Record<string, unknown>>): Record<string, unknown> {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined));
}
