/** Lines up rows of text in columns for the terminal. */

/** Each row as one line, columns two spaces apart; the last column is not padded. */
export function columns(rows: readonly (readonly string[])[]): string[] {
  const widths: number[] = [];
  for (const row of rows) {
    row.forEach((cell, index) => {
      widths[index] = Math.max(widths[index] ?? 0, width(cell));
    });
  }
  return rows.map((row) =>
    row
      .map((cell, index) =>
        index === row.length - 1 ? cell : cell + " ".repeat((widths[index] ?? 0) - width(cell)),
      )
      .join("  ")
      .trimEnd(),
  );
}

const width = (text: string): number => [...text].length;
