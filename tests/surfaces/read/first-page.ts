/** Reads the first page of a booklet: the session to begin with, whose plan it is, and its days. */
import type { Fact, Say } from "../facts.ts";
import { type Context, readPart, readSide } from "./context.ts";
import { doseFacts, NONE, weekKey } from "./dose-facts.ts";
import { titleAtStart } from "./dose-pages.ts";
import { readLoad, readWork } from "./dose-words.ts";
import { gateFact, withoutGate } from "./gates.ts";
import { readDate } from "./numbers.ts";
import { readException, readOver } from "./pain-words.ts";
import { itemsIn, type Section, textsIn } from "./sections.ts";

const isStart = (title: string, { label }: Context): boolean =>
  ["start.first", "start.next"].some((key) => label(key) === title);

/** The sections that the first page has: its title's, the session's to begin with, and the note's. */
export const isFirstPage = (title: string, context: Context): boolean =>
  title === context.protocol.title ||
  isStart(title, context) ||
  context.filled("frame.cover.note", title) !== undefined;

export function readFirstPage(section: Section, facts: Fact[], say: Say, context: Context): void {
  const { title } = section;
  if (title === context.protocol.title) say("course title", "", title, title);
  if (isStart(title, context)) readStart(section, facts, say, context);
  readLines(textsIn(section.blocks), say, context);
}

/** "Name (Reference)" under the title, and the terms with what follows each. */
function readLines(texts: readonly string[], say: Say, { filled, label, starts }: Context): void {
  const after = (key: string): string | undefined => {
    const at = texts.indexOf(label(key));
    return at < 0 ? undefined : texts[at + 1];
  };
  const [named] = texts.flatMap((text) => filled("frame.cover.program", text) ?? []);
  const client = /^(.*) \((.*)\)$/.exec(named ?? "");
  if (client) {
    say("client", "name", client[1] ?? "", "line under the title");
    say("client", "reference", client[2] ?? "", "line under the title");
  }
  const dates = /^(.*) \((\d+)[^()]*\)$/.exec(after("frame.cover.dates") ?? "");
  if (dates) {
    const place = label("frame.cover.dates");
    const [from = "", to = ""] = filled("weeks.dates", dates[1] ?? "") ?? [];
    say("course", "first day", readDate(from, starts), place);
    say("course", "last day", readDate(to, starts), place);
    say("course", "weeks", dates[2] ?? "", place);
  }
  const clinician = after("frame.cover.clinician");
  if (clinician !== undefined) say("clinician", "", clinician, label("frame.cover.clinician"));
  const signed = after("frame.cover.signed");
  if (signed === undefined) return;
  const place = label("frame.cover.signed");
  const draft = signed === label("frame.draft.says");
  say("signed", "", draft ? "draft" : "signed", place);
  const [by] = (draft ? undefined : filled("signed", signed)) ?? [];
  if (by !== undefined) say("signed on", "", readDate(signed.slice(by.length), starts), place);
}

const WHEN = /^(.*\d{4}) · (.+?) · (?:about|etwa) (\d+) (?:minutes?|Minuten?)$/;

/** "Monday 30 November 2026 · Evening · about 38 minutes", its exercises, and when to stop them. */
function readStart({ title: place, blocks }: Section, facts: Fact[], say: Say, context: Context) {
  const texts = textsIn(blocks);
  const [, day = "", when = "", minutes = ""] =
    texts.map((text) => WHEN.exec(text)).find((found) => found !== null) ?? [];
  const date = readDate(day, context.starts);
  // after midnight the day of the wall stands behind the clock time
  const part = readPart(when.replace(/ \(.*\)$/, ""), context);
  say("session", `${date} ${part}`, "yes", place);
  say("minutes", `${date} ${part}`, minutes, place);
  const titles = itemsIn(blocks).map((item) => readExercise(item, date, facts, context));
  say("exercises", `${date} ${part}`, [...titles].sort().join(", "), place);
  for (const text of texts) readLimits(text, titles, say, place, context);
}

/** What a short statement of a dose has. */
const KINDS = new Set(["sets", "reps", "distance", "turns", "seconds", "load in short"]);

/** "1 Title (Left leg) 3 sets of 15 · 8 kg Start only when: …". */
function readExercise(item: string, date: string, facts: Fact[], context: Context): string {
  const { language, starts } = context;
  const { text, sign } = withoutGate(item, context);
  const plain = text.replace(/^\d+ /, "");
  const title = titleAtStart(plain, context);
  const [, sided, dose = ""] =
    /^(?:\(([^)]+)\) )?(.*)$/.exec(plain.slice(title.length).trim()) ?? [];
  const [work = "", load] = dose.split(" · ");
  const week = Math.floor((Date.parse(date) - Date.parse(starts)) / (7 * 86_400_000)) + 1;
  const key = weekKey(week, title);
  const place = `first session › ${title}`;
  const said = {
    ...readWork(work, language),
    load: load === undefined ? NONE : readLoad(load, language),
  };
  facts.push(...doseFacts(key, said, place).filter(({ kind }) => KINDS.has(kind)));
  const side = sided === undefined ? NONE : readSide(sided, context, "side");
  facts.push({ kind: "side", key, value: side, place }, gateFact(key, sign, place));
  return title;
}

/** The first sentence holds for all exercises but those that are named with a rule of their own. */
function readLimits(
  text: string,
  titles: readonly string[],
  say: Say,
  place: string,
  context: Context,
): void {
  const sentences = text.split(/(?<=[.?!]) (?=\p{L})/u);
  for (let end = 1; end <= sentences.length; end += 1) {
    const general = overIn(sentences.slice(0, end).join(" "), context);
    if (general === undefined) continue;
    const rest = sentences.slice(end);
    const exceptions = new Map(
      rest.flatMap((_, from) =>
        rest.slice(from).flatMap((__, to) => {
          const found = readException(rest.slice(from, from + to + 1).join(" "), context);
          return found === undefined ? [] : [[found.title, found.pain.during] as const];
        }),
      ),
    );
    for (const title of titles) say("pain during", title, exceptions.get(title) ?? general, place);
    return;
  }
}

function overIn(text: string, context: Context): string | undefined {
  try {
    return readOver(text, "over", context);
  } catch {
    return undefined;
  }
}
