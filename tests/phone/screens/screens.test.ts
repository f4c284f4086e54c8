/** Every screen of the companion under the eyes of an accessibility checker, in both themes, at the narrowest and with large text. */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { PNG } from "pngjs";
import type { Browser } from "puppeteer-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { loadAssets } from "../../../src/html/assets.ts";
import { renderHtml } from "../../../src/html/html.ts";
import { loadWords } from "../../../src/words/load-words.ts";
import { openPdf } from "../../support/render.ts";
import { english, ROOT } from "../../support/world.ts";
import { launch, Phone, type PhoneOptions, phoneHtml, saved } from "../phone-page.ts";
import { demoBooklet } from "../support.ts";

const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** WCAG 2.2 A and AA, contrast at AAA, and axe-core's own advice. */
const AXE_RUN = `axe.run(document, {
  runOnly: { type: "tag", values: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"] },
  rules: { "color-contrast-enhanced": { enabled: true } },
}).then(({ violations }) => violations.map(({ id, nodes }) =>
  id + ": " + nodes.slice(0, 3).map(({ html, failureSummary }) => html.slice(0, 160) + " " + failureSummary).join(" | ")))`;

const booklet = demoBooklet("achilles");
const url = saved(await phoneHtml(booklet));
const german = saved(await phoneHtml(booklet, loadWords("de", "de-DE")));

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser?.close());

const MONDAY = "2026-11-30T18:00";
const go = (hash: string) => async (phone: Phone) => {
  await phone.page.evaluate(`location.hash = ${JSON.stringify(hash)}`);
  await phone.settled();
};
const start = async (phone: Phone) => {
  await phone.tap("Start");
  await phone.tap("Start");
  await phone.sees("Set 1 of 3");
};
const written = async (phone: Phone) => {
  await phone.tap("All done as planned");
  await phone.choose("Pain while you did it", 8);
  await phone.choose("How hard was it?", 8);
};

/** Each a way to a screen from the first one. */
const STATES: [string, (phone: Phone) => Promise<void>, string?][] = [
  ["today", async () => {}],
  ["today before the program", async () => {}, "2026-11-27T09:00"],
  ["today with a clock that cannot be right", async () => {}, "2019-01-01T09:00"],
  ["today after the program", async () => {}, "2027-03-01T09:00"],
  [
    "today with the short version and the steps unfolded",
    async (phone) => {
      await phone.tap("Bad day?");
      await phone.tap("How to do it");
    },
  ],
  ["a missed session", async () => {}, "2026-12-01T09:00"],
  ["an exercise made ready", (phone) => phone.tap("Start")],
  ["the pace", start],
  [
    "the pace, paused",
    async (phone) => {
      await start(phone);
      await phone.tap("Pause");
    },
  ],
  [
    "the pace, with how to do it",
    async (phone) => {
      await start(phone);
      await phone.tap("How to do it");
    },
  ],
  [
    "the diary, with an exercise under way",
    async (phone) => {
      await start(phone);
      await phone.tap("Diary");
    },
  ],
  [
    "it hurts, over the limit",
    async (phone) => {
      await start(phone);
      await phone.tap("It hurts");
      await phone.choose("Sit and rise", 9);
    },
  ],
  [
    "after an exercise",
    async (phone) => {
      await phone.tap("Start");
      await phone.tap("Leave out this exercise");
    },
  ],
  [
    "the end of a session",
    async (phone) => {
      await phone.tap("Start");
      await phone.tap("Leave out this exercise");
      await phone.tap("Next exercise");
      await phone.tap("Leave out this exercise");
      await phone.tap("Go on");
    },
  ],
  [
    "writing down",
    async (phone) => {
      await written(phone);
      await phone.tap("Something was different");
    },
  ],
  [
    "the next morning, twice worse",
    async (phone) => {
      await written(phone);
      await phone.reopen("2026-12-01T08:00");
      await phone.choose("How much pain did you have this morning?", 9);
      await phone.choose("Was that back", "No, worse");
    },
  ],
  ["the diary", go("#/diary")],
  ["a session that is still to come", go("#/look/2026-12-02-evening")],
  ["bringing it back, empty", go("#/bring")],
  [
    "an amount that is asked back",
    async (phone) => {
      await written(phone);
      await phone.tap("Something was different");
      await phone.page.evaluate(
        `(() => { const field = document.querySelector(".count input"); field.value = "0"; field.dispatchEvent(new Event("change", { bubbles: true })); })()`,
      );
      await phone.sees("Is that right?");
    },
  ],
  [
    "the question before the diary is deleted",
    async (phone) => {
      await written(phone);
      await go("#/bring")(phone);
      await phone.tap("Delete the diary from this phone");
    },
  ],
  [
    "the code",
    async (phone) => {
      await written(phone);
      await go("#/bring")(phone);
      await phone.tap("Show a code");
    },
  ],
  ["when to stop", go("#/stop")],
  ["the booklet", go("#/booklet")],
];

const LOOKS: [string, Partial<PhoneOptions>][] = [
  ["light", {}],
  ["dark, at 320 px", { width: 320, height: 568, dark: true }],
];

describe.each(LOOKS)("%s", (_look, options) => {
  test.each(STATES)(
    "%s: nothing is found, and nothing leaves the screen",
    { timeout: 60_000 },
    async (_, reach, at = MONDAY) => {
      const context = await browser.createBrowserContext();
      const phone = await Phone.open(context, url, { at, ...options });
      await reach(phone);
      await phone.page.evaluate(AXE);
      expect(await phone.page.evaluate(AXE_RUN)).toEqual([]);
      expect(await overflow(phone)).toEqual([]);
      expect(phone.complaints).toEqual([]);
      await context.close();
    },
  );
});

/** What stands out at the side of the page, outside what scrolls by itself. */
async function overflow(phone: Phone): Promise<unknown> {
  return await phone.page.evaluate(`(() => {
    const wide = document.documentElement.clientWidth;
    return [...document.body.querySelectorAll("*")]
      .filter((one) => one.getClientRects().length > 0 && one.getBoundingClientRect().right > wide + 1 && !one.closest(".scroll"))
      .map((one) => one.tagName + "." + one.className).slice(0, 5);
  })()`);
}

/** Entries of the bar that lie over each other, or whose words leave them. */
const BAR_FAULTS = `(() => {
  const entries = [...document.querySelectorAll(".phone-nav a")];
  const boxes = entries.map((one) => one.getBoundingClientRect());
  const range = document.createRange();
  return entries.flatMap((one, at) => {
    range.selectNodeContents(one);
    const [words, box] = [range.getBoundingClientRect(), boxes[at]];
    const out = words.left < box.left - 1 || words.right > box.right + 1 || words.top < box.top - 1 || words.bottom > box.bottom + 1;
    const over = boxes.some((other, n) => n !== at && other.left < box.right - 1 && box.left < other.right - 1 && other.top < box.bottom - 1 && box.top < other.bottom - 1);
    return [out ? [one.textContent + " leaves its place"] : [], over ? [one.textContent + " lies over another"] : []].flat();
  });
})()`;

describe.each([
  ["text at twice its size", { text: 2 }],
  ["text at twice its size, at 320 px", { text: 2, width: 320, height: 568 }],
  ["text at twice its size, on its side", { text: 2, width: 568, height: 320 }],
  ["on its side", { width: 740, height: 360 }],
] satisfies [string, Partial<PhoneOptions>][])("%s", (_look, options) => {
  test.each(STATES)(
    "%s: nothing leaves the screen, and the bar's entries stand apart",
    { timeout: 60_000 },
    async (_, reach, at = MONDAY) => {
      const context = await browser.createBrowserContext();
      const phone = await Phone.open(context, url, { at, ...options });
      await reach(phone);
      expect(await overflow(phone)).toEqual([]);
      expect(await phone.page.evaluate(BAR_FAULTS)).toEqual([]);
      await context.close();
    },
  );

  test("the bar in German", async () => {
    const context = await browser.createBrowserContext();
    const phone = await Phone.open(context, german, { at: MONDAY, ...options });
    await phone.sees("Tagebuch");
    expect(await phone.page.evaluate(BAR_FAULTS)).toEqual([]);
    await context.close();
  });
});

describe.each([
  ["light", {}],
  ["dark", { dark: true }],
] satisfies [string, Partial<PhoneOptions>][])("forced colours, %s", (_look, options) => {
  /** How much of a picture of it is another colour than in a picture from before, 0 to 1. */
  const changed = (before: Uint8Array, after: Uint8Array): number => {
    const [one, other] = [PNG.sync.read(Buffer.from(before)), PNG.sync.read(Buffer.from(after))];
    let differ = 0;
    for (let at = 0; at < one.data.length; at += 4) {
      const far = [0, 1, 2].some(
        (n) => Math.abs((one.data[at + n] ?? 0) - (other.data[at + n] ?? 0)) > 64,
      );
      if (far) differ += 1;
    }
    return differ / (one.width * one.height);
  };

  test.each([
    [
      "a number",
      (phone: Phone) => phone.tap("All done as planned"),
      ".scale label:nth-child(6) span",
      (phone: Phone) => phone.choose("Pain while you did it", 5),
    ],
    [
      "an answer",
      (phone: Phone) => phone.tap("All done as planned"),
      ".choice label:nth-child(2) span",
      (phone: Phone) => phone.choose("Did you do it?", "Part of it"),
    ],
    [
      "the short version",
      async () => {},
      ".button[aria-pressed]",
      (phone: Phone) => phone.tap("Bad day?"),
    ],
  ])("what is chosen is seen to be: %s", { timeout: 30_000 }, async (_, reach, what, choose) => {
    const context = await browser.createBrowserContext();
    const phone = await Phone.open(context, url, { at: MONDAY, forced: true, ...options });
    await reach(phone);
    const before = await (await phone.page.$(what))?.screenshot();
    await choose(phone);
    await phone.page.evaluate("document.activeElement.blur()");
    const after = await (await phone.page.$(what))?.screenshot();
    if (!before || !after) throw new Error("there is nothing to look at");
    expect(changed(before, after)).toBeGreaterThan(0.5);
    await context.close();
  });

  test("the shape of the pace has lines of the device's colours", async () => {
    const context = await browser.createBrowserContext();
    const phone = await Phone.open(context, url, { at: MONDAY, forced: true, ...options });
    await start(phone);
    const seen = await phone.page.evaluate(`(() => {
      const probe = document.body.appendChild(document.createElement("p"));
      const system = (name) => { probe.style.cssText = "forced-color-adjust: none; color: " + name; return getComputedStyle(probe).color; };
      const [canvas, ink] = [system("Canvas"), system("CanvasText")];
      const style = (what) => getComputedStyle(document.querySelector(what));
      return [style(".pace-column").fill === canvas, style(".pace-column").stroke === ink, style(".pace-fill").fill === ink];
    })()`);
    expect(seen).toEqual([true, true, true]);
    await context.close();
  });
});

test("every control can be reached and used with the keyboard alone", {
  timeout: 60_000,
}, async () => {
  const context = await browser.createBrowserContext();
  const phone = await Phone.open(context, url, { at: MONDAY });
  const focused = async () =>
    String(
      await phone.page.evaluate(
        `(document.activeElement.getAttribute("aria-label") ?? document.activeElement.textContent).trim()`,
      ),
    );
  /** Each screen takes the focus to its heading once it is drawn. */
  const arrived = async () =>
    await phone.page.waitForFunction(`document.activeElement?.tagName === "H1"`);
  const tabTo = async (label: string) => {
    for (let n = 0; n < 60; n += 1) {
      await phone.page.keyboard.press("Tab");
      if ((await focused()).startsWith(label)) return;
    }
    throw new Error(`the keyboard does not reach "${label}"`);
  };
  await phone.page.waitForFunction(`document.activeElement.textContent === "Monday 30 November"`);
  await tabTo("Start");
  await phone.page.keyboard.press("Enter");
  await phone.sees("Exercise 1 of 2");
  await arrived();
  await tabTo("Start");
  await phone.page.keyboard.press("Enter");
  await phone.sees("Set 1 of 3");
  await arrived();
  await tabTo("Pause");
  await phone.page.keyboard.press("Space");
  await phone.sees("Go on");
  await tabTo("It hurts");
  await phone.page.keyboard.press("Enter");
  await phone.sees("How much does it hurt?");
  await arrived();
  await phone.page.keyboard.press("Tab");
  await phone.page.keyboard.press("ArrowRight");
  await phone.sees("That is within your limit.");
  await tabTo("Stop and call");
  await phone.page.keyboard.press("Enter");
  await phone.sees("Call 999 at once if:");
  expect(await focused()).toContain("When to stop");
  await context.close();
});

test("with less motion wanted, the shape changes with each part only", {
  timeout: 30_000,
}, async () => {
  const context = await browser.createBrowserContext();
  const phone = await Phone.open(context, url, { at: MONDAY, reduced: true });
  await start(phone);
  await phone.sees("Up", 9000);
  const heights = new Set<unknown>();
  for (let n = 0; n < 8; n += 1) {
    heights.add(
      await phone.page.evaluate(
        `document.querySelector(".pace-what").textContent + document.querySelector(".pace-fill").getAttribute("height")`,
      ),
    );
    await new Promise((done) => setTimeout(done, 150));
  }
  expect(heights.size).toBeLessThanOrEqual(2);
  await context.close();
});

describe("on paper", () => {
  const textOf = async (phone: Phone): Promise<string[]> => {
    const pdf = await openPdf(
      new Uint8Array(await phone.page.pdf({ preferCSSPageSize: true, printBackground: true })),
    );
    const pages: string[] = [];
    for (let n = 1; n <= pdf.numPages; n += 1) {
      const { items } = await (await pdf.getPage(n)).getTextContent();
      pages.push(items.map((item) => ("str" in item ? item.str : "")).join(""));
    }
    return pages;
  };

  test("the file printed from the phone is the booklet, from whatever screen", {
    timeout: 60_000,
  }, async () => {
    const context = await browser.createBrowserContext();
    const assets = await loadAssets(`${ROOT}/templates`, english());
    const plain = await Phone.open(context, saved(renderHtml(booklet, assets)), { at: MONDAY });
    const expected = await textOf(plain);
    for (const place of ["#/today", "#/bring", "#/stop", "#/booklet"]) {
      const phone = await Phone.open(context, `${url}${place}`, { at: MONDAY });
      expect(await textOf(phone)).toEqual(expected);
    }
    await context.close();
  });

  test("the sheet is printed alone when it is asked for", { timeout: 60_000 }, async () => {
    const context = await browser.createBrowserContext();
    const phone = await Phone.open(context, url, { at: MONDAY });
    await written(phone);
    await go("#/bring")(phone);
    await phone.page.evaluate("window.print = () => {}");
    await phone.tap("Print it");
    const pages = await textOf(phone);
    expect(pages).toHaveLength(1);
    expect(pages[0]).toContain("Diary of BF-0417");
    expect(pages[0]?.replaceAll(" ", "")).toContain("toeswithaheavyweight:Done");
    await phone.page.evaluate(`window.dispatchEvent(new Event("afterprint"))`);
    expect((await textOf(phone)).length).toBeGreaterThan(10);
    await context.close();
  });
});

test("without scripts the file is the booklet", async () => {
  const context = await browser.createBrowserContext();
  const page = await context.newPage();
  await page.setJavaScriptEnabled(false);
  await page.goto(url);
  const text = await page.$eval("body", (body) => body.textContent);
  expect(text).toContain("Home program for Edda Marlowe");
  expect(await page.$("#phone[hidden]")).not.toBeNull();
  await context.close();
});

test("a draft has no companion, and German speaks German", async () => {
  expect(await phoneHtml({ ...booklet, draft: true })).not.toContain("<script");
  expect(await phoneHtml({ ...booklet, edition: "summary" })).not.toContain("<script");
  const german = await phoneHtml(booklet, loadWords("de", "de-DE"));
  expect(german).toContain("Aufhören und anrufen");
});

test.each(["achilles", "shoulder"] as const)(
  "the %s demo takes no more than 420 KB, pictures of the easier exercises included",
  async (plan) => {
    expect(Buffer.byteLength(await phoneHtml(demoBooklet(plan)))).toBeLessThanOrEqual(420_000);
  },
);
