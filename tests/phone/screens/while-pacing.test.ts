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
      await phone.tap(taps[0] === "Start" ? "Do this again" : "Noch einmal");
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

describe("something else to look at", () => {
  /** Writes down when a sound begins. */
  const EARS = `
    window.heard = [];
    const { start } = OscillatorNode.prototype;
    OscillatorNode.prototype.start = function (when) { window.heard.push(when - this.context.currentTime); return start.call(this, when); };`;
  const heard = async (phone: Phone) => Number(await phone.page.evaluate("window.heard.length"));
  const quick = {
    ...{
      sets: 2,
      side: "none" as const,
      restS: 12,
      tempo: { lower: 2, bottom: 0, lift: 2, top: 0 },
    },
    reps: [1, 2].map(() => ({ low: 5, high: 5 })),
  };
  const begun = async (change: Partial<SessionBout> = {}) => {
    const context = await browser.createBrowserContext();
    const file = await withWork({ ...quick, ...change });
    const phone = await Phone.open(context, file, { at: MONDAY, before: EARS });
    await phone.tap("Start");
    // a tap of the browser's own, without which it keeps its sound off
    const taps = await phone.page.$$("button.main");
    await taps[0]?.tap();
    await phone.sees("Set 1 of 2");
    return phone;
  };

  test("what can be seen can be pressed: a tap before the next frame is not lost", async () => {
    const context = await browser.createBrowserContext();
    const phone = await Phone.open(context, await withWork(quick), { at: MONDAY });
    await phone.tap("Start");
    await phone.page.evaluate(`
      new MutationObserver((_, own) => {
        const button = [...document.querySelectorAll("button")].find((one) => one.textContent === "Start now");
        if (button) { own.disconnect(); button.click(); }
      }).observe(document.body, { subtree: true, childList: true });`);
    await phone.tap("Start");
    // getting ready would last longer
    await phone.sees("End this set", 2000);
    await context.close();
  });

  test("how to do it: the work waits, goes on where it was, and nothing is lost", {
    timeout: 60_000,
  }, async () => {
    const phone = await begun();
    await phone.sees("Set 1 of 2 · 2 of 5", 15_000);
    await phone.tap("How to do it");
    await phone.sees("It waits for you.");
    expect(
      await phone.page.evaluate("document.querySelector('.steps .columns').innerText"),
    ).toContain("Lower both heels slowly");
    await new Promise((done) => setTimeout(done, 3000));
    await phone.tap("Back to your exercise");
    await phone.sees("Get ready");
    await phone.sees("Set 1 of 2 · 2 of 5");
    await phone.sees("Set 1 of 2 · 3 of 5", 9000);
    await phone.page.browserContext().close();
  });

  test("how to do it in a rest: it goes on there, can be stopped there, and ends with a sound", {
    timeout: 60_000,
  }, async () => {
    const phone = await begun();
    await phone.tap("Start now");
    await phone.tap("End this set");
    await phone.tap("How to do it");
    await phone.sees("Rest");
    const before = await heard(phone);
    await phone.sees("Your rest is over.", 12_000);
    expect(await heard(phone)).toBeGreaterThan(before);
    await phone.tap("It hurts");
    await phone.sees("How much does it hurt?");
    await phone.tap("Go on");
    await phone.sees("Set 2 of 2");
    await phone.page.browserContext().close();
  });

  test.each(["#/diary", "#/today", "#/stop", "#/booklet"])(
    "the end of a rest sounds on %s too, and leads back",
    { timeout: 60_000 },
    async (hash) => {
      const phone = await begun();
      await phone.tap("Start now");
      await phone.tap("End this set");
      await phone.sees("Rest");
      await phone.page.evaluate(`location.hash = "${hash}"`);
      await phone.sees("Back to your exercise");
      const before = await heard(phone);
      await phone.sees("Your rest is over. Back to your exercise", 12_000);
      expect(await heard(phone)).toBeGreaterThan(before);
      const told = await phone.page.evaluate(
        `document.querySelector("p.visually-hidden[role=status]").textContent`,
      );
      expect(told).toBe("Your rest is over.");
      await phone.tap("Your rest is over.");
      await phone.tap("Go on");
      await phone.sees("Set 2 of 2 · 1 of 5", 9000);
      expect(phone.complaints).toEqual([]);
      await phone.page.browserContext().close();
    },
  );

  test("work waits on another screen, and an exercise that is left for good is silent", {
    timeout: 60_000,
  }, async () => {
    const phone = await begun();
    await phone.sees("Set 1 of 2 · 2 of 5", 15_000);
    await phone.tap("Diary");
    await phone.tap("Back to your exercise");
    await phone.sees("Get ready");
    await phone.sees("Set 1 of 2 · 2 of 5");
    await phone.tap("It hurts");
    await phone.tap("End this exercise");
    await phone.sees("How was it?");
    const before = await heard(phone);
    await phone.tap("Today");
    expect(await phone.text()).not.toContain("Back to your exercise");
    await new Promise((done) => setTimeout(done, 4000));
    expect(await heard(phone)).toBe(before);
    await phone.page.browserContext().close();
  });
});
