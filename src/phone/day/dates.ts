/** Dates as the booklet's locale says them. */
import { dateFormat } from "../../units/date-format.ts";

export interface DayNames {
  /** Wednesday 2 December. */
  readonly long: (date: string) => string;
  /** Wednesday. */
  readonly weekday: (date: string) => string;
  /** Wed 2 Dec. */
  readonly short: (date: string) => string;
  /** 2.5 as the locale writes it. */
  readonly number: (value: number) => string;
}

/** Names of days for a locale such as en-GB; where the device does not know it, its own. */
export function dayNames(locale: string): DayNames {
  const known = knownLocale(locale);
  const format = (options: Intl.DateTimeFormatOptions) => dateFormat(known, options);
  const numbers = new Intl.NumberFormat(known, { maximumFractionDigits: 2 });
  return {
    long: format({ weekday: "long", day: "numeric", month: "long" }),
    weekday: format({ weekday: "long" }),
    short: format({ weekday: "short", day: "numeric", month: "short" }),
    number: (value) => numbers.format(value),
  };
}

function knownLocale(locale: string): string | undefined {
  try {
    return Intl.DateTimeFormat.supportedLocalesOf(locale)[0];
  } catch {
    return undefined;
  }
}
