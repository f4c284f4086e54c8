/** A dose as facts of an exercise in a week, the same from words and from numbers. */
import type { Fact } from "../facts.ts";
import type { CardText } from "../shipped.ts";
import type { SaidDose } from "./dose-words.ts";
import { paceOf } from "./how-words.ts";
import { plainNumber } from "./numbers.ts";

export const NONE = "none";

/** Kinds that a full statement of a dose has, whatever its words. */
export const DOSE_KINDS = [
  "sets",
  "reps",
  "hold",
  "time",
  "distance",
  "turns",
  "seconds",
  "load",
  "pace",
  "rest",
  "rest between repetitions",
  "effort",
  "side",
] as const;

/** Kinds that the short form of diary and calendar has. */
export const SHORT_KINDS = ["sets", "seconds", "load in short"] as const;

export const weekKey = (week: number, title: string): string => `week ${week} · ${title}`;

/** Facts of what was said; what a full statement leaves out is "none". */
export function doseFacts(key: string, said: SaidDose, place: string): Fact[] {
  const {
    sets,
    reps,
    hold,
    time,
    distance,
    turns = NONE,
    load = NONE,
    pace = NONE,
    rest = NONE,
    restReps = NONE,
    effort = NONE,
  } = said;
  const values: Readonly<Record<string, string | undefined>> = {
    sets,
    reps,
    hold,
    time,
    distance,
    turns,
    seconds: secondsOf(said),
    load,
    "load in short": shortLoad(load),
    pace,
    // between sets there is only a rest where there are several
    rest: sets === "1" ? NONE : rest,
    "rest between repetitions": restReps,
    effort,
  };
  return facts(key, values, place);
}

/** Facts of the short form, which says no more than work and load. */
export function shortFacts(key: string, said: SaidDose, place: string): Fact[] {
  const { sets, reps, distance, turns, load = NONE } = said;
  return facts(
    key,
    { sets, reps, distance, turns, seconds: secondsOf(said), "load in short": load },
    place,
  );
}

function facts(
  key: string,
  values: Readonly<Record<string, string | undefined>>,
  place: string,
): Fact[] {
  return Object.entries(values).flatMap(([kind, value]) =>
    value === undefined ? [] : [{ kind, key, value, place }],
  );
}

function secondsOf({ hold, time }: SaidDose): string {
  if (hold !== undefined && hold !== NONE) return hold;
  return time ?? NONE;
}

/** The short form says numbers, never "by feel", and of a speed the first thing that is said. */
function shortLoad(load: string): string {
  if (/^(kg|lb|band)/.test(load)) return load;
  return /^(in|km\/h|min\/km|share)/.test(load)
    ? (load.split(" · ")[0] ?? NONE).replace(/ over .+$/, "")
    : NONE;
}

/** Numbers of a bout as the JSON and the phone's data name them; null and undefined: not stated. */
export interface BoutNumbers {
  readonly sets: number;
  readonly reps: readonly (readonly [number, number])[] | undefined;
  readonly holdS: number | undefined;
  readonly timeS: number | undefined;
  readonly distanceM: number | undefined;
  readonly turns:
    | { readonly work: number; readonly easy: number; readonly times: number }
    | undefined;
  readonly tempo: string | undefined;
  readonly restS: number | undefined;
  readonly restRepsS: number | undefined;
  readonly effort: number | undefined;
}

/** Numbers in the form in which the words are read, without the load. */
export function saidByNumbers(bout: BoutNumbers, card: CardText): Omit<SaidDose, "load" | "often"> {
  const number = (value: number | undefined) => (value === undefined ? NONE : plainNumber(value));
  const first = card.pace?.first === "lower" ? "lower" : "lift";
  return {
    sets: String(bout.sets),
    reps: repsText(bout),
    hold: number(bout.holdS),
    time: number(bout.timeS),
    distance: number(bout.distanceM),
    turns: bout.turns
      ? `${plainNumber(bout.turns.work)}+${plainNumber(bout.turns.easy)}×${bout.turns.times}`
      : NONE,
    pace: bout.tempo === undefined ? NONE : paceOf(bout.tempo, first),
    rest: bout.restS === undefined || bout.restS === 0 ? NONE : plainNumber(bout.restS),
    restReps:
      bout.restRepsS === undefined || bout.restRepsS === 0 ? NONE : plainNumber(bout.restRepsS),
    effort: number(bout.effort),
  };
}

/** A hold or a distance without a number of repetitions is done once; of a distance words say so in no way. */
function repsText({ reps, holdS, distanceM }: BoutNumbers): string {
  if (reps === undefined || reps.length === 0) return holdS === undefined ? NONE : "1";
  if (distanceM !== undefined && reps.every(([low, high]) => low === 1 && high === 1)) return NONE;
  const texts = reps.map(([low, high]) => (low === high ? String(low) : `${low}–${high}`));
  return new Set(texts).size === 1 ? (texts[0] ?? NONE) : texts.join(",");
}
