/** A plan that changes while its course runs, so that the client gets a second booklet. */
import { addDays } from "./calendar-days.ts";
import { otherDose } from "./client-changes.ts";
import type { AwayText, EventText, PlanText } from "./plan-text.ts";
import type { Random } from "./random.ts";
import { lastWeekOf, type ProtocolText, weeksOf } from "./shipped.ts";

const DAYS = 7;
const WHY = "It was too easy at the review.";

/**
 * The plan as it is on a day of its course, with one or two changes of weeks to come: pages print the
 * plan as it is now, so that a change of what is past could not agree with the calendar. Undefined for
 * drafts, which issue nothing, and for courses too short to change.
 */
export function changedInItsCourse(
  plan: PlanText,
  protocol: ProtocolText,
  random: Random,
): { readonly plan: PlanText; readonly made: string } | undefined {
  const total = Math.min(plan.weeks ?? Number.POSITIVE_INFINITY, weeksOf(protocol));
  if (!plan.signed || total < 3) return undefined;
  const week = random.whole(0, total - 3);
  const made = addDays(plan.starts, week * DAYS + random.whole(0, DAYS - 1));
  // a week of the course is never before the week of the calendar with its number
  const from = week + 2;
  const changes = [
    () => withDose(plan, protocol, { from, total }, random),
    () => withAway(plan, { from, total }, random),
    () => withEvent(plan, { from, total }, random),
    () => withFree(plan, random),
  ];
  const changed = random.some(changes, random.whole(1, 2)).map((change) => change());
  const free = changed.find(({ week: days }) => days?.free)?.week?.free;
  return {
    made,
    plan: {
      ...plan,
      redose: [...plan.redose, ...changed.flatMap(({ redose = [] }) => redose)],
      week: {
        ...plan.week,
        ...(free && { free }),
        away: [...plan.week.away, ...changed.flatMap(({ week: days }) => days?.away ?? [])],
        events: [...plan.week.events, ...changed.flatMap(({ week: days }) => days?.events ?? [])],
      },
    },
  };
}

/** What a change adds to a plan; `free` stands in place of the plan's. */
interface Change {
  readonly redose?: PlanText["redose"];
  readonly week?: Partial<Pick<PlanText["week"], "free" | "away" | "events">>;
}

interface Span {
  readonly from: number;
  readonly total: number;
}

function withDose(
  { redose, leave_out, swap }: PlanText,
  protocol: ProtocolText,
  { from, total }: Span,
  random: Random,
): Change {
  const changed = new Set([...redose, ...leave_out, ...swap].map(({ card }) => card));
  const open = protocol.phases.flatMap(({ exercises }, at) => {
    const last = Math.min(total, lastWeekOf(protocol, at));
    if (last < from) return [];
    return exercises
      .filter(({ card, weeks }) => !changed.has(card) && weeks === undefined)
      .map(({ card }) => ({ card, last }));
  });
  if (open.length === 0) return {};
  const { card, last } = random.one(open);
  const weeks = last === from ? String(from) : `${from}-${last}`;
  return { redose: [{ card, weeks, why: WHY, dose: otherDose(card, protocol, random) }] };
}

function withAway({ starts }: PlanText, { from, total }: Span, random: Random): Change {
  const first = random.whole((from - 1) * DAYS, total * DAYS - 1);
  const whole = random.chance(0.5);
  const monday = Math.floor(first / DAYS) * DAYS;
  const away: AwayText = whole
    ? { from: addDays(starts, monday), to: addDays(starts, monday + random.one([6, 6, 13])) }
    : addDays(starts, first);
  return { week: { away: [away] } };
}

function withEvent({ starts }: PlanText, { from, total }: Span, random: Random): Change {
  const event: EventText = {
    what: "Wedding",
    on: [addDays(starts, random.whole((from - 1) * DAYS, total * DAYS - 1))],
    part: random.one(["morning", "midday", "evening"]),
    ...(random.chance(0.3) && { blocks: true }),
  };
  return { week: { events: [event] } };
}

/** One weekday has more free time, or none. */
function withFree({ week: { free } }: PlanText, random: Random): Change {
  const days = Object.keys(free);
  if (days.length === 0) return {};
  const day = random.one(days);
  const { [day]: had, ...others } = free;
  const more = { ...had, [random.one(["morning", "midday", "evening"])]: "150 min" };
  return { week: { free: random.chance(0.1) ? others : { ...free, [day]: more } } };
}
