/** A booklet that is read from the right: page heads change sides, numbers and scales do not. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { loadAssets } from "../../src/html/assets.ts";
import { renderHtml } from "../../src/html/html.ts";
import { printerFor } from "../../src/pdf/booklet-pdf.ts";
import { achilles } from "../support/fixture-booklet.ts";
import { DAY, english, ROOT } from "../support/world.ts";
import { HEBREW, hebrew } from "./hebrew-words.ts";

const templates = join(ROOT, "templates");
const [hebrewAssets, englishAssets] = await Promise.all([
  loadAssets(templates, hebrew()),
  loadAssets(templates, english()),
]);
const booklet = { ...achilles, language: "he", direction: "rtl" } as const;
const page = renderHtml(booklet, hebrewAssets);
const leftToRight = renderHtml(achilles, englishAssets);

/** What stands in a box of the pages' margins. */
function boxes(html: string, place: string): string[] {
  const [styles = ""] = /<style>[\s\S]*<\/style>/.exec(html) ?? [];
  return [...styles.matchAll(new RegExp(`@${place}\\{content:([^}]*)\\}`, "g"))].map(
    ([, content = ""]) => content,
  );
}

test("the document says its language and direction", () => {
  expect(page).toMatch(/<html lang="he" dir="rtl"/);
});

test("the frame's words are Hebrew, in a typeface that has them", () => {
  expect(page).toMatch(HEBREW);
  expect(page).toContain("U+0590-05FF");
  expect(leftToRight).not.toContain("U+0590-05FF");
});

describe("running heads", () => {
  test.each([
    ["clinic and reference", "top-left", "top-right", "Harbour Lane"],
    ["telephone", "bottom-left", "bottom-right", "960147"],
    ["page number", "bottom-right", "bottom-left", "counter"],
  ])("%s change from %s to %s", (_name, from, to, text) => {
    const has = (html: string, place: string) =>
      boxes(html, place).some((content) => content.includes(text));
    expect(has(leftToRight, from)).toBe(true);
    expect(has(leftToRight, to)).toBe(false);
    expect(has(page, to)).toBe(true);
    expect(has(page, from)).toBe(false);
  });

  test("each part's name stands at the end of the line", () => {
    expect(boxes(page, "top-left").length).toBe(boxes(leftToRight, "top-right").length);
    expect(boxes(leftToRight, "top-right").length).toBeGreaterThan(8);
  });

  test("the first page leaves its head out on the right side", () => {
    expect(page).toContain("@page :first{@top-right{content:none}}");
    expect(leftToRight).toContain("@page :first{@top-left{content:none}}");
  });
});

test("styles name no side of the page, apart from the boxes of its margins", () => {
  const folder = join(templates, "booklet");
  const physical =
    /(?:^|[\s;{])(?:(?:margin|padding|border|inset)-(?:left|right)|left|right)\s*:|(?:text-align|float|clear)\s*:\s*(?:left|right)/;
  for (const file of readdirSync(folder).filter((name) => name.endsWith(".css"))) {
    const css = readFileSync(join(folder, file), "utf8").replaceAll(
      /@(?:top|bottom)-[^{]*\{[^}]*\}/g,
      "",
    );
    expect(physical.exec(css)?.[0], file).toBeUndefined();
  }
});

test("scales and telephone numbers still read from left to right", () => {
  expect(page).toMatch(/svg,\s*\.ruler,\s*\.steps\s*\{\s*direction:\s*ltr\s*[;}]/);
  expect(page).toMatch(/\.calls a\s*\{\s*direction:\s*ltr;\s*unicode-bidi:\s*isolate/);
  const numbers = (html: string) =>
    [...html.matchAll(/class="num[^"]*"[^>]*>(\d+)</g)].map(([, n]) => n);
  expect(numbers(page)).toEqual(numbers(leftToRight));
});

test("printed, it lacks nothing that PDF/UA asks for", async () => {
  const printer = await printerFor({ env: process.env, platform: process.platform });
  const gaps: (readonly string[])[] = [];
  const hebrewJob = { assets: hebrewAssets, day: DAY };
  await printer(
    [booklet],
    (job) => job,
    hebrewJob,
    async (_job, result) => {
      if (!("gaps" in result)) throw new Error("It was not finished.");
      gaps.push(result.gaps);
    },
  );
  expect(gaps).toEqual([[]]);
});
