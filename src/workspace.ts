/** Everything a command works with: the clinic, the library and the protocols that belong together. */
import { type LibraryResult, readLibrary } from "./cards/read-library.ts";
import { type ClinicLook, NO_LOOK, readLook } from "./clinic/look.ts";
import { CLINIC_FILE, readClinic } from "./clinic/read-clinic.ts";
import type { Clinic } from "./clinic/schema.ts";
import { sumFaults } from "./dose/printed-sums.ts";
import { Fault } from "./faults/fault.ts";
import type { Tree } from "./files/tree.ts";
import { type ProtocolsResult, readProtocols } from "./protocols/read-protocols.ts";
import type { Read } from "./read/source.ts";
import { nearest } from "./read/validate.ts";
import { inLanguage, type Texts } from "./translations/in-language.ts";
import { type AllTranslations, readTranslations } from "./translations/read-translations.ts";
import { ORIGINAL } from "./words/languages.ts";

export const CARDS_FOLDER = "exercises";
export const PROTOCOLS_FOLDER = "protocols";

export interface Workspace {
  readonly tree: Tree;
  /** Undefined for a library that belongs to no clinic. */
  readonly clinic: Read<Clinic> | undefined;
  readonly cards: LibraryResult;
  readonly protocols: ProtocolsResult;
  /** What the clinic has of its own for the booklet. */
  readonly look: ClinicLook;
  readonly translations: AllTranslations;
  /** Library and protocols in the clinic's language: what booklets are made from. */
  readonly texts: Texts;
  /** Every fault of clinic, cards, protocols and translations. */
  readonly faults: readonly Fault[];
}

export interface WorkspacePlace {
  readonly tree: Tree;
  /** The clinic's folder, as the tree names it; undefined for none. */
  readonly clinicFolder: string | undefined;
  /** Further folders of cards and protocols, for a library that belongs to no clinic. */
  readonly cardFolders?: readonly string[];
  readonly protocolFolders?: readonly string[];
  /** The folder of the program's own files, as the tree names it. */
  readonly shipped: string;
  /** YYYY-MM-DD. */
  readonly today: string;
}

/** Reads clinic, cards and protocols; nothing is thrown, every fault is in the result. */
export function openWorkspace(place: WorkspacePlace): Workspace {
  const { tree, clinicFolder, shipped, today } = place;
  const clinic =
    clinicFolder === undefined ? { clinic: undefined, faults: [] } : readClinic(tree, clinicFolder);
  const withShipped = clinic.clinic?.value.shipped_cards ?? true;
  const folders = (own: string, shippedAt: string, more: readonly string[] = []) => [
    ...new Set([
      ...(withShipped ? [inFolder(shipped, shippedAt)] : []),
      ...(clinicFolder === undefined ? [] : [inFolder(clinicFolder, own)]),
      ...more,
    ]),
  ];
  const where = {
    cards: folders(CARDS_FOLDER, CARDS_FOLDER, place.cardFolders),
    protocols: folders(PROTOCOLS_FOLDER, `templates/${PROTOCOLS_FOLDER}`, place.protocolFolders),
  };
  const { cards, faults: homeFaults } = atHome(
    readLibrary(tree, where.cards, today),
    clinic.clinic,
  );
  const protocols = readProtocols(tree, where.protocols, cards, sumFaults);
  const { translations, faults } = readTranslations(tree, where, cards, protocols);
  const originals = { library: cards.library, protocols: protocols.protocols };
  const own =
    clinicFolder === undefined
      ? { look: NO_LOOK, faults: [] }
      : readLook(tree, clinicFolder, clinic.clinic);
  return {
    tree,
    clinic: clinic.clinic,
    cards,
    protocols,
    translations,
    texts: inLanguage(originals, translations, clinic.clinic?.value.language ?? ORIGINAL),
    look: own.look,
    faults: [
      ...clinic.faults,
      ...homeFaults,
      ...own.faults,
      ...cards.faults,
      ...protocols.faults,
      ...faults,
    ],
  };
}

/** The library with what its clinic takes for granted in every home. Fault: wrong-value. */
function atHome(
  cards: LibraryResult,
  clinic: Read<Clinic> | undefined,
): { readonly cards: LibraryResult; readonly faults: readonly Fault[] } {
  const things = clinic?.value.at_home ?? [];
  if (!clinic || things.length === 0) return { cards, faults: [] };
  const { words } = cards.library;
  const known = Object.keys(words.equipment);
  const faults = things.flatMap((thing, at) => {
    if (known.includes(thing)) return [];
    const place = clinic.source.at(["at_home", at]);
    const near = nearest(thing, known);
    return [
      new Fault("wrong-value", `There is no equipment ${thing}.`, {
        place,
        frame: clinic.source.frame(place),
        hint: near ? `Did you mean ${near}?` : "Write it into vocabulary.yaml beside your cards.",
      }),
    ];
  });
  const equipment = Object.fromEntries(
    Object.entries(words.equipment).map(([thing, one]) => [
      thing,
      things.includes(thing) ? { ...one, home: true as const } : one,
    ]),
  );
  const library = { ...cards.library, words: { ...words, equipment } };
  return { cards: { ...cards, library }, faults };
}

/** The nearest folder at or above a path that holds clinic.yaml; undefined where there is none. */
export function clinicFolderOf(
  tree: Tree,
  path: string,
  known = new Map<string, string | undefined>(),
): string | undefined {
  let folder: string | undefined =
    path.endsWith(".md") || path.endsWith(".yaml") ? above(path) : path;
  const passed: string[] = [];
  let found: string | undefined;
  while (folder !== undefined) {
    if (known.has(folder)) {
      found = known.get(folder);
      break;
    }
    passed.push(folder);
    if (tree.exists(inFolder(folder, CLINIC_FILE))) {
      found = folder;
      break;
    }
    folder = above(folder);
  }
  for (const one of passed) known.set(one, found);
  return found;
}

/** How far up clinicFolderOf looks: deeper than any folder a clinic keeps its plans in. */
const MAX_UP = 30;

/** The folder above a path of a tree: "a/b" → "a" → "." → ".." → "../..". */
function above(path: string): string | undefined {
  if (path === ".") return "..";
  if (/^(\.\.\/)*\.\.$/.test(path))
    return path.split("/").length < MAX_UP ? `${path}/..` : undefined;
  const cut = path.lastIndexOf("/");
  return cut < 0 ? "." : path.slice(0, cut);
}

function inFolder(folder: string, name: string): string {
  return folder === "." ? name : `${folder}/${name}`;
}
