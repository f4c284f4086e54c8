/** Prints booklets to PDF with page numbers in their contents, one after another or thousands. */

import { type Page, stopBrowsers, stopBrowsersNow, withBrowser } from "../browser/browser.ts";
import { type BrowserSearch, findBrowser } from "../browser/find.ts";
import type { Booklet } from "../compose/model.ts";
import { Fault } from "../faults/fault.ts";
import type { BookletAssets } from "../html/assets.ts";
import { outsideTypeface } from "../html/fonts.ts";
import { renderHtml } from "../html/html.ts";
import { MISSING_GLYPH } from "./claim/claim.ts";
import { type FinishedPdf, finishNumbered, finishPdf } from "./post-process.ts";
import { printMany, printPdf } from "./print.ts";
import { readDestinations } from "./structure/destinations.ts";
import { draftHtml } from "./structure/page-numbers.ts";

/** A PDF, with what it lacks for PDF/UA-1 where that is so, or why there is none. */
export type PrintResult = FinishedPdf | { readonly faults: readonly Fault[] };

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
        const render = (pageNumbers: ReadonlyMap<string, number>) =>
          renderHtml(booklet, assets, { pageNumbers });
        const finished = await printNumbered(page, render, { ...booklet, date });
        if (finished.gaps.includes(MISSING_GLYPH)) throw missingGlyph(render(new Map()));
        return finished;
      });
      for await (const one of printed) {
        await take(one.job, "result" in one ? one.result : { faults: one.faults });
      }
    });
}

/**
 * Prints once and writes the page numbers into what was printed; where that cannot be done, prints
 * again with the numbers. Which of the two depends on the booklet alone, and so do the bytes.
 */
async function printNumbered(
  page: Page,
  render: (pages: ReadonlyMap<string, number>) => string,
  { paper, direction, date }: Pick<Booklet, "paper" | "direction"> & { readonly date: Date },
): Promise<FinishedPdf> {
  const draft = draftHtml(render, direction === "rtl" ? "left" : "right");
  let numbers: ReadonlyMap<string, number>;
  if (draft === undefined) {
    numbers = readDestinations(await printPdf(page, render(new Map()), { paper, tagged: false }));
  } else {
    const printed = await printPdf(page, draft.html, { paper });
    const finished = finishNumbered(printed, { date, places: draft });
    if ("pdf" in finished) return finished;
    numbers = finished;
  }
  return finishPdf(await printPdf(page, render(numbers), { paper }), { date });
}

/** A booklet with a box in place of a character is not handed out: it may stand in a number or a warning. */
function missingGlyph(html: string): Fault {
  const text = html.replace(/<style>[\s\S]*?<\/style>/g, "").replace(/<[^>]*>/g, "");
  const odd = outsideTypeface(text).map(
    (character) =>
      `${character} (U+${(character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, "0")})`,
  );
  const named = odd.length === 0 ? "" : `: ${odd.slice(0, 10).join(", ")}`;
  return new Fault(
    "glyph-missing",
    `The booklet holds a character that cannot be printed${named}.`,
    {
      hint: "Write it with other characters in the plan, the cards or clinic.yaml.",
    },
  );
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
