/** Reads every translation in some folders and keeps those without faults, one for each original and language. */

import { type Fault, isError } from "../faults/fault.ts";
import type { Tree } from "../files/tree.ts";
import { type Split, splitMarkdown } from "../read/front-matter.ts";
import type { Read } from "../read/source.ts";
import { languageInName } from "../words/languages.ts";
import {
  type Head,
  headFaults,
  isStale,
  type Original,
  secondTranslation,
  staleFault,
  type Translations,
  translationKey,
  unknownOriginal,
} from "./head.ts";

/** How one kind of file is translated. */
export interface Kind<T extends Head, O extends Original> {
  readonly what: "card" | "protocol";
  readonly originals: ReadonlyMap<string, O>;
  /** Ids of originals that have faults of their own: translating them is not one. */
  readonly broken: ReadonlySet<string>;
  /** The translation in a file, or what is wrong with its fields and text. */
  readonly parse: (split: Split) => {
    readonly value?: T | undefined;
    readonly faults: readonly Fault[];
  };
  /** What is wrong with it beside its original; not asked where the original has changed since. */
  readonly compare: (translation: Read<T>, original: O) => readonly Fault[];
}

/** Faults: those of any file, and unknown-card, unknown-protocol, duplicate-id, translation-stale (a warning). */
export function readTranslationFiles<T extends Head, O extends Original>(
  tree: Tree,
  folders: readonly string[],
  kind: Kind<T, O>,
): { readonly translations: Translations<T>; readonly faults: readonly Fault[] } {
  const translations = new Map<string, Read<T>>();
  const faults: Fault[] = [];
  for (const file of folders.flatMap((folder) => tree.list(folder, ".md").files)) {
    if (languageInName(file) === undefined) continue;
    const read = readOne(tree, file, kind);
    faults.push(...read.faults);
    const { translation } = read;
    if (!translation) continue;
    const key = translationKey(translation.value.of, translation.value.language);
    const first = translations.get(key);
    if (first) faults.push(secondTranslation(translation, first));
    else translations.set(key, translation);
  }
  return { translations, faults };
}

function readOne<T extends Head, O extends Original>(
  tree: Tree,
  file: string,
  kind: Kind<T, O>,
): { readonly translation?: Read<T>; readonly faults: readonly Fault[] } {
  const reading = tree.read(file);
  if (reading.fault) return { faults: [reading.fault] };
  const { split, faults } = splitMarkdown(file, reading.text);
  if (!split) return { faults };
  const parsed = kind.parse(split);
  if (!parsed.value) return { faults: parsed.faults };
  const translation = { value: parsed.value, source: split.source };
  const original = kind.originals.get(translation.value.of);
  if (!original) {
    return kind.broken.has(translation.value.of)
      ? { faults: [] }
      : { faults: [unknownOriginal(translation, kind.what, [...kind.originals.keys()])] };
  }
  const found = [
    ...headFaults(translation, original),
    ...(isStale(translation.value, original)
      ? [staleFault(translation, original)]
      : kind.compare(translation, original)),
  ];
  return found.some(isError) ? { faults: found } : { translation, faults: found };
}
