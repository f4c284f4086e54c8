/** Pages of the demo booklets as pictures, against the pictures that were looked at: the layout stays. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import jsqr from "jsqr";
import pixelmatch from "pixelmatch";
import { PNG } from "pngjs";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { COMMAND, DAY, ROOT } from "./support/world.ts";

/** Share of pixels that may differ: other versions of poppler smooth edges in their own way. */
const TOLERANCE = 0.001;
/** Set it to draw the pictures anew, after looking at what has changed. */
const DRAW = process.env.PAULATIM_DRAW_PAGES !== undefined;

// the package is CommonJS: its types and what a bundler makes of it name the default differently
const readQr = ("default" in jsqr ? jsqr.default : jsqr) as typeof jsqr.default;

const PICTURES = join(ROOT, "tests/pages");
const poppler = spawnSync("pdftoppm", ["-v"]).error === undefined;
const folder = mkdtempSync(join(tmpdir(), "paulatim-pages-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Demo plan, edition, page. */
const PAGES = [
  ["cover", "demo/achilles", "standard", 1],
  ["stop", "demo/achilles", "standard", 2],
  ["pain", "demo/achilles", "standard", 3],
  ["weeks", "demo/achilles", "standard", 4],
  ["my-plan", "demo/achilles", "standard", 5],
  ["phase", "demo/achilles", "standard", 6],
  ["exercise", "demo/achilles", "standard", 7],
  ["easier", "demo/achilles", "standard", 9],
  ["progress", "demo/achilles", "standard", 10],
  ["diary", "demo/achilles", "standard", 11],
  ["large-exercise", "demo/achilles", "large", 15],
  ["summary", "demo/achilles", "summary", 1],
  ["german-stop", "demo-de/achilles", "standard", 2],
] as const;

describe.skipIf(!poppler)("pages as they were looked at (needs pdftoppm: poppler-utils)", () => {
  beforeAll(() => {
    const booklets = new Map(
      PAGES.map(([, plan, edition]) => [join(plan, edition), [plan, edition]]),
    );
    for (const [name, [plan, edition = ""]] of booklets) {
      const words = ["booklet", `templates/${plan}.md`, "--formats", "pdf", "--edition", edition];
      const options = ["--date", DAY, "--out", join(folder, name)];
      spawnSync(process.execPath, [COMMAND, ...words, ...options], { cwd: ROOT });
    }
  }, 120_000);

  test.each(PAGES)("%s", (name, plan, edition, page) => {
    const now = picture(join(folder, plan, edition), page);
    const file = join(PICTURES, `${name}.png`);
    if (DRAW) writeFileSync(file, PNG.sync.write(now, { colorType: 0 }));
    expect(differing(now, PNG.sync.read(readFileSync(file)))).toBeLessThan(TOLERANCE);
  });

  test.each([
    ["demo/achilles", "standard", "https://brookfold.example/phone"],
    ["demo/achilles", "large", "https://brookfold.example/phone"],
    ["demo-de/achilles", "standard", "https://lindenhang.example/handy"],
  ])(
    "the code in the diary of %s, %s, leads to the clinic's page",
    (plan, edition, address) => {
      expect(readCodes(join(folder, plan, edition), address)).toEqual([address]);
      // every page is looked at, to see that there is no other code
    },
    120_000,
  );

  test("a line of text more or less would be seen", () => {
    const page = PNG.sync.read(readFileSync(join(PICTURES, "pain.png")));
    const less = PNG.sync.read(readFileSync(join(PICTURES, "pain.png")));
    // the last line of the rules, from the text's edge to the middle of the page
    const [top, bottom] = lastLine(less);
    for (let y = top; y <= bottom; y += 1) {
      less.data.fill(255, 4 * y * less.width, 4 * (y + 1) * less.width);
    }
    expect(differing(page, less)).toBeGreaterThan(TOLERANCE);
  });
});

/** What the codes say on the pages of the only PDF in a folder that print an address, sharp as a plain printer. */
function readCodes(from: string, address: string): string[] {
  const pdf = readdirSync(from).find((name) => name.endsWith(".pdf")) ?? "";
  const { stdout } = spawnSync("pdftotext", [join(from, pdf), "-"], { encoding: "utf8" });
  const shown = address.replace("https://", "");
  return stdout.split("\f").flatMap((text, at) => {
    if (!text.includes(shown)) return [];
    const { data, width, height } = picture(from, at + 1, 110);
    return [readQr(new Uint8ClampedArray(data), width, height)?.data ?? ""];
  });
}

/** A page of the only PDF in a folder, in grey, so many dots an inch. */
function picture(from: string, page: number, dots = 45): PNG {
  const pdf = readdirSync(from).find((name) => name.endsWith(".pdf")) ?? "";
  const place = ["-f", `${page}`, "-l", `${page}`];
  const options = ["-png", "-gray", "-r", `${dots}`, ...place, join(from, pdf)];
  const { stdout } = spawnSync("pdftoppm", options, { maxBuffer: 1 << 26 });
  return PNG.sync.read(stdout);
}

/** Share of the pixels that differ to the eye. */
function differing(one: PNG, other: PNG): number {
  expect([one.width, one.height]).toEqual([other.width, other.height]);
  const count = pixelmatch(one.data, other.data, undefined, one.width, one.height, {
    threshold: 0.2,
  });
  return count / (one.width * one.height);
}

/** First and last row of the lowest line of text above the foot of the page. */
function lastLine({ data, width, height }: PNG): readonly [number, number] {
  const inked = (y: number) =>
    data.subarray(4 * y * width, 4 * (y + 1) * width).some((value) => value < 160);
  let bottom = Math.floor(height * 0.93);
  while (!inked(bottom)) bottom -= 1;
  let top = bottom;
  while (inked(top)) top -= 1;
  return [top, bottom];
}
