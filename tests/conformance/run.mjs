/**
 * Validates PDFs against PDF/UA-1 with veraPDF, a program of others that needs Java and Maven.
 *
 * Without arguments it prints every demo booklet and the sheet of all figures with the built command and
 * validates those; else the PDFs that are named. Exit status: 0 when all pass and say so, 1 when one fails, 2 when it
 * cannot be run.
 */
import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readdirSync, renameSync, rmSync } from "node:fs";
import { delimiter, dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const here = dirname(fileURLToPath(import.meta.url));
const root = join(here, "../..");
const VERSION = "1.28.2";
const cache = join(root, "node_modules/.cache/verapdf", VERSION);
const DEMOS = ["templates/demo", "templates/demo-de"];
const EDITIONS = ["standard", "large", "summary"];

needs(
  "java",
  ["--version"],
  "a JDK of version 11 or later (for example apt-get install default-jdk)",
);
fetchValidator();
const pdfs = process.argv.length > 2 ? process.argv.slice(2) : printDemos();
const jars = readdirSync(cache).map((name) => join(cache, name));
const done = run("java", [
  "-cp",
  jars.join(delimiter),
  "-Dorg.slf4j.simpleLogger.defaultLogLevel=off",
  join(here, "Validate.java"),
  ...pdfs,
]);
process.stdout.write(done.stdout);
if (done.status !== 0 && !/^(pass|FAIL)/m.test(done.stdout)) fail(done.stderr);
const lines = done.stdout.split("\n");
const passed = lines.filter((line) => line.startsWith("pass\t")).length;
process.stdout.write(`PDF/UA-1: ${passed} passed, ${pdfs.length - passed} failed\n`);
process.exitCode = passed === pdfs.length ? 0 : 1;

/** Fetched once, into a folder that is only named as it should be when it is whole. */
function fetchValidator() {
  if (existsSync(cache)) return;
  needs("mvn", ["--version"], "Maven (for example apt-get install maven)");
  const part = `${cache}.part`;
  rmSync(part, { recursive: true, force: true });
  mkdirSync(part, { recursive: true });
  process.stdout.write(`Fetching veraPDF ${VERSION} through Maven …\n`);
  const got = run("mvn", [
    "--batch-mode",
    "--quiet",
    "--file",
    join(here, "pom.xml"),
    "dependency:copy-dependencies",
    `-DoutputDirectory=${part}`,
  ]);
  if (got.status !== 0) fail(`Maven could not fetch veraPDF.\n${got.stdout}${got.stderr}`);
  renameSync(part, cache);
}

/** Every plan among the demos, in every edition, as PDF. */
function printDemos() {
  const out = join(root, "out/conformance");
  rmSync(out, { recursive: true, force: true });
  const pdfs = [];
  for (const demo of DEMOS) {
    const plans = readdirSync(join(root, demo))
      .filter((name) => name.endsWith(".md") && name !== "README.md")
      .map((name) => `${demo}/${name}`);
    for (const edition of EDITIONS) {
      const folder = join(out, demo, edition);
      const command = [join(root, "out/bin/paulatim.js"), "booklet", ...plans];
      const options = ["--formats", "pdf", "--edition", edition, "--out", folder];
      const printed = run(process.execPath, [...command, ...options]);
      if (printed.status !== 0) fail(`The demo booklets were not printed.\n${printed.stderr}`);
      const names = readdirSync(folder).filter((name) => name.endsWith(".pdf"));
      pdfs.push(...names.map((name) => join(folder, name)));
    }
  }
  const sheet = join(out, "figures");
  const options = ["library", "figures", "--formats", "pdf", "--out", sheet];
  const drawn = run(process.execPath, [join(root, "out/bin/paulatim.js"), ...options]);
  if (drawn.status !== 0) fail(`The sheet of figures was not printed.\n${drawn.stderr}`);
  const sheets = readdirSync(sheet).filter((name) => name.endsWith(".pdf"));
  return [...pdfs, ...sheets.map((name) => join(sheet, name))];
}

function needs(program, args, what) {
  const { error, status } = spawnSync(program, args);
  if (error === undefined && status === 0) return;
  fail(`The conformance check needs ${what}; "${program}" was not found or does not run.`);
}

function run(program, args) {
  const { stdout, stderr, status, error } = spawnSync(program, args, {
    cwd: root,
    encoding: "utf8",
    maxBuffer: 1 << 28,
  });
  if (error !== undefined) fail(error.message);
  return { stdout, stderr, status };
}

function fail(message) {
  process.stderr.write(`${message.trim()}\n`);
  process.exit(2);
}
