/** Reads the files out of a plain tar archive in memory. */
import { posix } from "node:path";

export interface TarEntry {
  /** Relative path with forward slashes, never leading out of the archive. */
  readonly path: string;
  readonly content: Uint8Array;
}

const BLOCK = 512;

/**
 * Lists the plain files of an archive; folders, links and other kinds are left out.
 *
 * Throws an `Error` for an archive that is cut off or names a path outside itself.
 */
export function untar(archive: Uint8Array): TarEntry[] {
  const entries: TarEntry[] = [];
  let at = 0;
  while (at + BLOCK <= archive.length && archive[at] !== 0) {
    const field = (from: number, length: number) => text(archive, at + from, length);
    const size = Number.parseInt(field(124, 12), 8);
    const end = at + BLOCK + size;
    if (!(size >= 0) || end > archive.length) throw new Error("The tar archive is cut off.");
    const kind = field(156, 1);
    if (kind === "" || kind === "0") {
      const path = posix.normalize(posix.join(field(345, 155), field(0, 100)));
      if (path.startsWith("/") || path.startsWith("..")) throw new Error(`Unsafe path ${path}.`);
      entries.push({ path, content: archive.subarray(at + BLOCK, end) });
    }
    at = BLOCK * Math.ceil(end / BLOCK);
  }
  if (at + BLOCK > archive.length) throw new Error("The tar archive is cut off.");
  return entries;
}

function text(bytes: Uint8Array, from: number, length: number): string {
  const raw = Buffer.from(bytes.subarray(from, from + length)).toString("latin1");
  return raw.split("\0", 1)[0]?.trim() ?? "";
}
