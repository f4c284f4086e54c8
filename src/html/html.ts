/** Makes a booklet into one HTML file that needs nothing else, and in which nothing runs but its own script. */
import type { Booklet } from "../compose/model.ts";
import type { BookletAssets } from "./assets.ts";
import { fontCss } from "./fonts.ts";
import { pageCss } from "./pages.ts";
import { type BookletScript, policyFor, scriptElements, styleElementText } from "./policy.ts";
import { viewBooklet } from "./view.ts";

export interface HtmlOptions {
  /**
   * Pages by anchor, for the list of contents; where an anchor has none, its place stays empty
   * and as wide as with a number, so that filling them in moves nothing.
   */
  readonly pageNumbers?: ReadonlyMap<string, number>;
  /** What makes the booklet a companion on a phone; without it no script can run at all. */
  readonly script?: BookletScript;
}

/** The booklet as HTML, for reading on a screen and for printing; same input, same text. */
export function renderHtml(
  booklet: Booklet,
  assets: BookletAssets,
  { pageNumbers = new Map(), script }: HtmlOptions = {},
): string {
  const view = viewBooklet(booklet, assets.words, pageNumbers);
  const body = booklet.edition === "summary" ? assets.summary(view) : assets.body(view);
  const pages = pageCss(booklet, view.parts, assets.words);
  const styles = [
    fontCss(assets.fonts, body + (script?.data ?? "")),
    assets.styles,
    ...(booklet.edition === "standard" ? [] : [assets.editionStyles]),
    script === undefined ? assets.fitStyles : assets.phoneStyles,
    pages,
  ].join("\n");
  const scripts = scriptElements(script);
  const document = (policy: string) => assets.document({ ...view, body, styles, scripts, policy });
  // the policy is of the style element as it stands in the document, so the document comes first
  return document(policyFor(styleElementText(document(""), styles), script));
}
