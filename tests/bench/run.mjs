/** Bundles the benchmark and runs it; `npm run bench`. */
import { build } from "esbuild";

await build({
  entryPoints: ["tests/bench/bench.ts"],
  outfile: "out/bench/bench.mjs",
  bundle: true,
  format: "esm",
  platform: "node",
  target: "node20",
  packages: "external",
  logLevel: "warning",
});
await import("../../out/bench/bench.mjs");
