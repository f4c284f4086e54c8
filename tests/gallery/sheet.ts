/** All pages of a printed booklet side by side in one picture, to look at (needs pdftoppm: poppler-utils). */
import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { PNG } from "pngjs";

export const canDraw = spawnSync("pdftoppm", ["-v"]).error === undefined;

const DOTS_AN_INCH = "60";
const ACROSS = 6;
const GAP = 8;

/** Writes the contact sheet of a PDF to `file`, in colour or in grey. */
export function drawSheet(pdf: Uint8Array, file: string, grey = false): void {
  const folder = mkdtempSync(join(tmpdir(), "paulatim-sheet-"));
  try {
    writeFileSync(join(folder, "book.pdf"), pdf);
    const options = ["-png", ...(grey ? ["-gray"] : []), "-r", DOTS_AN_INCH, "book.pdf", "page"];
    spawnSync("pdftoppm", options, { cwd: folder });
    const names = readdirSync(folder).filter((name) => name.endsWith(".png"));
    const pages = names.sort().map((name) => PNG.sync.read(readFileSync(join(folder, name))));
    writeFileSync(file, PNG.sync.write(tiled(pages)));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function tiled(pages: readonly PNG[]): PNG {
  const width = Math.max(...pages.map((page) => page.width)) + GAP;
  const height = Math.max(...pages.map((page) => page.height)) + GAP;
  const across = Math.min(ACROSS, pages.length);
  const sheet = new PNG({
    width: across * width,
    height: Math.ceil(pages.length / across) * height,
  });
  sheet.data.fill(160);
  for (const [at, page] of pages.entries()) {
    const [left, top] = [(at % across) * width, Math.floor(at / across) * height];
    PNG.bitblt(page, sheet, 0, 0, page.width, page.height, left, top);
  }
  return sheet;
}
