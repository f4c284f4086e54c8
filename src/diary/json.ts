/** The machine form of a diary: the stable output of `diary --json`. */
import type { Fault } from "../faults/fault.ts";
import { type FaultJson, faultJson } from "../faults/print.ts";
import { COLUMN_NAMES, COLUMNS } from "./columns.ts";
import type { Amount, Diary, DiaryEntry, DiaryExercise } from "./entry.ts";
import { cells } from "./rows.ts";

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
  /** Whether that pain came suddenly. */
  readonly sudden: boolean | null;
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

/** The columns of a session by their names, and its exercises. */
const sessionJson = (entry: DiaryEntry): SessionJson => ({
  ...(withNull(cells(SESSION_COLUMNS, entry)) as unknown as SessionJson),
  pain_during: worstPain(entry) ?? null,
  note: entry.note,
  exercises: entry.exercises.map(exerciseJson),
});

const SESSION_COLUMNS = COLUMN_NAMES.filter((name) =>
  ["session", "row"].includes(COLUMNS[name].of),
);

const withNull = (fields: object): Record<string, unknown> =>
  Object.fromEntries(Object.entries(fields).map(([name, value]) => [name, value ?? null]));

const exerciseJson = ({
  planned,
  real,
  pain,
  sudden,
  ...exercise
}: DiaryExercise): ExerciseJson => ({
  ...exercise,
  planned: amountJson(planned),
  real: amountJson(real),
  pain_during: pain ?? null,
  sudden: sudden ?? null,
});

const amountJson = (amount: Amount): AmountJson => withNull(amount) as unknown as AmountJson;
