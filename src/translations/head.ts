/** What the translation of a card and that of a protocol share: whose it is, from which state, by whom. */
import * as z from "zod";
import { Fault } from "../faults/fault.ts";
import type { Path, Read } from "../read/source.ts";
import { nearest } from "../read/validate.ts";
import { date, id, line } from "../units/quantities.ts";
import { LANGUAGES, type Language, languageInName, languageName } from "../words/languages.ts";

/** Fields with which every translation begins. */
export const headFields = (what: string) => ({
  of: id.describe(`The id of the ${what} it translates.`),
  language: z.enum(LANGUAGES).describe("The language, as in the file's name."),
  from: date.describe(
    `The date under \`reviewed › on\` in the ${what} when it was translated: an older one is reported.`,
  ),
});

export const translatedField = z
  .strictObject({
    by: line.describe("Who translated it, or checked the translation."),
    on: date.describe("When, YYYY-MM-DD."),
  })
  .describe("Who answers for the translation.");

export interface Head {
  readonly of: string;
  readonly language: Language;
  readonly from: string;
  readonly translated: { readonly by: string; readonly on: string };
}

/** What a translation is compared with. */
export interface Original {
  readonly id: string;
  readonly language: Language;
  readonly reviewedOn: string;
}

/** Translations by `translationKey`. */
export type Translations<T> = ReadonlyMap<string, Read<T>>;

export const translationKey = (of: string, language: string): string => `${of}.${language}`;

/** Whether the original was reviewed again after it was translated. */
export const isStale = ({ from }: Head, { reviewedOn }: Original): boolean => from < reviewedOn;

/** Faults: wrong-value for a language or date that cannot be. */
export function headFaults(translation: Read<Head>, original: Original): Fault[] {
  const { value, source } = translation;
  const faults: Fault[] = [];
  const wrong = (path: Path, message: string, hint: string) => {
    const place = source.at(path);
    faults.push(new Fault("wrong-value", message, { place, frame: source.frame(place), hint }));
  };
  const named = languageInName(source.file);
  if (named !== value.language) {
    wrong(
      ["language"],
      `The file's name says ${named}, its language ${value.language}.`,
      "Change one of the two.",
    );
  }
  if (value.language === original.language) {
    wrong(
      ["language"],
      `${original.id} is written in ${languageName(value.language)} itself.`,
      "Change its own text.",
    );
  }
  if (value.from > original.reviewedOn) {
    wrong(
      ["from"],
      `${original.id} was last reviewed on ${original.reviewedOn}, before this date.`,
      `Write the date that stands there: ${original.reviewedOn}.`,
    );
  }
  if (value.translated.on < value.from) {
    wrong(
      ["translated", "on"],
      "It was translated before its original was reviewed.",
      "Check the two dates.",
    );
  }
  return faults;
}

/** The fault of translating what does not exist, with the nearest that does. */
export function unknownOriginal(
  { value, source }: Read<Head>,
  what: "card" | "protocol",
  known: readonly string[],
): Fault {
  const place = source.at(["of"]);
  const near = nearest(value.of, known);
  return new Fault(
    what === "card" ? "unknown-card" : "unknown-protocol",
    `There is no ${what} ${value.of} to translate.`,
    {
      place,
      frame: source.frame(place),
      hint: near ? `Did you mean ${near}?` : `Check the id, or write the ${what} first.`,
    },
  );
}

/** The fault of a second translation of the same into the same language. */
export function secondTranslation({ value, source }: Read<Head>, first: Read<Head>): Fault {
  const place = source.at(["of"]);
  return new Fault(
    "duplicate-id",
    `${value.of} is translated into ${languageName(value.language)} in ${source.file} and in ${first.source.file}.`,
    { place, frame: source.frame(place), hint: "Keep one of them." },
  );
}

/** The warning of a translation older than its original. */
export function staleFault({ value, source }: Read<Head>, original: Original): Fault {
  const place = source.at(["from"]);
  return new Fault(
    "translation-stale",
    `${original.id} was reviewed again on ${original.reviewedOn}; this ${languageName(value.language)} translation is from its state of ${value.from}.`,
    {
      level: "warning",
      place,
      frame: source.frame(place),
      hint: `Compare the two, then set from to ${original.reviewedOn}.`,
    },
  );
}
