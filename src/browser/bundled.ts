/** Unpacks the browser that comes with the program, once per machine and user, and only whole. */
import { execFile } from "node:child_process";
import { randomBytes } from "node:crypto";
import { createReadStream, createWriteStream, existsSync } from "node:fs";
import { lstat, mkdir, readdir, readFile, rename, rm, stat, writeFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { basename, dirname, join } from "node:path";
import { pipeline } from "node:stream/promises";
import { promisify } from "node:util";
import { brotliDecompress, createBrotliDecompress } from "node:zlib";
import { Fault } from "../faults/fault.ts";
import { isAlive } from "../files/alive.ts";
import { untar } from "./untar.ts";

export interface BundledBrowser {
  readonly path: string;
  /** Set on top of the environment when the browser is started. */
  readonly env: Readonly<Record<string, string>>;
}

/** The package's one binary is built for this machine and asks for this loader. */
const LOADER = "/lib64/ld-linux-x86-64.so.2";

/**
 * Finds the bundled browser, unpacking it into the temporary folder when it is not there yet.
 *
 * Takes some 2 s and 220 MB the first time, some 10 ms later. Any number of processes may call it
 * at once. Returns undefined where it cannot run: no 64-bit Intel Linux with glibc, or the package
 * is not installed. Throws `disk-full` or `browser-failed` when it cannot be unpacked.
 */
export async function bundledBrowser(temp = tmpdir()): Promise<BundledBrowser | undefined> {
  const bin = packageFolder();
  if (process.platform !== "linux" || process.arch !== "x64") return undefined;
  if (bin === undefined || !existsSync(LOADER)) return undefined;
  const manifest: unknown = JSON.parse(await readFile(join(bin, "..", "package.json"), "utf8"));
  const version = (manifest as { version: string }).version;
  const folder = join(temp, `paulatim-browser-${version}-${process.getuid?.() ?? 0}`);
  await refuseForeign(folder);
  if (!(await isWhole(folder))) await unpack(bin, folder);
  const path = join(folder, "chromium");
  const env: Record<string, string> = { FONTCONFIG_FILE: join(folder, "fonts.conf") };
  if (await lacksLibraries(path)) {
    const before = process.env.LD_LIBRARY_PATH;
    env.LD_LIBRARY_PATH = join(folder, "lib") + (before ? `:${before}` : "");
  }
  return { path, env };
}

function packageFolder(): string | undefined {
  try {
    const entry = createRequire(import.meta.url).resolve("@sparticuz/chromium");
    return join(dirname(entry), "..", "bin");
  } catch {
    return undefined;
  }
}

/** The temporary folder is shared: never run what somebody else could have put there. */
async function refuseForeign(folder: string): Promise<void> {
  const found = await lstat(folder).catch(() => undefined);
  if (found === undefined) return;
  if (found.isDirectory() && found.uid === process.getuid?.() && (found.mode & 0o022) === 0) return;
  throw new Fault(
    "browser-failed",
    `${folder} belongs to somebody else or can be changed by them.`,
    {
      hint: "Remove it, or set TMPDIR to a folder of your own.",
    },
  );
}

async function isWhole(folder: string): Promise<boolean> {
  try {
    const size = Number(await readFile(join(folder, "whole"), "utf8"));
    const names = ["chromium", "fonts.conf", "fonts", "lib/libnss3.so"];
    const stats = await Promise.all(names.map((name) => stat(join(folder, name))));
    return stats[0]?.size === size;
  } catch {
    return false;
  }
}

/** Unpacks beside the folder and moves the whole into place; the first of several wins. */
async function unpack(bin: string, folder: string): Promise<void> {
  const name = `${folder}.${process.pid}-${randomBytes(6).toString("hex")}`;
  const part = `${name}.part`;
  const old = `${name}.old.part`;
  try {
    await removeStale(folder);
    await unpackInto(bin, part, folder);
    for (let tries = 0; !(await isWhole(folder)); tries++) {
      // What is in the way is ours but not whole: something emptied it since.
      if (tries > 0) await rename(folder, old);
      await rename(part, folder).catch((error: unknown) => {
        if (tries > 4) throw error;
      });
    }
  } catch (cause) {
    const full = (cause as NodeJS.ErrnoException).code === "ENOSPC";
    throw new Fault(
      full ? "disk-full" : "browser-failed",
      full
        ? "The disk is full: the bundled browser needs 220 MB in the temporary folder."
        : `The bundled browser cannot be unpacked into ${dirname(folder)}.`,
      { hint: "Set TMPDIR to a folder with enough space that you may write to.", cause },
    );
  } finally {
    for (const left of [part, old]) await rm(left, { recursive: true, force: true });
  }
}

async function unpackInto(bin: string, part: string, folder: string): Promise<void> {
  await mkdir(part, { mode: 0o700 });
  await pipeline(
    createReadStream(join(bin, "chromium.br"), { highWaterMark: 1 << 20 }),
    createBrotliDecompress({ chunkSize: 1 << 21 }),
    createWriteStream(join(part, "chromium"), { mode: 0o700 }),
  );
  for (const archive of ["al2023.tar.br", "fonts.tar.br"]) {
    const packed = await readFile(join(bin, archive));
    for (const { path, content } of await untar(await promisify(brotliDecompress)(packed))) {
      await mkdir(join(part, dirname(path)), { recursive: true });
      await writeFile(join(part, path), content);
    }
  }
  await writeFile(join(part, "fonts.conf"), fontsConf(folder));
  await writeFile(join(part, "whole"), String((await stat(join(part, "chromium"))).size));
}

/**
 * The system's fonts, and always at least one of our own: on a machine without any, the browser
 * would leave out even text whose font is embedded in the page.
 */
function fontsConf(folder: string): string {
  const own = folder.replaceAll("&", "&amp;").replaceAll("<", "&lt;");
  return `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
  <include ignore_missing="yes">/etc/fonts/fonts.conf</include>
  <dir>/usr/share/fonts</dir>
  <dir>${own}/fonts</dir>
  <cachedir>${own}/cache</cachedir>
</fontconfig>
`;
}

/** Asks the loader, without running the browser, whether it finds every shared library. */
async function lacksLibraries(path: string): Promise<boolean> {
  try {
    return (await promisify(execFile)(LOADER, ["--list", path])).stdout.includes("not found");
  } catch {
    return true;
  }
}

/** Removes what killed processes left half unpacked. */
async function removeStale(folder: string): Promise<void> {
  for (const name of await readdir(dirname(folder))) {
    if (!name.startsWith(`${basename(folder)}.`) || !name.endsWith(".part")) continue;
    const pid = Number.parseInt(name.slice(basename(folder).length + 1), 10);
    if (isAlive(pid)) continue;
    await rm(join(dirname(folder), name), { recursive: true, force: true });
  }
}
