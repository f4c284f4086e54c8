/** Prints every shipped course in every form, lints its pages and draws contact sheets: `npm run gallery`. */
import { spawnSync } from "node:child_process";

const env = { GALLERY: process.env.GALLERY ?? "all" };
const command = [
  "vitest",
  "run",
  "--config",
  "tests/vitest.config.ts",
  "tests/gallery/gallery.test.ts",
];
const { status } = spawnSync("npx", command, { stdio: "inherit", env: { ...process.env, ...env } });
process.exitCode = status ?? 1;
