/** Reads what every booklet is made with: templates, styles, typeface and the frame's words. */
import { readdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import Handlebars from "handlebars";
import { type Values, type Words, wordsUnder } from "../words/words.ts";
import { type FontFace, loadFonts } from "./fonts.ts";

/** A compiled template. */
type Template = (view: object) => string;

export interface BookletAssets {
  /** Everything between head and foot of the HTML file. */
  readonly body: Template;
  /** The same for the edition of one page. */
  readonly summary: Template;
  /** The file around it. */
  readonly document: Template;
  readonly styles: string;
  readonly fonts: readonly FontFace[];
  readonly words: Words;
}

const SHEETS = ["booklet.css", "screen.css", "print.css", "editions.css"];

/**
 * Reads and compiles everything once; what it returns serves any number of booklets.
 *
 * `templates` is the folder that holds `booklet/`; of the words those under `frame` are used.
 */
export async function loadAssets(templates: string, allWords: Words): Promise<BookletAssets> {
  const folder = join(templates, "booklet");
  const words = wordsUnder(allWords, "frame");
  const [partials, sheets, fonts] = await Promise.all([
    readPartials(folder),
    Promise.all(SHEETS.map((name) => readFile(join(folder, name), "utf8"))),
    loadFonts(),
  ]);
  return { ...compileTemplates(partials, words), styles: sheets.join("\n"), fonts, words };
}

/** Compiles `document` and `booklet` with all other templates as their partials. */
function compileTemplates(
  partials: ReadonlyMap<string, string>,
  words: Words,
): Pick<BookletAssets, "body" | "summary" | "document"> {
  const handlebars = Handlebars.create();
  handlebars.registerHelper("t", (key: string, options: Handlebars.HelperOptions) =>
    words.say(key, options.hash as Values),
  );
  for (const [name, source] of partials) handlebars.registerPartial(name, source);
  const compile = (name: string): Template =>
    handlebars.compile(partials.get(name) ?? "", {
      strict: true,
      preventIndent: true,
      knownHelpers: { t: true },
      knownHelpersOnly: true,
    });
  return { body: compile("booklet"), summary: compile("summary"), document: compile("document") };
}

async function readPartials(folder: string): Promise<ReadonlyMap<string, string>> {
  const names = (await readdir(folder)).filter((name) => name.endsWith(".hbs")).sort();
  const sources = names.map(
    async (name): Promise<[string, string]> => [
      name.slice(0, -".hbs".length),
      await readFile(join(folder, name), "utf8"),
    ],
  );
  return new Map(await Promise.all(sources));
}
