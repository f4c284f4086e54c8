/** A folder of text files to read from. Nothing outside it is read. */
import { existsSync, lstatSync, readdirSync, readFileSync, realpathSync, statSync } from "node:fs";
import { dirname, join, relative, sep } from "node:path";
import { Fault } from "../faults/fault.ts";
import { MAX_BYTES } from "../read/front-matter.ts";
import { unreadable } from "./unreadable.ts";

export interface Listing {
  /** Paths as the user would write them, sorted. */
  readonly files: readonly string[];
  readonly faults: readonly Fault[];
}

export type Reading =
  | { readonly text: string; readonly fault?: undefined }
  | { readonly text?: undefined; readonly fault: Fault };

export interface Tree {
  /** Files under a folder whose names end so; a folder that is not there has none. */
  list(folder: string, ending: string): Listing;
  /** The text of a file. Faults: file-unreadable, file-too-large, outside-folder. */
  read(path: string): Reading;
  /** The bytes of a picture beside a card. Faults as for `read`. */
  readBytes(path: string): BytesReading;
  exists(path: string): boolean;
}

export type BytesReading =
  | { readonly bytes: Uint8Array; readonly fault?: undefined }
  | { readonly bytes?: undefined; readonly fault: Fault };

/** Files on disk, as seen from the folder `from`, by which they are named in faults. */
export function diskTree(from: string): Tree {
  const shown = (path: string) => {
    const short = relative(from, path);
    return short === "" ? "." : short.split(sep).join("/");
  };
  const readBytes = (path: string): BytesReading => {
    try {
      const full = join(from, path);
      if (leadsOut(full)) return { fault: outside(path) };
      const bytes = statSync(full).size;
      if (bytes > MAX_BYTES) return { fault: tooLarge(path, bytes) };
      return { bytes: readFileSync(full) };
    } catch (cause) {
      return { fault: unreadable(path, "file", cause) };
    }
  };
  return {
    list(folder, ending) {
      const root = join(from, folder);
      if (!statSync(root, { throwIfNoEntry: false })?.isDirectory())
        return { files: [], faults: [] };
      const files: string[] = [];
      const faults: Fault[] = [];
      for (const path of walk(root, faults, shown)) {
        if (path.endsWith(ending) && !/(^|[/\\])README\.md$/i.test(path)) files.push(shown(path));
      }
      return { files: files.sort(), faults };
    },
    read(path) {
      const reading = readBytes(path);
      return reading.fault ? reading : { text: Buffer.from(reading.bytes).toString("utf8") };
    },
    readBytes,
    exists: (path) => existsSync(join(from, path)),
  };
}

/** A tree in which one file has another text. */
export function treeWith(tree: Tree, file: string, text: string): Tree {
  return {
    list: (folder, ending) => tree.list(folder, ending),
    read: (path) => (path === file ? { text } : tree.read(path)),
    readBytes: (path) => tree.readBytes(path),
    exists: (path) => tree.exists(path),
  };
}

/** Whether a file is a link to one that does not lie in, or below, the folder of the link. */
function leadsOut(path: string): boolean {
  if (!lstatSync(path).isSymbolicLink()) return false;
  return !realpathSync(path).startsWith(realpathSync(dirname(path)) + sep);
}

/** Every file under a folder; folders that are links are not entered, so there are no circles. */
function* walk(
  folder: string,
  faults: Fault[],
  shown: (path: string) => string,
): Generator<string> {
  let entries: ReturnType<typeof list>;
  try {
    entries = list(folder);
  } catch (cause) {
    faults.push(unreadable(shown(folder), "file", cause));
    return;
  }
  for (const entry of entries) {
    const path = join(folder, entry.name);
    if (entry.name.startsWith(".") || entry.name === "node_modules") continue;
    if (entry.isDirectory()) yield* walk(path, faults, shown);
    else if (entry.isFile()) yield path;
    else if (entry.isSymbolicLink()) {
      const target = statSync(path, { throwIfNoEntry: false });
      if (target?.isFile()) yield path;
      else faults.push(target ? outside(shown(path)) : unreadable(shown(path), "file"));
    }
  }
}

const list = (folder: string) => readdirSync(folder, { withFileTypes: true });

function tooLarge(path: string, bytes: number): Fault {
  const size = `${(bytes / 1024 / 1024).toFixed(1)} MB`;
  return new Fault("file-too-large", `This file has ${size}; no card, protocol or plan does.`, {
    place: { file: path, line: 1, column: 1 },
    hint: `Keep it under ${MAX_BYTES / 1024} KB.`,
  });
}

function outside(path: string): Fault {
  return new Fault("outside-folder", "This link leads out of its folder and is not followed.", {
    place: { file: path, line: 1, column: 1 },
    hint: "Put the file itself here.",
  });
}
