/** The booklet's sessions as content: what a calendar, a phone and the pace of an exercise need. */

import type { PainLimits } from "../pain/limits.ts";
import type { Turns } from "../prescription/fields.ts";
import type { PartOfDay } from "../units/day-parts.ts";
import type { Tempo } from "../units/quantities.ts";
import type { WorkSide } from "../units/side.ts";

export interface BookletSession {
  /** Week of the program, from 1. */
  readonly week: number;
  /** The client's day, YYYY-MM-DD, and its part: they name the session in every diary. */
  readonly date: string;
  readonly part: PartOfDay;
  readonly minutes: number;
  readonly bouts: readonly SessionBout[];
  /** The short version for a bad day; undefined where the session is short already. */
  readonly short: ShortVersion | undefined;
  readonly title: string;
  /** One line an exercise: "Rise up on one leg: 3 × 15, 8 kg (left leg)". */
  readonly exercises: readonly string[];
  /** The pain rule of this session, and each exercise that has another, a sentence or two an entry. */
  readonly pain: readonly string[];
}

/** Which exercises of a session a bad day keeps, and how many sets of each. */
export interface ShortVersion {
  /** Whole minutes with rests, rounded up. */
  readonly minutes: number;
  readonly bouts: readonly { readonly key: string; readonly sets: number }[];
}

/** One exercise of one session: the numbers that a screen counts and the words it shows. Times in seconds. */
export interface SessionBout {
  /** Unique in the session: the exercise's key in the program. */
  readonly key: string;
  /** The card's id. */
  readonly card: string;
  /** Where its page is in the booklet. */
  readonly anchor: string;
  readonly title: string;
  /** The sign that the client has to see before it is a part of their sessions. */
  readonly when: string | undefined;
  /** `each`: every set on one side and then on the other. */
  readonly side: WorkSide;
  readonly sideWords: string | undefined;
  /** Nothing for a bad day: quick, or among the hardest of its region. */
  readonly needsGoodDay: boolean;
  /** Whether it is a run, whose rests are walked. */
  readonly running: boolean;
  readonly sets: number;
  /** One entry a set, for each side; undefined where sets are timed or held only. */
  readonly reps: readonly { readonly low: number; readonly high: number }[] | undefined;
  /** How long each repetition is held; where there are no repetitions, each set. */
  readonly holdS: number | undefined;
  /** How long a set lasts. */
  readonly timeS: number | undefined;
  /** How far a set (or, with repetitions, a repetition) goes, in metres. */
  readonly distanceM: number | undefined;
  readonly turns: Turns | undefined;
  readonly tempo: Tempo | undefined;
  /** Which part of a repetition comes first, and the client's words for both. */
  readonly first: "lift" | "lower";
  readonly liftWord: string;
  readonly lowerWord: string;
  /** What a part of the tempo that is "as fast as is safe" counts. */
  readonly fastS: number;
  readonly restS: number | undefined;
  readonly restRepsS: number | undefined;
  /** 0 to 10. */
  readonly effort: number | undefined;
  /** The weight to take; undefined where there is none or it is left to feel. */
  readonly kg: number | undefined;
  /** The tissues that it loads: words of the vocabulary. */
  readonly tissues: readonly string[];
  /** The least time from one bout of it to the next. */
  readonly recoveryS: number;
  /** Ids of the client's events before and after which it is not done, within their hours. */
  readonly keptClearOf: { readonly before: readonly string[]; readonly after: readonly string[] };
  /** The dose in words, most important first: "3 sets of 15", "8 kg (backpack)", "Should feel 7 out of 10". */
  readonly dose: readonly string[];
  readonly pain: PainLimits;
  readonly painWords: PainWords;
}

/** An exercise's pain rule in sentences. */
export interface PainWords {
  /** The rule itself. */
  readonly rule: string;
  /** What to do when pain during the exercise goes over its limit. */
  readonly over: string;
  /** What holds after it. */
  readonly after: string;
  /** What to do when the next morning is worse. */
  readonly worse: string;
}
