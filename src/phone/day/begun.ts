/** When sessions were begun, as it is kept: a diary knows days alone. */
import type { Moment } from "../../units/clock.ts";

/** The list with one session more; one that was begun before begins anew. */
export function withBegun(begun: readonly string[], key: string, now: Moment): readonly string[] {
  const others = begun.filter((one) => !one.startsWith(`${key} `));
  return [...others, `${key} ${now.date} ${now.minutes}`];
}

/** By the names of the sessions; what cannot be read is left out. */
export function begunTimes(begun: readonly string[]): ReadonlyMap<string, Moment> {
  return new Map(
    begun.flatMap((text): (readonly [string, Moment])[] => {
      const [day, part, date = "", minutes = ""] = text.split(" ");
      if (!/^\d{4}-\d\d-\d\d$/.test(date) || !/^\d+$/.test(minutes)) return [];
      return [[`${day} ${part}`, { date, minutes: Number(minutes) }]];
    }),
  );
}
