/** Lets thousands of seeded clients tap: `npm run taps`; or some on broken companions: `npm run taps -- broken`. */
import { spawnSync } from "node:child_process";

const broken = process.argv[2] === "broken";
const env = broken ? { TAPS_BROKEN: "1" } : { TAPS_CLIENTS: process.env.TAPS_CLIENTS ?? "10000" };
const command = [
  "vitest",
  "run",
  "--config",
  "tests/vitest.config.ts",
  `tests/phone/taps/${broken ? "broken" : "taps"}.test.ts`,
];
const { status } = spawnSync("npx", command, { stdio: "inherit", env: { ...process.env, ...env } });
process.exitCode = status ?? 1;
