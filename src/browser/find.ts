/** Finds a browser to print with: the one asked for, an installed one, or the bundled one. */
import { constants } from "node:fs";
import { access, readdir, stat } from "node:fs/promises";
import { homedir } from "node:os";
import { resolve } from "node:path";
import { Fault } from "../faults/fault.ts";
import { type BundledBrowser, bundledBrowser } from "./bundled.ts";
import { cachedProgram, cacheFolder, installedPlaces, type Machine } from "./places.ts";
import { sandboxArgs } from "./sandbox.ts";

/** Where a browser was found: asked for, installed, downloaded by Puppeteer, or bundled. */
export type BrowserKind = "setting" | "installed" | "cache" | "bundled";

export interface FoundBrowser {
  readonly kind: BrowserKind;
  readonly path: string;
  /** Arguments that this browser needs on this machine, besides those of every start. */
  readonly args: readonly string[];
  /** Set on top of the environment when it is started. */
  readonly env: Readonly<Record<string, string>>;
}

export interface BrowserSearch {
  /** A path that the user gave; searched for nowhere else. */
  readonly setting?: string | undefined;
  readonly env: NodeJS.ProcessEnv;
  readonly platform: NodeJS.Platform;
  readonly home?: string;
  /** Whether a path is a program; whether the user is root; what a folder holds. */
  readonly exists?: (path: string) => Promise<boolean>;
  readonly root?: boolean;
  readonly list?: (folder: string) => Promise<readonly string[]>;
  readonly bundled?: () => Promise<BundledBrowser | undefined>;
}

/**
 * Finds the browser, in this order: the setting; PUPPETEER_EXECUTABLE_PATH; an installed Chrome,
 * Chromium or Edge; Puppeteer's own downloads, newest first; the bundled one.
 *
 * A path that was asked for and is not there is a fault; nothing else is tried in its place.
 * Throws `browser-missing`, and for the bundled browser what `bundledBrowser` throws.
 */
export async function findBrowser(search: BrowserSearch): Promise<FoundBrowser> {
  const { env, platform, home = homedir(), exists = isProgram, list = namesIn } = search;
  const machine: Machine = { platform, env, home };
  const args = (kind: BrowserKind) => sandboxArgs(kind === "installed", platform, search.root);

  const asked = askedFor(search);
  if (asked !== undefined) {
    if (!(await exists(asked.path))) throw missing(asked);
    return { kind: "setting", path: asked.path, args: args("setting"), env: {} };
  }
  for (const path of installedPlaces(machine)) {
    if (await exists(path)) return { kind: "installed", path, args: args("installed"), env: {} };
  }
  for (const path of await cachedPrograms(machine, list)) {
    if (await exists(path)) return { kind: "cache", path, args: args("cache"), env: {} };
  }
  const bundled = platform === "linux" ? await (search.bundled ?? bundledBrowser)() : undefined;
  if (bundled === undefined) throw missing();
  return { kind: "bundled", ...bundled, args: args("bundled") };
}

interface Asked {
  readonly by: string;
  readonly path: string;
}

function askedFor({ setting, env }: BrowserSearch): Asked | undefined {
  if (setting) return { by: "The browser setting", path: resolve(setting) };
  const path = env.PUPPETEER_EXECUTABLE_PATH;
  return path ? { by: "PUPPETEER_EXECUTABLE_PATH", path: resolve(path) } : undefined;
}

function missing(asked?: Asked): Fault {
  if (asked !== undefined) {
    return new Fault("browser-missing", `${asked.by} names ${asked.path}, which is no program.`, {
      hint: "Name the browser's program file itself, or leave it out to have one searched for.",
    });
  }
  return new Fault("browser-missing", "No browser was found to print the PDF with.", {
    hint:
      "Install Chrome, Chromium or Edge, or set PUPPETEER_EXECUTABLE_PATH to one. " +
      "The HTML booklet works without a browser here and can be printed from any.",
  });
}

/** Every downloaded browser of this system, newest version first, the smaller shell before. */
async function cachedPrograms(
  machine: Machine,
  list: (folder: string) => Promise<readonly string[]>,
): Promise<string[]> {
  const found: { path: string; version: number[] }[] = [];
  for (const kind of ["chrome-headless-shell", "chrome"]) {
    const folder = `${cacheFolder(machine)}/${kind}`;
    for (const build of await list(folder)) {
      const path = cachedProgram(kind, build, machine);
      const version = build
        .slice(build.lastIndexOf("-") + 1)
        .split(".")
        .map(Number);
      if (path !== undefined) found.push({ path, version });
    }
  }
  return found.sort((a, b) => newerFirst(a.version, b.version)).map(({ path }) => path);
}

function newerFirst(a: readonly number[], b: readonly number[]): number {
  for (let i = 0; i < Math.max(a.length, b.length); i++) {
    const difference = (b[i] || 0) - (a[i] || 0);
    if (difference !== 0) return difference;
  }
  return 0;
}

async function isProgram(path: string): Promise<boolean> {
  try {
    await access(path, constants.X_OK);
    return (await stat(path)).isFile();
  } catch {
    return false;
  }
}

async function namesIn(folder: string): Promise<string[]> {
  return await readdir(folder).catch(() => []);
}
