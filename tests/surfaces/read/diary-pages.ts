/** Reads the diary: a row a day with the sessions to tick, the doses of each week, and the weights it asks for. */
import { addDays } from "../calendar-days.ts";
import type { Fact, Say } from "../facts.ts";
import { type Context, clientDay, readPart } from "./context.ts";
import { NONE, shortFacts, weekKey } from "./dose-facts.ts";
import { readShort } from "./dose-words.ts";
import { gateFact, withoutGate } from "./gates.ts";
import { readDate } from "./numbers.ts";
import { readPhases } from "./phases.ts";
import { picturesIn, type Row, rowsIn, type Section, textsIn } from "./sections.ts";

interface Exercise {
  readonly title: string;
  readonly sign: string;
}

/** A table as its head and its last week's row say it. */
interface Table {
  readonly exercises: ReadonlyMap<string, Exercise>;
  heads: readonly string[];
  week: number;
  /** Numbers of the week's exercises, and their doses. */
  doses: ReadonlyMap<string, string>;
  /** By number: whether some day of the week asks for the weight used. */
  asked: Map<string, boolean>;
}

export function readDiary(
  { blocks: head, parts }: Section,
  facts: Fact[],
  say: Say,
  context: Context,
): void {
  readToPhone(head, say, context);
  let exercises = new Map<string, Exercise>();
  for (const { title, blocks } of parts) {
    const own = exercisesIn(blocks, context);
    if (own.size > 0) exercises = own;
    const { rest, titles } = readPhases(title, say, "diary", context);
    if (rest !== "" || titles.length === 0) throw new Error(`"${title}" names no phases`);
    const table: Table = { exercises, heads: [], week: 0, doses: new Map(), asked: new Map() };
    for (const row of rowsIn(blocks)) {
      readRow(row, table, titles, facts, say, context);
    }
    sayAsked(table, say, title);
  }
}

/** Where the booklet for the phone is to be had; the code beside it is said to lead to the same address. */
function readToPhone(blocks: Section["blocks"], say: Say, { label }: Context): void {
  const [heading, at] = [label("frame.to-phone.heading"), label("frame.to-phone.at")];
  const said = textsIn(blocks).find((text) => text.startsWith(heading));
  const rest = said?.slice(heading.length).trim();
  if (rest === label("frame.to-phone.ask")) say("phone page", "", NONE, `diary, ${heading}`);
  else if (rest?.startsWith(at)) {
    const shown = rest.slice(at.length).trim();
    say("phone page", "", `https://${shown}`, `diary, ${heading}`);
    if (!picturesIn(blocks).includes(label("frame.to-phone.code").replace("{address}", shown)))
      throw new Error(`no code stands beside "${said}"`);
  } else throw new Error(`the diary does not say how to get the booklet on a phone: "${said}"`);
}

/** "1 Rise up on your toes", those that wait for a sign under it. */
function exercisesIn(blocks: Section["blocks"], context: Context): Map<string, Exercise> {
  const found = new Map<string, Exercise>();
  let sign = NONE;
  for (const block of blocks) {
    if (block.kind === "text") sign = withoutGate(block.text, context).sign;
    const [, number, title] = (block.kind === "item" && /^(\d+) (.+)$/.exec(block.text)) || [];
    if (number && title) found.set(number, { title, sign });
  }
  return found;
}

function readRow(
  { cells }: Row,
  table: Table,
  phases: readonly string[],
  facts: Fact[],
  say: Say,
  context: Context,
): void {
  const [first, ...others] = cells.map(({ text }) => text);
  if (first === undefined) return;
  const week = weekIn(first, context);
  if (first === context.label("frame.diary.head.day")) table.heads = others;
  else if (week) {
    sayAsked(table, say, first);
    Object.assign(table, { week: week.number, asked: new Map() });
    const { starts } = context;
    const key = `week ${week.number}`;
    say(
      "week dates",
      key,
      `${readDate(week.from, starts)} to ${readDate(week.to, starts)}`,
      `diary, ${key}`,
    );
    say("week phases", key, phases.join(", ") || NONE, `diary, ${key}`);
    if (week.doses.size > 0) table.doses = week.doses;
    for (const [number, dose] of table.doses) {
      const { title, sign } = exerciseOf(number, table);
      const place = `diary, ${key}, ${number}`;
      facts.push(gateFact(weekKey(week.number, title), sign, place));
      facts.push(
        ...shortFacts(weekKey(week.number, title), readShort(dose, context.language), place),
      );
    }
  } else if (cells.length === 1) {
    for (const [number, asked] of weightsIn(first, context)) table.asked.set(number, asked);
  } else readDay(first, others, table, say, context);
}

/**
 * "Mon 30 Nov", then its cells: a session is an empty cell under a part of the day, or where each day has one
 * a cell that names the part.
 */
function readDay(
  day: string,
  cells: readonly string[],
  table: Table,
  say: Say,
  context: Context,
): void {
  const wall = readDate(day, addDays(context.starts, (table.week - 1) * 7));
  const which = table.heads.indexOf(context.label("frame.diary.head.which"));
  const numbers = which < 0 ? [...table.doses.keys()] : (cells[which] ?? "").split(", ");
  const titles = numbers.map((number) => exerciseOf(number, table).title).sort();
  cells.forEach((text, at) => {
    const head = table.heads[at] ?? "";
    for (const [number] of weightsIn(head, context)) {
      const before = table.asked.get(number) ?? false;
      table.asked.set(number, before || text !== "–");
    }
    const named = head === context.label("frame.diary.head.when");
    const part = attempt(() => readPart(named ? text : head, context));
    if (named && part === undefined) throw new Error(`"${text}" is no part of the day`);
    if (part === undefined || text === "–") return;
    const key = `${clientDay(wall, part, context)} ${part}`;
    say("session", key, "yes", `diary, ${day}`);
    say("exercises", key, titles.join(", "), `diary, ${day}`);
  });
}

/** What a week asks: of every exercise whether its weight is written down. */
function sayAsked({ week, doses, asked, ...table }: Table, say: Say, place: string): void {
  if (week === 0) return;
  for (const number of doses.keys()) {
    const { title } = exerciseOf(number, table);
    say("weight asked for", weekKey(week, title), asked.get(number) ? "yes" : "no", place);
  }
}

function exerciseOf(number: string, { exercises }: Pick<Table, "exercises">): Exercise {
  const found = exercises.get(number);
  if (!found) throw new Error(`the diary names no exercise ${number}`);
  return found;
}

/** "Week 7: 11 Jan to 17 Jan 1: 4 × 8, 47.5 kg 2: 4 × 8, 14 kg", or what it is like. */
function weekIn(text: string, context: Context) {
  const [name = "", dated = "", ...said] = text.split(/ (?=\d+: )/);
  const head = `${name} ${dated}`;
  const as = context.label("frame.diary.as").replace("{n}", "\\d+");
  const alone = head.replace(new RegExp(` ${as}$`), "");
  const [number = "", dates = ""] = context.filled("frame.diary.week", alone) ?? [];
  const [from, to] = context.filled("weeks.dates", dates) ?? [];
  if (from === undefined || to === undefined) return undefined;
  if (alone === head && said.length === 0) throw new Error(`"${text}" says no doses`);
  const doses = said.map((one) => {
    const cut = one.indexOf(": ");
    return [one.slice(0, cut), one.slice(cut + 2)] as const;
  });
  return { number: Number(number), from, to, doses: new Map(doses) };
}

/** The numbers of the exercises whose weight a text asks for. */
function weightsIn(text: string, { label }: Context): (readonly [string, true])[] {
  const name = label("frame.diary.head.kg")
    .replace("{n}", "(\\d+)")
    .replace("({unit})", "\\((?:kg|lb)\\)");
  return [...text.matchAll(new RegExp(name, "g"))].map(([, number = ""]) => [number, true]);
}

function attempt<T>(read: () => T): T | undefined {
  try {
    return read();
  } catch {
    return undefined;
  }
}
