/** Prints booklets: HTML in, PDF out, one or thousands. */

import type { Page, PrintBrowser } from "../browser/browser.ts";
import { Fault, FaultList } from "../faults/fault.ts";
import { fitParts } from "./fit.ts";
import { checkWhole } from "./objects/objects.ts";

export type Paper = "A4" | "Letter";

export interface PrintOptions {
  /** The size where the HTML's own `@page` names none. */
  readonly paper: Paper;
  /** False leaves out tags and outline: faster, for a pass that is only measured. */
  readonly tagged?: boolean;
}

/** A job of `printMany` that is done: with its result, or with what went wrong. */
export type Printed<Job, Result> =
  | { readonly job: Job; readonly result: Result }
  | { readonly job: Job; readonly faults: readonly Fault[] };

/**
 * Prints one HTML document on a page of `PrintBrowser.usePage`.
 *
 * Fonts and pictures must be data: URLs; paper size, margins and running heads come from the
 * document's CSS, title and language from its HTML. Returns the PDF as the browser made it, tagged
 * and with an outline: whole, but not read. Throws `pdf-broken`, and `template-broken` for a document whose font does
 * not load or that would send the browser to another page.
 */
export async function printPdf(
  page: Page,
  html: string,
  { paper, tagged = true }: PrintOptions,
): Promise<Uint8Array> {
  if (REFRESH.test(html)) {
    throw new Fault("template-broken", "The booklet would lead the browser to another page.", {
      hint: "Remove the meta element with http-equiv=refresh from the template.",
    });
  }
  // The first document of a browser on a machine without fonts may lose its own: show it again.
  await show(page, html).catch((error: unknown) => {
    if (error instanceof Fault) return show(page, html);
    throw error;
  });
  const pdf = await page.pdf({
    format: paper,
    preferCSSPageSize: true,
    printBackground: true,
    tagged,
    outline: tagged,
    waitForFonts: false,
    timeout: 0,
  });
  checkWhole(pdf);
  return pdf;
}

async function show(page: Page, html: string): Promise<void> {
  // No limit here: `usePage` has one for all of it.
  await page.setContent(html, { waitUntil: "load", timeout: 0 });
  await pageReady(page);
  await fitParts(page);
}

/** The one way to leave a page that needs neither a script nor a click. */
const REFRESH = /<meta\b[^>]*\bhttp-equiv\s*=\s*["']?\s*refresh/i;

/**
 * A page is ready when it is loaded, pictures included, and so is every font that it declares.
 *
 * Call it after `setContent` has waited for `load`. Waiting for the fonts in use alone is not
 * enough: before the first layout none is. Throws `template-broken` for a font that does not load.
 */
async function pageReady(page: Page): Promise<void> {
  const failed = await page.evaluate(LOAD_FONTS);
  if (failed === "") return;
  throw new Fault("template-broken", `The booklet's font ${failed} cannot be loaded.`, {
    hint: "Embed it as a data: URL of a whole font file.",
  });
}

const LOAD_FONTS = `
  Promise.allSettled([...document.fonts].map((face) => face.load()))
    .then(() => document.body.getBoundingClientRect())
    .then(() => document.fonts.ready)
    .then(() => [...document.fonts].find((face) => face.status !== "loaded")?.family ?? "")
` as unknown as () => string;

/**
 * Runs `work` for every job on a few pages at once and hands over each result as it comes.
 *
 * At most `pages` jobs are under way or waiting to be taken, so memory stays flat however many
 * there are. A job that fails is handed over with its faults, and the others go on. Should `jobs`
 * itself throw, what is under way is still handed over first.
 */
export async function* printMany<Job, Result>(
  browser: PrintBrowser,
  jobs: Iterable<Job> | AsyncIterable<Job>,
  work: (job: Job, page: Page) => Promise<Result>,
  { pages = 2 }: { readonly pages?: number } = {},
): AsyncGenerator<Printed<Job, Result>> {
  const source = iterate(jobs);
  const underWay = new Map<number, Promise<[number, Printed<Job, Result>]>>();
  let failure: { readonly error: unknown } | undefined;
  let open = true;
  let count = 0;
  const fill = async () => {
    while (open && underWay.size < pages) {
      const next = await source.next().catch((error: unknown) => {
        failure = { error };
        return { done: true as const, value: undefined };
      });
      if (next.done) {
        open = false;
        return;
      }
      const job = next.value;
      const key = count++;
      underWay.set(
        key,
        runJob(browser, job, work).then((done) => [key, done]),
      );
    }
  };
  try {
    for (await fill(); underWay.size > 0; ) {
      const [key, done] = await Promise.race(underWay.values());
      underWay.delete(key);
      await fill();
      yield done;
    }
    if (failure !== undefined) throw failure.error;
  } finally {
    await Promise.all(underWay.values());
    if (open) await source.return(undefined);
  }
}

async function runJob<Job, Result>(
  browser: PrintBrowser,
  job: Job,
  work: (job: Job, page: Page) => Promise<Result>,
): Promise<Printed<Job, Result>> {
  try {
    return { job, result: await browser.usePage((page) => work(job, page)) };
  } catch (error) {
    return { job, faults: faultsOf(error) };
  }
}

function faultsOf(error: unknown): readonly Fault[] {
  if (error instanceof FaultList) return error.faults;
  if (error instanceof Fault) return [error];
  const message = error instanceof Error ? error.message : String(error);
  return [new Fault("internal", message, { cause: error })];
}

async function* iterate<T>(items: Iterable<T> | AsyncIterable<T>): AsyncGenerator<T> {
  yield* items;
}
