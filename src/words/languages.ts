/** The languages of booklets: each has its frame words in templates/words, and a way of its own to write. */

/** The language that cards, protocols and vocabularies are written in first. */
export const ORIGINAL = "en";

/** Languages that they are translated into. */
export const TRANSLATED = ["de"] as const;

export const LANGUAGES = [ORIGINAL, ...TRANSLATED] as const;

export type Language = (typeof LANGUAGES)[number];
export type TranslatedLanguage = (typeof TRANSLATED)[number];

interface Way {
  /** The language's name in messages. */
  readonly name: string;
  /** How dates and numbers are written where a clinic says nothing else. */
  readonly locale: string;
  readonly direction: "ltr" | "rtl";
  /** What stands before and after a title in a sentence. */
  readonly quotes: readonly [string, string];
}

const WAYS: Readonly<Record<Language, Way>> = {
  en: { name: "English", locale: "en-GB", direction: "ltr", quotes: ["“", "”"] },
  de: { name: "German", locale: "de-DE", direction: "ltr", quotes: ["„", "“"] },
};

export const languageName = (language: Language): string => WAYS[language].name;
export const usualLocale = (language: Language): string => WAYS[language].locale;
export const directionOf = (language: Language): Way["direction"] => WAYS[language].direction;

/** A title as a sentence of the language names it: “Dig your heel in and hold”. */
export const quoted = (title: string, language: Language): string =>
  WAYS[language].quotes.join(title);

/** The language in a file's name, as in heel-raise.de.md; undefined for an original. */
export const languageInName = (file: string): string | undefined =>
  /\.([a-z]{2,3})\.(?:md|yaml)$/.exec(file)?.[1];
