/** Writing whole files: over old ones, against obstacles, on a full disk, and under a kill. */
import { spawnSync } from "node:child_process";
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import { describe, expect, it, test } from "vitest";
import { isAlive } from "../../src/files/alive.ts";
import { type Fill, writeAll, writeWhole } from "../../src/files/write.ts";
import { freshFolder, runChild } from "./support.ts";

const text = (path: string) => readFileSync(path, "utf8");
/** A process id that was in use and is no longer. */
const deadPid = () => spawnSync(process.execPath, ["-e", ""]).pid;

describe("writeWhole", () => {
  const CONTENTS: [string, Uint8Array | string, string][] = [
    ["text", "Grüße", "Grüße"],
    ["bytes", new Uint8Array([65, 66]), "AB"],
    ["nothing", "", ""],
  ];
  test.each(CONTENTS)(
    "writes %s to a new file and over an old one",
    async (_, content, expected) => {
      const path = join(freshFolder(), "a.html");
      await writeWhole(path, content);
      expect(text(path)).toBe(expected);
      writeFileSync(path, "something longer than that");
      await writeWhole(path, content);
      expect(text(path)).toBe(expected);
      expect(readdirSync(join(path, ".."))).toEqual(["a.html"]);
    },
  );

  // Permissions do not stop root, who may run these tests: obstacles of other kinds stand in.
  const OBSTACLES: [string, (at: string) => void, string, RegExp][] = [
    ["a folder in its place", (at) => mkdirSync(at), "", /folder in its place|folder is in/],
    [
      "a full folder in its place",
      (at) => mkdirSync(join(at, "b"), { recursive: true }),
      "",
      /folder/,
    ],
    ["no folder to write in", () => undefined, "none/out.pdf", /ENOENT/],
    ["a file where its folder should be", (at) => writeFileSync(at, "f"), "out.pdf/x", /ENOTDIR/],
    ["a name that is too long", () => undefined, "x".repeat(250), /ENAMETOOLONG/],
    ["a link to a file", (at) => symlinkSync("/dev/null", at), "", /link/],
    ["a link to nothing", (at) => symlinkSync("nowhere", at), "", /link/],
  ];
  test.each(OBSTACLES)("refuses %s", async (_, make, name, message) => {
    const own = freshFolder();
    make(join(own, "out.pdf"));
    const before = readdirSync(own, { recursive: true });
    const fault = await writeWhole(join(own, name || "out.pdf"), "new").catch((e: unknown) => e);
    expect(fault).toMatchObject({
      code: "output-unwritable",
      exit: 3,
      message: expect.stringMatching(message),
      hint: expect.stringMatching(/./),
    });
    expect(readdirSync(own, { recursive: true })).toEqual(before);
  });

  const readonly = freshFolder();
  const disk = (options: string) =>
    spawnSync("mount", ["-t", "tmpfs", "-o", options, "tmpfs", readonly]).status === 0;
  const canMount = process.platform === "linux" && process.getuid?.() === 0 && disk("size=64k");
  it.skipIf(!canMount)(
    "tells of a disk that is full or cannot be written (root only)",
    async () => {
      try {
        const path = join(readonly, "a.pdf");
        await writeWhole(path, "old");
        await expect(writeWhole(path, "x".repeat(200_000))).rejects.toMatchObject({
          code: "disk-full",
        });
        expect([text(path), readdirSync(readonly)]).toEqual(["old", ["a.pdf"]]);
        spawnSync("mount", ["-o", "remount,ro", readonly]);
        const refused = { code: "output-unwritable", message: expect.stringContaining("EROFS") };
        await expect(writeWhole(path, "new")).rejects.toMatchObject(refused);
        expect(text(path)).toBe("old");
      } finally {
        spawnSync("umount", [readonly]);
      }
    },
  );

  it("removes what dead runs left of the same file, and nothing else", async () => {
    const own = freshFolder();
    const name = (target: string, pid: number) => `.${target}.${pid}-0123456789ab.tmp`;
    const dead = deadPid();
    const kept = [
      name("a.pdf", process.pid),
      name("b.pdf", dead),
      "a.pdf.tmp",
      `.a.pdf.${dead}.tmp`,
    ];
    for (const file of [...kept, name("a.pdf", dead)]) writeFileSync(join(own, file), "half");
    await writeWhole(join(own, "a.pdf"), "whole");
    expect(readdirSync(own).sort()).toEqual([...kept, "a.pdf"].sort());
  });

  test.each(["old", undefined])(
    "killed in the middle leaves the old file (%s) and no half of the new",
    async (old) => {
      const own = freshFolder();
      const path = join(own, "a.pdf");
      if (old !== undefined) writeFileSync(path, old);
      const child = await runChild(
        `import { writeAll } from "./src/files/write.ts";
         await writeAll([{ path: process.env.TEST_PATH, content: "" }], async (file) => {
           await file.write("half");
           process.stdout.write("half;");
           await new Promise((resolve) => setTimeout(resolve, 60_000));
         });`,
        { env: { TEST_PATH: path } },
      );
      await child.wrote("half;");
      expect(readdirSync(own).some((name) => name.endsWith(".tmp"))).toBe(true);
      child.kill("SIGKILL");
      await child.done;
      expect(existsSync(path) ? text(path) : undefined).toBe(old);
      await writeWhole(path, "new");
      expect([text(path), readdirSync(own)]).toEqual(["new", ["a.pdf"]]);
    },
  );

  it("is never seen half by a reader, however often it writes", async () => {
    const path = join(freshFolder(), "a.txt");
    const wholes = ["a", "b"].map((letter) => letter.repeat(300_000));
    await writeWhole(path, wholes[0] ?? "");
    let writing = true;
    const writer = (async () => {
      for (let round = 0; round < 30; round++) await writeWhole(path, wholes[round % 2] ?? "");
      writing = false;
    })();
    let reads = 0;
    for (; writing; reads++) {
      expect(wholes).toContain(text(path));
      await new Promise((resolve) => setImmediate(resolve));
    }
    await writer;
    expect(reads).toBeGreaterThan(5);
  });

  it.skipIf(process.platform === "win32")(
    "gives the usual permissions, not the temporary file's",
    async () => {
      const own = freshFolder();
      writeFileSync(join(own, "usual"), "");
      await writeWhole(join(own, "a"), "");
      expect(statSync(join(own, "a")).mode).toBe(statSync(join(own, "usual")).mode);
    },
  );
});

describe("writeAll", () => {
  const failing =
    (code: string): Fill =>
    async (file, content) => {
      if (content === "bad") throw Object.assign(new Error(code), { code });
      await file.writeFile(content);
    };
  const FAILURES: [string, string][] = [
    ["ENOSPC", "disk-full"],
    ["EDQUOT", "disk-full"],
    ["EIO", "output-unwritable"],
  ];
  test.each(FAILURES)("leaves all old files when one meets %s", async (error, code) => {
    const own = freshFolder();
    const paths = ["a", "b", "c"].map((name) => join(own, name));
    for (const path of paths) writeFileSync(path, "old");
    const files = paths.map((path, index) => ({ path, content: index === 1 ? "bad" : "new" }));
    await expect(writeAll(files, failing(error))).rejects.toMatchObject({
      code,
      message: expect.stringContaining(paths[1] ?? "-"),
    });
    expect(paths.map(text)).toEqual(["old", "old", "old"]);
    expect(readdirSync(own)).toEqual(["a", "b", "c"]);
  });

  it("writes all, in several folders; and none is no fault", async () => {
    const files = [0, 1, 2].map((index) => ({
      path: join(freshFolder(), "f"),
      content: `${index}`,
    }));
    await writeAll(files);
    expect(files.map(({ path }) => text(path))).toEqual(["0", "1", "2"]);
    await writeAll([]);
  });
});

test.each([
  ["this process", process.pid, true],
  ["a process that has ended", deadPid(), false],
  ["process 1", 1, true],
  ["no number", Number.NaN, false],
  ["every process at once", -1, false],
  ["its own group", 0, false],
])("isAlive knows %s", (_, pid, alive) => {
  expect(isAlive(pid)).toBe(alive);
});
