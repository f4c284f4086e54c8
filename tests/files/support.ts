/** What the tests of files and of printing share: folders of their own and child processes. */
import { spawn } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import { afterAll } from "vitest";

const root = fileURLToPath(new URL("../../", import.meta.url));

const folders: string[] = [];
afterAll(() => {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
});

/** An empty folder that is removed after the tests of its file. */
export function freshFolder(parent = tmpdir()): string {
  const folder = mkdtempSync(join(parent, "paulatim-test-"));
  folders.push(folder);
  return folder;
}

export interface Child {
  readonly pid: number;
  /** What it wrote, once it has ended. */
  readonly done: Promise<string>;
  /** Settles when its output holds this text. */
  readonly wrote: (text: string) => Promise<void>;
  readonly kill: (signal: NodeJS.Signals) => void;
}

/** Runs TypeScript source, with imports relative to the repository, in a Node of its own. */
export async function runChild(
  source: string,
  options: { env?: NodeJS.ProcessEnv; under?: readonly string[] } = {},
): Promise<Child> {
  const folder = join(root, "node_modules", ".cache", "paulatim-test");
  mkdirSync(folder, { recursive: true });
  const outfile = join(freshFolder(folder), "child.mjs");
  await build({
    stdin: { contents: source, resolveDir: root, loader: "ts" },
    outfile,
    bundle: true,
    platform: "node",
    format: "esm",
    packages: "external",
    logLevel: "silent",
  });
  const [command = process.execPath, ...args] = [
    ...(options.under ?? []),
    process.execPath,
    outfile,
  ];
  const child = spawn(command, args, {
    env: { ...process.env, ...options.env },
    stdio: ["ignore", "pipe", "pipe"],
  });
  let output = "";
  const watchers = new Set<() => void>();
  for (const stream of [child.stdout, child.stderr]) {
    stream.on("data", (chunk: Buffer) => {
      output += chunk.toString();
      for (const watch of watchers) watch();
    });
  }
  const done = new Promise<string>((resolve) => child.once("close", () => resolve(output)));
  const wrote = (text: string) =>
    new Promise<void>((resolve, reject) => {
      const watch = () => {
        if (output.includes(text)) resolve();
      };
      watchers.add(watch);
      watch();
      void done.then(() => reject(new Error(`It ended without ${text}: ${output}`)));
    });
  return { pid: child.pid ?? 0, done, wrote, kill: (signal) => child.kill(signal) };
}

/** Waits until something holds; for what another process does in its own time. */
export async function eventually(holds: () => boolean, ms = 5000): Promise<boolean> {
  for (const end = Date.now() + ms; Date.now() < end; ) {
    if (holds()) return true;
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
  return holds();
}
