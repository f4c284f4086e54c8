/** The built command, started: it finds what it was built with, and leaves with the status and on the streams that a script expects. */
import { spawnSync } from "node:child_process";
import { cpSync, mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { COMMAND, DAY, ROOT } from "./support/world.ts";

const clinic = mkdtempSync(join(tmpdir(), "paulatim-cli-"));
afterAll(() => rmSync(clinic, { recursive: true, force: true }));
for (const file of ["clinic.yaml", "achilles.md"]) {
  cpSync(join(ROOT, "templates/demo", file), join(clinic, file));
}

const run = (args: readonly string[]) =>
  spawnSync(process.execPath, [COMMAND, ...args], {
    cwd: clinic,
    encoding: "utf8",
    env: { ...process.env, NO_COLOR: "1" },
  });

test.each([
  ["help", ["--help"], 0, /^Usage: paulatim/, /^$/],
  ["version", ["--version"], 0, /^\d+\.\d+\.\d+\n$/, /^$/],
  ["a good clinic", ["check", "--date", DAY], 0, /^No problems\.\n$/, /^$/],
  ["a plan that is not there", ["plan", "nobody.md"], 1, /^$/, /no such plan/],
  ["a plan", ["plan", "achilles.md", "--date", DAY], 0, /^Edda Marlowe[\s\S]* load \d+/, /^$/],
  ["an unknown command", ["prescribe"], 2, /^$/, /unknown command 'prescribe'[\s\S]*--help shows/],
  ["a missing argument", ["plan"], 2, /^$/, /missing required argument/],
  [
    "a browser that is not there",
    ["booklet", "achilles.md", "--browser", "/nowhere/chrome", "--out", "out"],
    3,
    /achilles-demo.html\n/,
    /\/nowhere\/chrome/,
  ],
] as const)("%s", (_name, args, status, out, err) => {
  const done = run(args);
  expect(done.stdout).toMatch(out);
  expect(done.stderr).toMatch(err);
  expect(done.status).toBe(status);
  expect(done.stderr).not.toMatch(/^\s+at /m);
});

test("the HTML that was written stays where no browser prints it", () => {
  expect(readdirSync(join(clinic, "out")).sort()).toEqual([
    "achilles-demo.html",
    "achilles-demo.issued.json",
  ]);
});
