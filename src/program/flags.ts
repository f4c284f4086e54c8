/** In which weeks a client's health flags hold: the one answer that cards, substitutes, care and gates share. */

import { type Care, careFor } from "../cards/care.ts";
import type { LibraryCard } from "../cards/library.ts";
import { Fault, type WithFaults } from "../faults/fault.ts";
import type { Moment } from "../plan/moment-schema.ts";
import type { Flag, Plan } from "../plan/schema.ts";
import type { Path, Read } from "../read/source.ts";
import { nearest } from "../read/validate.ts";
import { counted } from "../units/counted.ts";
import { dayNumber } from "../units/dates.ts";
import { type CoursePhase, lastWeek } from "./course.ts";

/** A flag on the weeks of the calendar. */
export interface HeldFlag {
  readonly flag: string;
  /** Its place in the plan's list. */
  readonly at: number;
  /** The first week, from 1, in which it rules nothing out any more; undefined where it does to the end. */
  readonly freeFrom: number | undefined;
  /**
   * Whether a clinician ends it at a review and not the calendar: from `freeFrom` on what it rules out
   * may be planned, and waits for the clinician's word. Its words of care stay.
   */
  readonly byReview: boolean;
}

/** Whether the flag rules cards out in a week of the calendar. */
export const rulesIn = ({ freeFrom }: HeldFlag, week: number): boolean =>
  freeFrom === undefined || week < freeFrom;

/** Whether the flag asks for care in a week: until it has ended; one that a review ends has not by itself. */
export const caresIn = (flag: HeldFlag, week: number): boolean =>
  flag.byReview || rulesIn(flag, week);

/** The flags of which nobody can say that they have ended by some week: no substitute may be against them. */
export const openFlags = (flags: readonly HeldFlag[], weeks: readonly number[]): string[] =>
  flags.filter((flag) => weeks.some((week) => caresIn(flag, week))).map(({ flag }) => flag);

/** Whether a card of the program is there only for after a review, and waits for the clinician's word. */
export const waitsForReview = ({ card }: LibraryCard, flags: readonly HeldFlag[]): boolean =>
  flags.some(({ flag, byReview }) => byReview && card.not_for.some((one) => one.flag === flag));

/** A word of care for a client who does a card in some weeks. */
export interface HeldCare {
  readonly care: Care;
  /** The last week for which it is said, where the flag ends before the card does. */
  readonly until: number | undefined;
}

/** What a card asks of this client while a flag holds. `weeks`: those of the calendar in which it is done. */
export function careIn(
  { card }: LibraryCard,
  flags: readonly HeldFlag[],
  weeks: readonly number[],
): HeldCare[] {
  return careFor(card, openFlags(flags, weeks)).map((care): HeldCare => {
    const held = flags.filter(({ flag }) => flag === care.flag);
    const when = weeks.filter((week) => held.some((one) => caresIn(one, week)));
    return { care, until: when.length < weeks.length ? Math.max(...when) : undefined };
  });
}

/**
 * The plan's flags on the weeks of the calendar. Faults (wrong-value): a phase or week that the course
 * does not have; as a warning, a flag that ends before the course begins.
 *
 * @param calendar the week of the course in each week of the calendar
 */
export function heldFlags(
  plan: Read<Plan>,
  phases: readonly CoursePhase[],
  calendar: readonly (number | undefined)[],
): WithFaults<HeldFlag[]> {
  const faults: Fault[] = [];
  const value = plan.value.flags.map((stated, at): HeldFlag => {
    const { flag, until } = asFlag(stated);
    if (until === undefined || until === "review") {
      return { flag, at, freeFrom: undefined, byReview: until === "review" };
    }
    const byReview = typeof until === "object" && "review" in until;
    const moment = byReview ? until.review : until;
    const path: Path = ["flags", at, "until", ...(byReview ? ["review"] : [])];
    const freeFrom = firstWeekAfter(moment, path);
    if (freeFrom !== undefined && freeFrom <= 1) {
      fault(path, `The flag ${flag} has ended before the course begins.`, {
        hint: "Check until, or take the flag out.",
        level: "warning",
      });
    }
    return { flag, at, freeFrom, byReview };
  });
  return { value, faults };

  /** The first week that lies wholly after it; undefined where the calendar has none. */
  function firstWeekAfter(moment: Moment, path: Path): number | undefined {
    if (typeof moment === "string") {
      const days = dayNumber(moment) - dayNumber(plan.value.starts);
      const week = Math.max(1, Math.ceil(days / 7) + 1);
      return week > calendar.length ? undefined : week;
    }
    return onCalendar("week" in moment ? weekOf(moment.week, path) : phaseWeek(moment.phase, path));
  }

  function weekOf(week: number, path: Path): number {
    const last = lastWeek(phases);
    if (week > last) {
      fault([...path, "week"], `The course has ${counted(last, "week")}, and no week ${week}.`, {
        hint: "Leave until out where the flag holds to the end.",
      });
    }
    return week;
  }

  function phaseWeek(id: string, path: Path): number | undefined {
    const found = phases.find(({ phase }) => phase.id === id);
    if (found) return found.firstWeek;
    const ids = phases.map(({ phase }) => phase.id);
    const near = nearest(id, ids);
    fault([...path, "phase"], `There is no phase ${id}.`, {
      hint: near ? `Did you mean ${near}?` : `There are: ${ids.join(", ")}.`,
    });
    return undefined;
  }

  function onCalendar(courseWeek: number | undefined): number | undefined {
    if (courseWeek === undefined) return undefined;
    const at = calendar.findIndex((week) => week !== undefined && week >= courseWeek);
    return at < 0 ? undefined : at + 1;
  }

  function fault(path: Path, message: string, more: { hint: string; level?: "warning" }): void {
    const place = plan.source.at(path);
    faults.push(
      new Fault("wrong-value", message, { place, frame: plan.source.frame(place), ...more }),
    );
  }
}

/** A flag as it is written, alone or with its end. */
export function asFlag(stated: Flag): Exclude<Flag, string> | { flag: string; until: undefined } {
  return typeof stated === "string" ? { flag: stated, until: undefined } : stated;
}
