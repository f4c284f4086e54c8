/** Gives every row of a tagged table all its cells: the browser leaves out those without text. */

import { dict, Name, Text, type Value } from "../objects/values.ts";
import { isTag, type Kid, newTag, type Tag } from "./tags.ts";

const SECTIONS = new Set(["THead", "TBody", "TFoot"]);

/** The kids of a table, in order: caption first, then rows of the same number of cells. */
export function regularTable(kids: readonly Kid[]): Pick<Tag, "kids"> {
  const tags = kids.filter(isTag);
  const rows = tags.flatMap((kid) => (SECTIONS.has(kid.role) ? kid.kids.filter(isTag) : [kid]));
  const trs = rows.filter(({ role }) => role === "TR");
  for (const row of trs) row.kids = row.kids.filter(isTag);
  const columns = Math.max(0, ...trs.map((row) => width(row)));
  // Cells that reach over several rows are the author's own affair: nothing is added there.
  const simple = trs.every((row) => cells(row).every((cell) => span(cell, "RowSpan") === 1));
  if (simple) {
    const heads = headColumns(trs);
    for (const row of trs) if (width(row) < columns) fill(row, columns, heads);
  }
  const captions = tags.filter(({ role }) => role === "Caption");
  const others = tags.filter(({ role }) => role !== "Caption");
  return { kids: [...captions, ...others] };
}

function cells(row: Tag): Tag[] {
  return row.kids.filter(isTag).filter(({ role }) => role === "TH" || role === "TD");
}

/** Cells of a row, those that reach over several columns counted as often. */
export function width(row: Tag): number {
  return cells(row).reduce((sum, cell) => sum + span(cell, "ColSpan"), 0);
}

function span(cell: Tag, key: "RowSpan" | "ColSpan"): number {
  const value = cell.attributes.get(key);
  return typeof value === "number" && value >= 1 ? value : 1;
}

/** Columns by the id of the head above them; the first full row of heads names them. */
function headColumns(rows: readonly Tag[]): Map<string, number> {
  const heads = new Map<string, number>();
  const row = rows.find(
    (one) => cells(one).length > 1 && cells(one).every(({ role }) => role === "TH"),
  );
  let column = 0;
  for (const cell of row ? cells(row) : []) {
    const id = idOf(cell);
    if (id !== undefined) heads.set(id, column);
    column += span(cell, "ColSpan");
  }
  return heads;
}

function idOf(cell: Tag): string | undefined {
  const id = cell.more.get("ID");
  return id instanceof Text ? id.bytes : undefined;
}

/** Puts each cell in the column whose head it names, and empty ones in the columns between. */
function fill(row: Tag, columns: number, heads: ReadonlyMap<string, number>): void {
  const filled: Tag[] = [];
  const own = cells(row)
    .filter(({ role }) => role === "TH")
    .map(idOf);
  const idsByColumn = new Map([...heads].map(([id, column]) => [column, id]));
  const taken = () => filled.reduce((sum, cell) => sum + span(cell, "ColSpan"), 0);
  const empty = () => {
    const ids = [idsByColumn.get(taken()), ...own].filter((id) => id !== undefined);
    const cell = newTag("TD");
    if (ids.length > 0) cell.attributes = headers(ids);
    filled.push(cell);
  };
  const all = cells(row);
  for (const [index, cell] of all.entries()) {
    const rest = all.slice(index).reduce((sum, one) => sum + span(one, "ColSpan"), 0);
    const column = columnOf(cell, heads) ?? taken();
    while (taken() < Math.min(column, columns - rest)) empty();
    filled.push(cell);
  }
  while (taken() < columns) empty();
  row.kids = filled;
}

function headers(ids: readonly string[]): Tag["attributes"] {
  return dict({ O: new Name("Table"), Headers: ids.map((id): Value => new Text(id)) });
}

function columnOf(cell: Tag, heads: ReadonlyMap<string, number>): number | undefined {
  const ids = cell.attributes.get("Headers");
  if (!Array.isArray(ids)) return undefined;
  const columns = ids.map((id) => (id instanceof Text ? heads.get(id.bytes) : undefined));
  return columns.find((column) => column !== undefined);
}
