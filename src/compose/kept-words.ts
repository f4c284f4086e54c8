/** What is kept clear of an event of the client's week, as pages and terminal say it. */
import type { KeptClear } from "../schedule/schedule.ts";
import type { Writer } from "./numbers.ts";

/** "No hard work close before: Match (Saturday)." Or, where the plan names the work, which exercises. */
export function keptWords({ event, weekday, side, only }: KeptClear, write: Writer): string {
  const values = { event, day: write.weekdayName(weekday) };
  return only === undefined
    ? write.words.say(`kept.${side}`, values)
    : write.words.say(`kept.${side}_of`, { ...values, list: only.join("; ") });
}
