/** Every shipped course as it is printed: no page that a tired reader could not use. */
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { ROOT } from "../support/world.ts";
import { ALL_BOOKS, type Book, nameOf } from "./books.ts";
import { type PrintedBook, printBooks } from "./print.ts";
import { canDraw, drawSheet } from "./sheet.ts";

/** One of each other form: what differs is the edition, the paper and the language, not the course. */
const SAMPLE = new Set([
  "achilles-heavy-slow-resistance large A4 en",
  "shoulder-cuff-lowering large Letter de",
  "hamstring-first-weeks summary A4 en",
  "demo-shoulder summary Letter de",
  "demo-achilles standard Letter de",
]);

/** Which booklets: those of `npm test`, the standard edition, or all of them with their contact sheets. */
const WHICH: Readonly<Record<string, (book: Book) => boolean>> = {
  sample: (book) => SAMPLE.has(nameOf(book)) || nameOf(book).endsWith(" standard A4 en"),
  standard: ({ edition }) => edition === "standard",
  all: () => true,
};
/** The most pages that a demo may have in the standard edition on A4: more nobody takes along. */
const MOST_PAGES: ReadonlyMap<string, number> = new Map([
  ["demo-achilles standard A4 en", 12],
  ["demo-achilles standard A4 de", 12],
  ["demo-shoulder standard A4 en", 16],
]);
const which = process.env.GALLERY ?? "sample";
const isDrawn = which !== "sample" && which !== "standard" && canDraw;

const books = ALL_BOOKS.filter(WHICH[which] ?? isNamed);
const printed = new Map<Book, PrintedBook>();
const folder = join(ROOT, "out/gallery");

/** Other words are looked for in a booklet's name: "large A4 en", "shoulder de". */
function isNamed(book: Book): boolean {
  const [course = "", ...form] = nameOf(book).split(" ");
  return which
    .split(" ")
    .every((word) => form.includes(word) || (word.length > 3 && course.includes(word)));
}

beforeAll(async () => {
  if (which !== "sample") mkdirSync(folder, { recursive: true });
  await printBooks(books, (one) => {
    printed.set(one.book, one);
    if (!isDrawn) return;
    const file = join(folder, nameOf(one.book).replaceAll(" ", "-"));
    writeFileSync(`${file}.pdf`, one.pdf);
    drawSheet(one.pdf, `${file}.png`);
    drawSheet(one.pdf, `${file}-grey.png`, true);
  });
}, 3_600_000);

afterAll(() => {
  if (which === "sample") return;
  const lines = [...printed.values()].flatMap(({ book, pages, problems }) => [
    `${nameOf(book)}: ${pages.length} pages`,
    ...problems.map(({ rule, page, says }) => `  ${rule}, page ${page}: ${says}`),
  ]);
  writeFileSync(join(folder, "problems.txt"), `${lines.join("\n")}\n`);
});

describe(`${which}: ${books.length} booklets`, () => {
  test.each(books.map((book) => [nameOf(book), book] as const))("%s", (_name, book) => {
    const { problems = [], pages = [] } = printed.get(book) ?? {};
    expect(pages.length).toBeGreaterThan(book.edition === "summary" ? 0 : 8);
    expect(pages.length).toBeLessThanOrEqual(MOST_PAGES.get(nameOf(book)) ?? Infinity);
    expect(problems.map(({ rule, page, says }) => `${rule}, page ${page}: ${says}`)).toEqual([]);
  });

  test.runIf(which in WHICH)("every rule has something to look at", () => {
    const pages = [...printed.values()].flatMap((one) => one.pages);
    const blocks = pages.flatMap((page) => page.blocks);
    const lines = blocks.flatMap((block) => block.lines);
    const seen = {
      headings: blocks.filter(({ role }) => /^H\d$/.test(role)),
      cells: blocks.filter(({ role }) => role === "TD"),
      steps: lines.filter(({ text }) => /^2\.\s?\p{L}/u.test(text)),
      wrapped: blocks.filter(({ wraps }) => wraps.length > 0),
      numbers: lines.filter(({ text }) => /\d.*(kg|out of|von) ?\d*/.test(text)),
      signs: lines.filter(({ text }) => /^(Stop and call us if|Aufhören und anrufen)/.test(text)),
      pictures: pages.flatMap((page) => page.pictures.filter(({ lettered }) => !lettered)),
      rulers: pages.flatMap((page) => page.pictures.filter(({ lettered }) => lettered)),
      heads: pages.flatMap((page) => page.margins),
      inks: pages.flatMap((page) => page.inks),
    };
    const none = Object.entries(seen).filter(([, some]) => some.length < books.length);
    expect(none.map(([name]) => name)).toEqual([]);
  });
});
