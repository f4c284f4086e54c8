/** A bout in the machine form of a program: its dose in numbers, and what belongs to its exercise. */
import type { Bout, BoutLoad } from "../dose/types.ts";
import type { PainLimits } from "../pain/limits.ts";
import { countOf } from "../prescription/shape.ts";
import { type HeldFlag, waitsForReview } from "../program/flags.ts";
import { hardness } from "../program/hardness.ts";
import type { ProgramExercise } from "../program/program.ts";
import { inUnit, type MassUnit } from "../units/mass.ts";
import { tempoText } from "../units/quantities.ts";

export interface BoutJson {
  /** Phase and card: the exercise's name under `trails`. */
  readonly key: string;
  readonly card: string;
  readonly phase: string;
  readonly side: string;
  readonly sets: number;
  /** A number; low and high of a range as [6, 8]; or one entry a set in reps_by_set. */
  readonly reps: number | readonly [number, number] | null;
  readonly reps_by_set: readonly (number | readonly [number, number])[] | null;
  readonly hold_s: number | null;
  readonly time_s: number | null;
  /** How far a set goes, or with repetitions each of them. */
  readonly distance_m: number | null;
  /** Work and easy in turn, so many times in a set. */
  readonly turns: {
    readonly work_s: number;
    readonly easy_s: number;
    readonly times: number;
  } | null;
  readonly tempo: string | null;
  readonly rest_s: number | null;
  readonly rest_reps_s: number | null;
  readonly load_kg: number | null;
  /** The load as the client reads it, in the clinic's unit. */
  readonly load: number | null;
  readonly load_unit: MassUnit | null;
  readonly load_kind: string;
  readonly band_level: number | null;
  /** The speed that is not to be passed, and the slower end where a range is stated. */
  readonly speed_km_h: number | null;
  readonly speed_from_km_h: number | null;
  /** Whether pages give it as a pace, in minutes a kilometre. */
  readonly speed_as_pace: true | null;
  /** Seconds for the distance once, low and high, and whether they count from a running start. */
  readonly seconds_each: readonly [number, number] | null;
  readonly running_start: true | null;
  /** The share of the client's best speed asked for, low and high, in percent. */
  readonly percent_of_best: readonly [number, number] | null;
  readonly equipment: string | null;
  readonly effort: number | null;
  readonly tension_s: number | null;
  readonly clock_s: number;
  /** Whether it is hard work, kept clear of events, and by what. */
  readonly hard: boolean;
  readonly hard_because: string;
  /** The sign without which it is not to be done yet; null where it has none. */
  readonly start_when: string | null;
  /** Whether that sign is not this client's, and the clinician's word stands in its place. */
  readonly ask_first: boolean;
  /** Whether a health flag rules it out until a review: not to be done before the clinician has said so. */
  readonly after_review: boolean;
  /** Its limits of pain, 0 to 10: a number at its limit is all right. */
  readonly pain: PainLimits | null;
}

/** What belongs to the exercise in every bout of it. */
type ExerciseJson = Pick<
  BoutJson,
  "hard" | "hard_because" | "start_when" | "ask_first" | "after_review" | "pain"
>;

/** A bout of an exercise under a client's flags. */
export const boutJson = (
  bout: Bout,
  exercise: ProgramExercise | undefined,
  flags: readonly HeldFlag[],
  unit: MassUnit,
): BoutJson => ({
  ...doseJson(bout, unit),
  ...exerciseJson(exercise, bout.effort, flags),
});

function exerciseJson(
  exercise: ProgramExercise | undefined,
  effort: number | undefined,
  flags: readonly HeldFlag[],
): ExerciseJson {
  const found = exercise && hardness(exercise.card.card, effort);
  return {
    hard: found?.hard ?? false,
    hard_because: found?.because ?? "",
    start_when: exercise?.when ?? null,
    ask_first: exercise?.asksFirst ?? false,
    after_review: exercise !== undefined && waitsForReview(exercise.card, flags),
    pain: exercise?.pain ?? null,
  };
}

function doseJson(bout: Bout, unit: MassUnit): Omit<BoutJson, keyof ExerciseJson> {
  const reps = bout.reps?.map(({ low, high }) => (low === high ? low : ([low, high] as const)));
  const alike = bout.reps !== undefined && countOf(bout.reps).kind !== "each";
  return {
    key: bout.key,
    card: bout.card,
    phase: bout.phase,
    side: bout.side,
    sets: bout.sets,
    reps: alike ? (reps?.[0] ?? null) : null,
    reps_by_set: reps === undefined || alike ? null : reps,
    hold_s: bout.holdS ?? null,
    time_s: bout.timeS ?? null,
    distance_m: bout.distanceM ?? null,
    turns: bout.turns
      ? { work_s: bout.turns.work, easy_s: bout.turns.easy, times: bout.turns.times }
      : null,
    tempo: bout.tempo ? tempoText(bout.tempo) : null,
    rest_s: bout.restS ?? null,
    rest_reps_s: bout.restRepsS ?? null,
    load_kg: bout.load.kg ?? null,
    load: bout.load.kg === undefined ? null : inUnit(bout.load.kg, unit),
    load_unit: bout.load.kg === undefined ? null : unit,
    load_kind: bout.load.kind,
    band_level: bout.load.level ?? null,
    ...speedJson(bout.load),
    equipment: bout.load.equipment ?? null,
    effort: bout.effort ?? null,
    tension_s: bout.tensionS ?? null,
    clock_s: bout.clockS,
  };
}

type SpeedFields =
  | "speed_km_h"
  | "speed_from_km_h"
  | "speed_as_pace"
  | "seconds_each"
  | "running_start"
  | "percent_of_best";

function speedJson({
  kmH,
  slowKmH,
  asPace,
  eachS,
  runningStart,
  share,
}: BoutLoad): Pick<BoutJson, SpeedFields> {
  const percent = (part: number) => Math.round(part * 100);
  return {
    speed_km_h: kmH ?? null,
    speed_from_km_h: slowKmH ?? null,
    speed_as_pace: asPace ? true : null,
    seconds_each: eachS ? [eachS.low, eachS.high] : null,
    running_start: runningStart ? true : null,
    percent_of_best: share ? [percent(share.low), percent(share.high)] : null,
  };
}
