/** What a booklet's file tells its script: sessions, rules and words, as plain data. */
import type { BookletSession, PainWords, SessionBout } from "../../compose/session-model.ts";
import type { Spacing } from "../../schedule/spacing.ts";
import type { DayClock } from "../../units/clock.ts";
import type { MassUnit } from "../../units/mass.ts";

/** What a booklet says of pain, whatever the exercise. */
export interface PainSigns {
  /** The pain, 0 to 10, from which the client is to stop and call. */
  readonly callLevel: number;
  /** What its ruler says of the next time after too much pain in an exercise. */
  readonly less: string;
  /** Its signs to call for: pain from that level on, and bad mornings running. */
  readonly severe: string;
  readonly settle: string;
}

export interface PhoneData {
  /** The plan's id, and the clinic's reference for the client. */
  readonly plan: string;
  readonly client: string;
  /** The version of the booklet: the day it was made and a mark of its content. */
  readonly booklet: string;
  /** The day it was made, YYYY-MM-DD. */
  readonly made: string;
  /** BCP 47: the booklet's language, and how dates and numbers are written. */
  readonly language: string;
  readonly locale: string;
  /** The unit in which screens show and take loads; what is kept and sent is in kilograms. */
  readonly units: MassUnit;
  readonly clinic: {
    readonly name: string;
    readonly phone: string;
    readonly phoneLink: string;
    readonly emergency: string;
    readonly emergencyLink: string;
  };
  /** What the booklet says of pain, whatever the exercise. */
  readonly pain: PainSigns;
  /** When the parts of the client's day begin. */
  readonly clock: DayClock;
  /** What keeps sessions apart that are done at other times than planned. */
  readonly spacing: Spacing;
  /** Every different set of an exercise's pain sentences once; bouts name them by their place here. */
  readonly painWords: readonly PainWords[];
  /** Every different bout of the program once; kinds of sessions name them by their place here. */
  readonly bouts: readonly KeptBout[];
  /** Every different session, without its day; sessions name them by their place here. */
  readonly kinds: readonly SessionKind[];
  /** First to last; without names, since there are hundreds of them. */
  readonly sessions: readonly (readonly [date: string, week: number, kind: number])[];
  /** The screens' words by key, with {names} to fill in. */
  readonly words: Readonly<Record<string, string>>;
}

/** A bout with its pain sentences by place in `painWords`. */
export interface KeptBout extends Omit<SessionBout, "painWords"> {
  readonly painWords: number;
}

/** What sessions of the same kind have in common; bouts by place in `bouts`. */
export interface SessionKind extends Pick<BookletSession, "part" | "minutes" | "short"> {
  readonly bouts: readonly number[];
}

/** A session with its bouts: what screens and rules work with. */
export interface PlannedSession extends Omit<SessionKind, "bouts"> {
  /** The client's day, YYYY-MM-DD: what the diary names it by. */
  readonly date: string;
  /** When it begins, in minutes from midnight of that date; from 1440 on it is on the next date. */
  readonly startsAt: number;
  /** Week of the program, from 1. */
  readonly week: number;
  readonly bouts: readonly SessionBout[];
}

/** The sessions of a booklet, first to last. */
export function plannedSessions(data: PhoneData): readonly PlannedSession[] {
  const { sessions, kinds, clock } = data;
  const bouts = data.bouts.flatMap((bout): SessionBout[] => {
    const painWords = data.painWords[bout.painWords];
    return painWords ? [{ ...bout, painWords }] : [];
  });
  const whole = kinds.map((kind) => ({
    ...kind,
    startsAt: clock[kind.part],
    bouts: kind.bouts.flatMap((place) => bouts[place] ?? []),
  }));
  return sessions.flatMap(([date, week, kind]) => {
    const found = whole[kind];
    return found ? [{ ...found, date, week }] : [];
  });
}
