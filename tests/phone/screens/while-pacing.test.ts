/** What a client sees, hears and is told in the middle of an exercise, and what they can look at meanwhile. */
import type { Browser } from "puppeteer-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { SessionBout } from "../../../src/compose/session-model.ts";
import { loadWords } from "../../../src/words/load-words.ts";
import { english } from "../../support/world.ts";
import { launch, Phone, phoneHtml, saved } from "../phone-page.ts";
import { demoBooklet, withBouts } from "../support.ts";

const MONDAY = "2026-11-30T18:00";
const booklet = demoBooklet("achilles");
const words = { en: english(), de: loadWords("de", "de-DE") };
const withWork = async (change: Partial<SessionBout>, language: keyof typeof words = "en") =>
  saved(await phoneHtml({ ...withBouts(booklet, change), language }, words[language]));

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser?.close());

/** A voice of the device's own, which writes down what it says. */
const VOICE = `
  window.said = [];
  Object.defineProperty(window, "speechSynthesis", { value: {
    getVoices: () => ["en-GB", "de-DE"].map((lang) => ({ lang, localService: true, default: false })),
    speak: ({ text }) => window.said.push(text), cancel: () => {},
  } });
  window.SpeechSynthesisUtterance = class { constructor(text) { this.text = text; } };`;

const said = async (phone: Phone) => (await phone.page.evaluate("window.said")) as string[];

describe("left and right", () => {
  const holds = { side: "each", sideWords: "Each leg in turn", holdS: 2, sets: 2 } as const;
  const still = { ...holds, tempo: undefined, reps: undefined, restS: 6 };

  test.each([
    [
      "en",
      ["Start", "Start", "Voice"],
      ["Left side", "Right side"],
      ["Left side", "Right side", "The last set. Left side"],
    ],
    [
      "de",
      ["Anfangen", "Los", "Stimme"],
      ["Linke Seite", "Rechte Seite"],
      ["Linke Seite", "Rechte Seite", "Der letzte Satz. Linke Seite"],
    ],
  ] as const)(
    "are seen and said, the left first: %s",
    { timeout: 60_000 },
    async (language, taps, sides, voice) => {
      const phone = await Phone.open(
        await browser.createBrowserContext(),
        await withWork(still, language),
        {
          at: MONDAY,
          before: VOICE,
        },
      );
      for (const label of taps) await phone.tap(label);
      await phone.tap(taps[0] === "Start" ? "Back" : "Zurück");
      await phone.sees(sides[0]);
      await phone.sees(sides[1], 15_000);
      await phone.sees(sides[0], 15_000);
      const about = (await said(phone)).filter((text) => /side|seite/i.test(text));
      expect(about).toEqual(voice);
      await phone.page.browserContext().close();
    },
  );

  test("one side alone is named as the booklet names it", async () => {
    const phone = await Phone.open(
      await browser.createBrowserContext(),
      await withWork({ side: "left", sideWords: "Left leg" }),
      { at: MONDAY },
    );
    await phone.tap("Start");
    await phone.tap("Start");
    await phone.sees("Left leg · 3 sets of 15");
    expect(await phone.text()).not.toMatch(/Left side|Right side/);
    await phone.page.browserContext().close();
  });
});

test("a screen reader is told phases, not every part of a repetition", {
  timeout: 60_000,
}, async () => {
  const quick = { lower: 1, bottom: 0, lift: 1, top: 0 };
  const file = await withWork({
    ...{ sets: 2, side: "none", tempo: quick, restS: 8 },
    reps: [1, 2].map(() => ({ low: 4, high: 4 })),
  });
  const phone = await Phone.open(await browser.createBrowserContext(), file, { at: MONDAY });
  await phone.tap("Start");
  // all that a reader reads out without being asked
  await phone.page.evaluate(`
    window.told = [];
    new MutationObserver((changes) => {
      for (const { target } of changes) {
        const live = (target.nodeType === 1 ? target : target.parentElement)?.closest("[role=status], [role=alert], [aria-live]");
        if (live && live.textContent !== window.told.at(-1)) window.told.push(live.textContent);
      }
    }).observe(document.body, { subtree: true, childList: true, characterData: true });`);
  await phone.tap("Start");
  await phone.sees("How was it?", 45_000);
  const told = ((await phone.page.evaluate("window.told")) as string[]).filter(
    (text) => text !== "",
  );
  expect(told).toEqual([
    ...["Get ready. Set 1 of 2", "Go. Set 1 of 2", "Rest. Set 1 of 2"],
    ...["Get ready. Set 2 of 2", "Go. Set 2 of 2"],
  ]);
  await phone.page.browserContext().close();
});
