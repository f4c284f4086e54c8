/** A session of nothing but the hardest work: page and phone say to leave it out on a bad day, and offer no less of it. */
import type { Browser } from "puppeteer-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { makeBooklet } from "../../src/booklet.ts";
import { loadAssets } from "../../src/html/assets.ts";
import { renderHtml } from "../../src/html/html.ts";
import { loadWords } from "../../src/words/load-words.ts";
import { shippedCourse, textOf } from "../support/shipped.ts";
import { DAY, demoClinic, ROOT } from "../support/world.ts";
import { launch, Phone, phoneHtml, saved } from "./phone-page.ts";

/** Courses of which some sessions, or all, hold nothing but full lowering from the knees. */
const COURSES = [
  ["hamstring-lowering-108-in-four-weeks", true],
  ["hamstring-lowering-110-in-four-weeks", true],
  ["hamstring-lowering-480-in-eight-weeks", true],
  ["hamstring-lowering-720-in-ten-weeks", true],
  ["hamstring-lowering-ten-weeks", true],
  ["hamstring-first-weeks", false],
  ["achilles-heavy-slow-resistance", false],
] as const;

const LANGUAGES = [
  ["en", "en-GB", "On a bad day, leave this session out.", "Bad day?"],
  ["de", "de-DE", "Lassen Sie diese Einheit an einem schlechten Tag aus.", "Kein guter Tag?"],
] as const;

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser?.close());

describe.each(LANGUAGES)("in %s", (language, locale, leaveOut, offer) => {
  const words = loadWords(language, locale);

  test.each(COURSES)("%s: %s", { timeout: 60_000 }, async (protocol, leftOut) => {
    const { made } = shippedCourse(protocol);
    const booklet = makeBooklet(made, demoClinic(), words, DAY);
    const assets = await loadAssets(`${ROOT}/templates`, words);
    const page = textOf(renderHtml(booklet, assets));
    expect(page.includes(leaveOut)).toBe(leftOut);

    const [first] = booklet.sessions;
    const url = saved(await phoneHtml(booklet, words));
    const phone = await Phone.open(browser, url, { at: `${first?.date}T06:00` });
    const today = await phone.text();
    expect(today.includes(leaveOut)).toBe(leftOut);
    expect(leftOut && today.includes(offer)).toBe(false);
    expect(phone.complaints).toEqual([]);
  });
});
