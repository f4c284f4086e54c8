/** The pages of the booklet on the narrowest phone, as they are and at twice the text size: nothing leaves the screen. */
import type { Browser } from "puppeteer-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { makeBooklet } from "../../../src/booklet.ts";
import { shippedCourse } from "../../support/shipped.ts";
import { DAY, demoClinic, english } from "../../support/world.ts";
import { launch, Phone, phoneHtml, saved } from "../phone-page.ts";
import { demoBooklet } from "../support.ts";

/** Courses with the longest doses, loads in words and the longest words in their signs. */
const COURSES = [
  "achilles-four-phases",
  "groin-two-parts-ten-weeks",
  "hamstring-first-weeks",
  "shoulder-cuff-lowering",
] as const;

const booklets = [
  ["the shoulder demo", demoBooklet("shoulder")] as const,
  ...COURSES.map((id) => {
    const { made } = shippedCourse(id);
    return [id, makeBooklet(made, demoClinic(), english(), DAY)] as const;
  }),
];

/** Words that stand out at the side of the page, outside what scrolls by itself, and how far the page itself does. */
const OUTSIDE = `(() => {
  const wide = document.documentElement.clientWidth;
  const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  const found = [];
  for (let text = texts.nextNode(); text; text = texts.nextNode()) {
    if (text.parentElement.closest(".scroll, script, .visually-hidden")) continue;
    const range = document.createRange();
    range.selectNodeContents(text);
    const { width, right } = range.getBoundingClientRect();
    if (width > 0 && right > wide + 1) found.push(text.data.trim().slice(0, 40));
  }
  const over = document.documentElement.scrollWidth - wide;
  return over > 1 ? [...found, over + " px"] : found;
})()`;

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser?.close());

describe.each(booklets)("%s", (_, booklet) => {
  test.each([
    ["320 px", { width: 320, height: 568 }],
    ["320 px, text at twice its size", { width: 320, height: 568, text: 2 }],
    ["360 px, text at twice its size", { text: 2 }],
    ["on its side, text at twice its size", { width: 568, height: 320, text: 2 }],
  ] as const)("%s", { timeout: 60_000 }, async (_look, options) => {
    const url = saved(await phoneHtml(booklet));
    const context = await browser.createBrowserContext();
    const phone = await Phone.open(context, url, { at: `${DAY}T12:00`, ...options });
    await phone.page.evaluate(`location.hash = "#/booklet"`);
    await phone.settled();
    expect(await phone.page.evaluate(OUTSIDE)).toEqual([]);
    await context.close();
  });
});
