/** Reads the page of a phase: its weeks, its table or what it does in another way, and its signs. */
import type { Fact, Say } from "../facts.ts";
import { type Context, readWeeks } from "./context.ts";
import {
  type AboveTable,
  type ReadDose,
  readDoseRows,
  rowFacts,
  someExercises,
  withChanges,
} from "./dose-pages.ts";
import { readDate, readSpan } from "./numbers.ts";
import { itemsIn, rowsIn, type Section, textsIn } from "./sections.ts";

/** The doses of the phases read before, by their titles. */
export type PhaseTables = Map<string, readonly ReadDose[]>;

/** `tables` gets this phase's. */
export function readPhasePage(
  section: Section,
  title: string,
  tables: PhaseTables,
  facts: Fact[],
  say: Say,
  context: Context,
): void {
  const { filled, label, starts } = context;
  const when = textsIn(section.blocks)
    .map((text) => filled("weeks.when", text))
    .find((found) => found !== undefined);
  if (when) {
    const [weeks = "", from = "", to = ""] = when;
    const { first, last } = readWeeks(weeks, context);
    say("phase weeks", title, `${first} to ${last}`, `${title}: ${when.join(" ")}`);
    say("phase first day", title, readDate(from, starts), title);
    say("phase last day", title, readDate(to, starts), title);
  }
  const parts = [section, ...section.parts];
  for (const part of parts) {
    const place = `${title} › ${part.title}`;
    const minutes = textsIn(part.blocks).flatMap((text) => filled("phase.sessions", text) ?? []);
    if (minutes[0] !== undefined) say("phase lengths", title, readSpan(minutes[0]), place);
    if (part.title === label("frame.phase.move-on"))
      for (const sign of itemsIn(part.blocks)) say("move on", `${title} · ${sign}`, "said", place);
    if (part.title === label("frame.phase.go-back"))
      for (const sign of itemsIn(part.blocks)) say("go back", `${title} · ${sign}`, "said", place);
  }
  const above = aboveTable(parts, when?.[0] ?? "", context);
  const doses = parts.flatMap((part) => readTable(part, above, tables, context));
  tables.set(title, doses);
  const said = rowFacts(doses, title, context);
  facts.push(...said.facts);
  const [least, most] = [Math.min(...said.weeks), Math.max(...said.weeks)];
  if (said.weeks.length > 0)
    say("phase weeks", title, `${least} to ${most}`, `${title}: rows of its table`);
}

function aboveTable(parts: readonly Section[], weeks: string, context: Context): AboveTable {
  const forAll = context.label("frame.phase.all");
  const texts = parts.flatMap(({ blocks }) => textsIn(blocks));
  const shared = texts.find((text) => text.startsWith(forAll));
  return {
    weeks,
    shared: shared?.slice(forAll.length).trim() ?? "",
    most: texts.flatMap((text) => someExercises(text, context) ?? []),
  };
}

/** The rows of a table, or those of the phase that is named in its place, with the changes listed under it. */
function readTable(
  { title, blocks }: Section,
  above: AboveTable,
  tables: PhaseTables,
  context: Context,
): readonly ReadDose[] {
  const before = textsIn(blocks).flatMap((text) => sameAs(text, context) ?? [])[0];
  if (before === undefined) return readDoseRows(rowsIn(blocks), above, context);
  const table = tables.get(before);
  if (!table) throw new Error(`${title} goes by ${before}, which has no table`);
  return withChanges(table, itemsIn(blocks), above.weeks, context);
}

/** The phase that another is like: "Do the same as in “…”, but:". */
const sameAs = (text: string, { filled }: Context): string | undefined =>
  (filled("frame.phase.changes.but", text) ?? filled("frame.phase.changes.none", text))?.[0];
