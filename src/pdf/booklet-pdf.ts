/** Prints booklets to PDF with page numbers in their contents, one after another or thousands. */

import { stopBrowsers, stopBrowsersNow, withBrowser } from "../browser/browser.ts";
import { type BrowserSearch, findBrowser } from "../browser/find.ts";
import type { Booklet } from "../compose/model.ts";
import { Fault } from "../faults/fault.ts";
import type { BookletAssets } from "../html/assets.ts";
import { outsideTypeface } from "../html/fonts.ts";
import { renderHtml } from "../html/html.ts";
import { typeset } from "../html/typeset.ts";
import { MISSING_GLYPH } from "./claim/claim.ts";
import type { FinishedPdf } from "./post-process.ts";
import { printMany, printPdf } from "./print.ts";
import { printBooklet, type UnfinishedPdf } from "./print-numbered.ts";

/** A PDF, with what it lacks for PDF/UA-1 or to be finished where that is so, or why there is none. */
export type PrintResult = FinishedPdf | UnfinishedPdf | { readonly faults: readonly Fault[] };

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
          typeset(renderHtml(booklet, assets, { pageNumbers }));
        const { paper, direction } = booklet;
        const printed = await printBooklet(
          (html, options) => printPdf(page, html, { paper, ...options }),
          render,
          { direction, date },
        );
        const html = () => render(new Map());
        const missing =
          "gaps" in printed
            ? printed.gaps.includes(MISSING_GLYPH)
            : outsideTypeface(plainText(html())).length > 0;
        if (missing) throw missingGlyph(html());
        return printed;
      });
      for await (const one of printed) {
        await take(one.job, "result" in one ? one.result : { faults: one.faults });
      }
    });
}

/** A booklet with a box in place of a character is not handed out: it may stand in a number or a warning. */
function missingGlyph(html: string): Fault {
  const odd = outsideTypeface(plainText(html)).map(
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

const plainText = (html: string): string =>
  html.replace(/<style>[\s\S]*?<\/style>/g, "").replace(/<[^>]*>/g, "");

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
