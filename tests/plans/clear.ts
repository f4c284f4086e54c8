/** Times that a plan's events keep clear, and the recovery of its cards, by the plan's own clock. */
import { addDays } from "../surfaces/calendar-days.ts";
import type { AskedWeek, Entry } from "./asked.ts";
import { clockOf, datesOf, isOn, leftMinutes, momentOf } from "./days.ts";
import { secondsOf, type WholeCard, wholeCard } from "./library.ts";
import type { EventText, Part, PlanText } from "./plan-text.ts";
import type { PrintedWeek } from "./printed.ts";

const HOUR_S = 3600;
/** From the reference of cards: hard is work with an effort of 7 or more, power, or recovery of 36 h or more. */
const HARD_EFFORT = 7;
const HARD_RECOVERY_S = 36 * HOUR_S;
/** From the reference of plans: what follows a hard event that does not say. */
const AFTER_HARD_S = 24 * HOUR_S;

const isHard = (card: WholeCard, effort: number | undefined): boolean =>
  card.hard ??
  ((effort !== undefined && effort >= HARD_EFFORT) ||
    card.trains === "power" ||
    secondsOf(card.recovery) >= HARD_RECOVERY_S);

/** Whether the times of an event mean work of this card at this effort. */
function means(event: EventText, card: WholeCard, effort: number | undefined): boolean {
  const { tissues = [], clear_of: of } = event;
  const loads = tissues.length === 0 || tissues.some((tissue) => card.tissues.includes(tissue));
  if (of === undefined) return isHard(card, effort) && loads;
  return of.includes(card.id) || (of.includes(card.trains) && loads);
}

/** Seconds kept clear after an event for a card; counted, as those before it, from its start. */
function secondsAfter(event: EventText, card: WholeCard): number {
  if (event.clear_after !== undefined) return secondsOf(event.clear_after);
  const assumed = event.hard === true && (event.tissues ?? []).length > 0;
  return assumed && secondsOf(card.recovery) >= AFTER_HARD_S ? AFTER_HARD_S : 0;
}

const effortOf = ({ dose }: Entry): number | undefined =>
  typeof dose.effort === "number" ? dose.effort : undefined;

/** Days around a date in which an event can keep it clear. */
const AROUND = Array.from({ length: 15 }, (_, at) => at - 7);

/** The event that keeps a part of a date clear of an exercise; undefined for none. */
export function closedBy(
  entry: Entry,
  date: string,
  part: Part,
  plan: PlanText,
): string | undefined {
  if (plan.week.events.length === 0) return undefined;
  const card = wholeCard(entry.card);
  const clock = clockOf(plan);
  const at = momentOf(date, part, clock);
  for (const event of plan.week.events) {
    if (!means(event, card, effortOf(entry))) continue;
    const before = secondsOf(event.clear_before ?? "0 h") / 60;
    const after = secondsAfter(event, card) / 60;
    if (before === 0 && after === 0) continue;
    for (const day of AROUND) {
      const on = addDays(date, day);
      if (!isOn(event, on)) continue;
      const until = momentOf(on, event.part, clock) - at;
      if ((until >= 0 && until < before) || (until <= 0 && -until < after))
        return `${event.what} of ${on}`;
    }
  }
  return undefined;
}

export const isClosed = (entry: Entry, date: string, part: Part, plan: PlanText): boolean =>
  closedBy(entry, date, part, plan) !== undefined;

/** Sessions where there is no time for them, bouts in a time that is kept clear, and bouts before their tissue has rested. */
export function wrongTimes(
  plan: PlanText,
  asked: readonly AskedWeek[],
  weeks: readonly PrintedWeek[],
): string[] {
  const slots = weeks.flatMap(({ week, sessions }) => {
    const dates = datesOf(plan, week);
    return sessions.flatMap(({ date, part, minutes }) => {
      const left = leftMinutes(plan, date)[part];
      return [
        ...(dates.includes(date) ? [] : [`${date} ${part} is not in week ${week}`]),
        ...(minutes <= left ? [] : [`${date} ${part}: ${minutes} minutes of ${left}`]),
      ];
    });
  });
  const bouts = laidBouts(asked, weeks);
  return [...slots, ...wrongClear(bouts, plan), ...wrongRest(bouts, plan)];
}

interface LaidBout {
  readonly date: string;
  readonly part: Part;
  readonly entry: Entry;
  readonly effort: number | null;
}

/** Every bout that somebody asks for, first to last. */
const laidBouts = (asked: readonly AskedWeek[], weeks: readonly PrintedWeek[]): LaidBout[] =>
  weeks.flatMap(({ sessions }, at) =>
    sessions.flatMap(({ date, part, bouts }) =>
      bouts.flatMap(({ key, effort }) => {
        const entry = asked[at]?.entries.find((one) => one.key === key);
        return entry ? [{ date, part, entry, effort }] : [];
      }),
    ),
  );

function wrongClear(bouts: readonly LaidBout[], plan: PlanText): string[] {
  return bouts.flatMap(({ date, part, entry, effort }) => {
    const event = closedBy(entry, date, part, plan);
    const here = `${date} ${part}: ${entry.key}`;
    return [
      ...(event === undefined ? [] : [`${here} in the time kept clear of ${event}`]),
      ...((effort ?? undefined) === entry.dose.effort
        ? []
        : [`${here} has effort ${effort}, not ${entry.dose.effort}`]),
    ];
  });
}

function wrongRest(bouts: readonly LaidBout[], plan: PlanText): string[] {
  const clock = clockOf(plan);
  const last = new Map<string, number>();
  return bouts.flatMap(({ date, part, entry: { card } }) => {
    const moment = momentOf(date, part, clock);
    const rested = moment - (last.get(card) ?? Number.NEGATIVE_INFINITY);
    last.set(card, moment);
    return rested < secondsOf(wholeCard(card).recovery) / 60
      ? [`${date} ${part}: ${card} ${rested} minutes after the last time`]
      : [];
  });
}
