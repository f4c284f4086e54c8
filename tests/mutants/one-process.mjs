/**
 * Runs the tests of a room for Stryker in one process that stays warm: the room's tests are bundled with what
 * they import, and each change runs those that reach it, the quickest first, until one fails. Vitest starts
 * anew for each of thousands of changes. `expect` is vitest's own; `describe` and `test` only collect.
 */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { performance } from "node:perf_hooks";
import { pathToFileURL } from "node:url";
import { format } from "node:util";
import { INSTRUMENTER_CONSTANTS } from "@stryker-mutator/api/core";
import { commonTokens, declareClassPlugin, PluginKind, tokens } from "@stryker-mutator/api/plugin";
import {
  DryRunStatus,
  determineHitLimitReached,
  TestStatus,
  toMutantRunResult,
} from "@stryker-mutator/api/test-runner";
import { build } from "esbuild";
import fc from "fast-check";

/** Of these only a changed command, which they start, or a slow oracle would tell more. */
const LEFT_OUT = /(^|[-/])(properties|state-table|hostile|command|highs|pace|plans)\.test\.ts$/;

const COLLECTING = `
  export { expect } from "vitest";
  export const { describe, test } = globalThis.collecting;
`;

class OneProcess {
  static inject = tokens(commonTokens.options);

  constructor({ room }) {
    this.room = room;
    this.state = globalThis[INSTRUMENTER_CONSTANTS.NAMESPACE] ??= {};
    this.bundle = join(process.cwd(), "out", "tests-of-the-room.mjs");
    this.loads = 0;
    this.times = new Map();
  }

  capabilities() {
    return { reloadEnvironment: true };
  }

  async init() {
    // a tenth of the inputs, and no search for the least one that fails
    fc.configureGlobal({ numRuns: 10, seed: 1, endOnFailure: true });
    await build({
      entryPoints: ["all-tests"],
      bundle: true,
      format: "esm",
      platform: "node",
      packages: "external",
      outfile: this.bundle,
      plugins: [testsOf(this.room)],
      logLevel: "error",
    });
  }

  async dryRun() {
    await this.load();
    const results = await this.run(this.tests, false);
    this.times = new Map(results.map(({ id, timeSpentMs }) => [id, timeSpentMs]));
    const mutantCoverage = this.state.mutantCoverage;
    return { status: DryRunStatus.Complete, tests: results, mutantCoverage };
  }

  async mutantRun({ activeMutant, mutantActivation, reloadEnvironment, testFilter, hitLimit }) {
    this.state.activeMutant = mutantActivation === "static" ? activeMutant.id : undefined;
    if (reloadEnvironment || !this.tests) await this.load();
    Object.assign(this.state, { activeMutant: activeMutant.id, hitCount: 0, hitLimit });
    const wanted = this.tests.filter(({ id }) => testFilter?.includes(id) ?? true);
    const time = ({ id }) => this.times.get(id) ?? 0;
    const results = await this.run(
      wanted.sort((one, other) => time(one) - time(other)),
      true,
    );
    const { hitCount } = this.state;
    Object.assign(this.state, { activeMutant: undefined, hitCount: undefined });
    return toMutantRunResult(
      determineHitLimitReached(hitCount, hitLimit) ?? {
        status: DryRunStatus.Complete,
        tests: results,
      },
    );
  }

  /** Imports the bundle, anew each time, and collects its tests. */
  async load() {
    const tests = [];
    globalThis.collecting = collector(tests);
    this.loads += 1;
    await import(`${pathToFileURL(this.bundle)}?${this.loads}`);
    this.tests = tests;
  }

  async run(tests, untilOneFails) {
    const results = [];
    for (const { id, run } of tests) {
      const from = performance.now();
      this.state.currentTestId = id;
      const failureMessage = await failureOf(run);
      this.state.currentTestId = undefined;
      const status = failureMessage === undefined ? TestStatus.Success : TestStatus.Failed;
      results.push({
        id,
        name: id,
        timeSpentMs: performance.now() - from,
        status,
        failureMessage: failureMessage ?? "",
      });
      if (untilOneFails && failureMessage !== undefined) break;
    }
    return results;
  }
}

async function failureOf(run) {
  try {
    await run();
    return undefined;
  } catch (error) {
    return String(error);
  }
}

/** The part of vitest's `describe` and `test` that these rooms use. */
function collector(tests) {
  const names = [];
  const describe = (name, body) => {
    names.push(name);
    body();
    names.pop();
  };
  const test = (name, ...given) => {
    const run = given.find((one) => typeof one === "function");
    tests.push({ id: `${tests.length} ${[...names, name].join(" › ")}`, run });
  };
  test.each = (rows) => (name, run) => {
    for (const row of rows) {
      const values = Array.isArray(row) ? row : [row];
      const named = values.slice(0, name.match(/%[^%\s]/g)?.length ?? 0);
      test(format(name, ...named), () => run(...values));
    }
  };
  test.skipIf = (skipped) => (skipped ? () => undefined : test);
  return { describe, test };
}

/** The room's own tests, and those of published figures that ask it. */
function testFiles(room) {
  const own = readdirSync(join("tests", room), { recursive: true })
    .filter((file) => file.endsWith(".test.ts") && !LEFT_OUT.test(file))
    .map((file) => `tests/${room}/${file}`);
  const published = readdirSync(join("tests", "published"))
    .map((file) => `tests/published/${file}`)
    .filter((file) => file.endsWith(".test.ts"))
    .filter((file) => readFileSync(file, "utf8").includes(`"../../src/${room}/`));
  return [...own, ...published];
}

/** The entry that imports every test of the room, the collecting stand-in, and the place of each file. */
function testsOf(room) {
  return {
    name: "tests of the room",
    setup(building) {
      building.onResolve({ filter: /^(all-tests|vitest)$/ }, ({ path, namespace }) =>
        namespace === "collecting"
          ? { path, external: true }
          : { path, namespace: path === "vitest" ? "collecting" : "entry" },
      );
      building.onLoad({ filter: /.*/, namespace: "collecting" }, () => ({ contents: COLLECTING }));
      building.onLoad({ filter: /.*/, namespace: "entry" }, () => ({
        contents: testFiles(room)
          .map((file) => `import "./${file}";`)
          .join("\n"),
        resolveDir: process.cwd(),
      }));
      building.onLoad({ filter: /\/(src|tests)\/.*\.tsx?$/ }, ({ path }) => ({
        contents: readFileSync(path, "utf8").replaceAll(
          "import.meta.url",
          JSON.stringify(pathToFileURL(path)),
        ),
        loader: path.endsWith("x") ? "tsx" : "ts",
      }));
    },
  };
}

export const strykerPlugins = [
  declareClassPlugin(PluginKind.TestRunner, "one-process", OneProcess),
];
