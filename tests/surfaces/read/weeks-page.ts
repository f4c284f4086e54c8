/** Reads the calendar of the weeks: a row a week, a column a weekday. */
import { addDays } from "../calendar-days.ts";
import type { Say } from "../facts.ts";
import { type Context, type Part, partWords, readPart, wallDay } from "./context.ts";
import { NONE } from "./dose-facts.ts";
import { readDate, readSpan } from "./numbers.ts";
import type { Cell } from "./outline.ts";
import { readPhases } from "./phases.ts";
import { rowsIn, type Section } from "./sections.ts";

const DAYS = 7;

export function readWeeksPage({ blocks, parts }: Section, say: Say, context: Context): void {
  const rows = rowsIn([...blocks, ...parts.flatMap((part) => part.blocks)]);
  let group = { phases: NONE, summary: "" };
  for (const { cells } of rows) {
    const [first, ...days] = cells;
    if (!first || first.text === context.label("frame.weeks.week")) continue;
    const week = readWeekHead(first.text, context);
    if (!week) group = readGroup(first.text, say, context);
    else {
      const sums = readSummary(week.summary === "" ? group.summary : week.summary, context);
      sayWeek({ ...week, phases: group.phases }, sums, say, context);
      days.forEach((cell, at) => {
        if (cell.text !== "") sayDay(cell, week.number, at, sums?.minutes, say, context);
      });
    }
  }
}

interface Week {
  readonly number: number;
  readonly from: string;
  readonly to: string;
  readonly phases: string;
}

interface Sums {
  readonly sessions: string;
  readonly minutes: string;
}

function sayWeek(
  { number, from, to, phases }: Week,
  sums: Sums | undefined,
  say: Say,
  { starts }: Context,
): void {
  const key = `week ${number}`;
  say("week dates", key, `${readDate(from, starts)} to ${readDate(to, starts)}`, key);
  say("week phases", key, phases, key);
  if (!sums) return;
  say("week sessions", key, sums.sessions, `${key}, its sum`);
  if (sums.sessions !== "0") say("lengths in the week", key, sums.minutes, `${key}, its sum`);
}

/** A cell of a day; its date follows from its column, or stands in it in full. */
function sayDay(
  cell: Cell,
  week: number,
  column: number,
  shared: string | undefined,
  say: Say,
  context: Context,
): void {
  const place = `week ${week}, column ${column + 1}`;
  const inFull = longDate(cell.text, context);
  const date = inFull?.date ?? addDays(context.starts, (week - 1) * DAYS + column);
  const day = inFull ? sessionsAndNotes(inFull.rest, context) : readDay(cell.text, context);
  say("day of the month", date, String(Number(date.slice(8))), `${place}, by its column`);
  if ("number" in day) say("day of the month", date, String(Number(day.number)), place);
  if (cell.long !== undefined) {
    say("day in full", place, readDate(cell.long, context.starts), place);
    say("day in full", place, date, `${place}, by its column`);
  }
  for (const { part, weekday, minutes = shared } of day.sessions) {
    const onNext = wallDay(date, part, context) !== date;
    say("next date", `${date} ${part}`, onNext ? "told" : "the same", "plan: week.hours");
    say("next date", `${date} ${part}`, weekday === undefined ? "the same" : "told", place);
    say("session", `${date} ${part}`, "yes", place);
    // where sessions of several lengths share a sum, the day says none
    if (minutes !== undefined && !minutes.includes("to"))
      say("minutes", `${date} ${part}`, minutes, place);
  }
  for (const note of day.notes) say("note of a day", date, withoutSpaces(note), place);
}

/** A narrow column breaks a long word where it ends, which text from a PDF shows as a space. */
export const withoutSpaces = (text: string): string => text.replaceAll(" ", "");

/** "Monday 30 November 2026 Evening 36 min": a day in full, and what follows it. */
function longDate(text: string, { starts }: Context): { date: string; rest: string } | undefined {
  const found = /^\p{L}+,? .*?\d{4}/u.exec(text);
  return found
    ? { date: readDate(found[0], starts), rest: text.slice(found[0].length).trim() }
    : undefined;
}

/** Phases one after another, then the sum that all weeks of the group share. */
function readGroup(text: string, say: Say, context: Context): { phases: string; summary: string } {
  const { titles, rest } = readPhases(text, say, "calendar", context);
  return { phases: titles.join(", ") || NONE, summary: rest };
}

/** "Week 3 14 Dec to 20 Dec 3 sessions, about 38 minutes each". */
function readWeekHead(text: string, { label }: Context) {
  const name = label("frame.weeks.n").replace("{n}", "(\\d+)");
  const to = label("weeks.dates")
    .replace("{from}", "(.+?)")
    .replace("{to}", "((?:\\d+\\.? )?\\p{L}+\\.?(?: \\d+(?!\\p{L}))?)");
  const found = new RegExp(`^${name} ${to}(?: (.*))?$`, "u").exec(text);
  if (!found) return undefined;
  const [, number = "", from = "", last = "", summary = ""] = found;
  // "20 Dec 3 sessions": a number after the month belongs to the sum, unless the month came first
  const taken = /^(\d+\.? \p{L}+\.?) (\d+)$/u.exec(last);
  return taken
    ? { number: Number(number), from, to: taken[1] ?? "", summary: `${taken[2]} ${summary}` }
    : { number: Number(number), from, to: last, summary };
}

const SUMS = {
  en: {
    none: /^(?:No|Away: no) sessions this week$/,
    some: /^(\d+) sessions?, about (\d+(?: to \d+)?) minutes(?: each)?$/,
  },
  de: {
    none: /^(?:Diese|Verreist: diese) Woche keine Übungen$/,
    some: /^(\d+) Mal üben, (?:je )?etwa (\d+(?: bis \d+)?) Minuten$/,
  },
} as const;

function readSummary(
  text: string,
  { language }: Context,
): { sessions: string; minutes: string } | undefined {
  if (text === "") return undefined;
  const { none, some } = SUMS[language];
  if (none.test(text)) return { sessions: "0", minutes: "0" };
  const found = some.exec(text);
  if (!found) throw new Error(`no rule reads the sum "${text}"`);
  return { sessions: found[1] ?? "", minutes: readSpan(found[2] ?? "") };
}

/** "30 Evening 36 min Choir", "1 Dec". */
function readDay(text: string, context: Context) {
  const head = /^(?:(\d{1,2})\.?(?: (?:\p{L}+\.?)(?=$| ))?|\p{L}+\.? (\d{1,2}))/u.exec(text);
  if (!head) throw new Error(`no rule reads the day "${text}"`);
  const number = head[1] ?? head[2] ?? "";
  // a part of the day or a note may follow the number where no month stands
  let rest = text.replace(/^(\p{L}+\.? )?\d{1,2}\.?/u, "").trim();
  const month = /^(\p{L}+)\.?/u.exec(rest)?.[1];
  if (month !== undefined && isMonth(month))
    rest = rest.slice(month.length).replace(/^\./, "").trim();
  return { number, ...sessionsAndNotes(rest, context) };
}

/** "Evening 36 min", "22:00 36 min" or, after midnight, "02:00 (Tue) 36 min", then what else is on that day. */
function sessionsAndNotes(text: string, context: Context) {
  let rest = text;
  const sessions: { part: Part; weekday: string | undefined; minutes: string | undefined }[] = [];
  const names = partWords(context).join("|");
  const session = new RegExp(`^(${names})(?: \\((\\p{L}+)\\.?\\))?(?: (\\d+) min)?(?= |$)`, "u");
  for (let found = session.exec(rest); found; found = session.exec(rest)) {
    const [whole, name = "", weekday, minutes] = found;
    sessions.push({ part: readPart(name, context), weekday, minutes });
    rest = rest.slice(whole.length).trim();
  }
  return { sessions, notes: rest === "" ? [] : [rest] };
}

const MONTH_WORDS = new Set(
  "jan jän feb mar mär mrz apr may mai jun juni june jul juli july aug sep sept oct okt nov dec dez march märz april jänner".split(
    " ",
  ),
);

const isMonth = (word: string): boolean => MONTH_WORDS.has(word.toLowerCase());
