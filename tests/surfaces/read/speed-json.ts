/** The speed of a bout in the machine form, said as its words are read. */
import { plainNumber } from "./numbers.ts";

export interface SpeedJson {
  readonly distance_m: number | null;
  readonly speed_km_h: number | null;
  readonly speed_from_km_h: number | null;
  readonly speed_as_pace: true | null;
  readonly seconds_each: readonly [number, number] | null;
  readonly running_start: true | null;
  readonly percent_of_best: readonly [number, number] | null;
}

/** As the words are read: the seconds, or the speed or pace; the start; the share. */
export function speedOf(bout: SpeedJson): string {
  const { speed_km_h: fast, seconds_each, percent_of_best, distance_m } = bout;
  const slow = bout.speed_from_km_h ?? fast;
  const ends = (low: number, high: number, text: (n: number) => string) =>
    low === high ? text(low) : `${text(low)}–${text(high)}`;
  const parts: string[] = [];
  if (seconds_each) {
    const over = plainNumber(distance_m ?? 0);
    parts.push(`in ${ends(seconds_each[0], seconds_each[1], plainNumber)} s over ${over}`);
    if (bout.running_start) parts.push("running start");
  } else if (fast !== null && slow !== null) {
    const pace = (kmH: number) => {
      const seconds = Math.round(3600 / kmH);
      return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")}`;
    };
    const said = bout.speed_as_pace ? ends(fast, slow, pace) : ends(slow, fast, plainNumber);
    parts.push(`${bout.speed_as_pace ? "min/km" : "km/h"} ${said}`);
  }
  if (percent_of_best)
    parts.push(`share ${ends(percent_of_best[0], percent_of_best[1], plainNumber)}`);
  return parts.length > 0 ? parts.join(" · ") : "by feel";
}
