/** Reads all translations of a library and its protocols. */
import type { LibraryResult } from "../cards/read-library.ts";
import type { Fault } from "../faults/fault.ts";
import type { Tree } from "../files/tree.ts";
import type { ProtocolsResult } from "../protocols/read-protocols.ts";
import { type CardTranslation, cardKind } from "./card.ts";
import type { Translations } from "./head.ts";
import { type ProtocolTranslation, protocolKind } from "./protocol.ts";
import { readTranslationFiles } from "./read-files.ts";
import { readVocabularies, type VocabularyTranslations } from "./vocabulary.ts";

export interface AllTranslations {
  readonly cards: Translations<CardTranslation>;
  readonly protocols: Translations<ProtocolTranslation>;
  readonly vocabularies: VocabularyTranslations;
}

/** The folders of cards, and of protocols, in which originals and translations lie. */
export interface TranslationFolders {
  readonly cards: readonly string[];
  readonly protocols: readonly string[];
}

export function readTranslations(
  tree: Tree,
  folders: TranslationFolders,
  cards: LibraryResult,
  protocols: ProtocolsResult,
): { readonly translations: AllTranslations; readonly faults: readonly Fault[] } {
  const { library, broken } = cards;
  const ofCards = readTranslationFiles(
    tree,
    folders.cards,
    cardKind(library.cards, broken, library.words),
  );
  const ofProtocols = readTranslationFiles(
    tree,
    folders.protocols,
    protocolKind(protocols.protocols, protocols.broken),
  );
  const { vocabularies, faults } = readVocabularies(tree, folders.cards, library.words);
  return {
    translations: {
      cards: ofCards.translations,
      protocols: ofProtocols.translations,
      vocabularies,
    },
    faults: [...ofCards.faults, ...ofProtocols.faults, ...faults],
  };
}
