/** Gives pages of one browser to print with, and always closes it. */
import { tmpdir } from "node:os";
import { setTimeout as sleep } from "node:timers/promises";
import type { Page } from "puppeteer-core";
import { Fault, FaultList } from "../faults/fault.ts";
import type { FoundBrowser } from "./find.ts";
import { type BrowserProcess, startProcess } from "./process.ts";

export type { Page } from "puppeteer-core";
export { stopBrowsers, stopBrowsersNow } from "./process.ts";

export interface BrowserSettings {
  /** Longest time for a start, in milliseconds. */
  readonly startMs?: number;
  /** Longest time for one use of a page, in milliseconds. */
  readonly useMs?: number;
  /** Folder for the browser's profile. */
  readonly temp?: string;
}

/** Runs `use` with a browser and closes it afterwards, also after a fault. */
export async function withBrowser<T>(
  found: FoundBrowser,
  use: (browser: PrintBrowser) => Promise<T>,
  settings: BrowserSettings = {},
): Promise<T> {
  const browser = new PrintBrowser(found, settings);
  try {
    return await use(browser);
  } finally {
    await browser.dispose();
  }
}

/** One started process with the pages that wait in it for their next use. */
interface Live {
  readonly process: BrowserProcess;
  readonly idle: Page[];
  /** Rejects when the process ends. */
  readonly died: Promise<never>;
}

/** A browser that starts with its first use, and anew after it died. */
export class PrintBrowser {
  readonly #found: FoundBrowser;
  readonly #settings: BrowserSettings;
  #live: Promise<Live> | undefined;
  #disposed = false;

  constructor(found: FoundBrowser, settings: BrowserSettings = {}) {
    this.#found = found;
    this.#settings = settings;
  }

  /**
   * Runs `work` on a page that nobody else uses meanwhile; pages are used again and again.
   *
   * Scripts of the page do not run, and it reaches no network. When the browser dies or does not
   * answer in time, it is started anew and `work` runs once more from its beginning. Whatever
   * `work` throws itself is passed on at once. Throws `browser-failed`.
   */
  async usePage<T>(work: (page: Page) => Promise<T>): Promise<T> {
    try {
      return await this.#tryPage(work);
    } catch (error) {
      if (!(error instanceof BrowserLost) || this.#disposed) throw toFault(error);
    }
    try {
      return await this.#tryPage(work);
    } catch (error) {
      throw toFault(error);
    }
  }

  /** Process id of the running browser; undefined before the first use and after the last. */
  async pid(): Promise<number | undefined> {
    return (await this.#live?.catch(() => undefined))?.process.pid;
  }

  /** Ends the browser; uses under way fail. */
  async dispose(): Promise<void> {
    this.#disposed = true;
    const live = await this.#live?.catch(() => undefined);
    this.#live = undefined;
    await live?.process.stop();
  }

  async #tryPage<T>(work: (page: Page) => Promise<T>): Promise<T> {
    if (this.#disposed) throw new Fault("browser-failed", "The browser has been closed.");
    this.#live ??= this.#start();
    const starting = this.#live;
    const live = await starting.catch((error: unknown) => {
      this.#retire(starting);
      throw error;
    });
    const deadline = after(this.#settings.useMs ?? 60_000);
    let page: Page | undefined;
    try {
      const limits = [live.died, deadline.passed];
      const taken = await Promise.race([live.idle.pop() ?? newPage(live), ...limits]);
      page = taken;
      const result = await Promise.race([work(taken), crash(taken), ...limits]);
      live.idle.push(taken);
      return result;
    } catch (error) {
      if (await isLost(error, live, page)) {
        this.#retire(starting);
        await live.process.stop();
        throw error instanceof BrowserLost ? error : new BrowserLost("It lost its page.", error);
      }
      // The page may be in any state: the next use gets a new one.
      await page?.close().catch(() => undefined);
      throw error;
    } finally {
      deadline.clear();
      page?.removeAllListeners("error");
    }
  }

  #retire(live: Promise<Live>): void {
    if (this.#live === live) this.#live = undefined;
  }

  async #start(): Promise<Live> {
    const { temp = tmpdir(), startMs = 30_000 } = this.#settings;
    const process = await startProcess(this.#found, temp, startMs);
    const died = process.ended.then(() => Promise.reject(new BrowserLost("It ended.")));
    died.catch(() => undefined);
    return { process, idle: [], died };
  }
}

/** The browser is gone or hangs: a new one may do better. */
class BrowserLost extends Error {
  constructor(message: string, cause?: unknown) {
    super(message, { cause });
    this.name = "BrowserLost";
  }
}

/**
 * A booklet's policy is for its reader's browser. Text set into a page would have to obey those of
 * all booklets before it as well, whose styles have other hashes; nothing runs or is fetched here.
 */
async function newPage(live: Live): Promise<Page> {
  const page = await live.process.browser.newPage();
  await page.setBypassCSP(true);
  await page.setJavaScriptEnabled(false);
  await page.setOfflineMode(true);
  return page;
}

/** Rejects when the process behind the page dies; calls under way would never be answered. */
function crash(page: Page): Promise<never> {
  return new Promise((_, reject) => {
    page.once("error", (error) => reject(new BrowserLost("Its page crashed.", error)));
  });
}

/** A promise that rejects after some milliseconds. */
function after(ms: number): { passed: Promise<never>; clear: () => void } {
  let timer: NodeJS.Timeout | undefined;
  const passed = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new BrowserLost(`It took longer than ${ms} ms.`)), ms);
  });
  passed.catch(() => undefined);
  return { passed, clear: () => clearTimeout(timer) };
}

const LOST = new Set([
  "TargetCloseError",
  "ConnectionClosedError",
  "ProtocolError",
  "TimeoutError",
]);

/** Whether the browser is to blame. Its death shows in other errors some moments before itself. */
async function isLost(error: unknown, live: Live, page: Page | undefined): Promise<boolean> {
  if (error instanceof BrowserLost) return true;
  if (error instanceof Fault || error instanceof FaultList || !(error instanceof Error))
    return false;
  if (LOST.has(error.name) || page?.isClosed()) return true;
  const { ended } = live.process;
  return await Promise.race([ended.then(() => true), sleep(200, false)]);
}

function toFault(error: unknown): unknown {
  if (!(error instanceof BrowserLost)) return error;
  return new Fault("browser-failed", `The browser failed while printing. ${error.message}`, {
    hint: "Run the command again; if it fails again, set PUPPETEER_EXECUTABLE_PATH to another browser.",
    cause: error,
  });
}
