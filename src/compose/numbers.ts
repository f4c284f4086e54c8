/** Numbers, times and dates as people say them, by locale. */
import { dateFormat } from "../units/date-format.ts";
import { inUnit, type MassUnit } from "../units/mass.ts";
import type { Words } from "../words/words.ts";

/** How a locale writes dates and numbers. */
export interface Writer {
  readonly words: Words;
  /** The locale's language: en, de. */
  readonly language: string;
  /** 2.5 as the locale writes it. */
  readonly number: (value: number) => string;
  /** A mass in kilograms as the clinic writes it: 12.5 kg, 25 lb. */
  readonly mass: (kg: number) => string;
  /** 45 seconds, 2 minutes, 2 min 30 s. */
  readonly time: (seconds: number) => string;
  /** 45 s, 2 min. */
  readonly shortTime: (seconds: number) => string;
  /** 20 m, 1.5 km. */
  readonly distance: (metres: number) => string;
  /** Monday 30 November 2026. */
  readonly longDate: (date: string) => string;
  /** 30 November. */
  readonly dayAndMonth: (date: string) => string;
  /** 30 Nov. */
  readonly shortDate: (date: string) => string;
  /** 30. */
  readonly dayOfMonth: (date: string) => string;
  readonly weekday: (date: string, width: "long" | "short") => string;
  /** Name of a weekday from 0, Monday. */
  readonly weekdayName: (weekday: number) => string;
  readonly list: (items: readonly string[]) => string;
}

/** A writer for a locale such as en-GB, and for masses in a unit. */
export function writer(words: Words, locale: string, units: MassUnit = "kg"): Writer {
  const numbers = new Intl.NumberFormat(locale, { maximumFractionDigits: 2 });
  const dates = (options: Intl.DateTimeFormatOptions) => dateFormat(locale, options);
  const long = dates({ weekday: "long", day: "numeric", month: "long", year: "numeric" });
  const short = dates({ weekday: "short" });
  const weekdayLong = dates({ weekday: "long" });
  const lists = new Intl.ListFormat(locale, { type: "conjunction" });
  const number = (value: number) => numbers.format(value);
  return {
    words,
    language: new Intl.Locale(locale).language,
    number,
    mass: (kg) => words.say(`units.${units}`, { n: number(inUnit(kg, units)) }),
    time: (seconds) => timeInWords(words, seconds),
    shortTime: (seconds) =>
      seconds >= 120 && seconds % 60 === 0
        ? words.say("time.short_min", { n: number(seconds / 60) })
        : words.say("time.short_s", { n: number(seconds) }),
    distance: (metres) =>
      metres >= 1000 && metres % 10 === 0 ? `${number(metres / 1000)} km` : `${number(metres)} m`,
    longDate: long,
    dayAndMonth: dates({ day: "numeric", month: "long" }),
    shortDate: dates({ day: "numeric", month: "short" }),
    dayOfMonth: dates({ day: "numeric" }),
    weekday: (date, width) => (width === "long" ? weekdayLong(date) : short(date)),
    // 1 January 2024 was a Monday: any week will do for a weekday's name
    weekdayName: (weekday) => weekdayLong(`2024-01-0${weekday + 1}`),
    list: (items) => lists.format(items),
  };
}

function timeInWords(words: Words, seconds: number): string {
  if (seconds < 120 && seconds % 60 !== 0) return words.say("time.seconds", { n: seconds });
  if (seconds % 3600 === 0 && seconds > 0) return words.say("time.hours", { n: seconds / 3600 });
  if (seconds % 60 === 0) return words.say("time.minutes", { n: seconds / 60 });
  return words.say("time.minutes_seconds", {
    minutes: Math.floor(seconds / 60),
    seconds: seconds % 60,
  });
}
