/** The machine form of a diary: the stable output of `diary --json`. */
import type { Fault } from "../faults/fault.ts";
import { type FaultJson, faultJson } from "../faults/print.ts";
import type { Amount, Diary, DiaryEntry, DiaryExercise } from "./entry.ts";

/** Grows when a field goes or changes its meaning. */
const VERSION = 1;

export interface DiaryJson {
  readonly version: number;
  /** The plan's id and the client's reference; null where nothing could be read. */
  readonly plan: string | null;
  readonly client: string | null;
  readonly sessions: readonly SessionJson[];
  readonly problems: readonly FaultJson[];
}

interface SessionJson {
  readonly date: string;
  readonly part: string;
  readonly week: number;
  readonly booklet: string;
  readonly done: string;
  readonly done_on: string | null;
  readonly short: boolean;
  readonly effort: number | null;
  /** The worst of its exercises. */
  readonly pain_during: number | null;
  readonly pain_after: number | null;
  readonly pain_morning: number | null;
  readonly worse_morning: boolean | null;
  readonly note: string;
  readonly written: string;
  readonly exercises: readonly ExerciseJson[];
}

interface ExerciseJson {
  readonly card: string;
  readonly title: string;
  readonly side: string;
  readonly done: string;
  readonly planned: AmountJson;
  /** What was really done, where it was not as planned. */
  readonly real: AmountJson;
  readonly pain_during: number | null;
}

interface AmountJson {
  readonly sets: number | null;
  readonly reps: number | null;
  readonly kg: number | null;
}

/** The whole diary as plain data, with what could not be read. */
export function diaryJson(diary: Diary | undefined, faults: readonly Fault[]): DiaryJson {
  return {
    version: VERSION,
    plan: diary?.plan ?? null,
    client: diary?.client ?? null,
    sessions: diary?.entries.map(sessionJson) ?? [],
    problems: faults.map(faultJson),
  };
}

/** The worst pain during any exercise of a session; undefined where none was written down. */
export function worstPain({ exercises }: DiaryEntry): number | undefined {
  const pains = exercises.flatMap(({ pain }) => pain ?? []);
  return pains.length === 0 ? undefined : Math.max(...pains);
}

const sessionJson = (entry: DiaryEntry): SessionJson => ({
  date: entry.date,
  part: entry.part,
  week: entry.week,
  booklet: entry.booklet,
  done: entry.done,
  done_on: entry.doneOn ?? null,
  short: entry.short,
  effort: entry.effort ?? null,
  pain_during: worstPain(entry) ?? null,
  pain_after: entry.painAfter ?? null,
  pain_morning: entry.painMorning ?? null,
  worse_morning: entry.worseMorning ?? null,
  note: entry.note,
  written: entry.written,
  exercises: entry.exercises.map(exerciseJson),
});

const exerciseJson = ({ planned, real, pain, ...exercise }: DiaryExercise): ExerciseJson => ({
  ...exercise,
  planned: amountJson(planned),
  real: amountJson(real),
  pain_during: pain ?? null,
});

const amountJson = ({ sets, reps, kg }: Amount): AmountJson => ({
  sets: sets ?? null,
  reps: reps ?? null,
  kg: kg ?? null,
});
