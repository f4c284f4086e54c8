/** A browser that dies, hangs, crashes or is asked to load from the network. */
import { chmodSync, existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { createServer } from "node:net";
import { join } from "node:path";
import puppeteer from "puppeteer-core";
import { describe, expect, it, test } from "vitest";
import { type Page, PrintBrowser, withBrowser } from "../../src/browser/browser.ts";
import { Fault } from "../../src/faults/fault.ts";
import { printPdf } from "../../src/pdf/print.ts";
import { eventually, freshFolder, runChild } from "../files/support.ts";
import { pageCount } from "../support/page-count.ts";
import { booklet, found } from "../support/render.ts";

/** Whether any process of the group is left; one that ended but was not yet waited for is not. */
function groupAlive(group: number): boolean {
  try {
    process.kill(-group, 0);
  } catch {
    return false;
  }
  if (!existsSync("/proc/self/stat")) return true;
  return readdirSync("/proc").some((pid) => {
    if (!/^\d+$/.test(pid)) return false;
    const [state, , of] = statOf(pid).split(" ");
    return Number(of) === group && state !== "Z";
  });
}
/** State, parent and group of a process, and more. */
function statOf(pid: string): string {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, "utf8");
    return stat.slice(stat.lastIndexOf(")") + 2);
  } catch {
    return "";
  }
}

type Blow = (page: Page, browser: PrintBrowser) => Promise<unknown>;
const kill =
  (signal: NodeJS.Signals): Blow =>
  async (page, browser) => {
    const pid = (await browser.pid()) ?? 0;
    const printed = printPdf(page, booklet(200), { paper: "A4" });
    setTimeout(() => process.kill(pid, signal), 150);
    return await printed;
  };
const BLOWS: [string, Blow, number][] = [
  ["is killed in mid-print", kill("SIGKILL"), 60_000],
  ["is asked to end in mid-print", kill("SIGTERM"), 60_000],
  ["stops answering", kill("SIGSTOP"), 3000],
  ["loses its page", async (page) => (await page.createCDPSession()).send("Page.crash"), 60_000],
  ["cannot be reached", () => Promise.reject(protocolError()), 60_000],
];
function protocolError(): Error {
  return Object.assign(new Error("Target closed"), { name: "TargetCloseError" });
}

describe.skipIf(process.platform === "win32")("a browser that", { timeout: 30_000 }, () => {
  test.each(BLOWS)("%s once prints all the same", async (_, blow, useMs) => {
    const temp = freshFolder();
    const pids: (number | undefined)[] = [];
    const print = async (browser: PrintBrowser) =>
      await browser.usePage(async (page) => {
        pids.push(await browser.pid());
        if (pids.length === 1) await blow(page, browser);
        return await printPdf(page, booklet(2), { paper: "A4" });
      });
    const pdf = await withBrowser(found, print, { temp, useMs });
    expect(pageCount(pdf)).toBe(3);
    expect(new Set(pids).size).toBe(2);
    for (const pid of pids) expect(await eventually(() => !groupAlive(pid ?? 0))).toBe(true);
    expect(readdirSync(temp)).toEqual([]);
  });

  test.each(BLOWS)("%s twice is a fault, and the next use starts anew", async (_, blow, useMs) => {
    const temp = freshFolder();
    const browser = new PrintBrowser(found, { temp, useMs });
    await expect(browser.usePage((page) => blow(page, browser))).rejects.toMatchObject({
      code: "browser-failed",
      exit: 3,
    });
    expect(readdirSync(temp)).toEqual([]);
    expect(await browser.usePage(async () => "well")).toBe("well");
    await browser.dispose();
    expect(readdirSync(temp)).toEqual([]);
  });

  it("is used by several at once when it dies serves them all from one new one", async () => {
    const browser = new PrintBrowser(found, { temp: freshFolder() });
    const pids = new Set<number | undefined>();
    let runs = 0;
    const use = () =>
      browser.usePage(async (page) => {
        const pid = await browser.pid();
        pids.add(pid);
        if (++runs === 2) process.kill(pid ?? 0, "SIGKILL");
        return pageCount(await printPdf(page, booklet(40), { paper: "A4" }));
      });
    expect(await Promise.all([use(), use()])).toEqual([41, 41]);
    expect(pids.size).toBe(2);
    await browser.dispose();
  });

  const OWN: [string, Error][] = [
    ["a fault", new Fault("template-broken", "No.")],
    ["an error", new TypeError("Oops.")],
  ];
  test.each(OWN)("works well passes on %s of the work itself, which runs once", async (_, own) => {
    let runs = 0;
    const work = () => {
      runs++;
      return Promise.reject(own);
    };
    await withBrowser(found, async (browser) => {
      await expect(browser.usePage(work)).rejects.toBe(own);
      expect(runs).toBe(1);
      const pid = await browser.pid();
      await browser.usePage(async () => expect(await browser.pid()).toBe(pid));
    });
  });

  it("has been closed serves nobody", async () => {
    const browser = new PrintBrowser(found, { temp: freshFolder() });
    await browser.dispose();
    await expect(browser.usePage(async () => 1)).rejects.toMatchObject({ code: "browser-failed" });
  });

  const PROGRAMS: [string, string, RegExp][] = [
    ["ends at once", "#!/bin/sh\necho 'missing libfoo.so' >&2\nexit 127\n", /missing libfoo\.so/],
    ["never answers", "#!/bin/sh\nsleep 60\n", /PUPPETEER_EXECUTABLE_PATH/],
    ["cannot be run", "no program\n", /PUPPETEER_EXECUTABLE_PATH/],
  ];
  test.each(PROGRAMS)("%s is a fault that says so", async (_, script, hint) => {
    const temp = freshFolder();
    const path = join(freshFolder(), "program");
    writeFileSync(path, script);
    chmodSync(path, script.startsWith("#!") ? 0o755 : 0o644);
    const browser = new PrintBrowser({ ...found, path }, { temp, startMs: 500 });
    const fault = await browser.usePage(async () => 1).catch((error: unknown) => error);
    expect(fault).toMatchObject({ code: "browser-failed", hint: expect.stringMatching(hint) });
    expect(readdirSync(temp)).toEqual([]);
  });
});

it("starts without its sandbox where the system forbids it unseen", async () => {
  const path = join(freshFolder(), "program");
  const refuse = 'echo "No usable sandbox!" >&2; exit 1';
  writeFileSync(
    path,
    `#!/bin/sh\ncase "$*" in *--no-sandbox*) exec "${found.path}" "$@";; *) ${refuse};; esac\n`,
  );
  chmodSync(path, 0o755);
  const guarded = { ...found, path, args: [] };
  expect(await withBrowser(guarded, (browser) => browser.usePage(async () => "on"))).toBe("on");
});

const HOLD = `
import { PrintBrowser, stopBrowsers, stopBrowsersNow } from "./src/browser/browser.ts";
const browser = new PrintBrowser(${JSON.stringify(found)}, { temp: process.env.TEST_TEMP });
process.on("SIGTERM", async () => { await stopBrowsers(); process.exit(143); });
process.on("SIGINT", () => { stopBrowsersNow(); process.exit(130); });
await browser.usePage(async () => {
  process.stdout.write("pid=" + (await browser.pid()) + ";");
  await new Promise((resolve) => setTimeout(resolve, 60_000));
});`;

describe.skipIf(process.platform === "win32")("a run that is ended by", { timeout: 30_000 }, () => {
  const SIGNALS: [NodeJS.Signals, boolean][] = [
    ["SIGTERM", true],
    ["SIGINT", true],
    ["SIGKILL", false],
  ];
  test.each(SIGNALS)("%s leaves no browser (and no profile: %s)", async (signal, clean) => {
    const temp = freshFolder();
    const child = await runChild(HOLD, { env: { TEST_TEMP: temp } });
    await child.wrote(";");
    expect(readdirSync(temp)).toHaveLength(1);
    child.kill(signal);
    const pid = Number(/pid=(\d+);/.exec(await child.done)?.[1]);
    expect(pid).toBeGreaterThan(0);
    expect(await eventually(() => !groupAlive(pid))).toBe(true);
    if (clean) expect(readdirSync(temp)).toEqual([]);
    // Whoever comes next removes what a killed run could not.
    await withBrowser(found, (browser) => browser.usePage(async () => 1), { temp });
    expect(readdirSync(temp)).toEqual([]);
  });
});

describe("the network", { timeout: 30_000 }, () => {
  const page = (at: string) => `<!doctype html><link rel="preconnect" href="${at}">
<link rel="stylesheet" href="${at}/a.css"><script src="${at}/b.js"></script>
<style>@font-face { font-family: F; src: url(${at}/c.woff2) } p { font-family: F }
body { background: url(${at}/d.png) } @import url(${at}/e.css);</style>
<p>Text</p><img src="${at}/f.png"><iframe src="${at}/g.html"></iframe>
<object data="${at}/h.svg"></object><video src="${at}/i.mp4"></video>
<svg><image href="${at}/j.png"/></svg><script>fetch("${at}/k")</script>`;

  test.each([
    ["127.0.0.1", "127.0.0.1"],
    ["localhost", "127.0.0.1"],
    ["[::1]", "::1"],
  ])("is never reached at %s", async (name, host) => {
    let connections = 0;
    const server = createServer((socket) => {
      connections++;
      socket.on("error", () => undefined);
      socket.end("HTTP/1.1 404 Not Found\r\nContent-Length: 0\r\nConnection: close\r\n\r\n");
    });
    await new Promise<void>((resolve) => server.listen(0, host, resolve));
    const address = server.address();
    const port = typeof address === "object" ? address?.port : 0;
    const html = page(`http://${name}:${port}`);

    const pdf = await withBrowser(found, (browser) =>
      browser.usePage(async (used) => {
        await used.setContent(html, { waitUntil: "load" });
        return await used.pdf();
      }),
    );
    expect(pageCount(pdf)).toBe(1);
    expect(connections).toBe(0);

    // The same document does connect in a browser that nothing holds back.
    const open = await puppeteer.launch({
      executablePath: found.path,
      args: [...found.args],
      env: { ...process.env, ...found.env },
      headless: "shell",
      pipe: true,
    });
    await (await open.newPage()).setContent(html);
    expect(await eventually(() => connections > 3)).toBe(true);
    await open.close();
    server.close();
  });

  it("and the disk are out of reach too: a file is not shown", async () => {
    const path = join(freshFolder(), "secret.svg");
    writeFileSync(path, `<svg xmlns="http://www.w3.org/2000/svg"><text y="20">Secret</text></svg>`);
    expect(existsSync(path)).toBe(true);
    const html = (source: string) => `<p>Shown</p><img src="${source}" width="200" height="99">`;
    const data =
      "data:image/svg+xml,%3Csvg xmlns='http://www.w3.org/2000/svg' width='9' height='9'/%3E";
    const widths = await withBrowser(found, (browser) =>
      browser.usePage(async (page) => {
        const measured: unknown[] = [];
        for (const source of [`file://${path}`, data]) {
          await page.setContent(html(source), { waitUntil: "load" });
          measured.push(await page.evaluate("document.images[0].naturalWidth"));
        }
        return measured;
      }),
    );
    expect(widths).toEqual([0, 9]);
  });
});
