/** Worlds to test in: the shipped files, with some replaced or added in memory. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { diskTree, type Tree } from "../../src/files/tree.ts";
import { loadWords } from "../../src/words/load-words.ts";
import { openWorkspace, type Workspace } from "../../src/workspace.ts";
import { memoryTree } from "./memory-tree.ts";

/** The folder of the package. */
export const ROOT = fileURLToPath(new URL("../..", import.meta.url));

/** The built command. */
export const COMMAND = join(ROOT, "out/bin/paulatim.js");

export const DEMO = "templates/demo";

/** A day on which nothing of the shipped library is due for review. */
export const DAY = "2026-11-25";

export const english = () => loadWords("en", "en-GB");

/** A file of the package as text. */
export const shippedText = (path: string): string => readFileSync(join(ROOT, path), "utf8");

/** The package's files, with these over them. */
export function worldWith(files: Readonly<Record<string, string>> = {}): Tree {
  const disk = diskTree(ROOT);
  const memory = memoryTree(files);
  return {
    list(folder, ending) {
      const [below, over] = [disk.list(folder, ending), memory.list(folder, ending)];
      return {
        files: [...new Set([...below.files, ...over.files])].sort(),
        faults: [...below.faults, ...over.faults],
      };
    },
    readBytes: (path) => (path in files ? memory.readBytes(path) : disk.readBytes(path)),
    read: (path) => (path in files ? memory.read(path) : disk.read(path)),
    exists: (path) => memory.exists(path) || disk.exists(path),
  };
}

/** The demo clinic, with these files over it. */
export function demoClinic(files: Readonly<Record<string, string>> = {}): Workspace {
  return openWorkspace({ tree: worldWith(files), clinicFolder: DEMO, shipped: ".", today: DAY });
}

/** Text with one part replaced; throws where the part is not there, so that no test goes stale. */
export function change(text: string, from: string | RegExp, to: string): string {
  const changed = typeof from === "string" ? text.replace(from, () => to) : text.replace(from, to);
  if (changed === text) throw new Error(`nothing to change: ${from} is not in the text`);
  return changed;
}

/** The text of a file from a place on, for saying what a place points to. */
export function textAt(text: string, place: { line: number; column: number } | undefined): string {
  if (!place) return "(no place)";
  return (text.split(/\r?\n/)[place.line - 1] ?? "").slice(place.column - 1);
}
