/** How the tests are run. */
import { availableParallelism } from "node:os";
import { defineConfig } from "vitest/config";

export default defineConfig({
  root: new URL("..", import.meta.url).pathname,
  test: {
    dir: "tests",
    include: ["**/*.test.ts"],
    maxWorkers: availableParallelism(),
    testTimeout: process.env.PAULATIM_MUTANTS ? 300_000 : 30_000,
    hookTimeout: 60_000,
  },
});
