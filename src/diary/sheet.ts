/** A diary's file as cells, each with its place: whatever separates them and ends their lines. */
export interface Sheet {
  /** Whether numbers may have a decimal comma: not where commas separate cells. */
  readonly comma: boolean;
  readonly header: readonly string[];
  readonly rows: readonly SheetRow[];
  /** Line and character, from 1, of a cell of a row; of the row's beginning where it has no such cell. */
  readonly placeOf: (row: SheetRow, cell?: number) => { line: number; position: number };
}

export interface SheetRow {
  readonly cells: readonly string[];
  /** Where it begins in the text. */
  readonly start: number;
  /** Whether its quotation marks do not close as they should: its cells then mean nothing. */
  readonly broken: boolean;
}

const DELIMITERS = [",", ";", "\t"] as const;

/** The cells of a text. `known` are names by which its header is told, whatever separates them. */
export function readSheet(text: string, known: readonly string[]): Sheet {
  const first = /^[^\r\n]*/.exec(text)?.[0] ?? "";
  // of CR LF the carriage return is taken off each row, so that LF alone may stand beside it
  const newline = /^\r(?!\n)/.test(text.slice(first.length, first.length + 2)) ? "\r" : "\n";
  const delimiter = delimiterOf(first, known);
  const place = placesIn(text);
  const [header, ...rows] = split(text, delimiter, newline);
  return {
    comma: delimiter !== ",",
    header: (header?.cells ?? []).map((name) => name.trim().toLowerCase()),
    rows: rows.filter(({ cells, broken }) => broken || cells.some((cell) => cell.trim() !== "")),
    placeOf: (row, cell = 0) => place(cellStart(text, row.start, cell, delimiter, newline)),
  };
}

/** The delimiter by which most names of the header become known ones. */
function delimiterOf(header: string, known: readonly string[]): string {
  const found = DELIMITERS.map((delimiter) => {
    const names = header.split(delimiter).map((name) => name.replaceAll('"', "").trim());
    return names.filter((name) => known.includes(name.toLowerCase())).length;
  });
  return DELIMITERS[found.indexOf(Math.max(...found))] ?? ",";
}

/**
 * The rows of a text (RFC 4180). At the first wrong quotation mark they end with a broken row: nobody
 * can say what stands after it.
 */
function split(text: string, delimiter: string, newline: string): SheetRow[] {
  const rows: SheetRow[] = [];
  let cells: string[] = [];
  let start = 0;
  for (let at = 0; at < text.length; ) {
    const end = cellEnd(text, at, delimiter, newline);
    if (end === undefined) return [...rows, { cells: [], start, broken: true }];
    cells.push(cellText(text.slice(at, end)));
    at = end + 1;
    if (text.charAt(end) === delimiter) {
      // a delimiter at the very end has an empty cell after it
      if (at < text.length) continue;
      cells.push("");
    }
    rows.push({ cells, start, broken: false });
    cells = [];
    start = at;
  }
  return rows;
}

/** What a cell says: without its quotation marks, or the carriage return of a line end. */
function cellText(raw: string): string {
  if (!raw.startsWith('"')) return raw.replace(/\r$/, "");
  return raw.slice(1, raw.lastIndexOf('"')).replaceAll('""', '"');
}

/** Where the cell ends that begins here: its delimiter, line end or the text's end; undefined after a wrong mark. */
function cellEnd(text: string, start: number, delimiter: string, newline: string) {
  const ends = (at: number) =>
    at >= text.length || text.charAt(at) === delimiter || text.charAt(at) === newline;
  let at = start;
  if (text.charAt(start) !== '"') {
    while (!ends(at)) at += 1;
    return at;
  }
  do {
    const close = text.indexOf('"', at + 1);
    if (close < 0) return undefined;
    at = close + 1;
  } while (text.charAt(at) === '"');
  while (!ends(at) && text.charAt(at).trim() === "") at += 1;
  return ends(at) ? at : undefined;
}

function cellStart(
  text: string,
  row: number,
  cell: number,
  delimiter: string,
  newline: string,
): number {
  let at = row;
  for (let n = 0; n < cell; n += 1) {
    const end = cellEnd(text, at, delimiter, newline);
    if (end === undefined || text.charAt(end) !== delimiter) return row;
    at = end + 1;
  }
  return at;
}

/** Line and character of an offset. */
function placesIn(text: string): (offset: number) => { line: number; position: number } {
  const starts = [
    0,
    ...Array.from(text.matchAll(/\r\n|\r|\n/g), (end) => end.index + end[0].length),
  ];
  return (offset) => {
    let [low, high] = [0, starts.length];
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if ((starts[middle] ?? 0) <= offset) low = middle;
      else high = middle;
    }
    return { line: low + 1, position: offset - (starts[low] ?? 0) + 1 };
  };
}
