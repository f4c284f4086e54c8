/** Placeholders in the texts of cards: their words in each language, and the ending that a language needs after them. */

import { Fault } from "../faults/fault.ts";
import type { Path, Source } from "../read/source.ts";
import { type Language, languageName } from "../words/languages.ts";
import { PLACEHOLDERS } from "./sections.ts";

type Side = "left" | "right" | "each" | "both" | "none";

/** What stands in for a placeholder, by the client's side; stems where the language has endings. */
const WORDS: Readonly<
  Record<Language, Readonly<Record<keyof typeof PLACEHOLDERS, Readonly<Record<Side, string>>>>>
> = {
  en: {
    side: { left: "left", right: "right", each: "working", both: "working", none: "working" },
    other: { left: "right", right: "left", each: "other", both: "other", none: "other" },
  },
  de: {
    side: {
      left: "link",
      right: "recht",
      each: "trainiert",
      both: "trainiert",
      none: "trainiert",
    },
    other: { left: "recht", right: "link", each: "ander", both: "ander", none: "ander" },
  },
};

/** A text for a client's side. `language`: the one that the text is written in, not the booklet's. */
export function withSide(text: string, side: Side, language: Language): string {
  const { side: own, other } = WORDS[language];
  return text.replaceAll("{side}", own[side]).replaceAll("{other}", other[side]);
}

/**
 * Languages whose words for a side change with the noun: there a placeholder stands for the stem, and
 * the author writes the ending after it, as in “Ihr {side}er Fuß”.
 */
const ENDINGS: Readonly<Partial<Record<Language, readonly string[]>>> = {
  de: ["e", "en", "em", "er", "es"],
};

/** Faults of a text that begins on a line of the file: unknown-placeholder. */
export function placeholderFaults(
  text: string,
  firstLine: number,
  source: Source,
  language: Language,
): Fault[] {
  return text.split(/\r?\n/).flatMap((one, index) =>
    bare(one, language).map((match) => {
      const place = source.atLine(firstLine + index, match.index + 1);
      return lacking(match[0], language, { place, frame: source.frame(place) });
    }),
  );
}

/** Faults of the words of a picture, which stand in the front matter: unknown-placeholder. */
export const pictureFaults = (
  text: string | undefined,
  source: Source,
  language: Language,
): Fault[] => (text === undefined ? [] : bracedFaults(text, source, ["picture"], language));

/** Faults of a text of the front matter that may hold placeholders: unknown-placeholder. */
export function bracedFaults(
  text: string,
  source: Source,
  path: Path,
  language: Language,
): Fault[] {
  const place = source.at(path);
  const details = { place, frame: source.frame(place) };
  const unknown = [...text.matchAll(/\{([^{}]*)\}/g)].filter(
    ([, name = ""]) => !(name in PLACEHOLDERS),
  );
  return [
    ...unknown.map(
      ([whole]) =>
        new Fault("unknown-placeholder", `There is no placeholder ${whole}.`, {
          ...details,
          hint: `Known: ${Object.keys(PLACEHOLDERS)
            .map((name) => `{${name}}`)
            .join(", ")}.`,
        }),
    ),
    ...bare(text, language).map((match) => lacking(match[0], language, details)),
  ];
}

/** Placeholders without an ending where the language needs one. */
function bare(text: string, language: Language): RegExpExecArray[] {
  const endings = ENDINGS[language];
  if (!endings) return [];
  const names = Object.keys(PLACEHOLDERS).join("|");
  return [
    ...text.matchAll(new RegExp(`\\{(?:${names})\\}(?!(?:${endings.join("|")})(?!\\p{L}))`, "gu")),
  ];
}

function lacking(
  placeholder: string,
  language: Language,
  details: { readonly place: ReturnType<Source["at"]>; readonly frame: string },
): Fault {
  return new Fault(
    "unknown-placeholder",
    `In ${languageName(language)} ${placeholder} needs an ending.`,
    {
      ...details,
      hint: `Write it after the bracket: ${ENDINGS[language]?.map((end) => `${placeholder}${end}`).join(", ")}.`,
    },
  );
}
