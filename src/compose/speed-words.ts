/** A speed in the client's words: the seconds for a distance, or the speed itself, and the share of their best. */
import type { Bout, BoutLoad, Range } from "../dose/types.ts";
import { paceText } from "../prescription/serialise.ts";
import type { Writer } from "./numbers.ts";

/** Shares of the best speed up to which a run feels like this. Common practice. */
const FEELS = [
  [0.5, "easy"],
  [0.7, "steady"],
  [0.85, "fast"],
  [0.95, "very_fast"],
] as const;

/**
 * "40 m in 7.5 to 8 seconds, about 80 % of your best speed"; where no seconds are known, "12 to 13 km/h";
 * where no number is, what the share feels like.
 */
export function speedWords({ load, distanceM }: Bout, write: Writer): string {
  const { words } = write;
  const { eachS, share } = load;
  const parts: string[] = [];
  if (eachS && distanceM !== undefined) {
    const time = secondsText(eachS, write);
    parts.push(words.say("dose.speed.in", { distance: write.distance(distanceM), time }));
    if (load.runningStart) parts.push(words.say("dose.speed.running_start"));
  } else {
    const plain = plainSpeed(load, write);
    if (plain !== undefined) parts.push(plain.long);
  }
  if (share === undefined) return parts.join(", ") || words.say("dose.speed.free");
  const best = shareText(share, write);
  if (parts.length > 0) return [...parts, words.say("dose.speed.share", { best })].join(", ");
  const feel = FEELS.find(([most]) => share.high < most)?.[1] ?? "all_out";
  const feels = words.say(`dose.speed.feels.${feel}`);
  return words.say("dose.speed.share_alone", { best, feels });
}

/** "7.5–8 s", "12 km/h", "80 %"; undefined where it is left to feel. */
export function shortSpeed(load: BoutLoad, write: Writer): string | undefined {
  const { eachS, share } = load;
  if (eachS) return `${spanText(eachS, write.number, "–")} s`;
  return (
    plainSpeed(load, write)?.short ?? (share && `${spanText(percents(share), write.number, "–")} %`)
  );
}

function secondsText(each: Range, write: Writer): string {
  if (each.low === each.high) return write.time(each.low);
  const ends = { least: write.time(each.low), most: write.time(each.high) };
  if (each.high >= 120) return write.words.say("time.span", ends);
  const { low, high } = each;
  return write.words.say("dose.speed.seconds", {
    low: write.number(low),
    high: write.number(high),
  });
}

/** The speed, or the pace where the clinician speaks of it. */
function plainSpeed({ kmH, slowKmH = kmH, asPace }: BoutLoad, { words, number }: Writer) {
  if (kmH === undefined || slowKmH === undefined) return undefined;
  if (asPace) {
    const [low, high] = [paceText(kmH / 3.6), paceText(slowKmH / 3.6)];
    const of = (to: string) => (low === high ? low : to);
    return {
      long: words.say("dose.speed.pace", {
        pace: of(words.say("time.span", { least: low, most: high })),
      }),
      short: `${of(`${low}–${high}`)} min/km`,
    };
  }
  const range = { low: slowKmH, high: kmH };
  const long = spanText(range, number, words.say("time.span", { least: "", most: "" }));
  return { long: `${long} km/h`, short: `${spanText(range, number, "–")} km/h` };
}

const percents = ({ low, high }: Range): Range => ({
  low: Math.round(low * 100),
  high: Math.round(high * 100),
});

const shareText = (share: Range, { words, number }: Writer): string =>
  spanText(percents(share), number, words.say("time.span", { least: "", most: "" }));

/** One number, or both ends with a word or dash between. */
function spanText({ low, high }: Range, number: (n: number) => string, between: string): string {
  return low === high ? number(low) : `${number(low)}${between}${number(high)}`;
}
