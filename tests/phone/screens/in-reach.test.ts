/** Pause and “It hurts” at every moment of a pace: seen, large enough, apart from all else, and under nothing. */
import { mkdirSync } from "node:fs";
import type { Browser } from "puppeteer-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { loadWords } from "../../../src/words/load-words.ts";
import { launch, Phone, type PhoneOptions, phoneHtml, saved } from "../phone-page.ts";
import { demoBooklet, withBouts } from "../support.ts";

/** WCAG 2.2, 2.5.5: the least side of what is tapped, in CSS pixels; and the room between two of them. */
const LEAST = 44;
const APART = 8;

const booklet = demoBooklet("achilles");
const paced = saved(await phoneHtml(booklet));
const german = saved(await phoneHtml(booklet, loadWords("de", "de-DE")));
const ownPace = saved(await phoneHtml(withBouts(booklet, { tempo: undefined, side: "each" })));

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser?.close());

const HIDE = `Object.defineProperty(document, "visibilityState", { value: "hidden", configurable: true });
  document.dispatchEvent(new Event("visibilitychange"))`;
const SHOW = `delete document.visibilityState; document.dispatchEvent(new Event("visibilitychange"))`;

interface State {
  readonly name: string;
  readonly url: string;
  readonly reach: (phone: Phone) => Promise<unknown>;
  /** What the button that stands for pausing says, and the other one. */
  readonly buttons: readonly [string, string];
}

const toWork = async (phone: Phone) => {
  await phone.tap("Start now");
  await phone.sees("1 of 15");
};

const STATES: readonly State[] = [
  { name: "getting ready", url: paced, reach: async () => {}, buttons: ["Pause", "It hurts"] },
  { name: "at work", url: paced, reach: toWork, buttons: ["Pause", "It hurts"] },
  {
    name: "paused",
    url: paced,
    reach: async (phone) => {
      await toWork(phone);
      await phone.tap("Pause");
    },
    buttons: ["Go on", "It hurts"],
  },
  {
    name: "interrupted, and the page loaded anew",
    url: paced,
    reach: async (phone) => {
      await toWork(phone);
      await phone.page.evaluate(HIDE);
      await phone.page.evaluate(`setClock("2026-11-30T18:30")`);
      await phone.page.evaluate(SHOW);
      await phone.sees("You were away");
    },
    buttons: ["Go on", "It hurts"],
  },
  {
    name: "counted in",
    url: paced,
    reach: async (phone) => {
      await toWork(phone);
      await phone.tap("Pause");
      await phone.tap("Go on");
    },
    buttons: ["Pause", "It hurts"],
  },
  {
    name: "at rest",
    url: paced,
    reach: async (phone) => {
      await toWork(phone);
      await phone.tap("End this set");
      await phone.sees("Rest");
    },
    buttons: ["Pause", "It hurts"],
  },
  {
    name: "at the client's own pace, without a tempo",
    url: ownPace,
    reach: async (phone) => {
      await phone.tap("Start now");
      await phone.sees("I have done it");
    },
    buttons: ["Pause", "It hurts"],
  },
  {
    name: "at a change of sides",
    url: ownPace,
    reach: async (phone) => {
      await phone.tap("Start now");
      await phone.tap("I have done it");
      await phone.sees("Change sides");
    },
    buttons: ["Pause", "It hurts"],
  },
  {
    name: "with how to do it, in a rest",
    url: paced,
    reach: async (phone) => {
      await toWork(phone);
      await phone.tap("End this set");
      await phone.tap("How to do it");
    },
    buttons: ["Pause", "It hurts"],
  },
  {
    name: "with how to do it, the work waiting",
    url: paced,
    reach: async (phone) => {
      await toWork(phone);
      await phone.tap("How to do it");
    },
    buttons: ["Back to your exercise", "It hurts"],
  },
  {
    name: "with what the phone cannot do told",
    url: paced,
    reach: async (phone) => {
      await phone.tap("Voice");
      await phone.sees("no voice of its own");
    },
    buttons: ["Pause", "It hurts"],
  },
];

const LOOKS: [string, Partial<PhoneOptions>][] = [
  ["light", {}],
  ["dark, at 320 px", { width: 320, height: 568, dark: true }],
  ["on its side", { width: 740, height: 360 }],
  ["a small one on its side", { width: 568, height: 320 }],
  ["text at twice its size", { text: 2 }],
  ["text at twice its size, at 320 px", { width: 320, height: 568, text: 2 }],
  ["text at twice its size, on its side", { width: 568, height: 320, text: 2 }],
  ["forced colours, dark", { forced: true, dark: true }],
  ["less motion, on its side", { reduced: true, width: 740, height: 360 }],
];

/** What is wrong with the buttons that say these, where the page is scrolled to. */
const FAULTS = `(labels) => labels.flatMap((label) => {
  const faults = [];
  const found = [...document.querySelectorAll("button")].filter((one) => one.textContent === label);
  if (found.length !== 1) return [label + ": " + found.length + " of them"];
  const [button] = found;
  const { left, right, top, bottom, width, height } = button.getBoundingClientRect();
  if (width < ${LEAST} || height < ${LEAST}) faults.push(label + " is " + width + " by " + height);
  if (left < 0 || top < 0 || right > document.documentElement.clientWidth || bottom > innerHeight)
    faults.push(label + " leaves the screen: " + [left, top, right, bottom]);
  const at = (x, y) => document.elementFromPoint(x, y);
  const [dx, dy] = [width / 8, height / 8];
  for (let x = left + dx; x < right; x += dx)
    for (let y = top + dy; y < bottom; y += dy)
      if (!button.contains(at(x, y))) faults.push(label + " is covered at " + [x, y]);
  const near = (x, y) => {
    const other = at(x, y)?.closest("a, button, input, label, summary, nav");
    if (other && other !== button) faults.push(label + " is too near to " + other.textContent);
  };
  for (let x = left - ${APART - 0.5}; x <= right + ${APART - 0.5}; x += 3)
    for (const y of [top - ${APART - 0.5}, top - 4, bottom + 4, bottom + ${APART - 0.5}]) near(x, y);
  for (let y = top; y <= bottom; y += 3)
    for (const x of [left - ${APART - 0.5}, left - 4, right + 4, right + ${APART - 0.5}]) near(x, y);
  return [...new Set(faults)].slice(0, 3);
})`;

describe.each(LOOKS)("%s", (look, options) => {
  test.each(STATES)("$name", { timeout: 60_000 }, async ({ name, url, reach, buttons }) => {
    const context = await browser.createBrowserContext();
    const phone = await Phone.open(context, url, { at: "2026-11-30T18:00", ...options });
    await phone.tap("Start");
    await phone.tap("Start");
    await phone.sees("Set 1 of 3");
    await reach(phone);
    await picture(phone, `${look} ${name}`);
    for (const share of [0, 0.5, 1]) {
      await phone.page.evaluate(
        `window.scrollTo(0, ${share} * (document.documentElement.scrollHeight - innerHeight))`,
      );
      await phone.settled();
      const faults = await phone.page.evaluate(`(${FAULTS})(${JSON.stringify(buttons)})`);
      expect([share, faults]).toEqual([share, []]);
    }
    await context.close();
  });

  test("in German", { timeout: 60_000 }, async () => {
    const context = await browser.createBrowserContext();
    const phone = await Phone.open(context, german, { at: "2026-11-30T18:00", ...options });
    await phone.tap("Anfangen");
    await phone.tap("Los");
    await phone.sees("Satz 1 von 3");
    await picture(phone, `${look} german`);
    expect(await phone.page.evaluate(`(${FAULTS})(["Pause", "Es tut weh"])`)).toEqual([]);
    await context.close();
  });
});

/** For those who want to look at them: a folder that the environment names. */
async function picture(phone: Phone, name: string): Promise<void> {
  const folder = process.env.PAULATIM_PICTURES;
  if (folder === undefined) return;
  mkdirSync(folder, { recursive: true });
  await phone.page.screenshot({
    path: `${folder}/${name.replace(/\W+/g, "-")}.png` as `${string}.png`,
  });
}
