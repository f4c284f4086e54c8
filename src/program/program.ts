/** A client's program with nothing left open: every exercise of every week, and where each statement stands. */
import type { LibraryCard } from "../cards/library.ts";
import type { Clinic } from "../clinic/schema.ts";
import type { Place } from "../faults/fault.ts";
import type { PainLimits } from "../pain/limits.ts";
import type { Plan } from "../plan/schema.ts";
import type { StatedDose } from "../prescription/stated.ts";
import type { Protocol } from "../protocols/schema.ts";
import type { Read } from "../read/source.ts";
import type { DayClock } from "../units/clock.ts";
import type { Tempo } from "../units/quantities.ts";
import type { WorkSide } from "../units/side.ts";
import type { WeekSpan } from "../units/week-span.ts";
import type { HeldFlag } from "./flags.ts";

export interface Program {
  readonly plan: Read<Plan>;
  readonly protocol: Read<Protocol>;
  readonly clinic: Clinic;
  /** When the parts of the client's day begin. */
  readonly clock: DayClock;
  /** The pain, 0 to 10, from which the client is to stop and call, whatever the exercise. */
  readonly callLevel: number;
  /** Whole weeks from the first day to the last, weeks away included. */
  readonly weeks: number;
  /** Weeks, from 1, in which the client is away and nothing is done. */
  readonly awayWeeks: readonly number[];
  /** The week of the course, from 1, in each week of the calendar; undefined in weeks away. */
  readonly courseWeeks: readonly (number | undefined)[];
  /** First weeks back, from 1, after more than a week away: fewer sets. */
  readonly easedWeeks: readonly number[];
  /** The client's health flags and the weeks in which they hold. */
  readonly flags: readonly HeldFlag[];
  readonly phases: readonly ProgramPhase[];
}

export interface ProgramPhase {
  readonly id: string;
  readonly title: string;
  readonly aim: string;
  /** Week in which it begins, counted from the first day, from 1; phases may overlap. */
  readonly firstWeek: number;
  /** Week of the course in which it begins, from 1, weeks away not counted. */
  readonly courseWeek: number;
  /** Its weeks, weeks away among them included. */
  readonly weeks: number;
  readonly range: WeekSpan | undefined;
  /** The signs to move on that are this client's. */
  readonly moveOn: readonly string[];
  /** Whether the clinician's word stands in place of a sign to move on that is not this client's. */
  readonly moveOnAsks: boolean;
  readonly goBack: readonly string[];
  readonly exercises: readonly ProgramExercise[];
}

export interface ProgramExercise {
  /** Unique in the program: phase id, a slash, card id. */
  readonly key: string;
  readonly card: LibraryCard;
  readonly side: WorkSide;
  readonly why: string;
  /** Whether the phase's aim depends on it. */
  readonly main: boolean;
  /** Set where it starts when a sign is there, not in a given week. */
  readonly when: string | undefined;
  /** Whether the clinician's word stands in place of that sign, since it is not this client's. */
  readonly asksFirst: boolean;
  /** Keys of the exercises in whose sessions it is done: one of them in any week. */
  readonly sameSessionAs: readonly string[];
  /** Keys of exercises that come before it in a session. */
  readonly after: readonly string[];
  readonly origin: "protocol" | "swap" | "add";
  /** The clinician's reason, where the plan swapped or added it. */
  readonly because: string | undefined;
  readonly pain: PainLimits;
  /** What the course lets grow where the client's heaviest is too light: the most repetitions, the slowest tempo. */
  readonly grows: { readonly reps?: number | undefined; readonly tempo?: Tempo | undefined };
  /** Where the exercise is named: in the protocol, or in the plan that added or swapped it. */
  readonly place: Place;
  /** One entry a week of the phase; undefined in weeks without it and in weeks away. */
  readonly doses: readonly (StatedDose | undefined)[];
}
