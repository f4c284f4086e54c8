/** An invented client's week: free time, days and weeks away, events, the hours of the day. */
import { addDays, WEEKDAY_IDS } from "./calendar-days.ts";
import type { AwayText, EventText, WeekText } from "./plan-text.ts";
import type { Random } from "./random.ts";
import { type CardText, dosesOf, type ProtocolText } from "./shipped.ts";

const EVENTS = ["Choir", "Football", "Long walk", "Nachtdienst", "Tennis & tea"];

/** Hours of clients who do not keep the usual ones; they rise within a day that may begin in the evening. */
const HOURS = [
  { morning: "05:40", midday: "11:15", evening: "17:30" },
  { morning: "08:30", midday: "14:05", evening: "21:10" },
  { morning: "10:00", midday: "15:30", evening: "20:45" },
  { morning: "22:00", midday: "02:00", evening: "06:00" },
  { morning: "18:45", midday: "23:50", evening: "05:15" },
];

const PARTS = ["morning", "midday", "evening"] as const;

/** A single day, or two, in any week. */
function daysAway(starts: string, days: number, random: Random): AwayText[] {
  const single = random.chance(0.3) ? [addDays(starts, random.whole(0, days))] : [];
  const pair = random.chance(0.12) ? [random.whole(0, days)] : [];
  return [
    ...single,
    ...pair.map((at) => ({ from: addDays(starts, at), to: addDays(starts, at + 1) })),
  ];
}

/** A whole week or two: the course waits for the client, or goes on without. */
function weeksAway(starts: string, total: number, random: Random): AwayText {
  const first = random.whole(0, Math.max(0, total - 1)) * 7;
  const then = random.chance(0.3) ? undefined : random.one(["shift", "skip"] as const);
  return {
    from: addDays(starts, first),
    to: addDays(starts, first + random.one([6, 6, 9, 13])),
    ...(then && { then }),
  };
}

export function weekOf(
  protocol: ProtocolText,
  cards: readonly CardText[],
  starts: string,
  total: number,
  random: Random,
): WeekText {
  const doses = [
    ...protocol.phases.flatMap(({ exercises }) => exercises.flatMap((one) => dosesOf(one))),
    ...cards.map(({ dose }) => dose),
  ];
  const often = Math.max(1, ...doses.map((dose) => Number(dose.per_day ?? 1)));
  const daily = doses.some((dose) => dose.per_day !== undefined || dose.per_week === 7);
  const minutes = () => `${random.whole(9, 16) * 10} min`;
  const free = Object.fromEntries(
    WEEKDAY_IDS.filter(() => daily || random.chance(0.96)).map((day) => {
      const parts = random.some(PARTS, Math.max(often, random.whole(1, 3)));
      return [
        day,
        Object.fromEntries(
          (often > 1 ? (often > 2 ? PARTS : (["morning", "evening"] as const)) : parts).map(
            (part) => [part, minutes()],
          ),
        ),
      ];
    }),
  );
  const days = total * 7;
  const away = [
    ...daysAway(starts, days, random),
    ...(random.chance(0.2) ? [weeksAway(starts, total, random)] : []),
  ];
  const tissues = [...new Set(cards.flatMap((card) => card.tissues))];
  const events = random
    .some(EVENTS, random.chance(0.5) ? random.whole(1, 3) : 0)
    .map((what): EventText => {
      const weekly = random.chance(0.6);
      return {
        what,
        ...(weekly
          ? { day: random.one(WEEKDAY_IDS) }
          : { on: [...new Set([1, 2].map(() => addDays(starts, random.whole(0, days - 1))))] }),
        part: random.one(PARTS),
        ...(random.chance(0.3) && {
          hard: true,
          tissues: random.some(tissues, 2),
          ...(!daily &&
            random.chance(0.6) && {
              [random.one(["clear_before", "clear_after"])]: random.one(["12 h", "24 h"]),
            }),
        }),
        ...(!daily && random.chance(0.25) && { blocks: true }),
      };
    });
  return {
    free,
    away,
    events,
    prefer: random.some(WEEKDAY_IDS, random.whole(0, 3)),
    ...(random.chance(0.4) && { few_minutes: random.one(["5 min", "8 min", "15 min"]) }),
    hours: random.chance(0.4) ? random.one(HOURS) : undefined,
  };
}
