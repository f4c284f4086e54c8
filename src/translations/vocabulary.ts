/** The vocabulary's words for clients in another language: vocabulary.de.yaml beside vocabulary.yaml. */
import * as z from "zod";
import { type Vocabulary, word } from "../cards/vocabulary.ts";
import type { Fault } from "../faults/fault.ts";
import type { Tree } from "../files/tree.ts";
import { parseYaml } from "../read/front-matter.ts";
import { validate } from "../read/validate.ts";
import { line } from "../units/quantities.ts";
import { TRANSLATED, type TranslatedLanguage } from "../words/languages.ts";

export function vocabularyTranslationSchema(words: Vocabulary) {
  const terms = (group: Readonly<Record<string, unknown>>, what: string) =>
    z.partialRecord(word(group), line).default({}).describe(what);
  return z.strictObject({
    regions: terms(words.regions, "Body regions in the client's words."),
    tissues: terms(words.tissues, "Muscles, tendons, joints in the client's words."),
    equipment: z
      .partialRecord(
        word(words.equipment),
        z.strictObject({
          say: line.describe("The client's words for it."),
          short: line.optional().describe("As short as a table needs it."),
        }),
      )
      .default({})
      .describe("Things a client may have at home."),
  });
}

export type VocabularyTranslation = z.infer<ReturnType<typeof vocabularyTranslationSchema>>;

export type VocabularyTranslations = ReadonlyMap<TranslatedLanguage, VocabularyTranslation>;

/** Later folders add to and replace what earlier ones say. */
export function readVocabularies(
  tree: Tree,
  folders: readonly string[],
  words: Vocabulary,
): { readonly vocabularies: VocabularyTranslations; readonly faults: readonly Fault[] } {
  const vocabularies = new Map<TranslatedLanguage, VocabularyTranslation>();
  const faults: Fault[] = [];
  const schema = vocabularyTranslationSchema(words);
  for (const language of TRANSLATED) {
    for (const folder of folders) {
      const file = `${folder}/vocabulary.${language}.yaml`;
      if (!tree.exists(file)) continue;
      const reading = tree.read(file);
      if (reading.fault) {
        faults.push(reading.fault);
        continue;
      }
      const parsed = parseYaml(file, reading.text, reading.text);
      const checked = validate(schema, parsed.data, parsed.source);
      faults.push(...(parsed.faults.length > 0 ? parsed.faults : checked.faults));
      if (checked.value && parsed.faults.length === 0) {
        vocabularies.set(language, merged(vocabularies.get(language), checked.value));
      }
    }
  }
  return { vocabularies, faults };
}

function merged(
  before: VocabularyTranslation | undefined,
  more: VocabularyTranslation,
): VocabularyTranslation {
  return {
    regions: { ...before?.regions, ...more.regions },
    tissues: { ...before?.tissues, ...more.tissues },
    equipment: { ...before?.equipment, ...more.equipment },
  };
}
