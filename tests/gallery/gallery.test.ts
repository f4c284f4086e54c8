/** Every shipped course as it is printed: no page that a tired reader could not use. */
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { ROOT } from "../support/world.ts";
import { ALL_BOOKS, type Book, nameOf } from "./books.ts";
import { type PrintedBook, printBooks } from "./print.ts";
import { RULES, type RuleName } from "./rules.ts";
import { canDraw, drawSheet } from "./sheet.ts";

/** Which booklets: those of `npm test`, the standard edition, or all of them with their contact sheets. */
const WHICH: Readonly<Record<string, (book: Book) => boolean>> = {
  sample: ({ edition, paper, language }) =>
    edition === "standard" && paper === "A4" && language === "en",
  standard: ({ edition }) => edition === "standard",
  all: () => true,
};
const which = process.env.GALLERY ?? "sample";
const isDrawn = which !== "sample" && which !== "standard" && canDraw;

/** What holds for every booklet of the standard edition. */
const HOLDS: readonly RuleName[] = [
  "heading-apart",
  "box-alone",
  "page-empty",
  "stop-apart",
  "type-small",
  "cell-narrow",
  "over-margin",
  "number-torn",
  "blank-lost",
];

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
    const held = problems.filter(({ rule }) => HOLDS.includes(rule));
    expect(held.map(({ rule, page, says }) => `${rule}, page ${page}: ${says}`)).toEqual([]);
  });

  test("every rule has a name of its own", () => {
    expect(Object.keys(RULES)).toEqual(expect.arrayContaining([...HOLDS]));
  });
});
