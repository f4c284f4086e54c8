/** Reads tables of doses: those of a phase's page, and those of an exercise's own page. */
import type { Fact, Say } from "../facts.ts";
import { type Context, readSide, readWeeks, waysOf } from "./context.ts";
import { doseFacts, NONE, weekKey } from "./dose-facts.ts";
import { readLoad, readWork, type SaidDose } from "./dose-words.ts";
import { gateFact, withoutGate } from "./gates.ts";
import { readHow } from "./how-words.ts";
import { readInstead } from "./instead.ts";
import type { Cell } from "./outline.ts";
import { painFacts, readPain, sayCallLevel } from "./pain-words.ts";
import { itemsIn, type Row, rowsIn, type Section, textsIn } from "./sections.ts";
import { urgentIn, urgentSign } from "./urgent.ts";

/** Which column holds what; the order of the heads. */
interface Columns {
  /** What the first column names. */
  readonly first: "weeks" | "exercise";
  readonly load: number;
  readonly how: number;
}

function columnsOf(row: Row, { label }: Context): Columns | undefined {
  const heads = row.cells.map(({ text }) => text);
  const first = (["weeks", "exercise"] as const).find(
    (one) => heads[0] === label(`frame.phase.${one}`) && heads[1] === label("frame.phase.work"),
  );
  return (
    first && {
      first,
      load: heads.indexOf(label("frame.phase.load")),
      how: heads.indexOf(label("frame.phase.how")),
    }
  );
}

/** What a phase's page says above its table: its weeks, and what holds for all or for some exercises. */
export interface AboveTable {
  readonly weeks: string;
  readonly shared: string;
  readonly most: readonly { readonly numbers: readonly string[]; readonly says: string }[];
}

/** A dose of a table: of one exercise, in the weeks that `span` names. */
export interface ReadDose {
  readonly number: string;
  readonly title: string;
  readonly side: string;
  readonly sign: string;
  readonly span: string;
  readonly said: SaidDose;
}

/**
 * The rows of a phase's table: an exercise's name over its weeks, or a row an exercise and a line under it
 * for what else holds.
 */
export function readDoseRows(
  rows: readonly Row[],
  { weeks: whole, shared, most }: AboveTable,
  context: Context,
): ReadDose[] {
  const [head, ...others] = rows;
  const columns = head && columnsOf(head, context);
  if (!columns) return [];
  // a table that goes on over the page has its head again
  const body = others.filter((row) => columnsOf(row, context) === undefined);
  const doses =
    columns.first === "weeks"
      ? underNames(body, context)
      : body.flatMap((row, at) => besideName(row, body[at + 1], whole, context));
  return doses.map(({ cells, load, span, number, title, side, common, sign }) => {
    const named = most.filter(({ numbers }) => numbers.includes(number)).map(({ says }) => says);
    const all = [shared, ...named, common].filter((text) => text !== "").join(" · ");
    const said = readDoseCells(cells, columns, all, title, context);
    const under = load === "" ? {} : { load: readLoad(load, context.language) };
    return { number, title, side, sign, span, said: { ...said, ...under } };
  });
}

/** What the doses of a phase state of each week, and the weeks that they name. */
export function rowFacts(
  doses: readonly ReadDose[],
  phase: string,
  context: Context,
): { readonly facts: readonly Fact[]; readonly weeks: readonly number[] } {
  const each = doses.flatMap((dose) =>
    weeksIn(dose.span, context).map((week) => ({ ...dose, week })),
  );
  return {
    weeks: each.map(({ week }) => week),
    facts: each.flatMap(({ week, title, side, sign, span, said }) => {
      const place = `${phase} › ${title} › ${span}`;
      const gate = gateFact(weekKey(week, title), sign, place);
      return [...saidFacts(week, title, said, side, place), ...(said.often === NONE ? [] : [gate])];
    }),
  };
}

/** Doses with what a later phase does in another way: "All exercises: …", "Exercises 1, 2: …". */
export function withChanges(
  doses: readonly ReadDose[],
  changes: readonly string[],
  span: string,
  context: Context,
): ReadDose[] {
  const read = changes.map((text) => {
    const all = context.filled("frame.phase.changes.all", text)?.[0];
    const some = all === undefined ? someExercises(text, context) : undefined;
    if (all === undefined && !some) throw new Error(`"${text}" names no exercises`);
    return { numbers: some?.numbers, says: some?.says ?? all ?? "" };
  });
  return doses.map((dose) => {
    const own = read.filter(({ numbers }) => numbers?.includes(dose.number) ?? true);
    const ways = waysOf(context.cardByTitle(dose.title), context);
    const said = own.map(({ says }) => readHow(says, context.language, ways));
    return { ...dose, span, said: Object.assign({}, dose.said, ...said) };
  });
}

/** "Exercises 1, 2, 4: Rest 30 seconds between sets"; undefined for other texts. */
export function someExercises(text: string, { label }: Context) {
  const words = [...label("frame.phase.changes.some").matchAll(/\{(\p{L}+)\} ?(?=other|\})/gu)];
  const names = words.map(([, name]) => name).join("|");
  const [, list, says] = new RegExp(`^(?:${names}) ([\\d, ]+): (.+)$`).exec(text) ?? [];
  return list === undefined || says === undefined ? undefined : { numbers: list.split(", "), says };
}

/** A row of doses, with what is said of its exercise and the words for its weeks. */
interface DoseInRow extends ReturnType<typeof readGroup> {
  readonly cells: readonly Cell[];
  readonly span: string;
  /** The load where it stands under the dose; else empty. */
  readonly load: string;
}

/** Rows of weeks, each under the name of its exercise. */
function underNames(rows: readonly Row[], context: Context): DoseInRow[] {
  let group: ReturnType<typeof readGroup> | undefined;
  return rows.flatMap(({ cells }) => {
    const [first] = cells;
    if (first && cells.length === 1) group = readGroup(first.text, context);
    return first && cells.length > 1 && group
      ? [{ ...group, cells, span: first.text, load: "" }]
      : [];
  });
}

/** A row that begins with the name of its exercise, and the line under it: side and more, then the load. */
function besideName(
  { cells }: Row,
  under: Row | undefined,
  span: string,
  context: Context,
): DoseInRow[] {
  const [first] = cells;
  if (!first?.head) return [];
  const named = readGroup(first.text, context);
  if (named.common !== "" || named.side !== NONE)
    throw new Error(`"${first.text}" says more than a name`);
  const [line, load] = under?.cells[0]?.head === false ? under.cells : [];
  const { text, sign } = withoutGate(line?.text ?? "", context);
  const { side, rest } = cutSide(text, context);
  return [{ ...named, side, common: rest, sign, cells, span, load: load?.text ?? "" }];
}

function saidFacts(
  week: number,
  title: string,
  said: SaidDose,
  side: string,
  place: string,
): Fact[] {
  const key = weekKey(week, title);
  const often = said.often ?? NONE;
  if (often === NONE) return timesFacts(key, often, place);
  return [
    ...doseFacts(key, said, place),
    { kind: "side", key, value: side, place },
    { kind: "often", key, value: often, place },
    ...timesFacts(key, often, place),
  ];
}

/** How often, as what can be counted in a week of the calendar; a range is only held against the JSON's. */
export function timesFacts(key: string, often: string, place: string): Fact[] {
  const times = (value: string) => [{ kind: "times in the week", key, value, place }];
  if (often === NONE) return times("0");
  const free = /, (\d+(?: to \d+)?) when free$/.exec(often)?.[1];
  if (free !== undefined) return free.includes(" to ") ? [] : times(free);
  const [n = "", , unit] = often.split(" ");
  if (unit === "week") return times(n);
  if (unit === "day") return times(String(Number(n) * 7));
  const days = /^every (\d+)$/.exec(often)?.[1];
  return days === undefined ? [] : [{ kind: "days from one to the next", key, value: days, place }];
}

/** "3 Title Left leg 3 seconds up · Rest 2 minutes between sets": the longest title that fits, then a side, then what always holds. */
function readGroup(whole: string, context: Context) {
  const { text, sign } = withoutGate(whole, context);
  const [number = ""] = /^\d+(?= )/.exec(text) ?? [];
  const plain = text.replace(/^\d+ /, "");
  const title = titleAtStart(plain, context);
  const { side, rest } = cutSide(plain.slice(title.length).trim(), context);
  return { number, title, side, common: rest, sign };
}

/** The side that a text begins with, and what follows. */
function cutSide(text: string, context: Context) {
  const sides = ["leg", "arm", "body"].flatMap((limb) =>
    ["left", "right", "each", "both"].map((one) => context.label(`side.${limb}.${one}`)),
  );
  const found = sides
    .filter((words) => text.startsWith(words))
    .sort((a, b) => b.length - a.length)[0];
  if (found === undefined) return { side: NONE, rest: text };
  return { side: readSide(found, context, "side"), rest: text.slice(found.length).trim() };
}

/** The card's title that a text begins with. Throws where it begins with none. */
export function titleAtStart(text: string, context: Context): string {
  const title = context.titleAtStart(text);
  if (title === undefined) throw new Error(`"${text}" begins with no card's title`);
  return title;
}

function readDoseCells(
  cells: readonly Cell[],
  columns: Columns,
  common: string,
  title: string,
  context: Context,
): SaidDose {
  const { language } = context;
  const load = columns.load < 0 ? "" : (cells[columns.load]?.text ?? "");
  const how = columns.how < 0 ? "" : (cells[columns.how]?.text ?? "");
  return {
    ...readWork(cells[1]?.text ?? "", language),
    load: load === "" ? NONE : readLoad(load, language),
    ...readHow(
      [common, how].filter((text) => text !== "").join(" · "),
      language,
      waysOf(context.cardByTitle(title), context),
    ),
  };
}

/** The page of an exercise: side, what always holds, its weeks, its limit of pain. */
export function readExercisePage(
  section: Section,
  title: string,
  facts: Fact[],
  say: Say,
  context: Context,
): void {
  const { label } = context;
  const sentences = textsIn(section.blocks);
  const side = sentences.map((text) => sideOf(text, context)).find((one) => one !== undefined);
  for (const part of section.parts) {
    const place = `${title} › ${part.title}`;
    if (part.title === label("frame.exercise.dose")) {
      facts.push(...readDoseBox(part, title, side ?? NONE, context));
    }
    if (part.title === label("frame.exercise.pain")) {
      facts.push(...painFacts(title, readPain(textsIn(part.blocks)[0] ?? "", context), place));
    }
    if (part.title === label("frame.exercise.easier"))
      readInstead(textsIn(part.blocks)[0] ?? "", title, say, context);
    if (part.title === label("frame.exercise.stop")) {
      const texts = textsIn(part.blocks).filter((text) => urgentSign(text, context) === undefined);
      const phone = /^.+?: (.+) \S+: (\S+)$/.exec(texts.join(" "));
      say("telephone", "clinic", phone?.[1]?.trim() ?? NONE, place);
      say("telephone", "emergency", phone?.[2] ?? NONE, place);
      sayCallLevel(itemsIn(part.blocks), say, place, context);
      for (const sign of urgentIn(part.blocks, context))
        say("sign for a flag", sign, "said", place);
    }
  }
}

/** What always holds, said once, and the rows of the weeks. */
function readDoseBox(part: Section, title: string, side: string, context: Context): Fact[] {
  const gate = (text: string) => withoutGate(text, context);
  const texts = textsIn(part.blocks).filter((text) => gate(text).sign === NONE);
  const always = textsIn(part.blocks).map((text) => gate(text).sign);
  let sign = always.find((one) => one !== NONE) ?? NONE;
  let columns: Columns = { first: "weeks", load: -1, how: -1 };
  return rowsIn(part.blocks).flatMap((row): Fact[] => {
    const heads = columnsOf(row, context);
    if (heads) columns = heads;
    const [first] = row.cells;
    if (heads || !first) return [];
    if (row.cells.length === 1) {
      sign = gate(first.text).sign;
      return [];
    }
    const said = readDoseCells(row.cells, columns, texts.join(" "), title, context);
    const place = `${title} › ${part.title} › ${first.text}`;
    return weeksIn(first.text, context).flatMap((week) => [
      ...saidFacts(week, title, said, side, place),
      ...(said.often === NONE ? [] : [gateFact(weekKey(week, title), sign, place)]),
    ]);
  });
}

function weeksIn(text: string, context: Context): number[] {
  const { first, last } = readWeeks(text, context);
  return Array.from({ length: last - first + 1 }, (_, at) => first + at);
}

function sideOf(text: string, context: Context): string | undefined {
  try {
    return readSide(text, context, "side.sentence");
  } catch {
    return undefined;
  }
}
