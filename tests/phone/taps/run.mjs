/** Lets thousands of seeded clients tap: `npm run taps`. */
import { spawnSync } from "node:child_process";

const env = { TAPS_CLIENTS: process.env.TAPS_CLIENTS ?? "10000" };
const command = [
  "vitest",
  "run",
  "--config",
  "tests/vitest.config.ts",
  "tests/phone/taps/taps.test.ts",
];
const { status } = spawnSync("npx", command, { stdio: "inherit", env: { ...process.env, ...env } });
process.exitCode = status ?? 1;
