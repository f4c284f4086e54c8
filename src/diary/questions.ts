/** What is asked of a client about a session: the one list by which paper, phone and desk go. */
import type { ColumnName } from "./columns.ts";

interface Question {
  /** What the phone asks it of: each exercise, the session as a whole, or the morning after. */
  readonly of: "exercise" | "session" | "morning";
  /**
   * Where a row of the paper diary has it: a box to tick, a column for its number, a column for each
   * weight, a mark beside the number of the question before, or among the notes.
   */
  readonly paper: "tick" | "column" | "weight" | "mark" | "notes";
}

/** By the column of the diary's file that keeps the answer, in the order in which they are asked. */
export const QUESTIONS = {
  done: { of: "exercise", paper: "tick" },
  effort: { of: "session", paper: "column" },
  pain_during: { of: "exercise", paper: "column" },
  sudden: { of: "exercise", paper: "mark" },
  pain_after: { of: "session", paper: "column" },
  pain_morning: { of: "morning", paper: "column" },
  worse_morning: { of: "morning", paper: "mark" },
  kg: { of: "exercise", paper: "weight" },
  sets: { of: "exercise", paper: "notes" },
  reps: { of: "exercise", paper: "notes" },
  note: { of: "session", paper: "notes" },
} as const satisfies { readonly [N in ColumnName]?: Question };

export type QuestionName = keyof typeof QUESTIONS;

/** The questions of which one thing holds. */
type Asked<Field extends keyof Question, Value> = {
  [N in QuestionName]: (typeof QUESTIONS)[N] extends { readonly [F in Field]: Value } ? N : never;
}[QuestionName];

const NAMES = Object.keys(QUESTIONS) as readonly QuestionName[];

/** What the paper asks in one way, in its order. */
export const onPaper = <Way extends Question["paper"]>(way: Way): readonly Asked<"paper", Way>[] =>
  NAMES.filter((name): name is Asked<"paper", Way> => QUESTIONS[name].paper === way);

/** Whether the weight that was really used is asked for: where one is planned. `kg`: the weight planned. */
export const asksWeight = ({ kg }: { readonly kg?: number | undefined }): boolean =>
  kg !== undefined;
