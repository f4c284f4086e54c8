/** The booklets of the gallery: every shipped course and the demos, by paper, edition and language. */
import { join } from "node:path";
import { makeBooklet, makeProgram } from "../../src/booklet.ts";
import type { Booklet, Edition } from "../../src/compose/model.ts";
import { type BookletAssets, loadAssets } from "../../src/html/assets.ts";
import { loadWords } from "../../src/words/load-words.ts";
import { PROTOCOLS, shippedCourse } from "../support/shipped.ts";
import { asSigned } from "../support/signed.ts";
import { change, DAY, DEMO, demoClinic, ROOT, shippedText } from "../support/world.ts";

export const PAPERS = ["A4", "Letter"] as const;
export const EDITIONS = ["standard", "large", "summary"] as const;
export const LANGUAGES = ["en", "de"] as const;

export interface Book {
  /** A protocol's id, or a demo's file name. */
  readonly course: string;
  readonly paper: (typeof PAPERS)[number];
  readonly edition: Edition;
  readonly language: (typeof LANGUAGES)[number];
}

export const DEMOS = ["demo/achilles", "demo/shoulder"] as const;

/** Everything that is shipped, in every form. */
export const ALL_BOOKS: readonly Book[] = [...PROTOCOLS, ...DEMOS].flatMap((course) =>
  PAPERS.flatMap((paper) =>
    EDITIONS.flatMap((edition) =>
      LANGUAGES.map((language) => ({ course, paper, edition, language })),
    ),
  ),
);

export const nameOf = ({ course, paper, edition, language }: Book): string =>
  [course.replace("/", "-"), edition, paper, language].join(" ");

const LOCALES = { en: "en-GB", de: "de-DE" } as const;
const wordsOf = (language: Book["language"]) => loadWords(language, LOCALES[language]);

const assets = new Map<Book["language"], Promise<BookletAssets>>();

/** What its pages are made with. */
export function assetsOf({ language }: Book): Promise<BookletAssets> {
  const known = assets.get(language) ?? loadAssets(join(ROOT, "templates"), wordsOf(language));
  assets.set(language, known);
  return known;
}

/** The booklet, signed. Throws what stands in its way. */
export function bookletOf(book: Book): Booklet {
  const { made, workspace } = programOf(book);
  const words = wordsOf(book.language);
  return { ...makeBooklet(made, workspace, words, DAY, book.edition), paper: book.paper };
}

function programOf({ course, language }: Book) {
  const clinic = clinicIn(language);
  if (!course.startsWith("demo/")) return shippedCourse(course, { clinic });
  const workspace = demoClinic({ [`${DEMO}/clinic.yaml`]: clinic });
  const { value, faults } = makeProgram(workspace, `${DEMO}/${course.slice("demo/".length)}.md`);
  if (!value) throw new Error(faults.map(({ message }) => message).join("\n"));
  return { made: asSigned(value), workspace };
}

function clinicIn(language: Book["language"]): string {
  const text = shippedText(`${DEMO}/clinic.yaml`);
  const locale = `language: ${language}\nlocale: ${LOCALES[language]}`;
  return change(text, "locale: en-GB", locale);
}
