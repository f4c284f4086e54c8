/** What a client and a program get of a plan, and what the proof reads of it. */

/** A bout as `plan --json` prints it; only what the proof looks at. */
export interface PrintedBout {
  readonly key: string;
  readonly card: string;
  readonly phase: string;
  readonly effort: number | null;
  readonly sets: number;
  readonly clock_s: number;
  readonly hard: boolean;
  readonly start_when: string | null;
  readonly ask_first: boolean;
  readonly after_review: boolean;
}

export interface PrintedSession {
  readonly date: string;
  readonly part: "morning" | "midday" | "evening";
  readonly minutes: number;
  readonly bouts: readonly PrintedBout[];
}

export interface PrintedWeek {
  readonly week: number;
  readonly from: string;
  readonly away: boolean;
  readonly phases: readonly string[];
  readonly sessions: readonly PrintedSession[];
  readonly frequency: Readonly<Record<string, { readonly sessions: number }>>;
  readonly trails: Readonly<Record<string, unknown>>;
}

export interface PrintedPlan {
  readonly weeks: readonly PrintedWeek[];
  readonly warnings: readonly {
    readonly code: string;
    readonly remedies: readonly { readonly edits: readonly { readonly value: unknown }[] }[];
  }[];
}

/** All that is made of a plan: texts, as they are handed out. */
export interface Printed {
  readonly json: string;
  /** Not of every plan. */
  readonly booklet: PrintedBooklet | undefined;
}

export interface PrintedBooklet {
  readonly html: string;
  /** The phone's data. */
  readonly phone: string;
  readonly ics: string;
  /** The terminal. */
  readonly table: string;
}

/** The dates of an exercise, one for each session it is in. */
export const datesOfKey = (weeks: readonly PrintedWeek[], key: string): string[] =>
  weeks.flatMap(({ sessions }) =>
    sessions.flatMap(({ date, bouts }) => bouts.filter((bout) => bout.key === key).map(() => date)),
  );
