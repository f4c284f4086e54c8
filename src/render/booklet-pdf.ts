/** Prints booklets to PDF with page numbers in their contents, one after another or thousands. */
import type { Booklet } from "../compose/model.ts";
import type { Fault } from "../faults/fault.ts";
import { stopBrowsers, stopBrowsersNow, withBrowser } from "./browser.ts";
import { type BrowserSearch, findBrowser } from "./find-browser.ts";
import { renderHtml } from "./html.ts";
import type { BookletAssets } from "./html-assets.ts";
import { readDestinations } from "./pdf-destinations.ts";
import { settlePdf } from "./pdf-settle.ts";
import { printMany, printPdf } from "./print.ts";

export type PrintResult = { readonly pdf: Uint8Array } | { readonly faults: readonly Fault[] };

/** Prints the booklet of every job and hands over each result as it comes. */
export type PrintBooklet = <Job>(
  jobs: Iterable<Job>,
  bookletOf: (job: Job) => Booklet,
  made: { readonly assets: BookletAssets; readonly day: string },
  take: (job: Job, result: PrintResult) => Promise<void>,
) => Promise<void>;

/** A printer on the browser that was found. Throws browser-missing. */
export async function printerFor(search: BrowserSearch): Promise<PrintBooklet> {
  const found = await findBrowser(search);
  return (jobs, bookletOf, { assets, day }, take) =>
    withBrowser(found, async (browser) => {
      const date = new Date(`${day}T00:00:00Z`);
      const printed = printMany(browser, jobs, async (job, page) => {
        const booklet = bookletOf(job);
        const { paper } = booklet;
        // printed once to learn on which pages things lie, then again with the numbers in
        const draft = await printPdf(page, renderHtml(booklet, assets), { paper, tagged: false });
        const pageNumbers = readDestinations(draft);
        const pdf = await printPdf(page, renderHtml(booklet, assets, { pageNumbers }), { paper });
        return settlePdf(pdf, date);
      });
      for await (const one of printed) {
        await take(one.job, "result" in one ? { pdf: one.result } : { faults: one.faults });
      }
    });
}

/** Leaves no browser behind, however the program ends. Exit status after a signal: 128 and its number. */
export function closeOnExit(): void {
  process.once("exit", stopBrowsersNow);
  for (const [signal, number] of [
    ["SIGINT", 2],
    ["SIGTERM", 15],
  ] as const) {
    process.once(signal, () => {
      void stopBrowsers().finally(() => process.exit(128 + number));
    });
  }
}
