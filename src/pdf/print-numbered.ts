/** Prints one booklet with page numbers in its contents and finishes the PDF, or hands it over as it is. */

import { Fault } from "../faults/fault.ts";
import { checkWhole } from "./objects/objects.ts";
import { type FinishedPdf, finishNumbered, finishPdf } from "./post-process.ts";
import { readDestinations } from "./structure/destinations.ts";
import { draftHtml } from "./structure/page-numbers.ts";

/** A PDF as the browser made it, since it could not be finished: no page numbers, no claim, open. */
export interface UnfinishedPdf {
  readonly pdf: Uint8Array;
  /** Why it could not: `pdf-broken`. */
  readonly broken: Fault;
}

/** Has the browser print a document. */
export type Print = (html: string, options?: { readonly tagged: boolean }) => Promise<Uint8Array>;

/** The booklet's HTML with the page of each anchor; without a number where the map has none. */
export type Render = (pages: ReadonlyMap<string, number>) => string;

export interface PrintedAs {
  readonly direction: "ltr" | "rtl";
  readonly date: Date;
}

/**
 * A finished PDF; or, where what was printed cannot be read, the same booklet printed anew and left
 * as it is. Throws what `print` throws, and `pdf-broken` for what does not begin and end as a PDF.
 */
export async function printBooklet(
  print: Print,
  render: Render,
  as: PrintedAs,
): Promise<FinishedPdf | UnfinishedPdf> {
  try {
    return await printNumbered(print, render, as);
  } catch (thrown) {
    if (!(thrown instanceof Fault) || thrown.code !== "pdf-broken") throw thrown;
    // Printed anew, for a draft has digits in place of page numbers.
    const pdf = await print(render(new Map()));
    checkWhole(pdf);
    return { pdf, broken: thrown };
  }
}

/**
 * Prints once and writes the page numbers into what was printed; where that cannot be done, prints
 * again with the numbers. Which of the two depends on the booklet alone, and so do the bytes.
 */
async function printNumbered(
  print: Print,
  render: Render,
  { direction, date }: PrintedAs,
): Promise<FinishedPdf> {
  const draft = draftHtml(render, direction === "rtl" ? "left" : "right");
  let numbers: ReadonlyMap<string, number>;
  if (draft === undefined) {
    numbers = readDestinations(await print(render(new Map()), { tagged: false }));
  } else {
    const finished = finishNumbered(await print(draft.html), { date, places: draft });
    if ("pdf" in finished) return finished;
    numbers = finished;
  }
  return finishPdf(await print(render(numbers)), { date });
}
