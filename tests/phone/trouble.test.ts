/** Phones that keep nothing, make no sound, have a wrong clock or travel: nothing is lost, and a clear word is said. */
import { readFileSync } from "node:fs";
import { createServer } from "node:http";
import { fileURLToPath } from "node:url";
import type { Browser } from "puppeteer-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { readDiary } from "../../src/diary/csv.ts";
import { addDays } from "../../src/units/dates.ts";
import { launch, Phone, type PhoneOptions, phoneHtml, saved } from "./phone-page.ts";
import { demoBooklet } from "./support.ts";

const html = await phoneHtml(demoBooklet("achilles"));
const url = saved(html);
const MONDAY = "2026-11-30T18:00";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser?.close());

/** A phone of its own for a test. */
async function fresh(
  options: Partial<PhoneOptions>,
  use: (phone: Phone) => Promise<void>,
  at = url,
): Promise<void> {
  const context = await browser.createBrowserContext();
  const phone = await Phone.open(context, at, { at: MONDAY, ...options });
  await use(phone);
  expect(phone.complaints).toEqual([]);
  await context.close();
}

const entries = async (phone: Phone) => readDiary(await phone.kept()).diary?.entries ?? [];
const writeAll = async (phone: Phone) => {
  await phone.tap("All done as planned");
  await phone.choose("How hard was it?", 6);
  await phone.tap("Finish");
};

describe("a storage that", () => {
  test.each([
    [
      "throws when it is asked for",
      `Object.defineProperty(window, "localStorage", { get() { throw new DOMException("no", "SecurityError"); } });`,
    ],
    [
      "keeps nothing",
      `Storage.prototype.setItem = () => {}; Storage.prototype.getItem = () => null;`,
    ],
  ])("%s is told of, and what is written can still be taken away", async (_, before) => {
    await fresh({ before }, async (phone) => {
      await phone.sees("This window does not keep what you write.");
      await writeAll(phone);
      await phone.sees("Evening: Done");
      await phone.tap("Save it");
      await phone.sees("Save it as a file");
      expect(await phone.text()).not.toContain("There is nothing in your diary yet.");
    });
  });

  test("gets full is told of at once, and the screen still has all that was written", async () => {
    await fresh({}, async (phone) => {
      await writeAll(phone);
      await phone.page.evaluate(
        `Storage.prototype.setItem = () => { throw new DOMException("full", "QuotaExceededError"); }`,
      );
      await phone.tap("Look or change");
      await phone.choose("How hard was it?", 9);
      await phone.sees("This phone has no more room.");
      expect(
        await phone.page.evaluate(
          `[...document.querySelectorAll(".write-session input:checked")].map(({ value }) => value)`,
        ),
      ).toEqual(["9"]);
      expect((await entries(phone))[0]?.effort).toBe(6);
    });
  });
});

test("in a frame that may keep nothing, as in a viewer of attachments, it works and says so", async () => {
  const context = await browser.createBrowserContext();
  const page = await context.newPage();
  await page.setContent('<iframe sandbox="allow-scripts" width="360" height="700"></iframe>');
  await page.evaluate(
    `document.querySelector("iframe").srcdoc = ${JSON.stringify(html).replaceAll("<", "\\u003c")}`,
  );
  const frame = await page.waitForFrame((one) => one !== page.mainFrame());
  await frame.waitForSelector(".trouble");
  const text = await frame.$eval(".trouble", (one) => one.textContent);
  expect(text).toContain("This window does not keep what you write.");
  await context.close();
});

test("from a web server it keeps its diary as from a file, and asks for nothing else", async () => {
  const asked: string[] = [];
  const server = createServer((request, response) => {
    asked.push(request.url ?? "");
    response.setHeader("content-type", "text/html");
    response.end(readFileSync(fileURLToPath(url)));
  });
  await new Promise<void>((done) => server.listen(0, "127.0.0.1", done));
  const address = server.address();
  if (address === null || typeof address === "string") throw new Error("no port");
  const here = `http://127.0.0.1:${address.port}/booklet.html`;
  await fresh(
    {},
    async (phone) => {
      await writeAll(phone);
      await phone.reopen("2026-12-01T08:00");
      await phone.sees("The morning after Monday");
      expect(await entries(phone)).toHaveLength(1);
      expect(await phone.page.evaluate("document.cookie")).toBe("");
    },
    here,
  );
  server.close();
  // browsers ask for a favicon by themselves; the booklet asks for nothing
  expect(new Set(asked.filter((path) => path !== "/favicon.ico"))).toEqual(
    new Set(["/booklet.html"]),
  );
});

describe("sound, voice and screen", () => {
  test.each([
    [
      "no sound at all",
      `delete window.AudioContext; delete window.webkitAudioContext;`,
      "keeps its sound off",
    ],
    [
      "sound that is blocked",
      `window.AudioContext = class { state = "suspended"; currentTime = 0; resume() { return new Promise(() => {}); } suspend() { return Promise.resolve(); } };`,
      "keeps its sound off",
    ],
    [
      "a screen that may not stay on",
      `Object.defineProperty(navigator, "wakeLock", { value: { request: () => Promise.reject(new Error("battery")) } });`,
      "The screen may go dark.",
    ],
  ])("%s is told of, and the pace goes on", async (_, before, word) => {
    await fresh({ before }, async (phone) => {
      await phone.tap("Start");
      await phone.tap("Start");
      await phone.sees(word);
      await phone.sees("Up", 9000);
    });
  });

  test("a voice is only used where it lives on the device", async () => {
    const before = `
      window.said = [];
      const voice = (name, localService) => ({ name, lang: "en-GB", localService, default: false });
      Object.defineProperty(window, "speechSynthesis", { value: {
        getVoices: () => [voice("far", false), ...(location.hash.includes("near") ? [voice("near", true)] : [])],
        speak: ({ text, voice }) => window.said.push([voice.name, text]),
        cancel() {}, speaking: false, pending: false } });
      window.SpeechSynthesisUtterance = class { constructor(text) { this.text = text; } };`;
    await fresh({ before }, async (phone) => {
      await phone.tap("Start");
      await phone.tap("Start");
      await phone.tap("Voice");
      await phone.sees("This phone has no voice of its own for this language.");
      expect(await phone.page.evaluate("window.said")).toEqual([]);
    });
  });
});

describe("clocks", () => {
  test("a date before the booklet was made: the first session is offered, and written down for its own day", async () => {
    await fresh({ at: "2019-01-01T09:00" }, async (phone) => {
      await phone.sees("This phone says that today is 2019-01-01.");
      await phone.sees("Monday 30 November. Evening");
      await writeAll(phone);
      const [first] = await entries(phone);
      expect([first?.date, first?.doneOn, first?.done]).toEqual([
        "2026-11-30",
        "2026-11-30",
        "yes",
      ]);
    });
  });

  test("the last word wins, also when the clock was set back between two", async () => {
    await fresh({}, async (phone) => {
      await writeAll(phone);
      await phone.page.evaluate(`window.setClock("2026-11-30T08:00")`);
      await phone.tap("Look or change");
      await phone.choose("How hard was it?", 2);
      await phone.page.reload();
      expect((await entries(phone))[0]?.effort).toBe(2);
    });
  });

  test("the night in which clocks go back is a night as any other", async () => {
    const booklet = demoBooklet("achilles");
    const sessions = booklet.sessions.map((one) => ({ ...one, date: addDays(one.date, -42) }));
    const printed = { ...booklet.printed, date: "2026-10-14" };
    const early = saved(await phoneHtml({ ...booklet, sessions, printed }));
    await fresh(
      { at: "2026-10-23T23:30" },
      async (phone) => {
        await writeAll(phone);
        await phone.reopen("2026-10-25T01:30");
        await phone.sees("Sunday 25 October");
        await phone.sees("How much pain did you have on the morning after Friday?");
        await phone.choose("How much pain did you have", 1);
        await phone.reopen("2026-10-26T18:00");
        await phone.sees("Monday 26 October");
        await phone.sees("Evening: about");
        expect((await entries(phone))[0]?.painMorning).toBe(1);
      },
      early,
    );
  });

  test("a journey to another time zone loses nothing and asks for the morning there", async () => {
    await fresh({ at: "2026-11-30T19:30" }, async (phone) => {
      await writeAll(phone);
      await phone.page.emulateTimezone("Asia/Tokyo");
      await phone.reopen("2026-12-01T08:00");
      await phone.sees("Tuesday 1 December");
      await phone.sees("How much pain did you have this morning?");
      expect((await entries(phone))[0]?.doneOn).toBe("2026-11-30");
    });
  });
});

test("two windows show the same", async () => {
  const context = await browser.createBrowserContext();
  const one = await Phone.open(context, url, { at: MONDAY });
  const two = await Phone.open(context, url, { at: MONDAY });
  await one.page.bringToFront();
  await writeAll(one);
  await two.page.bringToFront();
  await two.sees("Evening: Done");
  await context.close();
});
