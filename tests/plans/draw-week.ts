/** Draws an invented client's week: free time, other weeks, a rota, days away, events and the hours of the day. */
import { addDays, WEEKDAY_IDS } from "../surfaces/calendar-days.ts";
import type { Random } from "../surfaces/random.ts";
import { askedWeeks, type Course } from "./asked.ts";
import { cardsOf } from "./draw-client.ts";
import {
  type AwayText,
  type EventText,
  type FreeDay,
  type FreeWeek,
  PARTS,
  type Part,
  type PlanText,
  type WeekText,
} from "./plan-text.ts";

const EVENTS = ["Choir", "Football", "Long walk", "Night shift", "Tennis & tea"];
const HOURS = [
  { morning: "05:40", midday: "11:15", evening: "17:30" },
  { morning: "08:30", midday: "14:05", evening: "21:10" },
  { morning: "22:00", midday: "02:00", evening: "06:00" },
  { morning: "18:45", midday: "23:50", evening: "05:15" },
];
const QUALITIES = ["strength", "isometric", "power", "balance", "endurance", "running"];

/** How often a day something has to be done, and whether on every day. */
interface Asks {
  readonly daily: number;
  /** Whether some of it comes on any day of the week: daily, or every so many days. */
  readonly anyDay: boolean;
  /** Parts of the day in which there is time on most days. */
  readonly usual: readonly Part[];
  readonly minutes: number;
}

function asksOf(plan: PlanText, course: Course, random: Random): Asks {
  const weeks = askedWeeks(plan, course);
  const entries = weeks.flatMap((week) => week.entries);
  const daily = Math.max(
    0,
    ...entries.map(({ dose }) => Number(dose.per_day ?? (dose.per_week === 7 ? 1 : 0))),
  );
  const most = Math.max(1, ...weeks.map((week) => week.entries.length));
  const anyDay = daily > 0 || entries.some(({ dose }) => dose.every !== undefined);
  const usual =
    daily > 2 ? PARTS : daily > 1 ? (["morning", "evening"] as const) : [random.one(PARTS)];
  return { daily, anyDay, usual, minutes: Math.min(180, 30 + 15 * most) };
}

function freeDay({ anyDay, usual, minutes }: Asks, random: Random): FreeDay {
  const others = random.some(PARTS, random.whole(0, 2));
  const named = PARTS.filter(
    (part) => (usual.includes(part) && random.chance(anyDay ? 1 : 0.93)) || others.includes(part),
  );
  const short = !anyDay && random.chance(0.06);
  return Object.fromEntries(
    named.map((part) => [
      part,
      `${short ? random.whole(5, 20) : minutes + 10 * random.whole(0, 3)} min`,
    ]),
  );
}

function freeWeek(asks: Asks, random: Random): FreeWeek {
  const open = WEEKDAY_IDS.filter(() => random.chance(asks.anyDay ? 0.995 : 0.93));
  return Object.fromEntries(open.map((day) => [day, freeDay(asks, random)]));
}

function awayOf(starts: string, days: number, random: Random): AwayText[] {
  const single = random.chance(0.25) ? [addDays(starts, random.whole(0, days))] : [];
  if (!random.chance(0.25)) return single;
  const first = random.chance(0.5)
    ? 7 * random.whole(0, Math.floor(days / 7))
    : random.whole(0, days);
  const then = random.chance(0.3) ? undefined : random.one(["shift", "skip"] as const);
  return [
    ...single,
    {
      from: addDays(starts, first),
      to: addDays(starts, first + random.one([0, 1, 6, 6, 6, 13])),
      ...(then && { then }),
    },
  ];
}

function eventOf(
  what: string,
  plan: PlanText,
  course: Course,
  days: number,
  asks: Asks,
  random: Random,
): EventText {
  const cards = cardsOf(plan, course);
  const tissues = [...new Set(cards.flatMap((card) => card.tissues))];
  const date = () => addDays(plan.starts, random.whole(-1, days));
  const weekly = random.chance(0.6);
  const hard = random.chance(0.5);
  // daily work leaves no day clear of anything that means it
  const clears = random.chance(asks.daily > 0 ? 0.25 : 0.6);
  const hours = asks.daily > 0 ? ["6 h", "10 h", "12 h"] : ["12 h", "24 h", "24 h", "36 h"];
  const [from = "", until = ""] = [date(), date()].sort();
  const elsewhere = PARTS.filter((part) => !asks.usual.includes(part));
  const parts = asks.daily > 0 && elsewhere.length > 0 && random.chance(0.85) ? elsewhere : PARTS;
  return {
    what,
    ...(weekly
      ? {
          day: random.one(WEEKDAY_IDS),
          ...(random.chance(0.2) && { from }),
          ...(random.chance(0.2) && { until }),
        }
      : { on: [...new Set([date(), date()])].sort() }),
    part: random.one(parts),
    ...(hard && { hard: true }),
    ...((hard || clears) &&
      random.chance(0.85) && { tissues: random.some(tissues, random.whole(1, 2)) }),
    ...(clears && random.chance(0.6) && { clear_before: random.one(hours) }),
    ...(clears && random.chance(0.6) && { clear_after: random.one(hours) }),
    ...(clears &&
      random.chance(0.35) && {
        clear_of: random.chance(0.5) ? [random.one(cards).id] : [random.one(QUALITIES)],
      }),
    ...(random.chance(0.25) && { blocks: true }),
  };
}

export function weekOf(plan: PlanText, course: Course, random: Random): WeekText {
  const asks = asksOf(plan, course, random);
  const days = 7 * askedWeeks(plan, course).length;
  const from = addDays(plan.starts, random.whole(-10, days - 1));
  const some = random.chance(0.12);
  const rota = random.chance(0.1);
  return {
    free: freeWeek(asks, random),
    ...(some && {
      other_weeks: [
        {
          from,
          ...(random.chance(0.7) && { until: addDays(from, random.whole(3, 28)) }),
          free: freeWeek(asks, random),
        },
      ],
    }),
    ...(rota && {
      rota: {
        on: random.whole(2, 5),
        off: random.whole(2, 4),
        from: addDays(plan.starts, random.whole(-9, 9)),
        ...(random.chance(0.3) && { until: addDays(plan.starts, days + random.whole(-20, 9)) }),
        ...(random.chance(asks.anyDay ? 0.98 : 0.8) && { free_on: freeDay(asks, random) }),
        free_off: freeDay(asks, random),
        ...(random.chance(0.4) && { hard_on_days_off: true }),
      },
    }),
    away: awayOf(plan.starts, days, random),
    events: random
      .some(EVENTS, random.chance(0.6) ? random.whole(1, 2) : 0)
      .map((what) => eventOf(what, plan, course, days, asks, random)),
    prefer: random.some(WEEKDAY_IDS, random.whole(0, 2)),
    ...(random.chance(0.35) && { few_minutes: random.one(["5 min", "8 min", "15 min"]) }),
    ...(random.chance(0.3) && { hours: random.one(HOURS) }),
  };
}
