/** Keeps every path that a file of the clinic names inside the clinic's folder. */
import { lstat, realpath } from "node:fs/promises";
import { dirname, isAbsolute, join, relative, resolve, sep } from "node:path";
import { Fault } from "../faults/fault.ts";

/**
 * Resolves a path against a folder and makes sure that it stays in there, links followed.
 *
 * The path may be relative or absolute and need not exist yet: then its nearest existing parent
 * decides. Returns the real absolute path. The folder itself counts as inside.
 *
 * Throws `outside-folder` when the path leads out, `file-unreadable` when the folder is not there.
 */
export async function resolveInside(folder: string, path: string): Promise<string> {
  if (path.includes("\0")) throw outside(folder, path);
  const root = await realpath(folder).catch((cause: unknown) => {
    throw new Fault("file-unreadable", `The folder ${folder} cannot be read.`, { cause });
  });
  const real = await realOrPlanned(resolve(folder, path)).catch((cause: unknown) => {
    throw outside(folder, path, cause);
  });
  const way = relative(root, real);
  if (way === ".." || way.startsWith(`..${sep}`) || isAbsolute(way)) throw outside(folder, path);
  return real;
}

/** The real path; for what does not exist, the real parent with the missing names behind it. */
async function realOrPlanned(path: string): Promise<string> {
  try {
    return await realpath(path);
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    if (code !== "ENOENT" || dirname(path) === path || (await isLink(path))) throw error;
    return join(await realOrPlanned(dirname(path)), path.slice(dirname(path).length));
  }
}

/** A link to nothing: nobody can say where it will lead once its target exists. */
async function isLink(path: string): Promise<boolean> {
  return lstat(path).then(
    (stat) => stat.isSymbolicLink(),
    () => false,
  );
}

function outside(folder: string, path: string, cause?: unknown): Fault {
  return new Fault("outside-folder", `The path ${JSON.stringify(path)} leads out of ${folder}.`, {
    hint: "Put the file into the clinic's folder and name it relative to that folder.",
    cause,
  });
}
