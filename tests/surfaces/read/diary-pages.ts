/** Reads the diary's tables: which exercise is to be ticked off in which session, and its dose in short. */
import { addDays } from "../calendar-days.ts";
import type { Fact, Say } from "../facts.ts";
import { type Context, clientDay, readPart } from "./context.ts";
import { NONE, shortFacts, weekKey } from "./dose-facts.ts";
import { titleAtStart } from "./dose-pages.ts";
import { readShort } from "./dose-words.ts";
import { gateFact, withoutGate } from "./gates.ts";
import { readDate } from "./numbers.ts";
import { type Row, rowsIn, type Section } from "./sections.ts";

export function readDiary({ parts }: Section, facts: Fact[], say: Say, context: Context): void {
  const exercises = new Map<string, { titles: string[]; place: string }>();
  for (const { title, blocks } of parts) {
    const [number = "", dates = ""] = context.filled("frame.diary.week", title) ?? [];
    if (number === "") continue;
    const key = `week ${number}`;
    const [from = "", to = ""] = context.filled("weeks.dates", dates) ?? [];
    say(
      "week dates",
      key,
      `${readDate(from, context.starts)} to ${readDate(to, context.starts)}`,
      title,
    );
    readTables(Number(number), title, rowsIn(blocks), exercises, facts, say, context);
  }
  for (const [when, { titles, place }] of exercises)
    say("exercises", when, titles.sort().join(", "), place);
}

function readTables(
  week: number,
  place: string,
  rows: readonly Row[],
  exercises: Map<string, { titles: string[]; place: string }>,
  facts: Fact[],
  say: Say,
  context: Context,
): void {
  let columns: string[] = [];
  let byDay: string[] | undefined;
  let sign = NONE;
  for (const row of rows) {
    const [first, ...cells] = row.cells;
    if (!first) continue;
    if (first.text === context.label("frame.diary.exercise")) {
      byDay = undefined;
      sign = NONE;
      columns = cells.map(({ text }) => readSession(text, week, context));
      for (const when of columns) say("session", when, "yes", place);
    } else if (first.text === context.label("frame.diary.day")) {
      byDay = cells.map(({ text }) => readPart(text, context));
    } else if (cells.length === 0) {
      sign = withoutGate(first.text, context).sign;
    } else if (byDay) {
      const date = readDate(first.text, context.starts);
      cells.forEach(({ text }, at) => {
        if (text !== "–") say("session", `${date} ${byDay?.[at]}`, "yes", place);
      });
    } else if (!isAnswerRow(first.text, context)) {
      const title = titleAtStart(first.text, context);
      const dose = first.text.slice(title.length).trim();
      facts.push(gateFact(weekKey(week, title), sign, place));
      facts.push(...shortFacts(weekKey(week, title), readShort(dose, context.language), place));
      cells.forEach(({ text }, at) => {
        const when = columns[at];
        if (when === undefined) throw new Error(`${place}: ${title} has a cell without a session`);
        const here = exercises.get(when) ?? { titles: [], place };
        if (text !== "–") here.titles.push(title);
        exercises.set(when, here);
      });
    }
  }
}

const ANSWERS = ["during", "after", "morning", "hard", "note"] as const;

const isAnswerRow = (text: string, { label }: Context): boolean =>
  ANSWERS.some((key) => label(`frame.diary.${key}`) === text);

/** "Mon 30 Nov Evening". */
function readSession(text: string, week: number, context: Context): string {
  const words = text.split(" ");
  const part = readPart(words.at(-1) ?? "", context);
  const date = readDate(words.slice(1, -1).join(" "), addDays(context.starts, (week - 1) * 7));
  return `${clientDay(date, part, context)} ${part}`;
}
