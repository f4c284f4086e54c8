/** What a client's flags, things, changes and age rule out, from the plan's text and the cards alone. */
import { daysBetween } from "../surfaces/calendar-days.ts";
import { type Course, calendarOf, phasesOf } from "./asked.ts";
import { type AgeText, AT_HOME, type WholeCard } from "./library.ts";
import type { MomentText, PlanText } from "./plan-text.ts";

/** A flag on the weeks of the calendar. */
export interface Held {
  readonly flag: string;
  /** The first week in which it rules nothing out any more. */
  readonly freeFrom: number;
  /** Whether a clinician ends it: its end on the calendar frees nothing without their word. */
  readonly byReview: boolean;
}

/** The plan's flags and how long each rules cards out. */
export function heldFlags(plan: PlanText, course: Course): Held[] {
  const calendar = calendarOf(plan, course);
  const weekAt = (courseWeek: number): number => {
    const at = calendar.findIndex((week) => week !== undefined && week >= courseWeek);
    return at < 0 ? Number.POSITIVE_INFINITY : at + 1;
  };
  const begins = (moment: MomentText): number => {
    if (typeof moment === "string") {
      const week = Math.max(1, Math.ceil(daysBetween(plan.starts, moment) / 7) + 1);
      return week > calendar.length ? Number.POSITIVE_INFINITY : week;
    }
    if ("week" in moment) return weekAt(moment.week);
    return weekAt(
      phasesOf(plan, course).find(({ phase }) => phase.id === moment.phase)?.first ?? 1,
    );
  };
  return plan.flags.map((stated): Held => {
    if (typeof stated === "string") {
      return { flag: stated, freeFrom: Number.POSITIVE_INFINITY, byReview: false };
    }
    const { flag, until } = stated;
    if (until === "review") return { flag, freeFrom: Number.POSITIVE_INFINITY, byReview: true };
    return typeof until === "object" && "review" in until
      ? { flag, freeFrom: begins(until.review), byReview: true }
      : { flag, freeFrom: begins(until), byReview: false };
  });
}

/** Flags that rule cards out in a week. */
export const rulingIn = (flags: readonly Held[], week: number): string[] =>
  flags.filter(({ freeFrom }) => week < freeFrom).map(({ flag }) => flag);

/** Flags of which nobody can say that they have ended by any of these weeks. */
export const openIn = (flags: readonly Held[], weeks: readonly number[]): string[] =>
  flags
    .filter(({ byReview, freeFrom }) => byReview || weeks.some((week) => week < freeFrom))
    .map(({ flag }) => flag);

/** Things that may make a card's load for a client with these flags. */
const loadThings = ({ load, care = [] }: WholeCard, flags: readonly string[]): string[] => {
  const not = care
    .filter(({ flag }) => flags.includes(flag))
    .flatMap(({ not_with = [] }) => not_with);
  return (load.with ?? []).filter((thing) => !not.includes(thing));
};

const needsLoad = ({ load }: WholeCard): boolean => load.kind === "weight" || load.kind === "band";

/** Why a card is not for a client with these flags; undefined where it is. */
export function ruledOut(card: WholeCard, flags: readonly string[]): string | undefined {
  const found = (card.not_for ?? []).find(({ flag }) => flags.includes(flag));
  if (found) return `the flag ${found.flag}`;
  const without = needsLoad(card) && loadThings(card, flags).length === 0;
  return without ? "nothing may make its load" : undefined;
}

/** What of a card's things the client does not have, in the way in which least is missing; empty for none. */
export function lacking(card: WholeCard, plan: PlanText, flags: readonly string[]): string[] {
  const have = new Set(plan.equipment.map((one) => (typeof one === "string" ? one : one.have)));
  const lacks = (things: readonly string[]) =>
    things.filter((thing) => !have.has(thing) && !AT_HOME.has(thing));
  const { equipment = [], equipment_with = {} } = card;
  const own = loadThings(card, flags).filter((thing) => have.has(thing));
  const ways = [
    ...own.map((thing) => lacks(equipment_with[thing] ?? equipment)),
    ...(needsLoad(card) ? [] : [lacks(equipment)]),
  ];
  if (ways.length === 0) return ["its load", ...lacks(equipment)];
  return ways.sort((a, b) => a.length - b.length)[0] ?? [];
}

/** Whether the plan keeps a card from this client in a phase, in whatever weeks. */
export const isLeftOut = (
  { leave_out }: PlanText,
  card: string,
  phases: readonly string[],
): boolean =>
  leave_out.some(
    (one) => one.card === card && (one.phase === undefined || phases.includes(one.phase)),
  );

/** Whether somebody of this age is outside the bounds. */
export function outsideAge(
  { client: { born }, starts }: PlanText,
  age: AgeText | undefined,
): boolean {
  if (born === undefined || age === undefined) return false;
  const years =
    Number(starts.slice(0, 4)) -
    Number(born.slice(0, 4)) -
    (starts.slice(5) < born.slice(5) ? 1 : 0);
  return years < (age.from ?? 0) || years > (age.to ?? 200);
}
