/** Runs the comparison of all surfaces over thousands of clients: `npm run surfaces`. */
import { spawnSync } from "node:child_process";

const CLIENTS = process.env.SURFACES_CLIENTS ?? "2000";
const env = {
  SURFACES_CLIENTS: CLIENTS,
  SURFACES_PDFS: process.env.SURFACES_PDFS ?? String(Math.ceil(Number(CLIENTS) / 10)),
};
const command = [
  "vitest",
  "run",
  "--config",
  "tests/vitest.config.ts",
  "tests/surfaces/surfaces.test.ts",
];
const { status } = spawnSync("npx", command, { stdio: "inherit", env: { ...process.env, ...env } });
process.exitCode = status ?? 1;
