/**
 * Changes each line of a room of src/ in small ways, one at a time, and shows the changes that no test of that
 * room sees: `npm run mutants -- pain`, or `-- diary/merge` for one file of it. Without a name it does every
 * room below, one after another. Fails where fewer than nine changes in ten are seen.
 */
import { setPriority } from "node:os";
import { fileURLToPath } from "node:url";
import { Stryker } from "@stryker-mutator/core";

/** Rooms that decide numbers. */
const ROOMS = ["pain", "diary", "dose", "week", "schedule"];
const LEAST = 90;

const named = process.argv.slice(2);
setPriority(10);
// changed code is slow: tests leave out what tries thousands of inputs
process.env.PAULATIM_MUTANTS = "1";
for (const name of named.length > 0 ? named : ROOMS) {
  const [room, ...file] = name.split("/");
  const results = await new Stryker({
    mutate: [file.length === 0 ? `src/${room}/**/*.ts` : `src/${name}.ts`],
    testRunner: "one-process",
    room,
    plugins: [fileURLToPath(new URL("one-process.mjs", import.meta.url))],
    coverageAnalysis: "perTest",
    concurrency: 1,
    // messages to the clinician are proofread, not tested word by word
    mutator: { excludedMutations: ["StringLiteral"] },
    disableTypeChecks: false,
    // the room is an option of ours
    warnings: { unknownOptions: false },
    // it would rewrite tsconfig.json by an interface that TypeScript 7 no longer has
    tsconfigFile: "",
    tempDirName: "out/mutants",
    ignorePatterns: ["out/*", "!out/bin"],
    reporters: ["clear-text"],
    clearTextReporter: { allowColor: false, reportTests: false, logTests: false },
    allowConsoleColors: false,
    timeoutMS: 20_000,
    dryRunTimeoutMinutes: 20,
  }).runMutationTest();
  const seen = results.filter(({ status }) => status === "Killed" || status === "Timeout").length;
  const counted = results.filter(({ status }) => status !== "Ignored").length;
  const score = counted === 0 ? 100 : (100 * seen) / counted;
  process.stdout.write(`${name}: ${seen} of ${counted} changes seen, ${score.toFixed(1)} %\n`);
  if (score < LEAST) process.exitCode = 1;
}
