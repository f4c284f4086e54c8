/** Makes a booklet into one HTML file that needs nothing else: no network, no script. */
import type { Booklet } from "../compose/model.ts";
import { fontCss } from "./fonts.ts";
import type { BookletAssets } from "./html-assets.ts";
import { pageCss } from "./html-pages.ts";
import { viewBooklet } from "./html-view.ts";

export interface HtmlOptions {
  /**
   * Pages by anchor, for the list of contents; where an anchor has none, its place stays empty
   * and as wide as with a number, so that filling them in moves nothing.
   */
  readonly pageNumbers?: ReadonlyMap<string, number>;
}

/** The booklet as HTML, for reading on a screen and for printing; same input, same text. */
export function renderHtml(
  booklet: Booklet,
  assets: BookletAssets,
  options: HtmlOptions = {},
): string {
  const view = viewBooklet(booklet, assets.words, options.pageNumbers ?? new Map());
  const body = booklet.edition === "summary" ? assets.summary(view) : assets.body(view);
  const pages = pageCss(booklet, view.parts, assets.words);
  return assets.document({
    ...view,
    body,
    styles: [fontCss(assets.fonts, body), assets.styles, pages].join("\n"),
  });
}
