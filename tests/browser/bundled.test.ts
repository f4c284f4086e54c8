/** Unpacking the bundled browser: by several at once, after a kill, and on a bare machine. */
import { spawnSync } from "node:child_process";
import { chmodSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it, test } from "vitest";
import { withBrowser } from "../../src/browser/browser.ts";
import { bundledBrowser } from "../../src/browser/bundled.ts";
import { untar } from "../../src/browser/untar.ts";
import { finishPdf } from "../../src/pdf/post-process.ts";
import { printPdf } from "../../src/pdf/print.ts";
import { freshFolder, runChild } from "../files/support.ts";
import { booklet } from "../support/render.ts";

const UNPACK = `
import { bundledBrowser } from "./src/browser/bundled.ts";
process.stdout.write("start;");
const found = await bundledBrowser(process.env.TEST_TEMP);
process.stdout.write(JSON.stringify(found) + "\\n");`;

/** Text in an embedded font alone: without any other font, a browser may first leave it out. */
const PLAIN = booklet(1).replace(/<body>.*<\/body>/s, "<body><p>Text</p></body>");

const PRINT = `
import { writeFileSync } from "node:fs";
import { bundledBrowser } from "./src/browser/bundled.ts";
import { withBrowser } from "./src/browser/browser.ts";
import { printPdf } from "./src/pdf/print.ts";
const found = { kind: "bundled", args: ["--no-sandbox", "--no-zygote"], ...(await bundledBrowser()) };
const html = ${JSON.stringify(PLAIN)};
const print = (page) => printPdf(page, html, { paper: "A4" });
await withBrowser(found, async (browser) => {
  writeFileSync(process.env.TEST_OUT, await browser.usePage(print));
  const other = await browser.usePage((page) => printPdf(page, "<p>Text</p>", { paper: "A4" }));
  writeFileSync(process.env.TEST_OUT + ".other", other);
});
process.stdout.write(JSON.stringify(found.env));`;

const here = process.platform === "linux" && process.arch === "x64";
const temp = freshFolder();
const name = here ? ((await bundledBrowser())?.path.split("/").at(-2) ?? "") : "";

describe.skipIf(!here)("the bundled browser", { timeout: 60_000 }, () => {
  it("is unpacked by two at once after a kill left half of it", async () => {
    const killed = await runChild(UNPACK, { env: { TEST_TEMP: temp } });
    await killed.wrote("start;");
    while (readdirSync(temp).length === 0) await new Promise((resolve) => setTimeout(resolve, 5));
    killed.kill("SIGKILL");
    await killed.done;
    expect(readdirSync(temp)).toEqual([expect.stringMatching(/\.part$/)]);

    const two = await Promise.all([0, 1].map(() => runChild(UNPACK, { env: { TEST_TEMP: temp } })));
    const outputs = await Promise.all(two.map((child) => child.done));
    expect(readdirSync(temp)).toEqual([name]);
    for (const output of outputs) expect(output).toContain(join(temp, name, "chromium"));
    const found = await bundledBrowser(temp);
    expect(spawnSync(found?.path ?? "", ["--version"]).stdout.toString()).toMatch(/\d+\.\d+/);
  });

  const DAMAGE: [string, (folder: string) => void][] = [
    ["a program that is cut off", (folder) => writeFileSync(join(folder, "chromium"), "half")],
    ["libraries that are gone", (folder) => rmSync(join(folder, "lib"), { recursive: true })],
  ];
  test.each(DAMAGE)("is unpacked again over %s", async (_, damage) => {
    damage(join(temp, name));
    await bundledBrowser(temp);
    expect(readdirSync(temp)).toEqual([name]);
    expect(readdirSync(join(temp, name))).toEqual(expect.arrayContaining(["chromium", "lib"]));
    expect(readFileSync(join(temp, name, "chromium")).length).toBeGreaterThan(1e8);
  });

  const FOREIGN: [string, (path: string) => void][] = [
    ["a folder that others can change", (path) => mkdirSync(path)],
    ["a file", (path) => writeFileSync(path, "")],
  ];
  test.each(FOREIGN)("is never run out of %s", async (_, make) => {
    const own = freshFolder();
    make(join(own, name));
    chmodSync(join(own, name), 0o777);
    await expect(bundledBrowser(own)).rejects.toMatchObject({ code: "browser-failed" });
  });

  it("is a fault where it cannot be written", async () => {
    const nowhere = join(freshFolder(), "none");
    await expect(bundledBrowser(nowhere)).rejects.toMatchObject({ code: "browser-failed" });
  });

  it("runs with the libraries that it brings", async () => {
    const bundled = await bundledBrowser();
    const lib = join(bundled?.path ?? "", "..", "lib");
    const env = { ...bundled?.env, LD_LIBRARY_PATH: lib };
    const args = ["--no-sandbox", "--no-zygote"];
    const found = { kind: "bundled", path: bundled?.path ?? "", args, env } as const;
    await withBrowser(found, (browser) =>
      browser.usePage(async (page) => {
        await printPdf(page, booklet(1), { paper: "A4" });
        const maps = readFileSync(`/proc/${await browser.pid()}/maps`, "utf8");
        for (const file of ["libnss3.so", "libnspr4.so", "libexpat.so.1"]) {
          expect(maps).toContain(join(lib, file));
        }
      }),
    );
  });

  // Hides libraries, fonts and their settings from one child; only root may mount.
  const mounts = spawnSync("unshare", ["-m", "mount", "--bind", "/dev/null", "/etc/hostname"]);
  it.skipIf(mounts.status !== 0)(
    "prints the same on a machine without libraries or fonts",
    async () => {
      const bundled = await bundledBrowser();
      const loader = "/lib64/ld-linux-x86-64.so.2";
      const list = spawnSync(loader, ["--list", bundled?.path ?? ""]).stdout.toString();
      const libraries = list.match(/\/\S*lib(?:nss|nspr|nssutil|expat|plc|plds)\S*/g) ?? [];
      const folder = freshFolder();
      const empty = join(folder, "empty");
      mkdirSync(empty);
      const hide = [
        ...libraries.map((file) => `mount --bind /dev/null "$(readlink -f ${file})"`),
        ...["/etc/fonts", "/usr/share/fonts"].map(
          (path) => `if [ -d ${path} ]; then mount --bind ${empty} ${path}; fi`,
        ),
      ];
      const script = join(folder, "hide.sh");
      writeFileSync(script, `set -e\n${hide.join("\n")}\nexec "$@"\n`);
      const under = { bare: ["unshare", "-m", "sh", script], full: [] };
      const pdfs: Buffer[] = [];
      const outputs: string[] = [];
      for (const kind of ["bare", "full"] as const) {
        const out = join(folder, `${kind}.pdf`);
        const child = await runChild(PRINT, { env: { TEST_OUT: out }, under: under[kind] });
        outputs.push(await child.done);
        pdfs.push(Buffer.from(finishPdf(readFileSync(out), { date: new Date(0) }).pdf));
      }
      expect(libraries.length).toBeGreaterThan(2);
      expect(outputs[0]).toContain("LD_LIBRARY_PATH");
      expect(pdfs[0]?.equals(pdfs[1] ?? Buffer.of())).toBe(true);
      // A glyph that no embedded font has is still drawn, in the font that comes with the browser.
      expect(readFileSync(join(folder, "bare.pdf.other"), "latin1")).toContain("OpenSans");
    },
  );
});

/** An archive with one entry; `path` of up to 100 bytes. */
function tar(path: string, content: string, kind = "0"): Buffer {
  const head = Buffer.alloc(512);
  head.write(path, 0);
  head.write(`${content.length.toString(8).padStart(11, "0")}\0`, 124);
  head.write(kind, 156);
  head.write("ustar\u000000", 257);
  // the sum of the header's bytes, its own eight counted as blanks (POSIX.1-1988, ustar)
  head.write("        ", 148);
  const sum = head.reduce((total, byte) => total + byte, 0);
  head.write(`${sum.toString(8).padStart(6, "0")}\0 `, 148);
  const body = Buffer.alloc(Math.ceil(content.length / 512) * 512);
  body.write(content);
  return Buffer.concat([head, body]);
}
const END = Buffer.alloc(1024);

/** With another letter in its name than its checksum counts. */
function damaged(archive: Buffer): Buffer {
  archive.write("b", 0);
  return archive;
}

describe("untar", () => {
  it("reads files and leaves out all else", async () => {
    const archive = Buffer.concat([
      tar("a/b.txt", "one"),
      tar("a", "", "5"),
      tar("link", "", "2"),
      tar("./c", "x".repeat(513)),
      END,
    ]);
    const entries = (await untar(archive)).map(({ path, content }) => [path, content.length]);
    expect(entries).toEqual([
      ["a/b.txt", 3],
      ["c", 513],
    ]);
  });

  const BAD: [string, Buffer][] = [
    ["is cut off in a file", tar("a", "x".repeat(900)).subarray(0, 1024)],
    ["is cut off after a file", tar("a", "x")],
    ["names a path above it", Buffer.concat([tar("../a", "x"), END])],
    ["is damaged", Buffer.concat([damaged(tar("a", "x")), END])],
    ["names a path of the system", Buffer.concat([tar("/a", "x"), END])],
  ];
  test.each(BAD)("refuses an archive that %s", async (_, archive) => {
    await expect(untar(archive)).rejects.toThrow();
  });
});
