/** Times and distances in words, read back into seconds and metres. */
import { plainNumber, readNumber } from "./numbers.ts";

export type Language = "en" | "de";

const N = String.raw`(\d+(?:[.,]\d+)?)`;

const TIMES: Readonly<Record<Language, readonly (readonly [RegExp, readonly number[]])[]>> = {
  en: [
    [new RegExp(`^${N} min ${N} s$`), [60, 1]],
    [new RegExp(`^${N} (?:seconds?|s)$`), [1]],
    [new RegExp(`^${N} (?:minutes?|min)$`), [60]],
    [new RegExp(`^${N} hours?$`), [3600]],
  ],
  de: [
    [new RegExp(`^${N} Min\\. ${N} Sek\\.$`), [60, 1]],
    [new RegExp(`^${N} (?:Sekunden?|s)$`), [1]],
    [new RegExp(`^${N} (?:Minuten?|min)$`), [60]],
    [new RegExp(`^${N} Stunden?$`), [3600]],
  ],
};

/** Seconds of a time in words; undefined where it is none. */
export function readTime(text: string, language: Language): string | undefined {
  for (const [pattern, units] of TIMES[language]) {
    const found = pattern.exec(text);
    if (!found) continue;
    const seconds = units.reduce(
      (sum, unit, at) => sum + unit * readNumber(found[at + 1] ?? "", language),
      0,
    );
    return plainNumber(seconds);
  }
  return undefined;
}

export function readDistance(text: string, language: Language): string | undefined {
  const found = new RegExp(`^${N} (m|km)$`).exec(text);
  if (!found) return undefined;
  return plainNumber(readNumber(found[1] ?? "", language) * (found[2] === "km" ? 1000 : 1));
}

export function timeOrThrow(text: string, language: Language): string {
  const time = readTime(text, language);
  if (time === undefined) throw new Error(`"${text}" is no time`);
  return time;
}
