/** A client's days as the plan's text has them: free time, days away, events, and the plan's own clock. */
import { addDays, daysBetween, WEEKDAY_IDS, weekdayOf } from "../surfaces/calendar-days.ts";
import { secondsOf } from "./library.ts";
import { type EventText, type FreeDay, PARTS, type Part, type PlanText } from "./plan-text.ts";

/** Clock times where a plan names none: the defaults in the reference of plans. */
const HOURS: Readonly<Record<Part, string>> = {
  morning: "07:00",
  midday: "13:00",
  evening: "19:00",
};

const DAY_MINUTES = 1440;
/** Any day: minutes are counted from it. */
const EPOCH = "2026-01-01";

/** Minutes of the client's parts of the day, before and after what takes them. */
export type Minutes = Readonly<Record<Part, number>>;

/** When each part begins, in minutes from midnight of the client's day; after midnight from 1440 on. */
export function clockOf({ week }: PlanText): Minutes {
  const hours = { ...HOURS, ...week.hours };
  const at = (part: Part) => {
    const [h = 0, m = 0] = hours[part].split(":").map(Number);
    return 60 * h + m;
  };
  const later = (minutes: number, than: number) =>
    minutes > than ? minutes : minutes + DAY_MINUTES;
  const morning = at("morning");
  const midday = later(at("midday"), morning);
  return { morning, midday, evening: later(at("evening"), midday) };
}

/** Minutes from one fixed midnight to a part of a client's day. */
export const momentOf = (date: string, part: Part, clock: Minutes): number =>
  DAY_MINUTES * daysBetween(EPOCH, date) + clock[part];

export const isWithin = (
  date: string,
  { from, until }: { readonly from?: string; readonly until?: string },
): boolean => (from === undefined || date >= from) && (until === undefined || date <= until);

export const isOn = (event: EventText, date: string): boolean =>
  event.on === undefined
    ? event.day === WEEKDAY_IDS[weekdayOf(date)] && isWithin(date, event)
    : event.on.includes(date);

export const isAway = ({ week }: PlanText, date: string): boolean =>
  week.away.some((one) =>
    typeof one === "string" ? one === date : date >= one.from && date <= one.to,
  );

/** Free time of a date before anything takes it: other weeks before a rota, a rota before the usual week. */
function freeOn({ week }: PlanText, date: string): FreeDay {
  const weekday = WEEKDAY_IDS[weekdayOf(date)] ?? "mon";
  const other = week.other_weeks?.find((span) => isWithin(date, span));
  if (other) return other.free[weekday] ?? {};
  const { rota } = week;
  if (rota && isWithin(date, rota)) {
    const day = daysBetween(rota.from, date) % (rota.on + rota.off);
    return day < rota.on ? (rota.free_on ?? {}) : rota.free_off;
  }
  return week.free[weekday] ?? {};
}

/** Minutes of each part before anything takes them, up to where the next part begins. */
export function usualMinutes(plan: PlanText, date: string): Minutes {
  const free = freeOn(plan, date);
  const clock = clockOf(plan);
  const ends = {
    morning: clock.midday,
    midday: clock.evening,
    evening: clock.morning + DAY_MINUTES,
  };
  const minutes = (part: Part) =>
    Math.min(Math.floor(secondsOf(free[part] ?? "0 s") / 60), ends[part] - clock[part]);
  return { morning: minutes("morning"), midday: minutes("midday"), evening: minutes("evening") };
}

/** Minutes of each part that days away and events leave. No session lies in the part of a hard event. */
export function leftMinutes(plan: PlanText, date: string): Minutes {
  const usual = usualMinutes(plan, date);
  const taken = plan.week.events
    .filter((event) => (event.blocks === true || event.hard === true) && isOn(event, date))
    .map(({ part }) => part);
  const left = (part: Part) => (isAway(plan, date) || taken.includes(part) ? 0 : usual[part]);
  return { morning: left("morning"), midday: left("midday"), evening: left("evening") };
}

const most = (minutes: Minutes): number => Math.max(...PARTS.map((part) => minutes[part]));

/** Whether the client has any time on a date, and whether they would have if nothing took it. */
export const hasTime = (plan: PlanText, date: string): boolean => most(leftMinutes(plan, date)) > 0;
export const hasUsualTime = (plan: PlanText, date: string): boolean =>
  most(usualMinutes(plan, date)) > 0;

/** The seven dates of a week of the calendar, from 1. */
export const datesOf = ({ starts }: PlanText, week: number): string[] =>
  Array.from({ length: 7 }, (_, day) => addDays(starts, 7 * (week - 1) + day));
