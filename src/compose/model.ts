/**
 * The booklet as content: everything a client reads, in order and in words, before any layout.
 * HTML and PDF are both made from this. Texts are plain unless a field says Markdown.
 */
import type { PainZone } from "../pain/zone.ts";
import type { Spacing } from "../schedule/spacing.ts";
import type { DayClock } from "../units/clock.ts";
import type { PartOfDay } from "../units/day-parts.ts";
import type { MassUnit } from "../units/mass.ts";
import type { EasierExercise, ExercisePage, PhasePage } from "./exercise-model.ts";
import type { BookletSession } from "./session-model.ts";

export interface Booklet {
  /** The plan's id. */
  readonly plan: string;
  /** BCP 47 language, and the direction it is written in. */
  readonly language: string;
  /** How dates and numbers are written, such as en-GB. */
  readonly locale: string;
  /** The unit in which loads are written. */
  readonly units: MassUnit;
  readonly direction: "ltr" | "rtl";
  readonly paper: "A4" | "Letter";
  readonly edition: Edition;
  /** True until a clinician has signed the plan: every page says so. */
  readonly draft: boolean;
  readonly title: string;
  readonly clinic: ClinicLines;
  readonly client: { readonly name: string; readonly reference: string };
  readonly clinician: string;
  /** Sign-off in words, and its day alone; undefined while it is a draft. */
  readonly signed: string | undefined;
  readonly signedOn: string | undefined;
  /** The clinic's own colour, #rrggbb. */
  readonly colour: string | undefined;
  readonly logo: { readonly url: string; readonly alt: string } | undefined;
  /** The clinic's own pages, after the cover and at the end. */
  readonly before: readonly OwnPage[];
  readonly after: readonly OwnPage[];
  readonly cover: Cover;
  /** What to do first; undefined where the program has no session. */
  readonly start: StartHere | undefined;
  readonly stop: StopPage;
  readonly pain: PainPage;
  readonly weeks: readonly CalendarWeek[];
  /** Weekday names of the calendar's columns: the first is the weekday on which the plan starts. */
  readonly weekdays: readonly { readonly short: string; readonly long: string }[];
  /** Which weeks have fewer sets after a break; undefined where none has. */
  readonly firstBack: string | undefined;
  /** Why some days are kept free ("Clear of Saturday's match"). */
  readonly kept: readonly string[];
  readonly phases: readonly PhasePage[];
  readonly exercises: readonly ExercisePage[];
  /** What pages name as easier and has no page of its own. */
  readonly easier: readonly EasierExercise[];
  readonly progress: readonly ProgressChart[];
  readonly myPlan: MyPlan;
  readonly diary: readonly DiaryPart[];
  /** When the parts of the client's day begin, and how the booklet calls them. */
  readonly clock: DayClock;
  readonly partNames: Readonly<Record<PartOfDay, string>>;
  /** What keeps them apart, for those who do one at another time. */
  readonly spacing: Spacing;
  /** Every session, first to last, as a calendar or a phone needs it. */
  readonly sessions: readonly BookletSession[];
  /** What to expect of the course; undefined where the protocol does not say it. */
  readonly outlook: Outlook | undefined;
  /** The day of printing, for the last page and the document's data: never the plan's own day. */
  readonly printed: { readonly date: string; readonly words: string };
}

/** standard; large: large print with a layout of its own; summary: one page to hang up. */
export type Edition = "standard" | "large" | "summary";

export interface OwnPage {
  readonly anchor: string;
  readonly title: string;
  /** Markdown. */
  readonly text: string;
}

export interface ClinicLines {
  readonly name: string;
  readonly phone: string;
  /** The phone number as a tel: address. */
  readonly phoneLink: string;
  readonly hours: string;
  readonly outOfHours: string;
  readonly emergency: string;
  readonly emergencyLink: string;
  readonly address: string | undefined;
  readonly email: string | undefined;
  /** The address of the clinic's page on booklets for the phone. */
  readonly phonePage: string | undefined;
}

export interface Cover {
  /** The course in the client's words. */
  readonly course: string;
  /** What it is for, in a sentence. */
  readonly message: string;
  /** "Monday 30 November 2026 to Sunday 21 February 2027". */
  readonly dates: string;
  /** "12 weeks". */
  readonly length: string;
  /** What changes from week to week; undefined where the course stays level. */
  readonly steps: WeekSteps | undefined;
  /** "Left leg", or undefined where no side is treated. */
  readonly side: string | undefined;
  readonly goals: readonly {
    readonly what: string;
    readonly now: number;
    readonly want: number;
    readonly words: string;
  }[];
  /** The clinician's note to the client: Markdown, may be empty. */
  readonly note: string;
}

/** What a client may expect of a course, in their words. */
export interface Outlook {
  /** How long it usually takes. */
  readonly takes: string;
  readonly known: string;
  readonly unknown: string;
  /** What else there is. */
  readonly instead: string;
  /** Where this comes from: authors, year, journal. */
  readonly from: readonly string[];
}

/** The session to begin with. */
export interface StartHere {
  /** "Start here: your first session", or in the middle of a program "Your next session". */
  readonly heading: string;
  /** "Monday 30 November 2026 · Evening · about 24 minutes". */
  readonly when: string;
  readonly exercises: readonly {
    readonly anchor: string;
    readonly title: string;
    readonly side: string | undefined;
    /** "3 sets of 15", and "8 kg" where something is loaded. */
    readonly dose: readonly string[];
    /** The sign that has to be there first. */
    readonly when: string | undefined;
  }[];
  /** When it hurts too much and what to do then, a sentence an entry. */
  readonly stop: readonly string[];
}

/** A height from 0 to 1 for each week of the program: its share of the most. */
export interface WeekSteps {
  readonly of: "weights" | "minutes";
  readonly heights: readonly number[];
}

export interface StopPage {
  /** Signs to call the emergency number for. */
  readonly emergency: readonly string[];
  /** Those of the emergency signs that this client's flags ask for: they stand wherever signs to stop do. */
  readonly urgent: readonly string[];
  /** Signs to stop and call the clinic for, the same day. */
  readonly call: readonly string[];
  /** The first of those signs: so much pain, or pain that comes suddenly. It stands in every box of signs to stop. */
  readonly severe: string;
  /** Words of care that this client's flags ask for. */
  readonly care: readonly string[];
}

export interface PainPage {
  readonly kind: "pain-free" | "monitored";
  readonly comfortable: number;
  readonly during: number;
  readonly after: number;
  /** The pain from which the client is to stop and call. */
  readonly callLevel: number;
  /** The most pain while exercising, as it is written. */
  readonly limit: string;
  /** One entry a number from 0 to 10. */
  readonly ruler: readonly {
    readonly n: number;
    readonly zone: PainZone;
  }[];
  readonly zones: readonly {
    readonly zone: PainZone;
    readonly from: number;
    readonly to: number;
    readonly name: string;
    readonly says: string;
  }[];
  /** The ruler's rule in one sentence. */
  readonly says: string;
  /** What it says of the next time after too much pain. */
  readonly less: string;
  readonly rules: readonly string[];
  /** Each exercise that has another rule than the ruler's. */
  readonly exceptions: readonly string[];
}

export interface CalendarWeek {
  readonly number: number;
  /** "30 Nov – 6 Dec". */
  readonly dates: string;
  /** The phases that run in this week: "Phase 1 of 2: Twice a day". */
  readonly phases: readonly string[];
  /** Seven days, the first being the weekday on which the plan starts. */
  readonly days: readonly CalendarDay[];
  /** "3 sessions, about 38 minutes each". */
  readonly summary: string;
  /** Whether the client is away for all of it. */
  readonly away: boolean;
}

export interface CalendarDay {
  /** YYYY-MM-DD. */
  readonly date: string;
  /** "30", or "1 Dec" on the first day shown of a month. */
  readonly label: string;
  readonly long: string;
  readonly sessions: readonly {
    readonly part: string;
    readonly minutes: string;
    /** Letter of the session kind, where a phase has several different ones; else empty. */
    readonly kind: string;
  }[];
  /** Other things on that day: "Match", "Night shift", "Away". */
  readonly notes: readonly string[];
}

/** Weeks that follow each other in the same phases, in one table. */
export interface DiaryPart {
  /** The phases of its weeks, as the calendar names them. */
  readonly phases: readonly string[];
  /** The parts of the day that have a column of boxes to tick. */
  readonly parts: readonly string[];
  /** The exercises, by number, whose weight really used is asked for. */
  readonly weights: readonly number[];
  /** Whether some row has fewer exercises than its week, so that rows name theirs. */
  readonly which: boolean;
  /** Exercises by the sign that has to be there first; empty where they are those of the part before. */
  readonly groups: readonly {
    readonly when: string | undefined;
    readonly exercises: readonly { readonly number: number; readonly title: string }[];
  }[];
  readonly weeks: readonly DiaryWeek[];
}

export interface DiaryWeek {
  readonly number: number;
  readonly dates: string;
  /** The week above with the same doses, which are not said again. */
  readonly as: number | undefined;
  /** Short doses by the number of the exercise's page: "3 × 15, 8 kg". */
  readonly doses: readonly { readonly number: number; readonly dose: string }[];
  readonly rows: readonly DiaryRow[];
}

/** A day, or a session of it where its sessions differ. */
export interface DiaryRow {
  readonly day: string;
  readonly date: string;
  /** Numbers of its exercises. */
  readonly exercises: readonly number[];
  /** For each part of the day whether it has a session. */
  readonly ticks: readonly boolean[];
  /** For each weight asked for in its table whether it is used here. */
  readonly weights: readonly boolean[];
  /** Whether the pain of the next morning is asked for: once a day. */
  readonly morning: boolean;
}

/** A chart of one exercise's planned loads, with room for what the client really did. */
export interface ProgressChart {
  readonly exercise: string;
  readonly unit: string;
  /** One entry a week of the program; undefined in weeks without the exercise. */
  readonly planned: readonly (number | undefined)[];
  /** The chart in words. */
  readonly words: string;
}

/** The client's own plan, or what is left to write in; their words as they wrote them. */
export interface MyPlan {
  readonly when: string | undefined;
  readonly where: string | undefined;
  readonly ifThen: readonly { readonly if: string; readonly do: string }[];
}
