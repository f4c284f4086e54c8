/** The order in which a browser is searched for, on every system, without any being there. */
import { describe, expect, it, test } from "vitest";
import { type BrowserKind, type BrowserSearch, findBrowser } from "../../src/browser/find.ts";
import { sandboxArgs } from "../../src/browser/sandbox.ts";

interface World {
  platform?: NodeJS.Platform;
  env?: NodeJS.ProcessEnv;
  setting?: string;
  files: readonly string[];
  bundled?: boolean;
}

function search({ platform = "linux", env = {}, files, bundled, ...rest }: World): BrowserSearch {
  const all = files.map((file) => file.replaceAll("\\", "/"));
  return {
    ...rest,
    env,
    platform,
    home: platform === "win32" ? "C:\\Users\\ann" : "/home/ann",
    root: false,
    exists: async (path) => files.includes(path),
    list: async (folder) => {
      const start = `${folder.replaceAll("\\", "/")}/`;
      const inside = all.filter((file) => file.startsWith(start));
      return [...new Set(inside.map((file) => file.slice(start.length).split("/")[0] ?? ""))];
    },
    bundled: async () => (bundled ? { path: "/bundled/chromium", env: { A: "1" } } : undefined),
  };
}

const CHROME = "/opt/google/chrome/chrome";
const mac = (name: string) => `/Applications/${name}.app/Contents/MacOS/${name}`;
const cache = "/home/ann/.cache/puppeteer";
const shell = (version: string) =>
  `${cache}/chrome-headless-shell/linux-${version}/chrome-headless-shell-linux64/chrome-headless-shell`;
const full = (version: string, root = cache) =>
  `${root}/chrome/linux-${version}/chrome-linux64/chrome`;
const testing = "Google Chrome for Testing";

const FOUND: [string, World, BrowserKind, string][] = [
  ["the setting", { setting: "/x/b", files: ["/x/b", CHROME], bundled: true }, "setting", "/x/b"],
  [
    "the setting before the variable",
    { setting: "/x/b", env: { PUPPETEER_EXECUTABLE_PATH: "/y/c" }, files: ["/x/b", "/y/c"] },
    "setting",
    "/x/b",
  ],
  [
    "the variable before what is installed",
    { env: { PUPPETEER_EXECUTABLE_PATH: "/y/c" }, files: ["/y/c", CHROME] },
    "setting",
    "/y/c",
  ],
  [
    "an empty variable is none",
    { env: { PUPPETEER_EXECUTABLE_PATH: "" }, files: [CHROME] },
    "installed",
    CHROME,
  ],
  ["an installed one", { files: [CHROME, full("9.0")], bundled: true }, "installed", CHROME],
  [
    "a command on PATH",
    { env: { PATH: "/a:relative:/b/bin" }, files: ["/b/bin/chromium"] },
    "installed",
    "/b/bin/chromium",
  ],
  [
    "a program before the command around it",
    { env: { PATH: "/usr/bin" }, files: ["/usr/bin/chromium", "/usr/lib/chromium/chromium"] },
    "installed",
    "/usr/lib/chromium/chromium",
  ],
  [
    "Chrome on a Mac",
    { platform: "darwin", files: [mac("Google Chrome"), mac("Chromium")] },
    "installed",
    mac("Google Chrome"),
  ],
  [
    "Edge on a Mac, for one user",
    { platform: "darwin", files: [`/home/ann${mac("Microsoft Edge")}`] },
    "installed",
    `/home/ann${mac("Microsoft Edge")}`,
  ],
  [
    "Chrome on Windows, for one user",
    {
      platform: "win32",
      env: { LOCALAPPDATA: "C:\\Users\\ann\\Local", PROGRAMFILES: "C:\\Programs" },
      files: ["C:\\Users\\ann\\Local\\Google\\Chrome\\Application\\chrome.exe"],
    },
    "installed",
    "C:\\Users\\ann\\Local\\Google\\Chrome\\Application\\chrome.exe",
  ],
  [
    "Edge on Windows",
    {
      platform: "win32",
      env: { "PROGRAMFILES(X86)": "C:\\Programs (x86)" },
      files: ["C:\\Programs (x86)\\Microsoft\\Edge\\Application\\msedge.exe"],
    },
    "installed",
    "C:\\Programs (x86)\\Microsoft\\Edge\\Application\\msedge.exe",
  ],
  [
    "the newest download, by number and not by letter",
    { files: [full("99.0.1"), full("131.0.9"), full("131.0.10")], bundled: true },
    "cache",
    full("131.0.10"),
  ],
  [
    "a shell before a full one of the same version",
    { files: [full("131.0.1"), shell("131.0.1")] },
    "cache",
    shell("131.0.1"),
  ],
  [
    "a newer full one before an older shell",
    { files: [shell("130.0.1"), full("131.0.1")] },
    "cache",
    full("131.0.1"),
  ],
  [
    "a download in another folder",
    { env: { PUPPETEER_CACHE_DIR: "/cache" }, files: [full("1.2", "/cache"), full("3.4")] },
    "cache",
    full("1.2", "/cache"),
  ],
  [
    "no download of another system",
    { files: [`${cache}/chrome/mac-9.0/chrome-mac-x64/chrome`, full("1.0")] },
    "cache",
    full("1.0"),
  ],
  [
    "a download on a Mac",
    {
      platform: "darwin",
      files: [
        `${cache}/chrome/mac_arm-131.0.1/chrome-mac-arm64/${testing}.app/Contents/MacOS/${testing}`,
      ],
    },
    "cache",
    `${cache}/chrome/mac_arm-131.0.1/chrome-mac-arm64/${testing}.app/Contents/MacOS/${testing}`,
  ],
  [
    "a download on Windows",
    {
      platform: "win32",
      files: ["C:\\Users\\ann\\.cache\\puppeteer\\chrome\\win64-131.0.1\\chrome-win64\\chrome.exe"],
    },
    "cache",
    "C:\\Users\\ann\\.cache\\puppeteer\\chrome\\win64-131.0.1\\chrome-win64\\chrome.exe",
  ],
  ["the bundled one last", { files: [], bundled: true }, "bundled", "/bundled/chromium"],
];

describe("findBrowser finds", () => {
  test.each(FOUND)("%s", async (_, world, kind, path) => {
    expect(await findBrowser(search(world))).toMatchObject({ kind, path, args: [] });
  });

  it("the bundled one with the environment that it needs", async () => {
    const found = await findBrowser(search({ files: [], bundled: true }));
    expect(found.env).toEqual({ A: "1" });
  });
});

const MISSING: [string, World, string][] = [
  ["a setting that is not there", { setting: "/x/b", files: [CHROME] }, "/x/b"],
  [
    "a variable that names nothing",
    { env: { PUPPETEER_EXECUTABLE_PATH: "/y/c" }, files: [CHROME], bundled: true },
    "PUPPETEER_EXECUTABLE_PATH names /y/c",
  ],
  ["nothing anywhere", { files: [] }, "No browser was found"],
  ["no bundled one outside Linux", { platform: "darwin", files: [], bundled: true }, "No browser"],
];

test.each(MISSING)("findBrowser refuses %s", async (_, world, words) => {
  const fault = await findBrowser(search(world)).catch((error: unknown) => error);
  expect(fault).toMatchObject({
    code: "browser-missing",
    exit: 3,
    message: expect.stringContaining(words),
    hint: expect.stringMatching(/./),
  });
});

it("says that the HTML booklet still works", async () => {
  const fault = await findBrowser(search({ files: [] })).catch((error: unknown) => error);
  expect(fault).toMatchObject({ hint: expect.stringContaining("HTML booklet works") });
});

const OFF = ["--no-sandbox", "--no-zygote"];
const SANDBOX: [string, NodeJS.Platform, boolean, boolean, Record<string, string>, string[]][] = [
  ["kept for a user", "linux", false, false, {}, []],
  ["off for root", "linux", true, true, {}, OFF],
  ["kept on a Mac", "darwin", false, true, {}, []],
  ["kept on Windows", "win32", false, false, {}, []],
  ["off without namespaces", "linux", false, false, { max_user_namespaces: "0" }, OFF],
  ["off where users may have none", "linux", false, false, { unprivileged_userns_clone: "0" }, OFF],
  [
    "off for programs that the system does not know",
    "linux",
    false,
    false,
    { apparmor_restrict_unprivileged_userns: "1" },
    OFF,
  ],
  [
    "kept for programs that it knows",
    "linux",
    true,
    false,
    { apparmor_restrict_unprivileged_userns: "1" },
    [],
  ],
];

test.each(SANDBOX)("the sandbox is %s", (_, platform, installed, root, settings, args) => {
  const read = (path: string) => settings[path.slice(path.lastIndexOf("/") + 1)];
  expect(sandboxArgs(installed, platform, root, read)).toEqual(args);
});
