/** The words of a speed read back: seconds for a distance, the speed itself or a pace, and the share of the best. */
import { type Language, readDistance, readTime } from "./amounts.ts";
import { plainNumber, readNumber } from "./numbers.ts";

/** A speed in words, part by part: seconds for a distance or the speed itself, the start, the share. */
const SPEEDS: Readonly<
  Record<Language, Readonly<Record<"in" | "start" | "pace" | "share" | "to", RegExp>>>
> = {
  en: {
    in: /^([\d.]+ k?m) in (.+)$/,
    start: /^from a running start$/,
    pace: /^(\S+(?: to \S+)?) minutes a km$/,
    share: /^about (.+) % of your best speed(?:: [^:]+)?$/i,
    to: / to /,
  },
  de: {
    in: /^([\d,]+ k?m) in (.+)$/,
    start: /^mit Anlauf$/,
    pace: /^(\S+(?: bis \S+)?) Minuten je km$/,
    share: /^etwa (.+) % Ihres besten Tempos(?:: [^:]+)?$/i,
    to: / bis /,
  },
};

/** "in 7.5–8 s over 40 · running start · share 75–80", "km/h 12 · share 70"; undefined where it is no speed. */
export function readSpeed(text: string, language: Language): string | undefined {
  const rules = SPEEDS[language];
  // what a share feels like has a comma of its own
  const parts = text.includes(": ") ? [text] : text.split(", ");
  const read = parts.map((part) => {
    const timed = rules.in.exec(part);
    if (timed) {
      const ends = (timed[2] ?? "").split(rules.to);
      const unit = /[^\d.,]+$/.exec(ends.at(-1) ?? "")?.[0] ?? "";
      const times = ends.map((end) => readTime(/^[\d.,]+$/.test(end) ? end + unit : end, language));
      return `in ${times.join("–")} s over ${readDistance(timed[1] ?? "", language)}`;
    }
    if (rules.start.test(part)) return "running start";
    const plain = /^(.+) km\/h$/.exec(part);
    if (plain) return `km/h ${endsOf(plain[1] ?? "", rules.to, language)}`;
    const pace = rules.pace.exec(part);
    if (pace) return `min/km ${(pace[1] ?? "").split(rules.to).join("–")}`;
    const best = rules.share.exec(part);
    return best ? `share ${endsOf(best[1] ?? "", rules.to, language)}` : undefined;
  });
  return read.includes(undefined) ? undefined : read.join(" · ");
}

function endsOf(text: string, between: RegExp | string, language: Language): string {
  const ends = text.split(between).map((end) => plainNumber(readNumber(end, language)));
  return ends.join("–");
}

/** The short form: "7.5–8 s", "12 km/h", "5:30–6:00 min/km", "80 %". */
export function readShortSpeed(text: string, language: Language): string | undefined {
  const found = /^([\d.,:–]+) (s|km\/h|min\/km|%)$/.exec(text);
  if (!found) return undefined;
  const [, said = "", unit] = found;
  if (unit === "min/km") return `min/km ${said}`;
  const ends = endsOf(said, "–", language);
  return unit === "s" ? `in ${ends} s` : unit === "%" ? `share ${ends}` : `km/h ${ends}`;
}
