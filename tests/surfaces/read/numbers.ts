/** Numbers and dates as people write them in English and German, read back. */
import { addDays, daysBetween, isoDate } from "../calendar-days.ts";

/** "2.5", "2,5", "1,200" and "1.200" by the language's own signs. */
export function readNumber(text: string, language: "en" | "de"): number {
  const plain =
    language === "de"
      ? text.replace(/[.\u00A0 ](?=\d{3})/g, "").replace(",", ".")
      : text.replace(/,(?=\d{3})/g, "");
  const value = Number(plain);
  if (Number.isNaN(value)) throw new Error(`"${text}" is no number`);
  return value;
}

/** A number as facts hold it: to the hundredth, with a point. */
export const plainNumber = (value: number): string => String(Math.round(value * 100) / 100);

const MONTHS: readonly RegExp[] = [
  /^(jan|jän)/i,
  /^feb/i,
  /^(mar|mär)/i,
  /^apr/i,
  /^(may|mai)/i,
  /^(jun)/i,
  /^(jul)/i,
  /^aug/i,
  /^sep/i,
  /^(oct|okt)/i,
  /^nov/i,
  /^(dec|dez)/i,
];

/** "Monday 30 November 2026", "Monday, November 30, 2026", "30. Nov.": a year that is not said follows from the first day. */
export function readDate(text: string, starts: string): string {
  const day = /(?<![\d])(\d{1,2})(?!\d)/.exec(text)?.[1];
  const month = (text.match(/\p{L}+/gu) ?? [])
    .map((word) => MONTHS.findIndex((name) => name.test(word)))
    .find((at) => at >= 0);
  const year = /\d{4}/.exec(text)?.[0];
  if (day === undefined || month === undefined) throw new Error(`"${text}" is no date`);
  if (year !== undefined) return isoDate(Number(year), month + 1, Number(day));
  const first = Number(starts.slice(0, 4));
  const dates = [first - 1, first, first + 1, first + 2].map((one) =>
    isoDate(one, month + 1, Number(day)),
  );
  const found = dates.find((date) => daysBetween(starts, date) >= -14);
  return found ?? addDays(starts, 0);
}

/** "5" or "5 to 11": the least and the most of some lengths. */
export function spanText(lengths: readonly number[]): string {
  const [least, most] = [Math.min(...lengths), Math.max(...lengths)];
  return least === most ? String(least) : `${least} to ${most}`;
}

/** "5 to 11" from the words "5 to 11" or "5 bis 11". */
export const readSpan = (text: string): string =>
  text.replace(/^(\d+) (?:to|bis) (\d+)$/, "$1 to $2");
