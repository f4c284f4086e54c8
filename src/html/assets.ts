/** Reads what every booklet is made with: templates, styles, typeface and the frame's words. */

import { readdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import { type Words, wordsUnder } from "../words/words.ts";
import { type FontFace, loadFonts } from "./fonts.ts";
import type { TemplateFile } from "./template-file.ts";
import { compileTemplates, type Templates } from "./templates.ts";

export interface BookletAssets extends Templates {
  readonly styles: string;
  /** How parts are set closer to keep to their page: for the file that is printed only. */
  readonly fitStyles: string;
  /** What large print and the page to hang up have besides. */
  readonly editionStyles: string;
  /** The styles of the companion, which only a file with its script needs. */
  readonly phoneStyles: string;
  readonly fonts: readonly FontFace[];
  readonly words: Words;
  /** All words of the language: those of the frame, and those that the companion says. */
  readonly allWords: Words;
}

const SHEETS = ["booklet.css", "screen.css", "print.css"];
const FIT_SHEET = "fit.css";
const EDITION_SHEET = "editions.css";
const PHONE_SHEET = "phone.css";

/**
 * Reads and compiles everything once; what it returns serves any number of booklets.
 *
 * `templates` is the folder that holds `booklet/`; of the words those under `frame` are used. `own`
 * templates stand in for the shipped ones of their names. Throws template-broken.
 */
export async function loadAssets(
  templates: string,
  allWords: Words,
  own: ReadonlyMap<string, TemplateFile> = new Map(),
): Promise<BookletAssets> {
  const folder = join(templates, "booklet");
  const words = wordsUnder(allWords, "frame");
  const sheet = (name: string) => readFile(join(folder, name), "utf8").then(squeezed);
  const [shipped, sheets, fitStyles, editionStyles, phoneStyles, fonts] = await Promise.all([
    readTemplates(folder),
    Promise.all(SHEETS.map(sheet)),
    sheet(FIT_SHEET),
    sheet(EDITION_SHEET),
    sheet(PHONE_SHEET),
    loadFonts(),
  ]);
  const templatesOfBooklet = compileTemplates(shipped, own, words);
  return {
    ...templatesOfBooklet,
    styles: sheets.join("\n"),
    fitStyles,
    editionStyles,
    phoneStyles,
    fonts,
    words,
    allWords,
  };
}

/** CSS without comments, and without the white space that says nothing; what stands in quotation marks stays. */
function squeezed(css: string): string {
  return css
    .replace(/\/\*[\s\S]*?\*\//g, "")
    .split(/("[^"\n]*")/)
    .map((part) => (part.startsWith('"') ? part : tight(part)))
    .join("");
}

/** Blanks before a colon or a bracket, and around a plus sign, have a meaning. */
function tight(css: string): string {
  return css
    .replace(/\s+/g, " ")
    .replace(/ ?([{};,>]) ?/g, "$1")
    .replace(/([\w-]): /g, "$1:")
    .replaceAll(";}", "}");
}

async function readTemplates(folder: string): Promise<ReadonlyMap<string, TemplateFile>> {
  const names = (await readdir(folder)).filter((name) => name.endsWith(".hbs")).sort();
  const files = names.map(async (name): Promise<[string, TemplateFile]> => {
    const file = join(folder, name);
    return [name.slice(0, -".hbs".length), { file, text: await readFile(file, "utf8") }];
  });
  return new Map(await Promise.all(files));
}
