/** Runs the proof over thousands of random plans: `npm run plans`. */
import { spawnSync } from "node:child_process";

const env = { PLANS_COUNT: process.env.PLANS_COUNT ?? "20000" };
const command = [
  "vitest",
  "run",
  "--config",
  "tests/vitest.config.ts",
  "tests/plans/plans.test.ts",
];
const { status } = spawnSync("npx", command, { stdio: "inherit", env: { ...process.env, ...env } });
process.exitCode = status ?? 1;
