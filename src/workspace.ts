/** Everything a command works with: the clinic, the library and the protocols that belong together. */
import { type LibraryResult, readLibrary } from "./cards/read-library.ts";
import { CLINIC_FILE, readClinic } from "./clinic/read-clinic.ts";
import type { Clinic } from "./clinic/schema.ts";
import type { Fault } from "./faults/fault.ts";
import type { Tree } from "./files/tree.ts";
import { type ProtocolsResult, readProtocols } from "./protocols/read-protocols.ts";
import type { Read } from "./read/source.ts";

export const CARDS_FOLDER = "exercises";
export const PROTOCOLS_FOLDER = "protocols";

export interface Workspace {
  readonly tree: Tree;
  /** Undefined for a library that belongs to no clinic. */
  readonly clinic: Read<Clinic> | undefined;
  readonly cards: LibraryResult;
  readonly protocols: ProtocolsResult;
  /** Every fault of clinic, cards and protocols. */
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
  const cards = readLibrary(tree, folders(CARDS_FOLDER, CARDS_FOLDER, place.cardFolders), today);
  const protocols = readProtocols(
    tree,
    folders(PROTOCOLS_FOLDER, `templates/${PROTOCOLS_FOLDER}`, place.protocolFolders),
    cards,
  );
  return {
    tree,
    clinic: clinic.clinic,
    cards,
    protocols,
    faults: [...clinic.faults, ...cards.faults, ...protocols.faults],
  };
}

/** The nearest folder at or above a path that holds clinic.yaml; undefined where there is none. */
export function clinicFolderOf(tree: Tree, path: string): string | undefined {
  let folder = path;
  for (;;) {
    if (tree.exists(inFolder(folder, CLINIC_FILE))) return folder;
    if (/^(\.\.\/)*\.\.$/.test(folder) || folder === ".") {
      const above = folder === "." ? ".." : `${folder}/..`;
      if (above.split("/").length > 40) return undefined;
      folder = above;
    } else {
      const cut = folder.lastIndexOf("/");
      folder = cut > 0 ? folder.slice(0, cut) : cut === 0 ? "." : ".";
    }
  }
}

export function inFolder(folder: string, name: string): string {
  return folder === "." ? name : `${folder}/${name}`;
}
