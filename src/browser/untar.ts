/** Reads the files out of a plain tar archive in memory, none of them outside it. */
import { posix } from "node:path";
import { unpackTar } from "modern-tar";

export interface TarEntry {
  /** Relative path with forward slashes, never leading out of the archive. */
  readonly path: string;
  readonly content: Uint8Array;
}

/**
 * Lists the plain files of an archive; folders, links and other kinds are left out.
 *
 * Throws an `Error` for an archive that is cut off or damaged, or names a path outside itself.
 */
export async function untar(archive: Uint8Array): Promise<TarEntry[]> {
  const entries = await unpackTar(archive, { strict: true });
  return entries.flatMap(({ header, data }) => {
    if (header.type !== "file") return [];
    const path = posix.normalize(header.name);
    if (path.startsWith("/") || path.startsWith("..")) throw new Error(`Unsafe path ${path}.`);
    return [{ path, content: data ?? new Uint8Array() }];
  });
}
