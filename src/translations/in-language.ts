/** Library and protocols in the words of one language: the one place where a language is chosen. */
import type { Library, LibraryCard } from "../cards/library.ts";
import type { Vocabulary } from "../cards/vocabulary.ts";
import { wordsOf } from "../protocols/named-cards.ts";
import type { Protocol, ProtocolPhase, Sign } from "../protocols/schema.ts";
import type { Read } from "../read/source.ts";
import { type Language, ORIGINAL } from "../words/languages.ts";
import type { CardTranslation } from "./card.ts";
import { translationKey } from "./head.ts";
import type { PhaseTranslation, ProtocolTranslation } from "./protocol.ts";
import type { AllTranslations } from "./read-translations.ts";
import type { VocabularyTranslation } from "./vocabulary.ts";

export interface Texts {
  readonly library: Library;
  readonly protocols: ReadonlyMap<string, Read<Protocol>>;
}

/** The originals with every text that has a translation in its place; all else is as it was. */
export function inLanguage(
  { library, protocols }: Texts,
  { cards, protocols: courses, vocabularies }: AllTranslations,
  language: Language,
): Texts {
  const vocabulary = language === ORIGINAL ? undefined : vocabularies.get(language);
  return {
    library: {
      words: vocabulary ? wordsIn(library.words, vocabulary) : library.words,
      cards: mapped(library.cards, (card, id) => {
        const translation = cards.get(translationKey(id, language));
        return translation ? cardIn(card, translation.value) : card;
      }),
    },
    protocols: mapped(protocols, (protocol, id) => {
      const translation = courses.get(translationKey(id, language));
      return translation
        ? { ...protocol, value: protocolIn(protocol.value, translation.value) }
        : protocol;
    }),
  };
}

/** Every translated card as it stands in its own file, for judging its texts. */
export const translatedCards = (
  { cards }: Library,
  translations: Pick<AllTranslations, "cards">,
): LibraryCard[] =>
  [...translations.cards.values()].flatMap(({ value, source }) => {
    const original = cards.get(value.of);
    return original ? [{ ...cardIn(original, value), source }] : [];
  });

/** Every translated protocol as it stands in its own file. */
export const translatedProtocols = (
  protocols: ReadonlyMap<string, Read<Protocol>>,
  translations: Pick<AllTranslations, "protocols">,
): Read<Protocol>[] =>
  [...translations.protocols.values()].flatMap(({ value, source }) => {
    const original = protocols.get(value.of);
    return original ? [{ value: protocolIn(original.value, value), source }] : [];
  });

/** A card with its texts translated; what is computed with stays, as do the places of its faults. */
function cardIn(original: LibraryCard, translation: CardTranslation): LibraryCard {
  const { card, sections } = original;
  const { title, why, pace, care, steps, picture = title, captions = [] } = translation;
  const stepIn = (step: (typeof card.harder)[number]) => {
    const say = steps[step.to];
    return say === undefined ? step : { ...step, when: { ...step.when, say } };
  };
  return {
    ...original,
    card: {
      ...card,
      language: translation.language,
      title,
      why,
      pace: { ...card.pace, ...pace },
      care: card.care.map((one) => ({ ...one, ...care[one.flag] })),
      harder: card.harder.map(stepIn),
      easier: card.easier.map(stepIn),
    },
    sections: { ...sections, ...translation.sections },
    picture,
    captions,
  };
}

function protocolIn(original: Protocol, translation: ProtocolTranslation): Protocol {
  const { title, outlook, phases } = translation;
  return {
    ...original,
    language: translation.language,
    title,
    outlook: original.outlook && { ...original.outlook, ...outlook },
    phases: original.phases.map((phase) => {
      const translation = phases[phase.id];
      return translation ? phaseIn(phase, translation) : phase;
    }),
  };
}

function phaseIn(original: ProtocolPhase, translation: PhaseTranslation): ProtocolPhase {
  const { title, aim, move_on, go_back, why, when } = translation;
  return {
    ...original,
    title,
    aim,
    move_on: original.move_on.map((sign, at) => inWords(sign, move_on[at])),
    go_back,
    exercises: original.exercises.map((exercise) => ({
      ...exercise,
      why: exercise.why && (why[exercise.card] ?? exercise.why),
      when: exercise.when && (when[exercise.card] ?? exercise.when),
    })),
  };
}

/** A sign in other words; whose it is and for whom it is not stay. */
function inWords(sign: Sign, words = wordsOf(sign)): Sign {
  return typeof sign === "string" ? words : { ...sign, say: words };
}

function wordsIn(original: Vocabulary, translation: VocabularyTranslation): Vocabulary {
  const said = (group: "regions" | "tissues") =>
    Object.fromEntries(
      Object.entries(original[group]).map(([id, say]) => [id, translation[group][id] ?? say]),
    );
  return {
    ...original,
    regions: said("regions"),
    tissues: said("tissues"),
    equipment: Object.fromEntries(
      Object.entries(original.equipment).map(([id, thing]) => {
        const words = translation.equipment[id];
        return [id, words ? { ...thing, say: words.say, short: words.short } : thing];
      }),
    ),
  };
}

function mapped<T>(
  all: ReadonlyMap<string, T>,
  change: (value: T, id: string) => T,
): ReadonlyMap<string, T> {
  return new Map([...all].map(([id, value]) => [id, change(value, id)]));
}
