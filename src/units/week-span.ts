/** Spans of whole weeks, counted from 1: as they are written ("3", "2-5"), read, and put together. */

export interface WeekSpan {
  readonly first: number;
  readonly last: number;
}

/** What a span looks like; one that runs backwards looks right and is none. */
export const WEEK_SPAN = /^[1-9]\d?(?:-[1-9]\d?)?$/;

/** "3" or "2-5" as first and last week; undefined for all else, also for "5-2". */
export function readWeekSpan(text: string): WeekSpan | undefined {
  if (!WEEK_SPAN.test(text)) return undefined;
  const [first = 1, last = first] = text.split("-").map(Number);
  return first <= last ? { first, last } : undefined;
}

/** A span as it is written: "3", "2-5". */
export const weekSpanText = ({ first, last }: WeekSpan): string =>
  first === last ? `${first}` : `${first}-${last}`;

export const inSpan = (week: number, { first, last }: WeekSpan): boolean =>
  week >= first && week <= last;

/** Runs of weeks that follow one another: [1, 2, 3, 6] is 1 to 3, and 6. */
export function spansOf(weeks: readonly number[]): WeekSpan[] {
  const spans: { first: number; last: number }[] = [];
  for (const week of [...new Set(weeks)].sort((a, b) => a - b)) {
    const open = spans.at(-1);
    if (open && open.last === week - 1) open.last = week;
    else spans.push({ first: week, last: week });
  }
  return spans;
}
