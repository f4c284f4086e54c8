/** Writes output files whole or not at all, so that a reader never sees half of one. */
import { randomBytes } from "node:crypto";
import { type FileHandle, lstat, open, readdir, rename, rm } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import { Fault } from "../faults/fault.ts";
import { isAlive } from "./alive.ts";

/** A file to write: its path and its whole content (text is written as UTF-8). */
export interface Output {
  readonly path: string;
  readonly content: Uint8Array | string;
}

/** Fills an opened file; replaced in tests to play a full disk. */
export type Fill = (file: FileHandle, content: Uint8Array | string) => Promise<void>;

/**
 * Writes one file: beside its place first, then moved over it.
 *
 * Whoever is killed in the middle leaves the old file, or none. The folder must exist.
 * Throws `output-unwritable` or `disk-full`.
 */
export async function writeWhole(path: string, content: Uint8Array | string): Promise<void> {
  await writeAll([{ path, content }]);
}

/**
 * Writes several files as one: all are written beside their places before the first is moved.
 *
 * A fault while writing leaves every old file as it was. The moves follow one another; only a
 * machine that stops between two of them can leave new files beside old ones, each still whole.
 * Throws `output-unwritable` or `disk-full`.
 */
export async function writeAll(files: readonly Output[], fill: Fill = fillFile): Promise<void> {
  const temps: string[] = [];
  let current = files[0]?.path ?? "";
  try {
    for (const { path, content } of files) {
      current = path;
      const mode = await modeOf(path);
      await removeStale(path);
      const temp = tempName(path);
      temps.push(temp);
      await writeTemp(temp, content, fill, mode);
    }
    for (const [index, { path }] of files.entries()) {
      current = path;
      await rename(temps[index] ?? "", path);
    }
  } catch (error) {
    await Promise.all(temps.map((temp) => rm(temp, { force: true }).catch(() => undefined)));
    throw toFault(current, error);
  }
  for (const folder of new Set(files.map((file) => dirname(file.path)))) await syncFolder(folder);
}

async function fillFile(file: FileHandle, content: Uint8Array | string): Promise<void> {
  await file.writeFile(content);
}

async function writeTemp(
  temp: string,
  content: Uint8Array | string,
  fill: Fill,
  mode: number | undefined,
): Promise<void> {
  // "wx" follows no link: the name must be new.
  const file = await open(temp, "wx", 0o666);
  try {
    if (mode !== undefined) await file.chmod(mode);
    await fill(file, content);
    await file.sync();
  } finally {
    await file.close();
  }
}

/**
 * Who may read and write the file that is there, which whoever replaces it has to keep; undefined where
 * there is none. A link could lead anywhere, and a folder or device is no file to replace.
 */
async function modeOf(path: string): Promise<number | undefined> {
  const stat = await lstat(path).catch(() => undefined);
  if (stat === undefined) return undefined;
  if (stat.isFile()) return stat.mode & 0o777;
  const kind = stat.isSymbolicLink() ? "a link" : stat.isDirectory() ? "a folder" : "no plain file";
  throw new Fault("output-unwritable", `${path} cannot be written: ${kind} is in its place.`, {
    hint: "Remove or rename what is there, or choose another output path.",
  });
}

const TEMP = /^\.(.+)\.(\d+)-[0-9a-f]{12}\.tmp$/;

function tempName(path: string): string {
  const random = randomBytes(6).toString("hex");
  return join(dirname(path), `.${basename(path)}.${process.pid}-${random}.tmp`);
}

/** Removes what killed runs left beside this target; files of running processes stay. */
async function removeStale(path: string): Promise<void> {
  const folder = dirname(path);
  for (const name of await readdir(folder)) {
    const [, target, pid] = TEMP.exec(name) ?? [];
    if (target !== basename(path) || isAlive(Number(pid))) continue;
    await rm(join(folder, name), { force: true });
  }
}

/** Makes the new name itself last; not every system can, and the file is whole without it. */
async function syncFolder(folder: string): Promise<void> {
  const handle = await open(folder, "r").catch(() => undefined);
  await handle?.sync().catch(() => undefined);
  await handle?.close();
}

const HINTS: Record<string, string> = {
  ENOENT: "Create the folder first, or choose another output path.",
  ENOTDIR: "Create the folder first, or choose another output path.",
  EACCES: "Choose a folder that you may write to.",
  EPERM: "Choose a folder that you may write to, and close programs that show the old file.",
  EBUSY: "Close the programs that show the old file.",
  EROFS: "Choose a folder on a disk that can be written to.",
  EISDIR: "Remove or rename the folder in its place, or choose another output path.",
  ENAMETOOLONG: "Choose a shorter file name.",
};

function toFault(path: string, error: unknown): Fault {
  if (error instanceof Fault) return error;
  const code = (error as NodeJS.ErrnoException).code ?? "";
  if (code === "ENOSPC" || code === "EDQUOT") {
    return new Fault("disk-full", `The disk is full: ${path} was not written.`, {
      hint: "Free some space and run the command again. The old file, if any, is untouched.",
      cause: error,
    });
  }
  return new Fault("output-unwritable", `${path} cannot be written${code && ` (${code})`}.`, {
    hint: HINTS[code] ?? "Choose another output path.",
    cause: error,
  });
}
