/** A booklet's file in a real browser of a phone's size, on a day of the test's choosing. */
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import puppeteer, { type Browser, type BrowserContext, type Page } from "puppeteer-core";
import type { Booklet } from "../../src/compose/model.ts";
import { loadAssets } from "../../src/html/assets.ts";
import { companionOf, loadCompanion } from "../../src/html/companion.ts";
import { renderHtml } from "../../src/html/html.ts";
import type { Words } from "../../src/words/words.ts";
import { freshFolder } from "../files/support.ts";
import { found } from "../support/render.ts";
import { english, ROOT } from "../support/world.ts";

const code = await loadCompanion();
const templates = join(ROOT, "templates");

/** Starts the browser that tests of PDFs use, with scripts on. */
export async function launch(): Promise<Browser> {
  return await puppeteer.launch({
    executablePath: found.path,
    args: [...found.args],
    env: { ...process.env, ...found.env },
    headless: "shell",
    pipe: true,
  });
}

/** The booklet's file as `paulatim booklet` writes it. */
export async function phoneHtml(booklet: Booklet, words: Words = english()): Promise<string> {
  const assets = await loadAssets(templates, words);
  const script = companionOf(booklet, code, words);
  return renderHtml(booklet, assets, script === undefined ? {} : { script });
}

const folder = freshFolder();
let files = 0;

/** Writes the file where a client would have saved it; a name keeps its place when it is written again. */
export function saved(html: string, name = `booklet-${files++}.html`): string {
  const file = join(folder, name);
  writeFileSync(file, html);
  return pathToFileURL(file).href;
}

export interface PhoneOptions {
  /** Local date and time, YYYY-MM-DDTHH:MM. */
  readonly at: string;
  readonly width?: number;
  readonly height?: number;
  readonly dark?: boolean;
  readonly reduced?: boolean;
  /** Few colours of the device's own choosing in place of the page's. */
  readonly forced?: boolean;
  /** How many times its usual size the text has. */
  readonly text?: number;
  readonly timezone?: string;
  /** Runs in the page before everything else, such as to take something from it. */
  readonly before?: string;
}

function featuresOf({ dark, reduced, forced }: Pick<PhoneOptions, "dark" | "reduced" | "forced">) {
  return [
    { name: "prefers-color-scheme", value: dark ? "dark" : "light" },
    { name: "prefers-reduced-motion", value: reduced ? "reduce" : "no-preference" },
    { name: "forced-colors", value: forced ? "active" : "none" },
  ];
}

/** The clock of the page, set on; performance.now() stays what it is. */
const CLOCK = `
  const RealDate = Date;
  let lead = 0;
  window.setClock = (text) => { lead = new RealDate(text).getTime() - RealDate.now(); };
  window.Date = class extends RealDate {
    constructor(...parts) { parts.length > 0 ? super(...parts) : super(RealDate.now() + lead); }
    static now() { return RealDate.now() + lead; }
  };`;

/** One page of one phone: what it keeps stays in its context. */
export class Phone {
  readonly page: Page;
  /** Errors of the page and what its policy kept out: none is expected ever. */
  readonly complaints: string[] = [];

  private constructor(page: Page) {
    this.page = page;
    page.on("console", (message) => {
      if (message.type() === "error") this.complaints.push(message.text());
    });
    page.on("pageerror", (error) => this.complaints.push(String(error)));
  }

  static async open(
    where: Browser | BrowserContext,
    url: string,
    { at, width = 360, height = 740, timezone, before = "", ...looks }: PhoneOptions,
  ): Promise<Phone> {
    const page = await where.newPage();
    const phone = new Phone(page);
    await page.setViewport({ width, height, deviceScaleFactor: 2, isMobile: true, hasTouch: true });
    await page.emulateTimezone(timezone ?? "Europe/London");
    const session = await page.createCDPSession();
    // the library itself knows no forced colours
    await session.send("Emulation.setEmulatedMedia", { features: featuresOf(looks) });
    await page.evaluateOnNewDocument(`${CLOCK} window.setClock("${at}"); ${before}`);
    await page.goto(url, { waitUntil: "load" });
    if (looks.text)
      await page.evaluate(`document.documentElement.style.fontSize = "${106.25 * looks.text}%"`);
    return phone;
  }

  /** Opens the file again on another day; what was kept is all there is of the time before. */
  async reopen(at: string, url = this.page.url().replace(/#.*/, "")): Promise<void> {
    await this.page.evaluateOnNewDocument(`window.setClock("${at}")`);
    await this.page.goto("about:blank");
    await this.page.goto(url, { waitUntil: "load" });
  }

  /** The text of what can be seen. */
  async text(): Promise<string> {
    return String(await this.page.evaluate("document.body.innerText"));
  }

  /** Taps what says this, exactly or at its beginning; waits until it is there. */
  async tap(label: string): Promise<void> {
    const find = `(${FIND})(${JSON.stringify(label)})`;
    await this.page.waitForFunction(find, { timeout: 5000 }).catch(async () => {
      throw new Error(`nothing to tap says "${label}" on:\n${await this.text()}`);
    });
    await this.page.evaluate(`${find}.click()`);
    await this.settled();
  }

  /** Chooses a number on the scale whose question begins so. */
  async choose(question: string, answer: string | number): Promise<void> {
    const script = `(() => {
      const fields = [...document.querySelectorAll("fieldset")];
      const field = fields.find((one) => one.querySelector("legend").textContent.startsWith(${JSON.stringify(question)}));
      const label = [...field.querySelectorAll("label")].find((one) => one.textContent.trim() === ${JSON.stringify(String(answer))});
      label.querySelector("input").click();
    })()`;
    await this.page.evaluate(script);
    await this.settled();
  }

  async type(selector: string, text: string): Promise<void> {
    await this.page.type(selector, text);
    await this.settled();
  }

  /** Waits until the text is to be seen. */
  async sees(text: string, timeout = 5000): Promise<void> {
    await this.page
      .waitForFunction(`document.body.innerText.includes(${JSON.stringify(text)})`, { timeout })
      .catch(async () => {
        throw new Error(`"${text}" is not to be seen in:\n${await this.text()}`);
      });
  }

  /** The diary as the page keeps it, or the empty text. */
  async kept(): Promise<string> {
    const found = await this.page.evaluate(
      `Object.entries(localStorage).filter(([key]) => key.endsWith(" diary")).map(([, text]) => text)[0] ?? ""`,
    );
    return String(found);
  }

  /** Two frames: what a tap has changed is drawn. */
  async settled(): Promise<void> {
    await this.page.evaluate(
      "new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))",
    );
  }
}

const FIND = `(label) => {
  const all = [...document.querySelectorAll("button, a, summary, label")].filter((one) => one.getClientRects().length > 0);
  const name = (one) => (one.getAttribute("aria-label") ?? one.textContent).trim();
  return all.find((one) => name(one) === label) ?? all.find((one) => name(one).startsWith(label));
}`;
