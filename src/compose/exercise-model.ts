/** Phases and exercises of a booklet as content: what is done, how much of it, and how. */
import type { ShortVersion } from "./session-model.ts";

export interface PhasePage {
  readonly anchor: string;
  /** "Phase 1 of 2", or undefined where there is only one. */
  readonly label: string | undefined;
  readonly title: string;
  readonly aim: string;
  /** "Weeks 1 to 8: Monday 30 November to Sunday 24 January". */
  readonly when: string;
  /** "Weeks 1 to 8", as a dose that holds in all of them names them. */
  readonly weeks: string;
  readonly rows: readonly DoseRow[];
  /** What its words mean, on the page that is the first to use them. */
  readonly explained: DoseExplained;
  readonly sessions: string;
  /** The usual days: "Monday, Wednesday and Friday evening". */
  readonly days: string;
  readonly moveOn: readonly string[];
  readonly goBack: readonly string[];
  /** The short version for a bad day; undefined where a session is short already. */
  readonly badDay: BadDay | undefined;
  /** "On a bad day, leave this session out.", where a session has nothing for one. */
  readonly leaveOut: string | undefined;
}

/** What the words of a dose mean. */
export interface DoseExplained {
  /** A dose of the page in plain words: "“3 sets of 15”: do it 15 times, then rest. Do that 3 times in all." */
  readonly work: string | undefined;
  /** Numbers from 0 to 10 that say how hard it should feel, each once, and all in words: "5 and 7". */
  readonly effort: { readonly numbers: readonly number[]; readonly words: string } | undefined;
}

export interface BadDay {
  /** "About 9 minutes". */
  readonly length: string;
  readonly version: ShortVersion;
  /** "Rise up on one leg: 2 sets". */
  readonly exercises: readonly string[];
}

/** One exercise of a phase, and its doses from first week to last. */
export interface DoseRow {
  readonly exercise: string;
  readonly anchor: string;
  readonly side: string | undefined;
  /** The sign that has to be there first. */
  readonly when: string | undefined;
  readonly doses: readonly DoseLine[];
}

/** A dose that holds for some weeks, in words, most important first. */
export interface DoseLine {
  /** "Week 1", "Weeks 2 to 3". */
  readonly weeks: string;
  /** "3 sets of 15". */
  readonly work: string;
  /** "8 kg (backpack)", "Your own weight", "Band, level 2"; undefined where nothing is loaded. */
  readonly load: string | undefined;
  /** "3 seconds up, 3 seconds down". */
  readonly pace: string | undefined;
  /** "Rest 2 minutes between sets". */
  readonly rest: string | undefined;
  /** "Should feel 7 out of 10". */
  readonly effort: string | undefined;
  /** "3 days a week". */
  readonly often: string;
}

/** What a frame of a picture shows; numbered where there are several, as in the picture. */
export interface Caption {
  readonly number: number | undefined;
  readonly says: string;
}

export interface ExercisePage {
  readonly anchor: string;
  readonly number: number;
  readonly title: string;
  readonly why: string;
  readonly side: string | undefined;
  /** "Your left leg" as a whole sentence: "Do this with your left leg." */
  readonly sideSentence: string | undefined;
  /** The picture as a data: address, its words, those under its frames, and its size in millimetres where known. */
  readonly figure:
    | {
        readonly url: string;
        readonly alt: string;
        readonly captions: readonly Caption[];
        readonly width: number;
      }
    | undefined;
  readonly needs: readonly string[];
  /** Phases in which it is done, with its doses there, and the sign to start where phases differ in it. */
  readonly phases: readonly {
    readonly title: string;
    readonly when: string | undefined;
    readonly doses: readonly DoseLine[];
  }[];
  /** What holds in every week it is done: pace, rest, effort, how often, as sentences. */
  readonly always: readonly string[];
  /** The sign that has to be there before it is done at all. */
  readonly when: string | undefined;
  /** Markdown. */
  readonly setUp: string;
  readonly move: string;
  readonly feel: string;
  readonly check: string;
  readonly stop: string;
  /** The pain rule of this exercise in a sentence. */
  readonly pain: string;
  readonly care: readonly string[];
  /** What to do on a day when it is too much, and where that stands, if it is another exercise. */
  readonly easier: { readonly says: string; readonly anchor: string | undefined };
}

/** An exercise that is done only in place of others, in short. */
export interface EasierExercise {
  readonly anchor: string;
  readonly title: string;
  /** "In place of exercise 2". */
  readonly insteadOf: string;
  readonly side: string | undefined;
  readonly figure: ExercisePage["figure"];
  readonly needs: readonly string[];
  /** "3 sets of 10", "Your own weight", "Rest 1 minute between sets". */
  readonly dose: readonly string[];
  /** Markdown. */
  readonly setUp: string;
  readonly move: string;
  readonly stop: string;
  readonly pain: string;
  readonly care: readonly string[];
}
