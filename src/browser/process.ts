/** Runs one browser process with a profile of its own, and leaves nothing of either behind. */
import { type ChildProcess, spawn, spawnSync } from "node:child_process";
import { rmSync } from "node:fs";
import { mkdtemp, readdir, rm } from "node:fs/promises";
import { join } from "node:path";
import type { Readable, Writable } from "node:stream";
import { setTimeout as sleep } from "node:timers/promises";
import type { Browser } from "puppeteer-core";
import { Fault } from "../faults/fault.ts";
import { isAlive } from "../files/alive.ts";
import type { FoundBrowser } from "./find.ts";
import { joinPipes } from "./pipe.ts";
import { NO_SANDBOX } from "./sandbox.ts";

export interface BrowserProcess {
  readonly browser: Browser;
  readonly pid: number;
  /** Settles when the process has ended, for whatever reason. */
  readonly ended: Promise<void>;
  /** Ends the process and removes its profile; may be called more than once. */
  stop(): Promise<void>;
}

/** No window, no network, nothing in the background, the same result on every machine. */
const ARGS = [
  "--headless",
  "--remote-debugging-pipe",
  "--host-resolver-rules=MAP * ~NOTFOUND",
  "--no-proxy-server",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-domain-reliability",
  "--disable-sync",
  "--disable-extensions",
  "--disable-default-apps",
  "--disable-features=Translate,OptimizationHints,MediaRouter,DialMediaRouteProvider",
  "--disable-breakpad",
  "--disable-crash-reporter",
  "--disable-dev-shm-usage",
  "--disable-gpu",
  "--disable-software-rasterizer",
  "--disable-background-timer-throttling",
  "--disable-renderer-backgrounding",
  "--font-render-hinting=none",
  "--force-color-profile=srgb",
  "--hide-scrollbars",
  "--metrics-recording-only",
  "--mute-audio",
  "--no-default-browser-check",
  "--no-first-run",
  "--no-pings",
  "--password-store=basic",
  "--use-mock-keychain",
];

interface Running {
  readonly child: ChildProcess;
  readonly profile: string;
  readonly ended: Promise<void>;
}

const running = new Set<Running>();

/**
 * Starts a browser and connects to it; at most `startMs` milliseconds.
 *
 * The browser hangs on two pipes of this process: it ends by itself when this process is killed.
 * Throws `browser-failed` with the last lines that the browser wrote.
 */
export async function startProcess(
  found: FoundBrowser,
  temp: string,
  startMs: number,
): Promise<BrowserProcess> {
  await removeStaleProfiles(temp);
  try {
    return await startOnce(found, temp, startMs);
  } catch (error) {
    // Containers may forbid what the sandbox needs without showing it anywhere.
    const sandbox = error instanceof Fault && /usable sandbox/i.test(error.hint ?? "");
    if (!sandbox || found.args.includes("--no-sandbox")) throw error;
    return await startOnce({ ...found, args: [...found.args, ...NO_SANDBOX] }, temp, startMs);
  }
}

async function startOnce(
  found: FoundBrowser,
  temp: string,
  startMs: number,
): Promise<BrowserProcess> {
  const profile = await mkdtemp(join(temp, `${PROFILE}${process.pid}-`));
  const child = spawn(found.path, [...ARGS, ...found.args, `--user-data-dir=${profile}`], {
    stdio: ["ignore", "ignore", "pipe", "pipe", "pipe"],
    env: { ...process.env, ...found.env },
    detached: process.platform !== "win32",
    windowsHide: true,
  });
  const ended = new Promise<void>((resolve) => {
    child.once("error", () => resolve());
    child.once("exit", () => resolve());
  });
  const entry: Running = { child, profile, ended };
  running.add(entry);
  const words = lastWords(child);
  let timer: NodeJS.Timeout | undefined;
  try {
    const connected = connect(child);
    connected.catch(() => undefined);
    const browser = await Promise.race([
      connected,
      ended.then(() => Promise.reject(new Error("The browser ended at once."))),
      new Promise<never>((_, reject) => {
        timer = setTimeout(() => reject(new Error("The browser does not answer.")), startMs);
      }),
    ]);
    return { browser, pid: child.pid ?? 0, ended, stop: () => stop(entry) };
  } catch (cause) {
    await stop(entry);
    throw new Fault("browser-failed", `The browser ${found.path} could not be started.`, {
      hint: `Set PUPPETEER_EXECUTABLE_PATH to another browser.${words()}`,
      cause,
    });
  } finally {
    clearTimeout(timer);
  }
}

/** Ends every browser of this process; for the command line to call on SIGINT and SIGTERM. */
export async function stopBrowsers(): Promise<void> {
  await Promise.all([...running].map(stop));
}

/** The same at once and without waiting; for `process.on("exit")`. */
export function stopBrowsersNow(): void {
  for (const { child, profile } of running) {
    killTree(child);
    rmSync(profile, { recursive: true, force: true, maxRetries: 3 });
  }
  running.clear();
}

async function connect(child: ChildProcess): Promise<Browser> {
  const { default: puppeteer } = await import("puppeteer-core");
  const [, , , commands, answers] = child.stdio;
  const transport = joinPipes(commands as Writable, answers as Readable);
  return await puppeteer.connect({ transport, defaultViewport: null, protocolTimeout: 600_000 });
}

async function stop(entry: Running): Promise<void> {
  killTree(entry.child);
  await entry.ended;
  running.delete(entry);
  await helpersEnded(entry.child);
  await rm(entry.profile, { recursive: true, force: true, maxRetries: 5, retryDelay: 50 });
}

/**
 * Waits for the helpers of a browser that has ended, so that none writes into the profile while it is
 * removed; at most half a second, for where nobody takes leave of ended processes.
 */
async function helpersEnded({ pid }: ChildProcess): Promise<void> {
  if (pid === undefined || process.platform === "win32") return;
  for (let tries = 0; tries < 25; tries += 1) {
    try {
      process.kill(-pid, 0);
    } catch {
      return;
    }
    await sleep(20);
  }
}

/** The process and its helpers; it holds nothing worth closing in order. */
function killTree(child: ChildProcess): void {
  if (child.pid === undefined) return;
  if (process.platform === "win32") {
    spawnSync("taskkill", ["/pid", String(child.pid), "/T", "/F"], { windowsHide: true });
    return;
  }
  try {
    process.kill(-child.pid, "SIGKILL");
  } catch {
    // It has ended already.
  }
}

/** Keeps the last lines that the browser wrote, for the fault when it does not start. */
function lastWords(child: ChildProcess): () => string {
  let text = "";
  child.stderr?.on("data", (chunk: Buffer) => {
    text = (text + chunk.toString("utf8")).slice(-2000);
  });
  return () =>
    text.trim() === "" ? "" : ` It wrote: ${text.trim().split("\n").slice(-3).join(" ")}`;
}

const PROFILE = "paulatim-profile-";

/** Removes the profiles that killed processes left. */
async function removeStaleProfiles(temp: string): Promise<void> {
  for (const name of await readdir(temp)) {
    if (!name.startsWith(PROFILE) || isAlive(Number.parseInt(name.slice(PROFILE.length), 10)))
      continue;
    await rm(join(temp, name), { recursive: true, force: true }).catch(() => undefined);
  }
}
