/** Reads a library's vocabulary and cards, and checks everything about them that one file or all together can show. */

import { Fault } from "../faults/fault.ts";
import type { Tree } from "../files/tree.ts";
import { parseYaml, splitMarkdown } from "../read/front-matter.ts";
import { keptByFile, keptLast } from "../read/kept.ts";
import { validate } from "../read/validate.ts";
import { languageInName } from "../words/languages.ts";
import { careFaults } from "./care.ts";
import { readImage } from "./images.ts";
import { ladderFaults } from "./ladder.ts";
import type { Library, LibraryCard } from "./library.ts";
import { placeholderFaults } from "./placeholders.ts";
import { cardSchema } from "./schema.ts";
import { readSections } from "./sections.ts";
import { variantFaults } from "./variants.ts";
import { mergeVocabularies, type Vocabulary, vocabularySchema } from "./vocabulary.ts";

/** Name of the vocabulary file in a folder of cards. */
const VOCABULARY_FILE = "vocabulary.yaml";

export interface LibraryResult {
  readonly library: Library;
  /** Ids of cards that were found but have faults: naming them is not an error of its own. */
  readonly broken: ReadonlySet<string>;
  readonly faults: readonly Fault[];
}

/**
 * The library in the given folders, earlier ones first; later vocabularies add to earlier ones.
 * `today` (YYYY-MM-DD) decides which reviews are due. Cards with faults are left out.
 */
export function readLibrary(tree: Tree, folders: readonly string[], today: string): LibraryResult {
  const faults: Fault[] = [];
  const words = mergeVocabularies(
    folders.flatMap((folder) => {
      const read = readVocabulary(tree, `${folder}/${VOCABULARY_FILE}`);
      faults.push(...read.faults);
      return read.words ? [read.words] : [];
    }),
  );
  const cards = new Map<string, LibraryCard>();
  const broken = new Set<string>();
  const schema = schemaFor(words);
  for (const folder of folders) {
    const listing = tree.list(folder, ".md");
    faults.push(...listing.faults);
    for (const file of listing.files) {
      if (languageInName(file) !== undefined) continue;
      const read = readCard(tree, file, schema);
      faults.push(...read.faults);
      if (!read.card) {
        broken.add(read.id ?? nameOf(file));
        continue;
      }
      const first = cards.get(read.card.card.id);
      if (first) faults.push(duplicate(read.card, first));
      else cards.set(read.card.card.id, read.card);
    }
  }
  const library = { words, cards };
  faults.push(...ladderFaults(library, broken), ...reviewFaults(library, today));
  return { library, broken, faults };
}

/** The id that a card has by the name of its file, where it cannot be read. */
const nameOf = (file: string): string => file.replace(/^.*\//, "").replace(/\.md$/, "");

function readVocabulary(
  tree: Tree,
  file: string,
): { words: Vocabulary | undefined; faults: readonly Fault[] } {
  if (!tree.exists(file)) return { words: undefined, faults: [] };
  const reading = tree.read(file);
  if (reading.fault) return { words: undefined, faults: [reading.fault] };
  const parsed = parseYaml(file, reading.text, reading.text);
  if (parsed.faults.length > 0) return { words: undefined, faults: parsed.faults };
  const checked = validate(vocabularySchema, parsed.data, parsed.source);
  return { words: checked.value, faults: checked.faults };
}

type CardSchema = ReturnType<typeof cardSchema>;

// building it, and zod's own preparation at its first use, cost as much as checking a hundred cards
const schemaFor: (words: Vocabulary) => CardSchema = keptLast(cardSchema);

interface CardRead {
  readonly card?: LibraryCard;
  readonly id?: string;
  readonly faults: readonly Fault[];
}

function readCard(tree: Tree, file: string, schema: CardSchema): CardRead {
  const reading = tree.read(file);
  if (reading.fault) return { faults: [reading.fault] };
  const read = readText(file, reading.text, schema);
  if (!read.value) return read;
  const picture = readImage(tree, read.value.card, read.value.source);
  const faults = [...read.faults, ...picture.faults];
  return faults.length === 0
    ? { card: { ...read.value, image: picture.image }, faults }
    : { id: read.value.card.id, faults };
}

/** All of a card but its picture, which is a file of its own. */
const readText = keptByFile(
  (
    file: string,
    text: string,
    schema: CardSchema,
  ): { value?: Omit<LibraryCard, "image">; id?: string; faults: readonly Fault[] } => {
    const { split, faults } = splitMarkdown(file, text);
    if (!split) return { faults };
    const { source } = split;
    const checked = validate(schema, split.data, source);
    const { sections, faults: ofSections } = readSections(split.body, split.bodyLine, source);
    const id = idOf(split.data);
    const said = id === undefined ? {} : { id };
    const card = checked.value;
    if (!card) return { ...said, faults: [...checked.faults, ...ofSections] };
    return {
      value: { card, sections, source },
      faults: [
        ...checked.faults,
        ...ofSections,
        ...placeholderFaults(split.body, split.bodyLine, source, card.language),
        ...variantFaults(card, sections, source),
        ...careFaults(card, sections, source),
      ],
    };
  },
);

/** The id in front matter, whatever else is wrong with it. */
export function idOf(data: unknown): string | undefined {
  const id = typeof data === "object" && data !== null && "id" in data ? data.id : undefined;
  return typeof id === "string" || typeof id === "number" ? String(id) : undefined;
}

function duplicate(card: LibraryCard, first: LibraryCard): Fault {
  const place = card.source.at(["id"]);
  const other = first.source.at(["id"]);
  return new Fault(
    "duplicate-id",
    `The card id ${card.card.id} is used by ${card.source.file} and by ${first.source.file} (line ${other.line}).`,
    { place, frame: card.source.frame(place), hint: "Give one of them another id." },
  );
}

function reviewFaults(library: Library, today: string): Fault[] {
  return [...library.cards.values()]
    .filter(({ card }) => card.reviewed.again < today)
    .map(({ card, source }) => {
      const place = source.at(["reviewed", "again"]);
      return new Fault(
        "review-due",
        `The review of ${card.id} was due on ${card.reviewed.again}.`,
        {
          level: "warning",
          place,
          hint: "Check the card, then set reviewed to the new dates.",
        },
      );
    });
}
