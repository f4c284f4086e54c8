/** What a client wrote down: one entry a planned session, on paper's terms and the phone's alike. */

import { PARTS, type PartOfDay } from "../units/day-parts.ts";
import type { WorkSide } from "../units/side.ts";

/** Whether something was done as planned, in part, or not. */
export const DONE = ["yes", "part", "no"] as const;
export type Done = (typeof DONE)[number];

/** Everything written down for one plan, in the order of the planned sessions. */
export interface Diary {
  /** The plan's id, and the clinic's reference for the client. */
  readonly plan: string;
  readonly client: string;
  readonly entries: readonly DiaryEntry[];
}

/** One planned session. Pain and effort are numbers from 0 to 10. */
export interface DiaryEntry {
  /** The planned day, YYYY-MM-DD, and part of the day: together they name the session. */
  readonly date: string;
  readonly part: PartOfDay;
  /** Week of the program, from 1. */
  readonly week: number;
  /** The version of the booklet in which it was written. */
  readonly booklet: string;
  readonly done: Done;
  /** The day on which it was really done, YYYY-MM-DD; undefined where it was not. */
  readonly doneOn: string | undefined;
  /** Whether the short version for a bad day was done. */
  readonly short: boolean;
  readonly effort: number | undefined;
  readonly painAfter: number | undefined;
  readonly painMorning: number | undefined;
  /** Whether the next morning was worse than usual. */
  readonly worseMorning: boolean | undefined;
  readonly note: string;
  readonly exercises: readonly DiaryExercise[];
  /** The instant of the last change, ISO 8601 in UTC to the second: 2026-12-01T18:30:05Z. */
  readonly written: string;
}

/** One exercise of a session: what was planned and what was done. */
export interface DiaryExercise {
  /** The card's id, and the title the client knows it by. */
  readonly card: string;
  readonly title: string;
  readonly side: WorkSide;
  readonly done: Done;
  readonly planned: Amount;
  /** What was really done, where it was not as planned. */
  readonly real: Amount;
  readonly pain: number | undefined;
  /** Whether that pain came suddenly; undefined where that was not said. */
  readonly sudden?: boolean | undefined;
}

/** How much of an exercise; undefined where it has no such number or it was as planned. */
export interface Amount {
  readonly sets: number | undefined;
  /** Repetitions of a set, the same in every set. */
  readonly reps: number | undefined;
  readonly kg: number | undefined;
}

/** What names a session among those of its plan. */
type SessionName = Pick<DiaryEntry, "date" | "part">;

export const sessionKey = ({ date, part }: SessionName): string => `${date} ${part}`;

/** The session or entry of a name. */
export const findSession = <One extends SessionName>(
  all: readonly One[],
  key: string,
): One | undefined => all.find((one) => sessionKey(one) === key);

/** Sorts by planned day, then part of the day. */
export function byPlan(a: SessionName, b: SessionName): number {
  if (a.date === b.date) return PARTS.indexOf(a.part) - PARTS.indexOf(b.part);
  return a.date < b.date ? -1 : 1;
}
