/** The project's own browser with a booklet in it, and the clients who tap on it there. */
import { build } from "esbuild";
import type { Browser, Page } from "puppeteer-core";
import { loadCompanion } from "../../../src/html/companion.ts";
import { launch, saved } from "../phone-page.ts";
import type { Issued } from "./booklets.ts";
import type { Outcome } from "./client.ts";

const code = await loadCompanion();

const { outputFiles } = await build({
  entryPoints: [new URL("in-page.ts", import.meta.url).pathname],
  bundle: true,
  write: false,
  format: "iife",
  target: "es2023",
});
const script = outputFiles[0]?.text ?? "";

/** One browser; its pages come and go. */
export class Tapping {
  readonly #browser: Browser;
  readonly #drawn: boolean;

  private constructor(browser: Browser, drawn: boolean) {
    this.#browser = browser;
    this.#drawn = drawn;
  }

  /** `drawn`: whether what is shown is laid out, and what is tapped has to be seen. */
  static async begin({ drawn }: { readonly drawn: boolean }): Promise<Tapping> {
    return new Tapping(await launch(), drawn);
  }

  /** Lets clients tap through a program, one after the other. `companion`: in place of the built one. */
  async through(
    { files }: Issued,
    seeds: readonly number[],
    take: (one: Outcome) => void,
    companion = code,
  ): Promise<void> {
    const page = await this.#open(files, companion);
    for (const seed of seeds) take((await page.evaluate(`tapThrough(${seed})`)) as Outcome);
    await page.close();
  }

  async #open(files: readonly string[], companion: string): Promise<Page> {
    const [first = ""] = files;
    const page = await this.#browser.newPage();
    await page.setViewport({ width: 360, height: 740, isMobile: true, hasTouch: true });
    await page.emulateTimezone("Europe/London");
    await page.setBypassCSP(true);
    // the page stands still until its phone is there
    await page.goto(saved(first.replace(`<script>${code}</script>`, () => "")), {
      waitUntil: "load",
    });
    await page.evaluate(script);
    await page.evaluate(`setUp(${JSON.stringify(companion)}, ${this.#drawn})`);
    await page.evaluate(`openFiles(${JSON.stringify(files)})`);
    return page;
  }

  async end(): Promise<void> {
    await this.#browser.close();
  }
}
