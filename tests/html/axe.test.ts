/** Every edition as HTML, without its script, under the eyes of an accessibility checker, in each language. */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import type { Browser } from "puppeteer-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { loadAssets } from "../../src/html/assets.ts";
import { renderHtml } from "../../src/html/html.ts";
import { loadWords } from "../../src/words/load-words.ts";
import { bookletOf, EDITIONS, LANGUAGES } from "../gallery/books.ts";
import { launch, saved } from "../phone/phone-page.ts";
import { ROOT } from "../support/world.ts";

const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
/** WCAG 2.2 A and AA, and axe-core's own advice. */
const AXE_RUN = `axe.run(document, {
  runOnly: { type: "tag", values: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"] },
}).then(({ violations }) => violations.map(({ id, nodes }) => id + ": " + nodes.slice(0, 2).map(({ html }) => html.slice(0, 120)).join(" | ")))`;

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser?.close());

const FORMS = ["demo/achilles", "demo/shoulder", "groin-two-parts-ten-weeks"].flatMap((course) =>
  EDITIONS.flatMap((edition) => LANGUAGES.map((language) => ({ course, edition, language }))),
);

test.each(FORMS)("$course, $edition, $language", { timeout: 60_000 }, async (form) => {
  const words = loadWords(form.language, form.language === "en" ? "en-GB" : "de-DE");
  const assets = await loadAssets(join(ROOT, "templates"), words);
  const page = await browser.newPage();
  await page.goto(saved(renderHtml(bookletOf({ ...form, paper: "A4" }), assets)));
  await page.evaluate(AXE);
  expect(await page.evaluate(AXE_RUN)).toEqual([]);
  await page.close();
});

test("a page without a heading, a language and words for its picture is found out", async () => {
  const page = await browser.newPage();
  await page.setContent('<html><body><main><img src="x.png"></main></body></html>');
  await page.evaluate(AXE);
  const found = (await page.evaluate(AXE_RUN)) as string[];
  expect(found.map((one) => one.split(":")[0])).toEqual(
    expect.arrayContaining(["html-has-lang", "image-alt", "page-has-heading-one"]),
  );
  await page.close();
});
