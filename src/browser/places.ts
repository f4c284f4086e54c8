/** Lists where browsers usually are on macOS, Windows and Linux. */
import { posix, win32 } from "node:path";

/** What the list depends on; the home folder as an absolute path. */
export interface Machine {
  readonly platform: NodeJS.Platform;
  readonly env: NodeJS.ProcessEnv;
  readonly home: string;
}

/** Absolute paths where an installed Chrome, Chromium or Edge could be, the best first. */
export function installedPlaces(machine: Machine): string[] {
  if (machine.platform === "darwin") return macPlaces(machine.home);
  if (machine.platform === "win32") return windowsPlaces(machine.env);
  return linuxPlaces(machine.env);
}

/** The folder where Puppeteer keeps the browsers that it downloaded. */
export function cacheFolder({ platform, env, home }: Machine): string {
  const { join } = platform === "win32" ? win32 : posix;
  return env.PUPPETEER_CACHE_DIR || join(home, ".cache", "puppeteer");
}

/**
 * The program inside one downloaded browser, for example of `linux-131.0.6778.204`.
 *
 * `kind` is the name of the folder above. Returns undefined for a build of another system.
 */
export function cachedProgram(kind: string, build: string, machine: Machine): string | undefined {
  const system = build.slice(0, build.lastIndexOf("-"));
  const folder = CACHE_FOLDERS[machine.platform]?.[system];
  if (folder === undefined) return undefined;
  const { join } = machine.platform === "win32" ? win32 : posix;
  const root = join(cacheFolder(machine), kind, build, `${kind}-${folder}`);
  if (machine.platform === "win32") return join(root, `${kind}.exe`);
  if (machine.platform !== "darwin" || kind !== "chrome") return join(root, kind);
  const name = "Google Chrome for Testing";
  return join(root, `${name}.app`, "Contents", "MacOS", name);
}

const CACHE_FOLDERS: Partial<Record<NodeJS.Platform, Record<string, string>>> = {
  linux: { linux: "linux64" },
  darwin: { mac: "mac-x64", mac_arm: "mac-arm64" },
  win32: { win32: "win32", win64: "win64" },
};

function macPlaces(home: string): string[] {
  const names = ["Google Chrome", "Chromium", "Microsoft Edge"];
  return names.flatMap((name) =>
    ["/", home].map((root) => posix.join(root, "Applications", `${name}.app/Contents/MacOS`, name)),
  );
}

function windowsPlaces(env: NodeJS.ProcessEnv): string[] {
  const roots = ["PROGRAMFILES", "PROGRAMFILES(X86)", "LOCALAPPDATA"];
  const programs = [
    "Google\\Chrome\\Application\\chrome.exe",
    "Chromium\\Application\\chrome.exe",
    "Microsoft\\Edge\\Application\\msedge.exe",
  ];
  const set = roots.map((name) => env[name]).filter((root) => root !== undefined && root !== "");
  return programs.flatMap((program) => set.map((root) => win32.join(root ?? "", program)));
}

/** Programs themselves before the commands on PATH, which may be scripts around them. */
function linuxPlaces(env: NodeJS.ProcessEnv): string[] {
  const fixed = [
    "/opt/google/chrome/chrome",
    "/usr/lib/chromium/chromium",
    "/usr/lib64/chromium-browser/chromium-browser",
    "/usr/lib/chromium-browser/chromium-browser",
    "/opt/microsoft/msedge/msedge",
  ];
  const commands = [
    "google-chrome-stable",
    "google-chrome",
    "chromium",
    "chromium-browser",
    "microsoft-edge-stable",
    "microsoft-edge",
  ];
  const folders = (env.PATH ?? "").split(":").filter((folder) => posix.isAbsolute(folder));
  return [
    ...fixed,
    ...commands.flatMap((command) => folders.map((folder) => posix.join(folder, command))),
  ];
}
