/** Prints the booklets of the gallery with one browser, and finds what is wrong with their pages. */
import { printerFor } from "../../src/pdf/booklet-pdf.ts";
import { DAY } from "../support/world.ts";
import { assetsOf, type Book, bookletOf } from "./books.ts";
import { type Page, pagesOf } from "./pages.ts";
import { type Problem, problemsOf } from "./rules.ts";

export interface PrintedBook {
  readonly book: Book;
  readonly pdf: Uint8Array;
  readonly pages: readonly Page[];
  readonly problems: readonly Problem[];
}

/** Prints them and hands over each as it comes. Throws what could not be printed. */
export async function printBooks(
  books: readonly Book[],
  take: (printed: PrintedBook) => void | Promise<void>,
): Promise<void> {
  const printer = await printerFor({ env: process.env, platform: process.platform });
  for (const language of ["en", "de"] as const) {
    const here = books.filter((book) => book.language === language);
    const [first] = here;
    if (!first) continue;
    const made = { assets: await assetsOf(first), day: DAY };
    await printer(here, bookletOf, made, async (book, result) => {
      if ("faults" in result)
        throw new Error(result.faults.map(({ message }) => message).join(" "));
      const { pdf } = result;
      const pages = await pagesOf(pdf);
      await take({ book, pdf, pages, problems: problemsOf({ ...book, pages }) });
    });
  }
}
