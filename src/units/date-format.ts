/** Calendar dates in the words of a locale. */
import { dayNumber } from "./dates.ts";

/** Writes dates, YYYY-MM-DD, as a locale does; where none is given, as the machine's own. */
export function dateFormat(
  locale: string | undefined,
  options: Intl.DateTimeFormatOptions,
): (date: string) => string {
  const format = new Intl.DateTimeFormat(locale, { ...options, timeZone: "UTC" });
  return (date) => format.format(dayNumber(date) * 86_400_000);
}
